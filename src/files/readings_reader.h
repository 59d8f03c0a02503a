// What was read at the car, typed into a sheet and saved as a file? A [job] table with its code, then a [[reading]] for
// each place: `at` as the job names it, and the fields of a note as people write them.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "catalog/catalog.h"

namespace tapbook {

struct FileReading {
    std::string at;  // "front-left/radio-plug"
    Values values;   // by their stored names; which kind of place it is, is not known here
    SourcePlace place;
};

struct ReadingsFile {
    std::string code;  // of the job
    SourcePlace code_place;
    std::vector<FileReading> readings;  // in the file's order
};

// Throws InputRefused with all complaints, in the file's order, at most 20: no job code, a place twice, a reading that
// says nothing, and whatever the fields of a note refuse.
ReadingsFile read_readings(std::string_view text, const std::string& file);

}  // namespace tapbook
