// Walking the tree. Where SQLite's answer is not what one would write down first, the reason stands beside it.
#include "rules/plain_condition.h"

#include <cmath>
#include <compare>
#include <limits>
#include <span>

namespace tapbook {
namespace {

using Node = PlainCondition::Node;
using Operation = PlainCondition::Operation;

struct Cell {
    enum class Kind { null, whole, real, text, open };  // open: another part, another value
    Kind kind = Kind::null;
    std::int64_t whole = 0;
    double real = 0;
    std::string_view text = {};

    bool is_null() const { return kind == Kind::null; }
    bool is_open() const { return kind == Kind::open; }
    double number() const { return kind == Kind::whole ? static_cast<double>(whole) : real; }
    std::optional<bool> truth() const {
        if (is_null()) return std::nullopt;
        return kind == Kind::whole ? whole != 0 : real != 0.0;
    }
};

constexpr Cell open_cell = {Cell::Kind::open};

Cell whole_cell(std::int64_t number) {
    return {Cell::Kind::whole, number};
}

Cell real_cell(double number) {  // no result of SQLite is NaN: it is NULL
    return std::isnan(number) ? Cell{} : Cell{Cell::Kind::real, 0, number};
}

Cell truth_cell(std::optional<bool> truth) {
    return truth ? whole_cell(*truth ? 1 : 0) : Cell{};
}

template <class Number>
std::weak_ordering order_of_numbers(Number a, Number b) {
    return a < b ? std::weak_ordering::less : b < a ? std::weak_ordering::greater : std::weak_ordering::equivalent;
}

// REQUIRES: neither is NULL; both numbers or both texts.
std::weak_ordering order(const Cell& a, const Cell& b) {
    if (a.kind == Cell::Kind::text) return a.text <=> b.text;  // by bytes: BINARY
    if (a.kind == b.kind)
        return a.kind == Cell::Kind::whole ? order_of_numbers(a.whole, b.whole) : order_of_numbers(a.real, b.real);
    // Exactly, not by rounding the whole number to a double first.
    const auto wide = [](const Cell& c) {
        return c.kind == Cell::Kind::whole ? static_cast<long double>(c.whole) : static_cast<long double>(c.real);
    };
    return order_of_numbers(wide(a), wide(b));
}

// Of two whole numbers; absent when it does not fit, or when the quotient is none: SQLite then reckons in reals.
std::optional<std::int64_t> whole_result(Operation operation, std::int64_t a, std::int64_t b) {
    std::int64_t result = 0;
    if (operation == Operation::plus)
        return __builtin_add_overflow(a, b, &result) ? std::nullopt : std::optional(result);
    if (operation == Operation::minus)
        return __builtin_sub_overflow(a, b, &result) ? std::nullopt : std::optional(result);
    if (operation == Operation::times)
        return __builtin_mul_overflow(a, b, &result) ? std::nullopt : std::optional(result);
    if (a == std::numeric_limits<std::int64_t>::min() && b == -1) return std::nullopt;
    return a / b;
}

Cell reckoned(Operation operation, const Cell& a, const Cell& b) {
    if (a.is_null() || b.is_null()) return {};
    if (a.is_open() || b.is_open()) return open_cell;
    if (operation == Operation::divided && b.number() == 0.0) return {};  // NULL, not infinity
    if (a.kind == Cell::Kind::whole && b.kind == Cell::Kind::whole)
        if (const auto whole = whole_result(operation, a.whole, b.whole)) return whole_cell(*whole);
    if (operation == Operation::plus) return real_cell(a.number() + b.number());
    if (operation == Operation::minus) return real_cell(a.number() - b.number());
    if (operation == Operation::times) return real_cell(a.number() * b.number());
    return real_cell(a.number() / b.number());
}

Cell compared(Operation operation, const Cell& a, const Cell& b) {
    if (operation == Operation::same && (a.is_open() || b.is_open())) return open_cell;
    if (operation == Operation::same && (a.is_null() || b.is_null())) return truth_cell(a.is_null() && b.is_null());
    if (a.is_null() || b.is_null()) return {};
    if (a.is_open() || b.is_open()) return open_cell;
    const auto found = order(a, b);
    if (operation == Operation::equal || operation == Operation::same) return truth_cell(found == 0);
    if (operation == Operation::unequal) return truth_cell(found != 0);
    if (operation == Operation::less) return truth_cell(found < 0);
    if (operation == Operation::at_most) return truth_cell(found <= 0);
    if (operation == Operation::more) return truth_cell(found > 0);
    return truth_cell(found >= 0);
}

// Is the part there, or may it be any part? Then what hangs on it is open.
enum class ThePart { given, any };

class Walk {
  public:
    Walk(std::span<const Node> nodes, std::span<const std::size_t> operands, CandidateValues& values, ThePart part)
        : nodes_(nodes), operands_(operands), values_(values), part_(part) {}

    Cell cell(std::size_t at) const {
        const Node& node = nodes_[at];
        switch (node.operation) {
            case Operation::column:
                return column(node);
            case Operation::whole:
                return whole_cell(node.whole);
            case Operation::real:
                return real_cell(node.real);
            case Operation::text:
                return {Cell::Kind::text, 0, 0, node.text};
            case Operation::both:
            case Operation::either:
                return joined(node);
            case Operation::negation:
                return negated(operand(node, 0));
            case Operation::unknown: {
                const Cell one = operand(node, 0);
                return one.is_open() ? one : truth_cell(one.is_null());
            }
            case Operation::equal:
            case Operation::unequal:
            case Operation::less:
            case Operation::at_most:
            case Operation::more:
            case Operation::at_least:
            case Operation::same:
                return compared(node.operation, operand(node, 0), operand(node, 1));
            case Operation::plus:
            case Operation::minus:
            case Operation::times:
            case Operation::divided:
                return reckoned(node.operation, operand(node, 0), operand(node, 1));
            case Operation::one_of:
                return found_in_list(node);
            case Operation::first_known:
                return first_known(node);
            case Operation::least:
            case Operation::greatest:
                return extreme(node);
        }
        return {};
    }

  private:
    static Cell negated(const Cell& one) {
        if (one.is_open()) return one;
        const auto truth = one.truth();
        return truth_cell(truth ? std::optional(!*truth) : std::nullopt);
    }

    Cell operand(const Node& node, std::size_t number) const { return cell(operands_[node.first_operand + number]); }

    Cell column(const Node& node) const {
        if (node.is_of_part && part_ == ThePart::any) return open_cell;
        const sqlite::Value& value = values_.at(node.place);
        if (const auto* whole = std::get_if<std::int64_t>(&value)) return whole_cell(*whole);
        if (const auto* real = std::get_if<double>(&value)) return real_cell(*real);
        if (const auto* text = std::get_if<std::string>(&value)) return {Cell::Kind::text, 0, 0, *text};
        return {};
    }

    // AND is false as soon as one side is, OR true: then the other side may be unknown, or open.
    Cell joined(const Node& node) const {
        const bool deciding = node.operation == Operation::either;
        const Cell a = operand(node, 0);
        if (!a.is_open() && a.truth() == deciding) return truth_cell(deciding);
        const Cell b = operand(node, 1);
        if (!b.is_open() && b.truth() == deciding) return truth_cell(deciding);
        if (a.is_open() || b.is_open()) return open_cell;
        return truth_cell(a.truth() && b.truth() ? std::optional(!deciding) : std::nullopt);
    }

    Cell found_in_list(const Node& node) const {
        const Cell wanted = operand(node, 0);
        if (wanted.is_null() || wanted.is_open()) return wanted;
        bool some_unknown = false;
        for (std::size_t i = 1; i < node.operands; ++i) {
            const Cell one = operand(node, i);
            if (one.is_open()) return one;
            some_unknown = some_unknown || one.is_null();
            if (!one.is_null() && order(wanted, one) == 0) return whole_cell(1);
        }
        return some_unknown ? Cell{} : whole_cell(0);
    }

    Cell first_known(const Node& node) const {
        for (std::size_t i = 0; i < node.operands; ++i)
            if (const Cell one = operand(node, i); !one.is_null()) return one;
        return {};
    }

    // NULL when one is. Of equal ones min() takes the last and max() the first (3 and 3.0 are equal).
    Cell extreme(const Node& node) const {
        Cell best = operand(node, 0);
        for (std::size_t i = 1; i < node.operands && !best.is_null() && !best.is_open(); ++i) {
            const Cell one = operand(node, i);
            if (one.is_null() || one.is_open()) return one;
            const auto found = order(best, one);
            if (node.operation == Operation::least ? found >= 0 : found < 0) best = one;
        }
        return best;
    }

    std::span<const Node> nodes_;
    std::span<const std::size_t> operands_;
    CandidateValues& values_;
    ThePart part_;
};

}  // namespace

std::optional<bool> PlainCondition::truth(CandidateValues& values) const {
    return Walk(nodes_, operands_, values, ThePart::given).cell(nodes_.size() - 1).truth();
}

PlainCondition::Foreseen PlainCondition::foreseen(CandidateValues& values) const {
    const Cell whole = Walk(nodes_, operands_, values, ThePart::any).cell(nodes_.size() - 1);
    if (whole.is_open()) return Foreseen::open;
    const auto truth = whole.truth();
    return !truth ? Foreseen::unsettled : *truth ? Foreseen::fires : Foreseen::silent;
}

}  // namespace tapbook
