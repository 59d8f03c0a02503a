// See json.h.
#include "report/json.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "trade/trade.h"

namespace tapbook {
namespace {

// The bytes of the character at the start of `text`; 1 where none starts.
std::size_t character_length(std::string_view text) {
    for (std::size_t length = 1; length <= 4 && length <= text.size(); ++length)
        if (is_utf8(text.substr(0, length))) return length;
    return 1;
}

// "U+202E" as "\u202e"; beyond U+FFFF as a surrogate pair.
std::string escaped(const std::string& hidden) {
    const auto code = static_cast<unsigned>(std::stoul(hidden.substr(2), nullptr, 16));
    if (code < 0x10000) return fmt::format("\\u{:04x}", code);
    return fmt::format("\\u{:04x}\\u{:04x}", 0xd800 + ((code - 0x10000) >> 10), 0xdc00 + ((code - 0x10000) & 0x3ff));
}

// What a screen would obey is escaped, a byte that is no UTF-8 becomes U+FFFD: the answer is always good JSON.
void append_escaped(std::string& out, std::string_view text) {
    const auto as_it_is = [](char c) { return c >= 0x20 && c < 0x7F && c != '"' && c != '\\'; };
    out += '"';
    while (!text.empty()) {
        const auto run = static_cast<std::size_t>(std::find_if_not(text.begin(), text.end(), as_it_is) - text.begin());
        out += text.substr(0, run);
        text.remove_prefix(run);
        if (text.empty()) break;
        const std::string_view character = text.substr(0, character_length(text));
        if (character == "\"" || character == "\\")
            out += fmt::format("\\{}", character);
        else if (character == "\n")
            out += "\\n";
        else if (!is_utf8(character))
            out += "\\ufffd";
        else if (const auto hidden = hidden_character(character))
            out += escaped(*hidden);
        else
            out += character;
        text.remove_prefix(character.size());
    }
    out += '"';
}

}  // namespace

void Json::separate() {
    if (!first_) out_ += ',';
    first_ = false;
}

Json& Json::begin_object() {
    separate();
    out_ += '{';
    first_ = true;
    return *this;
}

Json& Json::end_object() {
    out_ += '}';
    first_ = false;
    return *this;
}

Json& Json::begin_list() {
    separate();
    out_ += '[';
    first_ = true;
    return *this;
}

Json& Json::end_list() {
    out_ += ']';
    first_ = false;
    return *this;
}

Json& Json::key(std::string_view name) {
    separate();
    append_escaped(out_, name);
    out_ += ':';
    first_ = true;
    return *this;
}

Json& Json::text(std::string_view value) {
    separate();
    append_escaped(out_, value);
    return *this;
}

Json& Json::whole(std::int64_t value) {
    separate();
    out_ += std::to_string(value);
    return *this;
}

Json& Json::flag(bool value) {
    separate();
    out_ += value ? "true" : "false";
    return *this;
}

Json& Json::null() {
    separate();
    out_ += "null";
    return *this;
}

Json& Json::number(double value, int digits) {
    if (!std::isfinite(value)) return null();
    separate();
    std::string text = fmt::format("{:.{}f}", value, digits);
    if (text.find('.') != std::string::npos) {
        while (text.back() == '0') text.pop_back();
        if (text.back() == '.') text.pop_back();
    }
    out_ += text == "-0" ? "0" : text;
    return *this;
}

Json& Json::member(std::string_view name, std::string_view value) {
    return key(name).text(value);
}

Json& Json::member(std::string_view name, const std::optional<std::string>& value) {
    key(name);
    return value ? text(*value) : null();
}

Json& Json::member(std::string_view name, const std::optional<bool>& value) {
    key(name);
    return value ? flag(*value) : null();
}

Json& Json::member(std::string_view name, const std::optional<int>& value) {
    key(name);
    return value ? whole(*value) : null();
}

Json& Json::member(std::string_view name, const std::vector<std::string>& values) {
    key(name).begin_list();
    for (const auto& value : values) text(value);
    return end_list();
}

Json& Json::member_number(std::string_view name, std::optional<double> value, int digits) {
    key(name);
    return value ? number(*value, digits) : null();
}

std::string json_answer(std::string_view schema, std::string_view data) {
    return fmt::format("{{\"ok\":true,\"schema\":\"tapbook.{}/1\",\"data\":{}}}\n", schema, data);
}

std::string json_failure(std::string_view code, std::string_view message, std::string_view hint) {
    Json json;
    json.begin_object().key("ok").flag(false).key("error").begin_object();
    json.member("code", code).member("message", message).member("hint", hint).end_object().end_object();
    return json.take() + "\n";
}

}  // namespace tapbook
