// See toml.h.
#include "files/toml.h"

#define TOML_HEADER_ONLY 1
#define TOML_ENABLE_FORMATTERS 0
#define TOML_UNRELEASED_FEATURES 0
// Its own assertion in parse_key() fails for "[=]" before the error it has for that: as in a release, only the error.
#define TOML_ASSERT(expression) static_assert(true)
#pragma GCC diagnostic push
#pragma GCC diagnostic ignored "-Wconversion"
#pragma GCC diagnostic ignored "-Wshadow"
#pragma GCC diagnostic ignored "-Wswitch-enum"
#pragma GCC diagnostic ignored "-Wold-style-cast"
#include <toml++/toml.h>
#pragma GCC diagnostic pop

#include <fmt/format.h>

#include <algorithm>

namespace tapbook {
namespace {

constexpr std::size_t most_bytes = 8 * 1024 * 1024;
constexpr std::size_t most_shown = 240;   // of a line in a message
constexpr std::size_t most_points = 500;  // in one line

class Lines {
  public:
    Lines(std::string_view text, const std::string& file) : text_(text), file_(file) {
        std::size_t at = 0;
        while (true) {
            starts_.push_back(at);
            const auto end = text.find('\n', at);
            if (end == std::string_view::npos) break;
            at = end + 1;
        }
    }
    std::string_view line(std::size_t number) const {
        if (number == 0 || number > starts_.size()) return {};
        const auto start = starts_[number - 1];
        auto line = text_.substr(start, std::min(text_.find('\n', start), text_.size()) - start);
        if (!line.empty() && line.back() == '\r') line.remove_suffix(1);
        return line;
    }
    // toml++ counts columns in characters; places here count bytes.
    std::size_t byte_column(const toml::source_position& position) const {
        const auto text = line(position.line);
        std::size_t byte = 0;
        for (std::size_t seen = 1; seen < position.column && byte < text.size(); ++seen) {
            ++byte;
            while (byte < text.size() && (static_cast<unsigned char>(text[byte]) & 0xC0) == 0x80) ++byte;
        }
        return byte + 1;
    }
    SourcePlace place(const toml::source_position& position) const {
        auto shown_text = line(position.line).substr(0, most_shown);
        while (!is_utf8(shown_text)) shown_text.remove_suffix(1);  // not in the middle of a character
        return {file_, static_cast<int>(position.line), static_cast<int>(byte_column(position)),
                std::string(shown_text)};
    }
    // The characters from `begin` on that a number or date can consist of.
    std::string written(const toml::source_position& begin, std::string_view ends = ",]}# \t\r") const {
        const auto rest = line(begin.line).substr(std::min(byte_column(begin) - 1, line(begin.line).size()));
        const auto end = rest.find_first_of(ends);
        return std::string(rest.substr(0, end));
    }

  private:
    std::string_view text_;
    std::string file_;
    std::vector<std::size_t> starts_;
};

TomlValue converted(const toml::node& node, const Lines& lines) {
    TomlValue value;
    value.place = lines.place(node.source().begin);
    if (const auto* table = node.as_table()) {
        value.type = TomlValue::Type::table;
        std::vector<std::pair<const toml::key*, const toml::node*>> members;
        for (const auto& [key, member] : *table) members.emplace_back(&key, &member);
        std::sort(members.begin(), members.end(), [](const auto& a, const auto& b) {
            const auto& x = a.first->source().begin;
            const auto& y = b.first->source().begin;
            return std::pair(x.line, x.column) < std::pair(y.line, y.column);
        });
        for (const auto& [key, member] : members) {
            value.members.emplace_back(std::string(key->str()), converted(*member, lines));
            value.member_places.push_back(lines.place(key->source().begin));
        }
    } else if (const auto* array = node.as_array()) {
        value.type = TomlValue::Type::list;
        for (const auto& item : *array) value.items.push_back(converted(item, lines));
    } else if (const auto* text = node.as_string()) {
        value.type = TomlValue::Type::text;
        value.text = text->get();
    } else if (const auto* flag = node.as_boolean()) {
        value.type = TomlValue::Type::flag;
        value.flag = flag->get();
    } else {
        value.type = node.is_number() ? TomlValue::Type::number : TomlValue::Type::date;
        // "2024-05-02 10:00" is one date with a time
        value.text = lines.written(node.source().begin, node.is_date_time() ? ",]}#\r" : ",]}# \t\r");
    }
    return value;
}

[[noreturn]] void refuse(SourcePlace place, std::string message, std::string hint) {
    throw InputRefused({Complaint{std::move(place), std::move(message), std::move(hint)}});
}

void check_text(std::string_view text, const std::string& file) {
    const SourcePlace whole{file, 0, 0, {}};
    if (text.size() > most_bytes)
        refuse(whole, fmt::format("is larger than {} MiB", most_bytes / 1024 / 1024), "split it: one vehicle per file");
    if (text.find('\0') != std::string_view::npos || !is_utf8(text))
        refuse(whole, "is not text (UTF-8)", "give a TOML text file, as shown in the README");
    if (text.starts_with("\xEF\xBB\xBF"))
        refuse({file, 1, 1, {}}, "starts with a byte order mark", "save it as plain UTF-8");
}

// A key like a.a.a.a makes a table in a table for each point, and the library follows them by recursion without a limit
// of its own: lines with more points outside double quotes than any honest line has are refused first.
void check_points(std::string_view text, const Lines& lines) {
    std::uint32_t line = 1;
    std::size_t points = 0;
    bool quoted = false;
    for (std::size_t i = 0; i < text.size(); ++i) {
        if (text[i] == '\n') {
            ++line;
            points = 0;
            quoted = false;
        } else if (text[i] == '"' && (i == 0 || text[i - 1] != '\\')) {
            quoted = !quoted;
        } else if (text[i] == '.' && !quoted && ++points > most_points) {
            refuse(lines.place({line, 1}), fmt::format("holds more than {} points outside quotes", most_points),
                   "break the line; a key has no points");
        }
    }
}

}  // namespace

const TomlValue* TomlValue::find(std::string_view key) const {
    const auto found =
        std::find_if(members.begin(), members.end(), [&](const auto& member) { return member.first == key; });
    return found == members.end() ? nullptr : &found->second;
}

TomlValue read_toml(std::string_view text, const std::string& file) {
    check_text(text, file);
    const Lines lines(text, file);
    check_points(text, lines);
    try {
        return converted(toml::parse(text), lines);
    } catch (const toml::parse_error& error) {
        std::string reason(error.description());
        refuse(lines.place(error.source().begin), fmt::format("not TOML: {}", shown(reason)),
               "check quotes, brackets and commas on this line and the one before");
    }
}

}  // namespace tapbook
