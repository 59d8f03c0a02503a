// A cursor over the bytes of the expression; each kind of token tells where it ends.
#include "sqlite/expression_tokens.h"

#include "sqlite/refused_expression.h"

namespace tapbook::sqlite {
namespace {

using Kind = Token::Kind;

bool is_blank(char c) {
    return c == ' ' || c == '\t' || c == '\n' || c == '\f' || c == '\r';
}
bool is_digit(char c) {
    return c >= '0' && c <= '9';
}
bool starts_word(char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || c == '_' || static_cast<unsigned char>(c) >= 0x80;
}
bool continues_word(char c) {
    return starts_word(c) || is_digit(c) || c == '$';
}
char lower(char c) {
    return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
}

[[noreturn]] void refuse(Refusal reason, std::string_view name, std::size_t offset, const char* detail = "") {
    throw RefusedExpression(reason, std::string(name), offset + 1, detail);
}

class Cutter {
  public:
    explicit Cutter(std::string_view text) : text_(text) {}

    std::vector<Token> cut() {
        std::vector<Token> tokens;
        while (at_ < text_.size()) {
            if (is_blank(text_[at_])) {
                ++at_;
            } else {
                tokens.push_back(next());
            }
        }
        return tokens;
    }

  private:
    // 0 beyond the end.
    char look(std::size_t offset) const { return offset < text_.size() ? text_[offset] : '\0'; }

    Token next() {
        const char c = text_[at_];
        if (starts_word(c)) return token(Kind::word, word_end(at_));
        if (is_digit(c) || (c == '.' && is_digit(look(at_ + 1)))) return token(Kind::number, number_end());
        if (c == '\'') return token(Kind::text, quote_end('\''));
        if (c == '"' || c == '`') return token(Kind::quoted_name, quote_end(c));
        if (c == '[') return token(Kind::quoted_name, bracket_end());
        refuse_sign(c);
        const bool arrow = c == '-' && look(at_ + 1) == '>';
        return token(Kind::symbol, at_ + (!arrow ? 1 : look(at_ + 2) == '>' ? 3 : 2));
    }

    Token token(Kind kind, std::size_t end) {
        Token token{kind, text_.substr(at_, end - at_), at_, {}};
        if (kind == Kind::quoted_name) {
            token.name = unquoted(token.text);
        } else {
            token.name = token.text;
        }
        for (char& c : token.name) c = lower(c);
        at_ = end;
        return token;
    }

    std::size_t word_end(std::size_t end) const {
        while (continues_word(look(end))) ++end;
        return end;
    }

    std::size_t digits_end(std::size_t end) const {
        while (is_digit(look(end))) ++end;
        return end;
    }

    // Letters stuck to a number stay with it: SQLite refuses them together.
    std::size_t number_end() const {
        if (look(at_) == '0' && lower(look(at_ + 1)) == 'x') return word_end(at_);
        std::size_t end = digits_end(at_);
        if (look(end) == '.') end = digits_end(end + 1);
        if (lower(look(end)) == 'e') {
            const bool sign = look(end + 1) == '+' || look(end + 1) == '-';
            if (is_digit(look(end + (sign ? 2 : 1)))) end = digits_end(end + (sign ? 2 : 1));
        }
        return word_end(end);
    }

    // A doubled quote inside stands for one.
    std::size_t quote_end(char quote) const {
        for (std::size_t end = at_ + 1; end < text_.size(); ++end) {
            if (text_[end] != quote) continue;
            if (look(end + 1) != quote) return end + 1;
            ++end;
        }
        refuse(Refusal::syntax_error, "", at_, "a quote is never closed");
    }

    std::size_t bracket_end() const {
        const std::size_t end = text_.find(']', at_);
        if (end == std::string_view::npos) refuse(Refusal::syntax_error, "", at_, "a bracket is never closed");
        return end + 1;
    }

    static std::string unquoted(std::string_view text) {
        const char quote = text.front();
        std::string name;
        for (std::size_t i = 1; i + 1 < text.size(); ++i) {
            name += text[i];
            if (text[i] == quote) ++i;  // the second of a doubled quote
        }
        return name;
    }

    void refuse_sign(char c) const {
        const char after = look(at_ + 1);
        if (c == ';') refuse(Refusal::second_statement, "", at_);
        if ((c == '-' && after == '-') || (c == '/' && after == '*')) refuse(Refusal::comment, "", at_);
        if (c == '?' || c == ':' || c == '@' || c == '$') {
            refuse(Refusal::parameter, text_.substr(at_, word_end(at_ + 1) - at_), at_);
        }
    }

    std::string_view text_;
    std::size_t at_ = 0;
};

}  // namespace

std::vector<Token> tokens_of(std::string_view expression) {
    const std::size_t zero = expression.find('\0');
    if (zero != std::string_view::npos) refuse(Refusal::syntax_error, "", zero, "a zero byte");
    return Cutter(expression).cut();
}

}  // namespace tapbook::sqlite
