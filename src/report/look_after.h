// What do export, check and where answer? Their values, and each as text and as JSON.
#pragma once

#include <filesystem>
#include <span>
#include <string>
#include <vector>

#include "files/files.h"
#include "report/screen.h"

namespace tapbook {

struct ExportedFile {
    std::string name;             // what it holds, as a file name: "parts.toml"
    std::filesystem::path place;  // where it is written
    WrittenFile file;
};

struct ExportAnswer {
    std::vector<ExportedFile> files;
    struct Failed {
        std::string name, reason;
    };
    std::vector<Failed> failed;  // what could not be read from a damaged catalog
    bool to_output = false;      // one file, to standard output
    bool is_csv = false;         // a spreadsheet
    std::string mapping;         // reads it again; "" for none
    bool written = false;        // false: a dry run, or to standard output
};
std::string export_text(const ExportAnswer& answer, const Screen& screen);
std::string export_json(const ExportAnswer& answer);

std::string check_text(const CheckReport& report, const Screen& screen);
std::string check_json(const CheckReport& report);

// A place the program reads or writes.
struct ProgramPlace {
    std::string what;
    std::filesystem::path path;
    bool exists = false;
};
struct ProgramPlaces {
    std::filesystem::path catalog, practice, rules;
    std::vector<ProgramPlace> all;  // those three and all others
};
std::string where_text(const ProgramPlaces& places, const Screen& screen);
std::string where_json(const ProgramPlaces& places);

}  // namespace tapbook
