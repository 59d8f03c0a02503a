// See fields_read.h.
#include "trade/fields_read.h"

namespace tapbook {

std::string text_field(const Values& values, std::string_view key) {
    const auto* text = find_value<std::string>(values, key);
    return text == nullptr ? std::string() : *text;
}

std::optional<int> whole_field(const Values& values, std::string_view key) {
    const auto* number = find_value<std::int64_t>(values, key);
    return number == nullptr ? std::nullopt : std::optional(static_cast<int>(*number));
}

std::optional<bool> flag_field(const Values& values, std::string_view key) {
    const auto* flag = find_value<bool>(values, key);
    return flag == nullptr ? std::nullopt : std::optional(*flag);
}

TextList list_field(const Values& values, std::string_view key) {
    const auto* list = find_value<TextList>(values, key);
    return list == nullptr ? TextList() : *list;
}

}  // namespace tapbook
