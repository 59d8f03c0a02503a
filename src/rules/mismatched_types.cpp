// One pass over the words: a side, a sign of comparison, a side.
#include "rules/mismatched_types.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <vector>

#include "rules/columns.h"
#include "rules/plain_condition_tokens.h"

namespace tapbook {
namespace {

struct Piece {
    PlainToken token;
    std::size_t offset;
};

// relation.column is one word.
void join_last_three(std::string_view when, std::vector<Piece>& pieces) {
    if (pieces.size() < 3) return;
    const Piece &last = pieces.back(), &dot = pieces[pieces.size() - 2], &first = pieces[pieces.size() - 3];
    if (last.token.kind != PlainToken::Kind::word || first.token.kind != PlainToken::Kind::word ||
        dot.token.written != ".")
        return;
    const auto length = last.offset + last.token.written.size() - first.offset;
    const Piece whole{{PlainToken::Kind::word, when.substr(first.offset, length)}, first.offset};
    pieces.resize(pieces.size() - 3);
    pieces.push_back(whole);
}

// Up to the first strange token: what lies behind is left to SQLite.
std::vector<Piece> pieces_of(std::string_view when) {
    std::vector<Piece> pieces;
    std::size_t at = 0;
    while (true) {
        at = std::min(when.find_first_not_of(" \t\r\n\f", at), when.size());
        const PlainToken token = plain_token_at(when.substr(at));
        if (token.kind == PlainToken::Kind::end || token.kind == PlainToken::Kind::strange) return pieces;
        pieces.push_back({token, at});
        at += token.written.size();
        join_last_three(when, pieces);
    }
}

// A column, a number or a text that stands alone.
struct Side {
    std::string written;
    const Column* column = nullptr;
    bool is_text = false;
};

std::string small(std::string_view word) {
    std::string text(word);
    for (char& c : text)
        if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
    return text;
}

std::optional<Side> side_of(const Piece& piece) {
    switch (piece.token.kind) {
        case PlainToken::Kind::number:
            return Side{std::string(piece.token.written), nullptr, false};
        case PlainToken::Kind::text:
            return Side{std::string(piece.token.written), nullptr, true};
        case PlainToken::Kind::word:
            if (const Column* column = find_column(small(piece.token.written)))
                return Side{full_name(*column), column, column->type == "TEXT"};
            break;
        case PlainToken::Kind::sign:
        case PlainToken::Kind::end:
        case PlainToken::Kind::strange:
            break;
    }
    return std::nullopt;
}

bool is_comparison(const Piece& piece) {
    constexpr std::array<std::string_view, 8> signs = {"=", "==", "<>", "!=", "<", "<=", ">", ">="};
    if (piece.token.kind == PlainToken::Kind::sign)
        return std::find(signs.begin(), signs.end(), piece.token.written) != signs.end();
    return piece.token.kind == PlainToken::Kind::word && small(piece.token.written) == "is";
}

std::string kind_words(const Side& side) {
    return fmt::format("{} is a {}", side.written, side.is_text ? "text" : "number");
}

std::string way_out(const Side& left, const Side& right) {
    const Side& literal = left.column == nullptr ? left : right;
    if (literal.column != nullptr) return "compare a text with a text and a number with a number";
    return literal.is_text ? "write the number without quotes"
                           : fmt::format("write '{}' in single quotes", literal.written);
}

}  // namespace

std::optional<MismatchedTypes> mismatched_types(std::string_view when) {
    const auto pieces = pieces_of(when);
    for (std::size_t i = 0; i + 2 < pieces.size(); ++i) {
        if (!is_comparison(pieces[i + 1])) continue;
        const auto left = side_of(pieces[i]), right = side_of(pieces[i + 2]);
        if (!left || !right || left->is_text == right->is_text) continue;
        if (left->column == nullptr && right->column == nullptr) continue;
        return MismatchedTypes{
            pieces[i].offset,
            fmt::format("the condition compares a text with a number: {}, {}", kind_words(*left), kind_words(*right)),
            way_out(*left, *right)};
    }
    return std::nullopt;
}

}  // namespace tapbook
