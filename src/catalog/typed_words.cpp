// See typed_words.h.
#include "catalog/typed_words.h"

#include <algorithm>

#include "trade/trade.h"

namespace tapbook {
namespace {

constexpr std::size_t most_glued = 3;  // words that one name may have been torn into
constexpr std::size_t least_body = 3;  // letters of a body's name that can be taken off
constexpr std::size_t least_left = 2;  // letters that must remain

bool is_digit(char letter) {
    return letter >= '0' && letter <= '9';
}

// The year that a word is, or that hangs on its end.
struct YearInWord {
    int year;
    std::string before;  // letters before it; none when the word is nothing but the year
};

std::optional<YearInWord> year_in_word(std::string_view word) {
    std::size_t digits = 0;
    while (digits < word.size() && is_digit(word[word.size() - 1 - digits])) ++digits;
    if (digits != 2 && digits != 4) return std::nullopt;
    const auto year = parse_model_year(word.substr(word.size() - digits));
    const auto* number = std::get_if<int>(&year);
    const auto before = word.substr(0, word.size() - digits);
    if (number == nullptr || (!before.empty() && before.size() < 3)) return std::nullopt;
    return YearInWord{*number, std::string(before)};
}

// A year of four digits: beside it, nobody means a year by two.
bool is_whole_year(std::string_view word) {
    return word.size() == 4 && year_in_word(word).has_value();
}

bool occurs_in_a_name(std::string_view digits, const NameTable& names) {
    const auto holds = [&](const KnownName& name) { return name.glued.find(digits) != std::string_view::npos; };
    return std::any_of(names.makes().begin(), names.makes().end(), holds) ||
           std::any_of(names.models().begin(), names.models().end(),
                       [&](const NamedModel& model) { return holds(model.name); });
}

// A word that is typed again says nothing more.
std::vector<std::string> each_once(const std::vector<std::string>& words) {
    std::vector<std::string> once;
    for (const auto& word : words)
        if (std::find(once.begin(), once.end(), word) == once.end()) once.push_back(word);
    return once;
}

TypedReading with_year(const std::vector<std::string>& words, std::size_t place, const YearInWord& found) {
    TypedReading reading{words, found.year};
    if (found.before.empty())
        reading.words.erase(reading.words.begin() + static_cast<std::ptrdiff_t>(place));
    else
        reading.words[place] = found.before;
    return reading;
}

// Takes the body's name off the end (or, with both reversed, off the start) where it stands there with few mistakes.
std::optional<std::pair<std::size_t, int>> left_without(const TypedPattern& reversed_piece,
                                                        std::string_view reversed_body) {
    if (reversed_piece.size() < reversed_body.size() + least_left) return std::nullopt;
    std::array<std::uint8_t, TypedPattern::longest + 1> distances{};
    reversed_piece.prefix_distances(reversed_body, distances);
    std::size_t best = reversed_body.size();
    for (const std::size_t taken : {reversed_body.size() - 1, reversed_body.size() + 1})
        if (taken + least_left <= reversed_piece.size() && distances[taken] < distances[best]) best = taken;
    if (distances[best] > edits_believed(reversed_body.size())) return std::nullopt;
    return std::pair(reversed_piece.size() - best, distances[best]);
}

void add_without_bodies(std::vector<TypedPiece>& pieces, const NameTable& names) {
    const std::size_t whole = pieces.size();
    for (std::uint32_t body = 0; body < names.bodies().size(); ++body) {
        const std::string_view name = names.bodies()[body].glued;
        if (name.size() < least_body) continue;
        const std::string reversed_name(name.rbegin(), name.rend());
        for (std::size_t i = 0; i < whole; ++i) {
            const auto add = [&](std::string text, int edits) {
                TypedPiece piece(pieces[i].words, std::move(text));
                piece.body = body;
                piece.body_edits = edits;
                pieces.push_back(std::move(piece));
            };
            if (const auto left = left_without(pieces[i].backward, reversed_name))
                add(pieces[i].text.substr(0, left->first), left->second);
            if (const auto left = left_without(pieces[i].forward, name))
                add(pieces[i].text.substr(pieces[i].text.size() - left->first), left->second);
        }
    }
}

}  // namespace

TypedPiece::TypedPiece(WordSet of_words, std::string glued)
    : words(of_words),
      text(std::move(glued)),
      reversed(text.rbegin(), text.rend()),
      forward(text),
      backward(reversed),
      letters(letters_of(text)) {}

std::vector<TypedReading> readings_of(std::string_view text, const NameTable& names) {
    const auto words = each_once(folded_words(text));
    std::vector<TypedReading> readings;
    bool may_be_name = false;
    const bool whole_year =
        std::any_of(words.begin(), words.end(), [](const auto& word) { return is_whole_year(word); });
    for (std::size_t i = 0; i < words.size() && readings.size() < 4; ++i)
        if (const auto found = year_in_word(words[i]); found && (!whole_year || is_whole_year(words[i]))) {
            readings.push_back(with_year(words, i, *found));
            may_be_name = may_be_name || occurs_in_a_name(words[i].substr(found->before.size()), names);
        }
    if (readings.empty() || may_be_name) readings.push_back({words, {}});
    return readings;
}

std::vector<TypedPiece> pieces_of(const std::vector<std::string>& words, const NameTable& names) {
    std::vector<TypedPiece> pieces;
    for (std::size_t first = 0; first < std::min(words.size(), most_words); ++first) {
        std::string glued;
        WordSet set = 0;
        for (std::size_t i = first; i < std::min({words.size(), most_words, first + most_glued}); ++i) {
            glued += words[i];
            set |= WordSet{1} << i;
            if (glued.size() <= TypedPattern::longest) pieces.emplace_back(set, glued);
        }
    }
    add_without_bodies(pieces, names);
    return pieces;
}

}  // namespace tapbook
