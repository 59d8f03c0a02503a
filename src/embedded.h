// Text files that travel inside the program (schema, shipped rules, practice shop), written into C++ at build time.
#pragma once

#include <span>
#include <string_view>

namespace tapbook {

struct EmbeddedText {
    std::string_view name;  // "schema/0001_first.sql", as in the repository
    std::string_view text;
};

// All embedded files in byte order of their names.
std::span<const EmbeddedText> embedded_texts();

}  // namespace tapbook
