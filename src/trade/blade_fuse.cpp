// The tables of blade fuses.
#include "trade/blade_fuse.h"

#include <fmt/format.h>

#include <algorithm>

namespace tapbook {
namespace {

using enum FuseColour;

constexpr BladeFuse small_fuses[] = {
    {amps(1), black},
    {amps(2), grey},
    {amps(3), violet},
    {amps(4), pink},
    {amps(5), tan},
    {amps(7.5), brown},
    {amps(10), red},
    {amps(15), blue},
    {amps(20), yellow},
    {amps(25), clear},
    {amps(30), green},
    {amps(35), blue_green, std::nullopt, true},
    {amps(40), orange, std::nullopt, true},
};

constexpr BladeFuse maxi_fuses[] = {
    {amps(20), yellow}, {amps(30), green},      {amps(40), orange}, {amps(50), red},
    {amps(60), blue},   {amps(70), tan, brown}, {amps(80), clear},  {amps(100), violet, std::nullopt, true},
};

constexpr Named<FuseColour> other_names[] = {{grey, "gray"},           {violet, "purple"}, {tan, "beige"},
                                             {clear, "white"},         {clear, "natural"}, {orange, "amber"},
                                             {blue_green, "turquoise"}};

char small(char c) {
    return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
}

std::string current(Amps rating) {
    return fmt::format("{:g} A", rating.in(amps));
}

}  // namespace

std::optional<FuseColour> parse_fuse_colour(std::string_view text) {
    std::string word(text);
    std::ranges::transform(word, word.begin(), small);
    if (const auto colour = parse_word<FuseColour>(word)) return colour;
    const auto other = std::ranges::find(other_names, word, &Named<FuseColour>::word);
    return other != std::end(other_names) ? std::optional(other->value) : std::nullopt;
}

std::span<const BladeFuse> blade_fuses(BladeBody body) {
    switch (body) {
        case BladeBody::regular:
        case BladeBody::mini:
            return small_fuses;
        case BladeBody::maxi:
            return maxi_fuses;
    }
    return {};
}

std::vector<Amps> standard_blade_ratings() {
    std::vector<Amps> ratings;
    for (const auto& [body, word] : words_of<BladeBody>())
        for (const BladeFuse& fuse : blade_fuses(body)) ratings.push_back(fuse.rating);
    std::ranges::sort(ratings);
    const auto repeated = std::ranges::unique(ratings);
    ratings.erase(repeated.begin(), repeated.end());
    return ratings;
}

const BladeFuse* find_blade_fuse(BladeBody body, Amps rating) {
    const auto fuses = blade_fuses(body);
    const auto found = std::ranges::find(fuses, rating, &BladeFuse::rating);
    return found != fuses.end() ? &*found : nullptr;
}

std::vector<BladeOfRating> blades_rated(Amps rating) {
    std::vector<BladeOfRating> found;
    for (const auto& [body, word] : words_of<BladeBody>())
        if (const BladeFuse* fuse = find_blade_fuse(body, rating)) found.push_back({body, *fuse});
    return found;
}

std::optional<Amps> blade_rating(BladeBody body, FuseColour colour) {
    for (const BladeFuse& fuse : blade_fuses(body))
        if (fuse.colour == colour || fuse.also == colour) return fuse.rating;
    return std::nullopt;
}

std::variant<Amps, AmbiguousFuseColour> blade_rating(FuseColour colour) {
    AmbiguousFuseColour found{colour, {}};
    for (const auto& [body, word] : words_of<BladeBody>())
        if (const auto rating = blade_rating(body, colour)) found.choices.push_back({body, *rating});
    const Amps first = found.choices.front().rating;  // every colour is on some body
    if (std::ranges::all_of(found.choices, [&](const BladeChoice& choice) { return choice.rating == first; }))
        return first;
    return found;
}

std::string AmbiguousFuseColour::message() const {
    std::string text(word_of(colour));
    for (std::size_t i = 0; i < choices.size(); ++i) {
        const bool same_as_before = i > 0 && choices[i].rating == choices[i - 1].rating;
        const bool same_as_next = i + 1 < choices.size() && choices[i].rating == choices[i + 1].rating;
        if (same_as_before)
            text += fmt::format(" or {}", word_of(choices[i].body));
        else
            text += fmt::format("{} {} on a {}", i == 0 ? " is" : " and", current(choices[i].rating),
                                word_of(choices[i].body));
        if (!same_as_next) text += " fuse";
    }
    return text + "; name the body or read the figure on it";
}

}  // namespace tapbook
