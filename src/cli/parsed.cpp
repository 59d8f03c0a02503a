// Reading typed values: exact decimals and words from tables, with the option's name in every refusal.
#include <fmt/format.h>

#include "cli/command.h"

namespace tapbook {

std::optional<std::string> Parsed::text(std::string_view name) const {
    const auto found = values.find(name);
    return found == values.end() ? std::nullopt : std::optional(found->second);
}

std::optional<std::int64_t> Parsed::number(std::string_view name, int digits, std::int64_t least,
                                           std::int64_t most) const {
    const auto typed = text(name);
    if (!typed) return std::nullopt;
    const auto read = scaled(*typed, digits);
    const std::string range = fmt::format("it must be {} to {}", unscaled(least, digits), unscaled(most, digits));
    if (const auto* not_one = std::get_if<NotANumber>(&read))
        throw UsageError(fmt::format("{}: \"{}\" {}", name, shown(*typed), not_one->reason), range);
    const auto result = std::get<std::int64_t>(read);
    if (result < least || result > most)
        throw UsageError(fmt::format("{}: {} is out of range", name, shown(*typed)), range);
    return result;
}

std::int64_t Parsed::need_number(std::string_view name, int digits, std::int64_t least, std::int64_t most) const {
    const auto value = number(name, digits, least, most);
    if (!value) throw UsageError(fmt::format("{} is needed", name), "add -h to see an example");
    return *value;
}

std::string Parsed::joined_words() const {
    std::string all;
    for (const auto& word : words) all += (all.empty() ? "" : " ") + word;
    return all;
}

void Parsed::refuse_word(std::string_view name, std::string_view typed, const std::vector<std::string_view>& known) {
    std::string list;
    for (const auto word : known) list += fmt::format("{}{}", list.empty() ? "" : ", ", word);
    const auto near = nearest(typed, known);
    throw UsageError(fmt::format("{} does not know \"{}\"", name, shown(typed)),
                     near ? fmt::format("did you mean {}?", *near) : fmt::format("one of {}", list));
}

}  // namespace tapbook
