// Writing and naming records: see record.h.
#include "trade/record.h"

#include <fmt/format.h>

#include <algorithm>

#include "trade/sha256.h"
#include "trade/text.h"

namespace tapbook {
namespace {

void append_text(std::string& out, std::string_view text) {
    if (text.size() > most_text_bytes)
        throw RecordRefused(fmt::format("a text is longer than {} bytes", most_text_bytes), 0);
    if (!is_utf8(text)) throw RecordRefused("a text is not UTF-8", 0);
    if (nfc(text) != text) throw RecordRefused("a text is not in composed form (NFC)", 0);
    out += '"';
    for (const char c : text) {
        switch (c) {
            case '"':
                out += "\\\"";
                break;
            case '\\':
                out += "\\\\";
                break;
            case '\n':
                out += "\\n";
                break;
            case '\t':
                out += "\\t";
                break;
            case '\r':
                out += "\\r";
                break;
            case '\b':
                out += "\\b";
                break;
            case '\f':
                out += "\\f";
                break;
            default:  // not our enum
                if (static_cast<unsigned char>(c) < 0x20) {
                    if (c == '\0') throw RecordRefused("a text holds a zero byte", 0);
                    out += fmt::format("\\u{:04x}", static_cast<unsigned char>(c));
                } else {
                    out += c;
                }
        }
    }
    out += '"';
}

struct Append {
    std::string& out;
    void operator()(std::int64_t number) const {
        if (number > most_record_integer || number < -most_record_integer)
            throw RecordRefused(fmt::format("the number {} is beyond 2^53 - 1", number), 0);
        out += std::to_string(number);
    }
    void operator()(bool flag) const { out += flag ? "true" : "false"; }
    void operator()(const std::string& text) const { append_text(out, text); }
    void operator()(const TextList& list) const {
        out += '[';
        for (std::size_t i = 0; i < list.size(); ++i) {
            if (i != 0) out += ',';
            append_text(out, list[i]);
        }
        out += ']';
    }
};

}  // namespace

std::string record_line(const Values& record) {
    if (record.size() > most_record_keys) throw RecordRefused(fmt::format("more than {} fields", most_record_keys), 0);
    std::string line = "{";
    for (const auto& [key, value] : record) {
        if (key.size() > most_key_bytes)
            throw RecordRefused(fmt::format("a field's name is longer than {} bytes", most_key_bytes), 0);
        if (line.size() > 1) line += ',';
        append_text(line, key);
        line += ':';
        std::visit(Append{line}, value);
    }
    line += '}';
    if (line.size() > most_record_bytes)
        throw RecordRefused(fmt::format("the line is longer than {} bytes", most_record_bytes), 0);
    return line;
}

namespace {

RecordId first_half(const Sha256& hash) {
    RecordId id{};
    std::copy_n(hash.begin(), id.size(), id.begin());
    return id;
}

}  // namespace

RecordId short_hash(std::string_view bytes) {
    return first_half(sha256({bytes}));
}

RecordId record_id(std::string_view line) {
    return first_half(sha256({"tapbook/1\n", line}));
}

std::string to_hex(const RecordId& id) {
    constexpr std::string_view digits = "0123456789abcdef";
    std::string hex(2 * id.size(), '0');
    for (std::size_t i = 0; i < id.size(); ++i) {
        hex[2 * i] = digits[id[i] >> 4];
        hex[2 * i + 1] = digits[id[i] & 15];
    }
    return hex;
}

bool from_hex(std::string_view hex, RecordId& id) {
    constexpr std::string_view digits = "0123456789abcdef";
    if (hex.size() != 2 * id.size()) return false;
    for (std::size_t i = 0; i < id.size(); ++i) {
        const auto high = digits.find(hex[2 * i]);
        const auto low = digits.find(hex[2 * i + 1]);
        if (high == std::string_view::npos || low == std::string_view::npos) return false;
        id[i] = static_cast<unsigned char>(high * 16 + low);
    }
    return true;
}

}  // namespace tapbook
