// Reading a plain condition by recursive descent, in SQLite's order of precedence: OR, AND, NOT, = <> IS IN BETWEEN,
// < <= > >=, + -, * /, sign. Anything that is not certainly plain gives up, and the sandbox takes it.
#include <algorithm>
#include <array>
#include <charconv>
#include <span>
#include <utility>

#include "rules/plain_condition.h"
#include "rules/plain_condition_tokens.h"

namespace tapbook {
namespace {

constexpr std::size_t most_nodes = 200;
constexpr int most_groups = 50;  // parentheses, NOTs and signs

std::string in_small_letters(std::string_view word) {
    std::string small(word);
    for (char& c : small)
        if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
    return small;
}

using Operation = PlainCondition::Operation;
using Node = PlainCondition::Node;
using Token = PlainToken;

struct Sign {
    std::string_view written;
    Operation operation;
};

constexpr Sign equality_signs[] = {
    {"=", Operation::equal}, {"==", Operation::equal}, {"<>", Operation::unequal}, {"!=", Operation::unequal}};
constexpr Sign order_signs[] = {
    {"<=", Operation::at_most}, {"<", Operation::less}, {">=", Operation::at_least}, {">", Operation::more}};
constexpr Sign sum_signs[] = {{"+", Operation::plus}, {"-", Operation::minus}};
constexpr Sign product_signs[] = {{"*", Operation::times}, {"/", Operation::divided}};
constexpr Sign functions[] = {{"coalesce", Operation::first_known},
                              {"ifnull", Operation::first_known},
                              {"min", Operation::least},
                              {"max", Operation::greatest}};

}  // namespace

class PlainConditionReader {
  public:
    explicit PlainConditionReader(std::string_view text) : rest_(text) { next(); }

    std::optional<PlainCondition> read() {
        const Read root = either();
        if (!root || root->is_text || token_.kind != Token::Kind::end || out_.nodes_.size() > most_nodes)
            return std::nullopt;
        std::sort(out_.reads_.begin(), out_.reads_.end());  // they lie in one table
        out_.reads_.erase(std::unique(out_.reads_.begin(), out_.reads_.end()), out_.reads_.end());
        return std::move(out_);
    }

  private:
    struct Part {
        std::size_t node;
        bool is_text;
    };
    using Read = std::optional<Part>;  // absent: not plain
    using Level = Read (PlainConditionReader::*)();

    void next() {
        rest_.remove_prefix(std::min(rest_.find_first_not_of(" \t\r\n\f"), rest_.size()));
        token_ = plain_token_at(rest_);
        rest_.remove_prefix(token_.written.size());
    }

    bool is_sign(std::string_view sign) const { return token_.kind == Token::Kind::sign && token_.written == sign; }
    bool is_word(std::string_view word) const {
        return token_.kind == Token::Kind::word && in_small_letters(token_.written) == word;
    }
    bool accept_sign(std::string_view sign) { return is_sign(sign) && (next(), true); }
    bool accept_word(std::string_view word) { return is_word(word) && (next(), true); }

    const Sign* accept_one_of(std::span<const Sign> signs) {
        const auto found = std::find_if(signs.begin(), signs.end(), [&](const Sign& s) { return is_sign(s.written); });
        if (found == signs.end()) return nullptr;
        next();
        return &*found;
    }

    Read add(Node node, std::span<const Part> operands, bool is_text) {
        node.first_operand = out_.operands_.size();
        node.operands = operands.size();
        for (const Part& part : operands) out_.operands_.push_back(part.node);
        out_.nodes_.push_back(std::move(node));
        return Part{out_.nodes_.size() - 1, is_text};
    }

    Read of_numbers(Operation operation, const Read& a, const Read& b) {
        if (!a || !b || a->is_text || b->is_text) return std::nullopt;
        return add({operation}, std::array{*a, *b}, false);
    }

    Read comparison(Operation operation, const Read& a, const Read& b) {
        if (!a || !b || a->is_text != b->is_text) return std::nullopt;
        return add({operation}, std::array{*a, *b}, false);
    }

    Read negated(const Read& part) {
        if (!part || part->is_text) return std::nullopt;
        return add({Operation::negation}, std::array{*part}, false);
    }

    Read either() {
        Read left = both();
        while (left && accept_word("or")) left = of_numbers(Operation::either, left, both());
        return left;
    }

    Read both() {
        Read left = negation();
        while (left && accept_word("and")) left = of_numbers(Operation::both, left, negation());
        return left;
    }

    Read negation() {
        if (!accept_word("not")) return equality();
        if (++groups_ > most_groups) return std::nullopt;
        return negated(negation());
    }

    Read equality() {
        Read left = order();
        while (left) {
            if (const Sign* sign = accept_one_of(equality_signs)) {
                left = comparison(sign->operation, left, order());
            } else if (accept_word("is")) {
                left = after_is(left);
            } else if (accept_word("isnull")) {
                left = add({Operation::unknown}, std::array{*left}, false);
            } else if (accept_word("notnull")) {
                left = negated(add({Operation::unknown}, std::array{*left}, false));
            } else if (is_word("not") || is_word("in") || is_word("between")) {
                const bool turned = accept_word("not");
                if (!is_word("in") && !is_word("between")) return std::nullopt;
                const Read found = accept_word("in") ? list(left) : (next(), between(left));
                left = turned ? negated(found) : found;
            } else {
                return left;
            }
        }
        return left;
    }

    Read after_is(const Read& left) {
        const bool turned = accept_word("not");
        const Read found = accept_word("null") ? add({Operation::unknown}, std::array{*left}, false)
                                               : comparison(Operation::same, left, order());
        return turned ? negated(found) : found;
    }

    // ( a, b, ... ) behind the word or the function's name; the parts before it are given.
    std::optional<std::vector<Part>> parts_in_parentheses(std::vector<Part> parts, Level level) {
        if (!accept_sign("(") || ++groups_ > most_groups) return std::nullopt;
        do {
            const Read one = (this->*level)();
            if (!one || (!parts.empty() && one->is_text != parts.front().is_text)) return std::nullopt;
            parts.push_back(*one);
        } while (accept_sign(","));
        return accept_sign(")") ? std::optional(std::move(parts)) : std::nullopt;
    }

    Read list(const Read& left) {
        const auto parts = parts_in_parentheses({*left}, &PlainConditionReader::either);
        return parts ? add({Operation::one_of}, *parts, false) : std::nullopt;
    }

    Read between(const Read& left) {
        const Read least = order();
        if (!least || !accept_word("and")) return std::nullopt;
        const Read most = order();
        return of_numbers(Operation::both, comparison(Operation::at_least, left, least),
                          comparison(Operation::at_most, left, most));
    }

    Read order() {
        Read left = sum();
        while (left) {
            const Sign* sign = accept_one_of(order_signs);
            if (sign == nullptr) break;
            left = comparison(sign->operation, left, sum());
        }
        return left;
    }

    Read sum() {
        Read left = product();
        while (left) {
            const Sign* sign = accept_one_of(sum_signs);
            if (sign == nullptr) break;
            left = of_numbers(sign->operation, left, product());
        }
        return left;
    }

    Read product() {
        Read left = with_sign();
        while (left) {
            const Sign* sign = accept_one_of(product_signs);
            if (sign == nullptr) break;
            left = of_numbers(sign->operation, left, with_sign());
        }
        return left;
    }

    // -x is 0 - x, as in SQLite.
    Read with_sign() {
        if (accept_sign("+")) return std::nullopt;
        if (!accept_sign("-")) return simple();
        if (++groups_ > most_groups) return std::nullopt;
        const Read zero = add({Operation::whole}, {}, false);
        return of_numbers(Operation::minus, zero, with_sign());
    }

    Read simple() {
        if (accept_sign("(")) {
            if (++groups_ > most_groups) return std::nullopt;
            const Read inside = either();
            return accept_sign(")") ? inside : std::nullopt;
        }
        const Token token = token_;
        next();
        switch (token.kind) {
            case Token::Kind::number:
                return number(token.written);
            case Token::Kind::text:
                return quoted(token.written);
            case Token::Kind::word:
                return is_sign("(") ? function(in_small_letters(token.written)) : column(token.written);
            case Token::Kind::sign:
            case Token::Kind::end:
            case Token::Kind::strange:
                break;
        }
        return std::nullopt;
    }

    Read number(std::string_view written) {
        Node node{Operation::whole};
        if (written.find('.') != std::string_view::npos) {
            const auto real = exact_real(written);
            if (!real) return std::nullopt;
            node.operation = Operation::real;
            node.real = *real;
            return add(std::move(node), {}, false);
        }
        const auto read = std::from_chars(written.data(), written.data() + written.size(), node.whole);
        if (read.ec != std::errc() || node.whole > most_plain_whole) return std::nullopt;
        return add(std::move(node), {}, false);
    }

    Read quoted(std::string_view written) {
        Node node{Operation::text};
        for (std::size_t at = 1; at + 1 < written.size(); ++at) {
            node.text += written[at];
            if (written[at] == '\'') ++at;  // the second of two
        }
        return add(std::move(node), {}, true);
    }

    Read column(std::string_view relation) {
        if (!accept_sign(".") || token_.kind != Token::Kind::word) return std::nullopt;
        Node node{Operation::column};
        node.column = find_column(relation, token_.written);
        if (node.column == nullptr) return std::nullopt;
        node.place = index_of(*node.column);
        node.is_of_part = !is_of_tap(relation);
        next();
        out_.reads_.push_back(node.column);
        const bool is_text = node.column->type == "TEXT";
        return add(std::move(node), {}, is_text);
    }

    Read function(const std::string& called) {
        const auto known = std::find_if(std::begin(functions), std::end(functions),
                                        [&](const Sign& one) { return one.written == called; });
        if (known == std::end(functions)) return std::nullopt;
        const auto parts = parts_in_parentheses({}, &PlainConditionReader::either);
        const bool two = parts && parts->size() == 2;
        if (!parts || parts->size() < 2 || (called == "ifnull" && !two)) return std::nullopt;
        return add({known->operation}, *parts, parts->front().is_text);
    }

    std::string_view rest_;
    Token token_;
    int groups_ = 0;
    PlainCondition out_;
};

std::optional<PlainCondition> PlainCondition::read(std::string_view when) {
    return PlainConditionReader(when).read();
}

}  // namespace tapbook
