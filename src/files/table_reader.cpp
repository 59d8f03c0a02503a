// See table_reader.h.
#include "files/table_reader.h"

#include <fmt/format.h>

#include <algorithm>

namespace tapbook {
namespace {

std::string quoted_list(const std::vector<std::string_view>& words) {
    std::string text;
    for (std::size_t i = 0; i < words.size(); ++i) {
        if (i != 0) text += i + 1 == words.size() ? " or " : ", ";
        text += words[i];
    }
    return text;
}

std::string type_words(FieldKind kind) {
    switch (kind) {
        case FieldKind::name:
        case FieldKind::text:
            return "a text in quotes";
        case FieldKind::slug:
            return "a short name in quotes";
        case FieldKind::word:
            return "one word in quotes";
        case FieldKind::colour:
            return "a wire colour in quotes";
        case FieldKind::whole:
            return "a whole number";
        case FieldKind::decimal:
            return "a number";
        case FieldKind::flag:
            return "true or false";
        case FieldKind::names:
        case FieldKind::word_list:
            return "a list of texts, [\"...\", \"...\"]";
        case FieldKind::loads:
            return "a list like [\"4:75\"], ohms before watts";
        case FieldKind::day:
            return "a date like 2024-05-02, without quotes";
    }
    return {};
}

// One value on its way from the file into a field.
struct Reading {
    const Field& field;
    const TomlValue& value;
    Complaints& complaints;

    void complain(const SourcePlace& place, std::string message, std::string hint = {}) const {
        complaints.add(place, fmt::format("{} {}", field.name, message), std::move(hint));
    }

    bool is(TomlValue::Type type) const {
        if (value.type == type) return true;
        complain(value.place, fmt::format("must be {}", type_words(field.kind)));
        return false;
    }

    std::optional<std::string> clean_text(const TomlValue& item, bool one_line) const {
        if (item.type != TomlValue::Type::text) {
            complain(item.place, fmt::format("must be {}", type_words(field.kind)));
            return std::nullopt;
        }
        const std::string text = nfc(item.text);
        if (text.empty()) {
            complain(item.place, "is empty", "leave the line out when it is not known");
            return std::nullopt;
        }
        if (text.size() > most_text_bytes) {
            complain(item.place, fmt::format("is longer than {} bytes", most_text_bytes), "shorten it");
            return std::nullopt;
        }
        const bool zero = text.find('\0') != std::string::npos;  // no record can hold it
        const auto hidden = one_line || zero ? hidden_character(zero ? std::string(1, '\0') : text) : std::nullopt;
        if (hidden) {
            complain(item.place, fmt::format("holds the hidden character {}", *hidden), "type the text again by hand");
            return std::nullopt;
        }
        return text;
    }

    std::optional<std::string> word(const TomlValue& item) const {
        const auto text = clean_text(item, true);
        if (!text) return std::nullopt;
        const auto words = field.words();
        if (std::find(words.begin(), words.end(), *text) != words.end()) return text;
        const auto near = nearest(*text, words);
        complain(item.place, fmt::format("does not know \"{}\"", shown(*text)),
                 near ? fmt::format("did you mean \"{}\"?", *near) : fmt::format("one of {}", quoted_list(words)));
        return std::nullopt;
    }

    std::optional<Value> number() const {
        if (!is(TomlValue::Type::number)) return std::nullopt;
        const auto scaled_number = scaled(value.text, field.digits);
        if (const auto* not_one = std::get_if<NotANumber>(&scaled_number)) {
            complain(value.place, fmt::format("{} {}", shown(value.text), not_one->reason));
            return std::nullopt;
        }
        const auto result = std::get<std::int64_t>(scaled_number);
        if (result >= field.least && result <= field.most) return result;
        const std::string unit = field.unit.empty() ? "" : fmt::format(" {}", field.unit);
        complain(value.place, fmt::format("is {}{}", value.text, unit),
                 fmt::format("it must be {} to {}{}", unscaled(field.least, field.digits),
                             unscaled(field.most, field.digits), unit));
        return std::nullopt;
    }

    std::optional<Value> colour() const {
        const auto text = clean_text(value, true);
        if (!text) return std::nullopt;
        const auto parsed = parse_wire_colour(*text);
        if (const auto* refusal = std::get_if<ColourRefusal>(&parsed)) {
            complain(value.place, fmt::format("\"{}\" is not clear: {}", shown(*text), refusal->message()));
            return std::nullopt;
        }
        return code(std::get<WireColour>(parsed));
    }

    std::optional<std::string> load(const TomlValue& item) const {
        const auto text = clean_text(item, true);
        if (!text) return std::nullopt;
        const auto colon = text->find(':');
        const auto ohms_part = scaled(text->substr(0, colon), 3);
        const auto watts_part = scaled(colon == std::string::npos ? "" : text->substr(colon + 1), 3);
        const auto* mohm = std::get_if<std::int64_t>(&ohms_part);
        const auto* mw = std::get_if<std::int64_t>(&watts_part);
        if (mohm != nullptr && mw != nullptr && *mohm >= 100 && *mw > 0 && *mohm <= 1000000 && *mw <= 20000000)
            return fmt::format("{}:{}", *mohm, *mw);
        complain(item.place, fmt::format("\"{}\" is not ohms:watts", shown(*text)),
                 "write \"4:75\" for 75 W into 4 ohm");
        return std::nullopt;
    }

    template <class Each>
    std::optional<Value> list(Each each) const {
        if (!is(TomlValue::Type::list)) return std::nullopt;
        TextList items;
        for (const auto& item : value.items)
            if (auto text = each(item)) items.push_back(std::move(*text));
        return items;
    }

    std::optional<Value> day() const {
        if (!is(TomlValue::Type::date)) return std::nullopt;
        if (day_number(value.text)) return value.text;
        complain(value.place, fmt::format("{} is not a day", shown(value.text)), "write it like 2024-05-02");
        return std::nullopt;
    }

    std::optional<Value> read() const {
        switch (field.kind) {
            case FieldKind::name:
                return clean_text(value, true);
            case FieldKind::text:
                return clean_text(value, false);
            case FieldKind::slug: {
                auto text = clean_text(value, true);
                if (text)
                    if (const auto complaint = slug_complaint(*text))
                        complain(value.place, fmt::format("\"{}\" {}", *text, *complaint));
                return text;
            }
            case FieldKind::word:
                return word(value);
            case FieldKind::colour:
                return colour();
            case FieldKind::whole:
            case FieldKind::decimal:
                return number();
            case FieldKind::flag:
                return is(TomlValue::Type::flag) ? std::optional<Value>(value.flag) : std::nullopt;
            case FieldKind::names:
                return list([this](const TomlValue& item) { return clean_text(item, true); });
            case FieldKind::word_list:
                return list([this](const TomlValue& item) { return word(item); });
            case FieldKind::loads:
                return list([this](const TomlValue& item) { return load(item); });
            case FieldKind::day:
                return day();
        }
        return std::nullopt;
    }
};

std::vector<std::string_view> known_keys(std::span<const Field> fields, std::span<const std::string_view> own) {
    std::vector<std::string_view> keys(own.begin(), own.end());
    for (const auto& field : fields) keys.push_back(field.name);
    return keys;
}

}  // namespace

void Complaints::add(const SourcePlace& place, std::string message, std::string hint) {
    list_.push_back({place, std::move(message), std::move(hint)});
}

void Complaints::throw_if_any() {
    if (list_.empty()) return;
    std::stable_sort(list_.begin(), list_.end(), [](const Complaint& a, const Complaint& b) {
        return std::pair(a.place.line, a.place.column) < std::pair(b.place.line, b.place.column);
    });
    if (list_.size() > 20) list_.resize(20);
    throw InputRefused(std::move(list_));
}

SourcePlace place_of(const TomlValue& table, std::string_view key) {
    const auto* value = table.find(key);
    return value == nullptr ? table.place : value->place;
}

std::string read_text(const TomlValue& table, std::string_view key, bool required, Complaints& complaints) {
    const auto* value = table.find(key);
    if (value == nullptr) {
        if (required) complaints.add(table.place, fmt::format("{} is missing", key));
        return {};
    }
    const Field plain{key, key, FieldKind::name};
    return Reading{plain, *value, complaints}.clean_text(*value, true).value_or("");
}

Values read_fields(const TomlValue& table, std::span<const Field> fields, std::span<const std::string_view> own,
                   Complaints& complaints) {
    Values values;
    for (std::size_t i = 0; i < table.members.size(); ++i) {
        const auto& [key, value] = table.members[i];
        if (std::find(own.begin(), own.end(), key) != own.end()) continue;
        const Field* field = find_field(fields, key);
        if (field == nullptr) {
            const auto near = nearest(key, known_keys(fields, own));
            complaints.add(
                table.member_places[i], fmt::format("unknown key \"{}\"", shown(key)),
                near ? fmt::format("did you mean \"{}\"?", *near) : "see the keys of this table in the README");
            continue;
        }
        if (auto read = Reading{*field, value, complaints}.read())
            values[std::string(field->stored)] = std::move(*read);
    }
    for (const auto& field : fields)
        if (field.required && table.find(field.name) == nullptr)
            complaints.add(table.place, fmt::format("{} is missing", field.name),
                           fmt::format("{}: {}", field.name, field.meaning));
    return values;
}

}  // namespace tapbook
