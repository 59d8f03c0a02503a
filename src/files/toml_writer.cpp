// See toml_writer.h. Escapes as in TOML 1.0, "Strings".
#include "files/toml_writer.h"

#include <fmt/format.h>

#include <algorithm>

namespace tapbook {
namespace {

constexpr std::size_t most_columns = 110;  // a longer list has one item on each line

// The code point at the start of `text` and its bytes. REQUIRES: `text` is UTF-8 and not empty.
std::pair<std::uint32_t, std::size_t> first_point(std::string_view text) {
    const auto byte = [&](std::size_t i) { return static_cast<std::uint32_t>(static_cast<unsigned char>(text[i])); };
    if (byte(0) < 0x80) return {byte(0), 1};
    if (byte(0) < 0xE0) return {(byte(0) & 0x1F) << 6 | (byte(1) & 0x3F), 2};
    if (byte(0) < 0xF0) return {(byte(0) & 0x0F) << 12 | (byte(1) & 0x3F) << 6 | (byte(2) & 0x3F), 3};
    return {(byte(0) & 0x07) << 18 | (byte(1) & 0x3F) << 12 | (byte(2) & 0x3F) << 6 | (byte(3) & 0x3F), 4};
}

std::string decimal_load(const std::string& load) {
    const auto colon = load.find(':');
    const auto ohms = scaled(load.substr(0, colon), 0);
    const auto watts = scaled(colon == std::string::npos ? "" : load.substr(colon + 1), 0);
    const auto* mohm = std::get_if<std::int64_t>(&ohms);
    const auto* mw = std::get_if<std::int64_t>(&watts);
    return mohm == nullptr || mw == nullptr ? load : fmt::format("{}:{}", unscaled(*mohm, 3), unscaled(*mw, 3));
}

std::string text_value(FieldKind kind, const std::string& text) {
    return kind == FieldKind::day && day_number(text) ? text : toml_text(spelled(kind, text));
}

std::string list_value(const Field& field, const TextList& items) {
    std::string on_one_line = "[", on_many = "[\n";
    for (const auto& item : items) {
        const std::string written = text_value(field.kind, item);
        on_one_line += (on_one_line.size() > 1 ? ", " : "") + written;
        on_many += fmt::format("  {},\n", written);
    }
    return field.name.size() + on_one_line.size() + 4 <= most_columns ? on_one_line + "]" : on_many + "]";
}

}  // namespace

std::string toml_text(std::string_view text) {
    std::string quoted = "\"";
    while (!text.empty()) {
        const auto [point, bytes] = first_point(text);
        const std::string_view character = text.substr(0, bytes);
        if (point == '"' || point == '\\')
            quoted += fmt::format("\\{}", character);
        else if (point == '\n')
            quoted += "\\n";
        else if (point == '\t')
            quoted += "\\t";
        else if (hidden_character(character))
            quoted += point > 0xFFFF ? fmt::format("\\U{:08X}", point) : fmt::format("\\u{:04X}", point);
        else
            quoted += character;
        text.remove_prefix(bytes);
    }
    return quoted + "\"";
}

std::string colour_spelling(const WireColour& colour) {
    std::string text;
    for (const Hue& hue : hues(colour)) text += (text.empty() ? "" : "/") + words(hue);
    return text;
}

std::string spelled(FieldKind kind, const std::string& stored) {
    if (kind == FieldKind::loads) return decimal_load(stored);
    const auto colour = kind == FieldKind::colour ? wire_colour_from_code(stored) : std::nullopt;
    return colour ? colour_spelling(*colour) : stored;
}

std::string toml_line(const Field& field, const Value& value) {
    std::string written;
    if (const auto* number = std::get_if<std::int64_t>(&value))
        written = unscaled(*number, field.digits);
    else if (const auto* flag = std::get_if<bool>(&value))
        written = *flag ? "true" : "false";
    else if (const auto* list = std::get_if<TextList>(&value))
        written = list_value(field, *list);
    else
        written = text_value(field.kind, std::get<std::string>(value));
    return fmt::format("{} = {}\n", field.name, written);
}

std::string toml_lines(std::span<const Field> fields, const Values& values) {
    std::string lines;
    for (const auto& field : fields)
        if (const auto found = values.find(field.stored); found != values.end())
            lines += toml_line(field, found->second);
    return lines;
}

std::vector<std::string> unknown_keys(std::span<const Field> fields, std::span<const std::string_view> own,
                                      const Values& values) {
    std::vector<std::string> keys;
    for (const auto& [key, value] : values) {
        const bool is_field = std::any_of(fields.begin(), fields.end(),
                                          [&, &name = key](const Field& field) { return field.stored == name; });
        if (!is_field && std::find(own.begin(), own.end(), key) == own.end()) keys.push_back(key);
    }
    return keys;
}

}  // namespace tapbook
