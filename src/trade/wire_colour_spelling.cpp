// The table of spellings. English words and IEC letters come from the colour's own tables in wire_colour.h; the rest is
// trade practice (US abbreviations, and the letter notations of wiring diagrams with their known clashes).
#include "trade/wire_colour_spelling.h"

#include <algorithm>

namespace tapbook {
namespace {

using enum BaseColour;

struct Spelling {
    std::string_view text;
    Style style;
    WireColour meaning;
    std::optional<WireColour> other = std::nullopt;  // a second reading: then it is refused with both
};

constexpr WireColour plain(BaseColour base) {
    return {Hue{base}};
}
constexpr WireColour light(BaseColour base) {
    return {Hue{base, Shade::light}};
}
constexpr WireColour dark(BaseColour base) {
    return {Hue{base, Shade::dark}};
}

constexpr Spelling spellings_beside_the_codes[] = {
    {"purple", Style::word, plain(violet)},
    {"gray", Style::word, plain(grey)},
    {"slate", Style::word, plain(grey)},  // IEC 60757 names grey "grey (slate)"
    {"beige", Style::word, plain(tan)},
    {"skyblue", Style::word, light(blue)},
    {"blk", Style::abbreviation, plain(black)},
    {"brn", Style::abbreviation, plain(brown)},
    {"red", Style::abbreviation, plain(red)},
    {"orn", Style::abbreviation, plain(orange)},
    {"org", Style::abbreviation, plain(orange)},
    {"yel", Style::abbreviation, plain(yellow)},
    {"grn", Style::abbreviation, plain(green)},
    {"blu", Style::abbreviation, plain(blue)},
    {"vio", Style::abbreviation, plain(violet)},
    {"ppl", Style::abbreviation, plain(violet)},
    {"pur", Style::abbreviation, plain(violet)},
    {"gry", Style::abbreviation, plain(grey)},
    {"gra", Style::abbreviation, plain(grey)},
    {"wht", Style::abbreviation, plain(white)},
    {"pnk", Style::abbreviation, plain(pink)},
    {"tan", Style::abbreviation, plain(tan)},
    {"w", Style::letter, plain(white)},
    {"r", Style::letter, plain(red)},
    {"y", Style::letter, plain(yellow)},
    {"o", Style::letter, plain(orange)},
    {"v", Style::letter, plain(violet)},
    {"vi", Style::letter, plain(violet)},
    {"vo", Style::letter, plain(violet)},
    {"br", Style::letter, plain(brown)},
    {"lg", Style::letter, light(green)},
    {"b", Style::letter, plain(black), plain(blue)},
    {"bl", Style::letter, plain(black), plain(blue)},
    {"g", Style::letter, plain(green), plain(grey)},
    {"gr", Style::letter, plain(grey), plain(green)},
    {"sb", Style::letter, light(blue), plain(black)},  // sky blue, or "svart"
    {"p", Style::letter, plain(pink), plain(violet)},
    {"l", Style::letter, plain(blue), light(blue)},  // blue, or a "light" whose colour is missing
    {"lb", Style::letter, light(blue), WireColour{Hue{blue}, Hue{black}}},
    {"db", Style::letter, dark(blue), dark(brown)},
    {"dg", Style::letter, dark(green), dark(grey)},
    {"yw", Style::letter, plain(yellow), WireColour{Hue{yellow}, Hue{white}}},
    {"or", Style::letter, plain(orange), WireColour{Hue{orange}, Hue{red}}},
};

struct ShadePrefix {
    std::string_view text;
    Shade shade;
    bool before_letters;  // true: only before two letters of IEC 60757; false: before words, abbreviations and those
};

constexpr ShadePrefix shade_prefixes[] = {
    {"light", Shade::light, false}, {"lt", Shade::light, false}, {"dark", Shade::dark, false},
    {"dk", Shade::dark, false},     {"l", Shade::light, true},   {"d", Shade::dark, true},
};

bool equals_ignoring_case(std::string_view code, std::string_view lower) {
    return std::ranges::equal(code, lower, [](char c, char l) { return (c | 0x20) == l; });
}

std::vector<WireColour> unglued(std::string_view piece, Style style) {
    if (style == Style::word)
        for (const auto& named : words_of<BaseColour>())
            if (named.word == piece) return {plain(named.value)};
    if (style == Style::iec)
        for (const auto& named : colour_codes())
            if (equals_ignoring_case(named.word, piece)) return {plain(named.value)};
    for (const Spelling& spelling : spellings_beside_the_codes) {
        if (spelling.style != style || spelling.text != piece) continue;
        if (spelling.other) return {spelling.meaning, *spelling.other};
        return {spelling.meaning};
    }
    return {};
}

void add_once(std::vector<WireColour>& all, const WireColour& colour) {
    if (std::ranges::find(all, colour) == all.end()) all.push_back(colour);
}

// Cuts `rest` into spellings of `style` and adds every meaning of every cut that has exactly `left` more pieces.
void add_cuts(std::string_view rest, Style style, int left, std::vector<Hue> so_far, std::vector<WireColour>& found) {
    if (left == 0) {
        const auto colour = rest.empty() ? wire_colour_of(so_far) : std::nullopt;
        if (colour) add_once(found, *colour);
        return;
    }
    for (std::size_t length = 1; length <= rest.size(); ++length) {
        for (const WireColour& meaning : meanings(rest.substr(0, length), style)) {
            if (meaning.first_stripe) continue;
            std::vector<Hue> longer = so_far;
            longer.push_back(meaning.base);
            add_cuts(rest.substr(length), style, left - 1, std::move(longer), found);
        }
    }
}

}  // namespace

std::vector<WireColour> meanings(std::string_view piece, Style style) {
    auto found = unglued(piece, style);
    if (!found.empty() || style == Style::letter) return found;
    for (const ShadePrefix& prefix : shade_prefixes) {
        if (!piece.starts_with(prefix.text) || (prefix.before_letters && style != Style::iec)) continue;
        found = unglued(piece.substr(prefix.text.size()), style);
        const bool shadeable =
            found.size() == 1 && found[0].base.shade == Shade::plain && has_shades(found[0].base.base);
        if (shadeable) return {WireColour{Hue{found[0].base.base, prefix.shade}}};
    }
    return {};
}

std::vector<WireColour> meanings(std::string_view piece) {
    for (const Style style : {Style::word, Style::abbreviation, Style::iec, Style::letter})
        if (auto found = meanings(piece, style); !found.empty()) return found;
    return {};
}

std::vector<WireColour> joined_meanings(std::string_view piece) {
    constexpr std::size_t longest = 60;  // three of the longest spellings; keeps the search small for any input
    std::vector<WireColour> found;
    if (piece.size() > longest) return found;
    for (const Style style : {Style::iec, Style::abbreviation, Style::word, Style::letter}) {
        const int most = style == Style::letter ? 2 : 3;  // three single letters are rather a mistyped word
        for (int pieces = 2; pieces <= most && found.empty(); ++pieces) add_cuts(piece, style, pieces, {}, found);
        if (!found.empty()) break;
    }
    return found;
}

std::vector<std::string_view> nameable_spellings() {
    std::vector<std::string_view> all;
    for (const auto& named : words_of<BaseColour>()) all.push_back(named.word);
    for (const Spelling& spelling : spellings_beside_the_codes)
        if (spelling.text.size() >= 3) all.push_back(spelling.text);
    return all;
}

}  // namespace tapbook
