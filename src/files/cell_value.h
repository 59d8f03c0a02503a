// How does one cell become the value that a TOML file would hold for a key: words translated, dates turned round,
// decimal commas made points? For the files of this folder.
#pragma once

#include <variant>

#include "files/mapping.h"

namespace tapbook {

struct CellRefusal {
    std::string message, hint;
};

// What a cell holds where a list is known to be empty: nobody met a hazard.
inline constexpr std::string_view empty_list_cell = "[]";

// The cell's text as the mapping trims and translates it; "" when it says nothing.
std::string translated(const Mapping& mapping, std::string_view key, std::string_view cell);

// The value of a text that translated() gave and that is not empty.
std::variant<TomlValue, CellRefusal> cell_value(const Mapping& mapping, const MappedKey& key, const std::string& text,
                                                const SourcePlace& place);

}  // namespace tapbook
