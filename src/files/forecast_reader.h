// Which jobs does somebody expect? A forecast file: [[expect]] tables, each with the path of a sound system or a car
// and jobs a year.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "catalog/catalog.h"

namespace tapbook {

struct ForecastLine {
    std::string path;              // of a sound system, or of a car: all its systems share the jobs evenly
    std::int64_t thousandths = 0;  // of jobs a year
    SourcePlace place;             // of the path
};

// Throws InputRefused at the line: unknown keys, a path that is none, no number of jobs, a path twice. Whether the car
// is in the catalog is the reader's question.
std::vector<ForecastLine> read_forecast(std::string_view text, const std::string& file);

}  // namespace tapbook
