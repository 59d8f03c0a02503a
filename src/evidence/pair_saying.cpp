// Notes that name both colours fix the pairs; notes that name one are matched to them.
#include "evidence/pair_saying.h"

#include <algorithm>
#include <set>

#include "evidence/note_reference.h"

namespace tapbook {
namespace {

constexpr char between_keys = '|';
constexpr char before_mark = ' ';

std::string marked_key(const WireColour& colour, const std::string& mark) {
    const std::string plain_mark = folded(mark);
    return plain_mark.empty() ? code(colour) : code(colour) + before_mark + plain_mark;
}

std::string pair_of(const std::string& a, const std::string& b) {
    return std::min(a, b) + between_keys + std::max(a, b);
}

PairSaying said_in_full(const Note& note) {
    const bool same = *note.positive == *note.negative;
    const auto key = [&](const WireColour& colour, const std::string& mark) {
        return same ? marked_key(colour, mark) : code(colour);
    };
    const std::string positive = key(*note.positive, note.positive_mark);
    const std::string negative = key(*note.negative, note.negative_mark);
    return {&note, pair_of(positive, negative), positive, negative};
}

bool holds(std::string_view pair, const WireColour& colour) {
    const auto keys = keys_of(pair);
    return std::any_of(keys.begin(), keys.end(), [&](const std::string& key) { return colour_of(key) == colour; });
}

// The key in `pair` of the conductor a note names by one colour; absent when both have it and the mark does not tell.
std::optional<std::string> key_in(std::string_view pair, const WireColour& colour, const std::string& mark) {
    std::vector<std::string> fitting;
    for (const auto& key : keys_of(pair))
        if (colour_of(key) == colour) fitting.push_back(key);
    if (fitting.size() == 1) return fitting.front();
    const auto exact = std::find(fitting.begin(), fitting.end(), marked_key(colour, mark));
    return exact == fitting.end() ? std::nullopt : std::optional(*exact);
}

PairSaying said_by_one_colour(const Note& note, const std::set<std::string>& full_pairs) {
    const bool is_positive = note.positive.has_value();
    const WireColour& colour = is_positive ? *note.positive : *note.negative;
    std::vector<std::string> holding;
    for (const auto& pair : full_pairs)
        if (holds(pair, colour)) holding.push_back(pair);
    PairSaying saying{&note, code(colour), {}, {}};
    std::string &named = is_positive ? saying.positive : saying.negative,
                &other = is_positive ? saying.negative : saying.positive;
    if (holding.size() != 1) {
        named = code(colour);
        return saying;
    }
    saying.pair = holding.front();
    if (const auto key = key_in(saying.pair, colour, is_positive ? note.positive_mark : note.negative_mark)) {
        const auto keys = keys_of(saying.pair);
        named = *key;
        other = keys[0] == *key ? keys[1] : keys[0];
    }
    return saying;
}

}  // namespace

std::vector<std::string> keys_of(std::string_view pair) {
    const auto cut = pair.find(between_keys);
    if (cut == std::string_view::npos) return {std::string(pair)};
    return {std::string(pair.substr(0, cut)), std::string(pair.substr(cut + 1))};
}

std::optional<WireColour> colour_of(std::string_view key) {
    return wire_colour_from_code(colour_code_in(key));
}

std::string_view colour_code_in(std::string_view key) {
    return key.substr(0, key.find(before_mark));
}

std::vector<PairSaying> pair_sayings(std::span<const Note* const> notes) {
    std::set<std::string> full_pairs;
    for (const Note* note : notes)
        if (note->positive && note->negative) full_pairs.insert(said_in_full(*note).pair);
    std::vector<PairSaying> sayings;
    for (const Note* note : notes) {
        if (note->positive && note->negative)
            sayings.push_back(said_in_full(*note));
        else if (note->positive || note->negative)
            sayings.push_back(said_by_one_colour(*note, full_pairs));
    }
    return sayings;
}

std::string mark_of(std::span<const PairSaying> sayings, std::string_view key) {
    const Note* newest = nullptr;
    std::string mark;
    for (const auto& saying : sayings) {
        const bool as_positive = saying.positive == key, as_negative = saying.negative == key;
        if (!as_positive && !as_negative) continue;
        const std::string& said = as_positive ? saying.note->positive_mark : saying.note->negative_mark;
        if (said.empty() || (newest != nullptr && !is_newer(*saying.note, *newest))) continue;
        newest = saying.note;
        mark = said;
    }
    return mark;
}

}  // namespace tapbook
