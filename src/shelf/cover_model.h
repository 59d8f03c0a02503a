// Which question is handed to a search elsewhere? Models are columns, kinds of systems are rows: a row counts its
// weight when one of its columns is chosen.
#pragma once

#include <cstdint>
#include <optional>
#include <vector>

namespace tapbook {

struct CoverModel {
    enum class Seek { most_covered, fewest_columns };

    struct Row {
        std::int64_t weight = 0;
        std::vector<std::uint32_t> columns;
    };

    Seek seek = Seek::most_covered;
    std::vector<std::int64_t> costs;  // one for each column
    std::vector<Row> rows;
    std::optional<int> at_most;                    // columns
    std::optional<std::int64_t> budget;            // sum of the costs
    std::optional<std::int64_t> at_least_covered;  // weight
};

}  // namespace tapbook
