// Positions by their words: each typed word stands for one or two words of the table ("fl": front and left); the
// position is the one whose words are exactly those typed.
#include "trade/position.h"

#include <fmt/format.h>

#include <algorithm>
#include <optional>

#include "trade/nearest.h"
#include "trade/text.h"

namespace tapbook {
namespace {

using WordSet = std::vector<std::string_view>;  // sorted, no word twice

struct TypedWord {
    std::string_view text;
    std::string_view one;
    std::string_view two = {};
};

// "fr" and "rr" stand twice: front right alone, but front in "FR LH". A lone "r" is right,
// never rear: "L/R" is two speakers.
constexpr TypedWord typed_words[] = {
    {"front", "front"},
    {"frt", "front"},
    {"f", "front"},
    {"rear", "rear"},
    {"back", "rear"},
    {"left", "left"},
    {"lh", "left"},
    {"l", "left"},
    {"right", "right"},
    {"rh", "right"},
    {"r", "right"},
    {"rr", "rear"},
    {"rr", "rear", "right"},
    {"fr", "front"},
    {"fr", "front", "right"},
    {"fl", "front", "left"},
    {"lf", "front", "left"},
    {"rf", "front", "right"},
    {"rl", "rear", "left"},
    {"lr", "rear", "left"},
    {"tweeter", "tweeter"},
    {"tweeters", "tweeter"},
    {"tw", "tweeter"},
    {"midrange", "midrange"},
    {"mid", "midrange"},
    {"centre", "centre"},
    {"center", "centre"},
    {"ctr", "centre"},
    {"c", "centre"},
    {"subwoofer", "subwoofer"},
    {"sub", "subwoofer"},
    {"sw", "subwoofer"},
    {"surround", "surround"},
    {"side", "surround"},
    {"sl", "surround", "left"},
    {"sr", "surround", "right"},
    {"ls", "surround", "left"},
    {"rs", "surround", "right"},
    {"speaker", ""},
};

struct Piece {
    std::string lower;
    std::size_t offset;
};

std::vector<Piece> pieces_of(std::string_view text) {
    constexpr std::string_view separators = " \t-_/";
    std::vector<Piece> pieces;
    for (std::size_t at = text.find_first_not_of(separators); at < text.size();) {
        const std::size_t end = std::min(text.find_first_of(separators, at), text.size());
        std::string lower(text.substr(at, end - at));
        for (char& c : lower)
            if (c >= 'A' && c <= 'Z') c = static_cast<char>(c | 0x20);
        pieces.push_back({std::move(lower), at});
        at = text.find_first_not_of(separators, end);
    }
    return pieces;
}

// `words` and `more`; empty when a word would stand twice.
std::optional<WordSet> united(WordSet words, std::initializer_list<std::string_view> more) {
    for (const std::string_view word : more) {
        if (word.empty()) continue;
        if (std::ranges::find(words, word) != words.end()) return std::nullopt;
        words.push_back(word);
    }
    std::ranges::sort(words);
    return words;
}

bool is_known(std::string_view piece) {
    return std::ranges::find(typed_words, piece, &TypedWord::text) != std::end(typed_words);
}

// Every way to read the pieces, word by word; pieces nobody knows leave none.
std::vector<WordSet> readings_of(const std::vector<Piece>& pieces) {
    std::vector<WordSet> readings{{}};
    for (const Piece& piece : pieces) {
        std::vector<WordSet> longer;
        for (const WordSet& reading : readings)
            for (const TypedWord& typed : typed_words)
                if (typed.text == piece.lower)
                    if (auto words = united(reading, {typed.one, typed.two})) longer.push_back(std::move(*words));
        std::ranges::sort(longer);
        longer.erase(std::unique(longer.begin(), longer.end()), longer.end());
        readings = std::move(longer);
    }
    return readings;
}

WordSet words_in(Position position) {
    WordSet words;
    for (std::string_view rest = word_of(position); !rest.empty();) {
        const std::size_t end = std::min(rest.find(' '), rest.size());
        words.push_back(rest.substr(0, end));
        rest.remove_prefix(std::min(end + 1, rest.size()));
    }
    std::ranges::sort(words);
    return words;
}

// The position whose words are exactly those of a reading.
std::optional<Position> exactly(const std::vector<WordSet>& readings) {
    for (const auto& named : words_of<Position>())
        if (std::ranges::find(readings, words_in(named.value)) != readings.end()) return named.value;
    return std::nullopt;
}

// Positions that have all words of a reading and the fewest words besides, in list order:
// "front" -> front left, front right.
std::vector<Position> fitting(const std::vector<WordSet>& readings) {
    std::vector<Position> found;
    std::size_t fewest = 3;
    for (const auto& named : words_of<Position>()) {
        const WordSet words = words_in(named.value);
        std::size_t missing = words.size();
        for (const WordSet& reading : readings)
            if (std::ranges::includes(words, reading)) missing = std::min(missing, words.size() - reading.size());
        if (missing == words.size() || missing > fewest) continue;
        if (missing < fewest) found.clear();
        fewest = missing;
        found.push_back(named.value);
    }
    return found;
}

// The position meant when each unknown word is replaced by the nearest known one; empty when there is none.
std::string nearest_position(std::vector<Piece> pieces) {
    std::vector<std::string_view> known;
    for (const TypedWord& typed : typed_words)
        if (typed.text.size() >= 3) known.push_back(typed.text);
    for (Piece& piece : pieces) {
        if (is_known(piece.lower)) continue;
        const auto meant = nearest(piece.lower, known);
        if (!meant) return {};
        piece.lower = *meant;
    }
    const auto found = exactly(readings_of(pieces));
    return found ? std::string(word_of(*found)) : std::string();
}

}  // namespace

std::variant<Position, PositionRefusal> parse_position(std::string_view text) {
    using Refused = PositionRefusalReason;
    const auto pieces = pieces_of(text);
    if (pieces.empty()) return PositionRefusal{Refused::empty, std::string(text), "", 0, {}, ""};
    const auto stranger = std::ranges::find_if_not(pieces, [](const Piece& piece) { return is_known(piece.lower); });
    if (stranger != pieces.end()) {
        const std::string piece(text.substr(stranger->offset, stranger->lower.size()));
        return PositionRefusal{Refused::unknown,        std::string(text), piece, stranger->offset, {},
                               nearest_position(pieces)};
    }
    const auto readings = readings_of(pieces);
    if (const auto found = exactly(readings)) return *found;
    auto choices = fitting(readings);
    if (choices.size() > 1)
        return PositionRefusal{Refused::ambiguous, std::string(text), "", pieces[0].offset, std::move(choices), ""};
    const std::string only(choices.empty() ? "" : word_of(choices[0]));  // suggested, never taken: a word was left out
    return PositionRefusal{Refused::unknown, std::string(text), "", pieces[0].offset, {}, only};
}

std::string PositionRefusal::message() const {
    const std::string quoted = '"' + shown(text) + '"';
    switch (reason) {
        case PositionRefusalReason::empty:
            return "no speaker position given; write one like \"front left\"";
        case PositionRefusalReason::unknown:
            if (nearest.empty())
                return fmt::format("{} is not a speaker position; write one like \"front left\"", quoted);
            return fmt::format("{} is not a speaker position; did you mean \"{}\"?", quoted, nearest);
        case PositionRefusalReason::ambiguous: {
            std::string list;
            for (std::size_t i = 0; i < choices.size(); ++i) {
                if (i > 0) list += i + 1 == choices.size() ? " or " : ", ";
                list += word_of(choices[i]);
            }
            return fmt::format("{} can mean {}; write one of them", quoted, list);
        }
    }
    return {};
}

}  // namespace tapbook
