// How is told what came from other shops and what went out? Packs, the exchange folder, keys and aliases, as text and
// as JSON of the same values.
#pragma once

#include <span>
#include <string>
#include <vector>

#include "exchange/exchange.h"
#include "report/json.h"
#include "report/screen.h"

namespace tapbook {

// What a pack holds, as `pack show` tells it.
struct PackContents {
    Incoming pack;
    std::vector<KindCount> kinds;  // all of them as fresh
    struct Car {
        std::string path;
        int records = 0;
    };
    std::vector<Car> cars;  // by path
    int of_other_shops = 0;
};
PackContents contents_of(Incoming pack);

std::string pack_text(const PackContents& contents, const Screen& screen);
std::string pack_json(const PackContents& contents);

std::string take_in_text(const TakeInReport& report, const Screen& screen);
std::string take_in_json(const TakeInReport& report);
void write_take_in(Json& json, const TakeInReport& report);

// Packs that were written, or would be.
struct PackExport {
    struct File {
        std::string name;  // "-" for standard output
        int records = 0;
        std::size_t bytes = 0;
    };
    std::vector<File> files;
    bool written = false;
};
std::string pack_export_text(const PackExport& packs, const Screen& screen);
std::string pack_export_json(const PackExport& packs);

std::string folder_text(const FolderReport& report, const Screen& screen);
std::string folder_json(const FolderReport& report);

// `done`: what was done with the key, as a sentence; may be empty.
std::string key_text(const KeyReport& report, std::string_view done, const Screen& screen);
std::string key_json(const KeyReport& report);

std::string alias_text(const AliasReport& report, const Screen& screen);
std::string alias_json(const AliasReport& report);

}  // namespace tapbook
