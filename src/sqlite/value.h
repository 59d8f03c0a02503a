// What can a cell hold? SQLite's five storage classes as one variant; NULL is std::monostate.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <variant>

namespace tapbook::sqlite {

struct Blob {
    std::string bytes;
    friend bool operator==(const Blob&, const Blob&) = default;
};

// Bytes owned by somebody else.
struct BlobView {
    std::string_view bytes;
};

using Value = std::variant<std::monostate, std::int64_t, double, std::string, Blob>;

}  // namespace tapbook::sqlite
