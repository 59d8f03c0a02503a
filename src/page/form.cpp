// See form.h.
#include "page/form.h"

#include <fmt/format.h>

#include <algorithm>

#include "page/address.h"
#include "report/report.h"

namespace tapbook {
namespace {

enum class Plus { is_plus, is_space };

int hex_digit(char c) {
    if (c >= '0' && c <= '9') return c - '0';
    if (c >= 'a' && c <= 'f') return c - 'a' + 10;
    if (c >= 'A' && c <= 'F') return c - 'A' + 10;
    return -1;
}

std::optional<std::string> decoded(std::string_view sent, Plus plus) {
    std::string text;
    text.reserve(sent.size());
    for (std::size_t at = 0; at < sent.size(); ++at) {
        if (sent[at] == '+' && plus == Plus::is_space) {
            text += ' ';
        } else if (sent[at] != '%') {
            text += sent[at];
        } else {
            const int high = at + 2 < sent.size() ? hex_digit(sent[at + 1]) : -1;
            const int low = at + 2 < sent.size() ? hex_digit(sent[at + 2]) : -1;
            if (high < 0 || low < 0) return std::nullopt;
            text += static_cast<char>(high * 16 + low);
            at += 2;
        }
    }
    return text;
}

bool is_control(char c) {
    const auto byte = static_cast<unsigned char>(c);
    return byte < 0x20 || byte == 0x7f;
}

// CR LF, and a CR alone, as one line feed.
std::string with_line_feeds(const std::string& text) {
    std::string result;
    for (std::size_t at = 0; at < text.size(); ++at) {
        if (text[at] != '\r') result += text[at];
        if (text[at] == '\r' && (at + 1 == text.size() || text[at + 1] != '\n')) result += '\n';
    }
    return result;
}

bool holds_controls(std::string_view text) {
    return std::any_of(text.begin(), text.end(), [](char c) { return is_control(c) && c != '\t' && c != '\n'; });
}

// Adds one "name=text"; what is wrong with it, "" for nothing.
std::string add_field(std::string_view sent, std::vector<std::pair<std::string, std::string>>& fields) {
    const auto equals = std::min(sent.find('='), sent.size());
    const auto name = decoded(sent.substr(0, equals), Plus::is_space);
    const auto text = decoded(sent.substr(std::min(equals + 1, sent.size())), Plus::is_space);
    if (!name || !text) return "holds a % without two hexadecimal digits";
    if (!is_utf8(*name) || !is_utf8(*text)) return "is not UTF-8";
    if (name->size() > longest_field_name) return fmt::format("has a name over {} bytes", longest_field_name);
    if (text->size() > longest_field_text) return fmt::format("is over {} bytes", longest_field_text);
    std::string lines = with_line_feeds(*text);
    if (holds_controls(lines) || std::any_of(name->begin(), name->end(), is_control))
        return "holds a control character";
    fields.emplace_back(*name, std::move(lines));
    return {};
}

bool is_segment(const std::string& text) {
    const bool strange =
        std::any_of(text.begin(), text.end(), [](char c) { return is_control(c) || c == '/' || c == '\\'; });
    return !text.empty() && text != "." && text != ".." && !strange && is_utf8(text);
}

}  // namespace

std::variant<FormFields, FormTrouble> read_form(std::string_view sent) {
    std::vector<std::pair<std::string, std::string>> fields;
    while (!sent.empty()) {
        const auto end = std::min(sent.find('&'), sent.size());
        if (end > 0) {
            if (fields.size() == most_form_fields) return FormTrouble{fmt::format("over {} fields", most_form_fields)};
            const std::string trouble = add_field(sent.substr(0, end), fields);
            if (!trouble.empty()) return FormTrouble{fmt::format("field {} {}", fields.size() + 1, trouble)};
        }
        sent.remove_prefix(std::min(end + 1, sent.size()));
    }
    return FormFields(std::move(fields));
}

std::string form_text(const FormFields& fields) {
    std::string sent;
    for (const auto& [name, text] : fields.all()) {
        if (!sent.empty()) sent += '&';
        sent += encoded(name) + '=';
        for (const char c : text) sent += c == '\n' ? std::string("%0D%0A") : encoded({&c, 1});
    }
    return sent;
}

std::optional<Address> read_address(std::string_view target) {
    const bool is_plain = std::all_of(target.begin(), target.end(), [](char c) { return c > ' ' && c < '\x7f'; });
    if (!target.starts_with('/') || !is_plain || target.find('#') != std::string_view::npos) return std::nullopt;
    const auto question = std::min(target.find('?'), target.size());
    Address address;
    address.query = target.substr(std::min(question + 1, target.size()));
    std::string_view path = target.substr(1, question - 1);
    if (path.empty()) return address;
    while (true) {
        const auto slash = std::min(path.find('/'), path.size());
        auto segment = decoded(path.substr(0, slash), Plus::is_plus);
        if (!segment || !is_segment(*segment)) return std::nullopt;
        address.segments.push_back(std::move(*segment));
        if (slash == path.size()) return address;
        path.remove_prefix(slash + 1);
    }
}

}  // namespace tapbook
