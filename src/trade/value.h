// What can a field of a record hold? Text, a whole number, a yes/no, or a list of texts: nothing else is ever stored or
// exchanged, so that the same record has the same bytes on every machine (no fractions, no nesting).
#pragma once

#include <cstdint>
#include <map>
#include <string>
#include <variant>
#include <vector>

namespace tapbook {

using TextList = std::vector<std::string>;
using Value = std::variant<std::int64_t, bool, std::string, TextList>;

// Fields by name, in byte order of the names: the order in which they are written.
using Values = std::map<std::string, Value, std::less<>>;

// The field's value when it is there and has that type, else nullptr.
template <class T>
const T* find_value(const Values& values, std::string_view name) {
    const auto found = values.find(name);
    return found == values.end() ? nullptr : std::get_if<T>(&found->second);
}

}  // namespace tapbook
