// What does a TOML text say, and where? A small tree that keeps numbers as they were written (so that 13.8 becomes
// 13800 mV exactly) and every value's place. toml++ does the parsing, in toml.cpp only.
#pragma once

#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "catalog/catalog.h"

namespace tapbook {

struct TomlValue {
    enum class Type { text, number, flag, date, list, table };
    Type type = Type::table;
    std::string text;  // a text's value; a number or date exactly as written
    bool flag = false;
    std::vector<TomlValue> items;                            // of a list
    std::vector<std::pair<std::string, TomlValue>> members;  // of a table, in the file's order
    std::vector<SourcePlace> member_places;                  // where each member's key stands
    SourcePlace place;

    // The member called `key`, or nullptr.
    const TomlValue* find(std::string_view key) const;
};

// The root table of `text`. Throws InputRefused with the line, the column and the line's text when it is not UTF-8,
// longer than 8 MiB, or not TOML. `file` is the name used in messages.
TomlValue read_toml(std::string_view text, const std::string& file);

}  // namespace tapbook
