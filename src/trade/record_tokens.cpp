// One pass over a line. Each step refuses what record_line() would not have written: that is the whole grammar.
#include "trade/record_tokens.h"

#include <algorithm>

#include "trade/text.h"

namespace tapbook {
namespace {

constexpr bool is_digit(char c) {
    return c >= '0' && c <= '9';
}

// Bytes that stand for themselves inside a text. Those above 0x7F are looked at afterwards.
constexpr auto stands_for_itself = [] {
    std::array<bool, 256> plain{};
    for (std::size_t byte = 0x20; byte < plain.size(); ++byte) plain[byte] = byte != '"' && byte != '\\';
    return plain;
}();

bool is_plain(char c) {
    return stands_for_itself[static_cast<unsigned char>(c)];
}

bool is_ascii(std::string_view text) {
    unsigned char all = 0;
    for (const char c : text) all = static_cast<unsigned char>(all | static_cast<unsigned char>(c));
    return all < 0x80;
}

bool is_clean(std::string_view text) {
    return text.size() <= most_text_bytes && (is_ascii(text) || (is_utf8(text) && nfc(text) == text));
}

// The two hexadecimal digits of \u00xx as record_line() writes them: small letters, below 0x20, no byte with a letter
// of its own, not zero. -1 for any others.
int control_of(char high, char low) {
    constexpr std::string_view small = "0123456789abcdef";
    const auto digit = small.find(low);
    if ((high != '0' && high != '1') || digit == std::string_view::npos) return -1;
    const int code = (high - '0') * 16 + static_cast<int>(digit);
    const bool has_letter = code == '\b' || code == '\t' || code == '\n' || code == '\f' || code == '\r';
    return code == 0 || has_letter ? -1 : code;
}

}  // namespace

bool RecordTokens::read(std::string_view line) {
    line_ = line;
    at_ = 0;
    count_ = 0;
    unescaped_.clear();
    if (line.size() > most_record_bytes || !next_is('{')) return false;
    ++at_;
    while (!next_is('}')) {
        if (count_ > 0) {
            if (!next_is(',')) return false;
            ++at_;
        }
        if (!field()) return false;
    }
    ++at_;
    return at_ == line.size();
}

bool RecordTokens::field() {
    if (count_ == fields_.size()) return false;
    RecordToken& token = fields_[count_];
    token = {};
    token.begin = at_;
    bool escaped_key = false;
    if (!text(token.key, escaped_key) || token.key.size() > most_key_bytes ||
        (count_ > 0 && fields_[count_ - 1].key >= token.key)) {
        at_ = token.begin;
        return false;
    }
    if (!next_is(':')) return false;
    ++at_;
    const std::size_t begin = at_;
    if (!value(token)) return false;
    token.raw = line_.substr(begin, at_ - begin);
    token.field = line_.substr(token.begin, at_ - token.begin);
    ++count_;
    return true;
}

bool RecordTokens::value(RecordToken& token) {
    if (at_ >= line_.size()) return false;
    switch (line_[at_]) {
        case '"':
            token.kind = TokenKind::text;
            return text(token.text, token.is_escaped);
        case '[':
            token.kind = TokenKind::list;
            return list(token);
        case 't':
            token.kind = TokenKind::flag;
            token.number = 1;
            return word("true");
        case 'f':
            token.kind = TokenKind::flag;
            return word("false");
        default:  // not our enum
            return whole(token);
    }
}

bool RecordTokens::text(std::string_view& text, bool& is_escaped) {
    if (!next_is('"')) return false;
    const std::size_t begin = ++at_;
    while (at_ < line_.size() && is_plain(line_[at_])) ++at_;
    if (next_is('"')) {
        text = line_.substr(begin, at_ - begin);
    } else {
        std::string& whole = unescaped_.emplace_back(line_.substr(begin, at_ - begin));
        while (at_ < line_.size() && line_[at_] != '"') {
            if (line_[at_] == '\\') {
                if (!escape(whole)) return false;
            } else if (is_plain(line_[at_])) {
                whole += line_[at_++];
            } else {
                return false;
            }
        }
        if (!next_is('"')) return false;
        text = whole;
        is_escaped = true;
    }
    if (!is_clean(text)) {
        at_ = begin;
        return false;
    }
    ++at_;
    return true;
}

bool RecordTokens::escape(std::string& text) {
    constexpr std::string_view letters = "\"\\bfnrt", meant = "\"\\\b\f\n\r\t";
    if (at_ + 1 >= line_.size()) return false;
    if (const auto letter = letters.find(line_[at_ + 1]); letter != std::string_view::npos) {
        text += meant[letter];
        at_ += 2;
        return true;
    }
    constexpr std::string_view start = "\\u00";
    if (line_.substr(at_, start.size()) != start || at_ + 5 >= line_.size()) return false;
    const int code = control_of(line_[at_ + 4], line_[at_ + 5]);
    if (code < 0) return false;
    text += static_cast<char>(code);
    at_ += 6;
    return true;
}

bool RecordTokens::whole(RecordToken& token) {
    const bool is_negative = next_is('-');
    if (is_negative) ++at_;
    const std::size_t first = at_;
    constexpr std::size_t most_digits = 16;  // of 2^53 - 1
    while (at_ < line_.size() && is_digit(line_[at_]) && at_ - first < most_digits)
        token.number = token.number * 10 + (line_[at_++] - '0');
    const bool has_digits = at_ > first;
    const bool leads_with_zero = has_digits && line_[first] == '0' && (at_ - first > 1 || is_negative);
    if (!has_digits || leads_with_zero || token.number > most_record_integer) {
        at_ = first;
        return false;
    }
    if (is_negative) token.number = -token.number;
    return true;
}

bool RecordTokens::list(RecordToken& token) {
    ++at_;
    for (bool is_first = true; !next_is(']'); is_first = false) {
        if (!is_first) {
            if (!next_is(',')) return false;
            ++at_;
        }
        std::string_view item;
        if (!text(item, token.is_escaped)) return false;
    }
    ++at_;
    return true;
}

bool RecordTokens::word(std::string_view word) {
    if (line_.substr(at_, word.size()) != word) return false;
    at_ += word.size();
    return true;
}

const RecordToken* RecordTokens::find(std::string_view key) const {
    const auto all = fields();
    const auto found = std::lower_bound(all.begin(), all.end(), key,
                                        [](const RecordToken& token, std::string_view k) { return token.key < k; });
    return found != all.end() && found->key == key ? &*found : nullptr;
}

std::string_view RecordTokens::text(std::string_view key) const {
    const RecordToken* token = find(key);
    return token != nullptr && token->kind == TokenKind::text ? token->text : std::string_view();
}

TextList items_of(const RecordToken& token) {
    TextList items;
    std::string_view rest = token.raw.substr(1);  // in the accepted form, as read() found
    while (rest.front() != ']') {
        if (rest.front() == ',') rest.remove_prefix(1);
        std::size_t end = 1;
        while (rest[end] != '"') end += rest[end] == '\\' ? 2U : 1U;
        const std::string_view quoted = rest.substr(0, end + 1);
        rest.remove_prefix(end + 1);
        if (quoted.find('\\') == std::string_view::npos) {
            items.emplace_back(quoted.substr(1, quoted.size() - 2));
            continue;
        }
        RecordTokens one;
        const std::string line = "{\"\":" + std::string(quoted) + "}";
        one.read(line);
        items.emplace_back(one.text(""));
    }
    return items;
}

Values values_of(const RecordTokens& tokens) {
    Values values;
    for (const auto& token : tokens.fields()) {
        Value value;
        switch (token.kind) {
            case TokenKind::whole:
                value = token.number;
                break;
            case TokenKind::flag:
                value = token.number != 0;
                break;
            case TokenKind::text:
                value = std::string(token.text);
                break;
            case TokenKind::list:
                value = items_of(token);
                break;
        }
        values.emplace_hint(values.end(), std::string(token.key), std::move(value));
    }
    return values;
}

}  // namespace tapbook
