// The pairs of colours, and their use on conductors.
#include "trade/confusable_colours.h"

#include <algorithm>

namespace tapbook {
namespace {

using enum BaseColour;

struct Pair {
    BaseColour one;
    BaseColour other;
    Lookalike why;
};

constexpr Pair pairs[] = {
    {brown, red, Lookalike::red_green_vision},   {brown, green, Lookalike::red_green_vision},
    {red, green, Lookalike::red_green_vision},   {blue, violet, Lookalike::red_green_vision},
    {red, orange, Lookalike::poor_light},        {white, yellow, Lookalike::faint_difference},
    {brown, tan, Lookalike::faint_difference},   {grey, silver, Lookalike::faint_difference},
    {yellow, gold, Lookalike::faint_difference},
};

// A light colour is not taken for a dark one: lightness is what everybody sees.
bool shades_are_close(Shade a, Shade b) {
    return a == b || a == Shade::plain || b == Shade::plain;
}

std::optional<Lookalike> confused(Hue a, Hue b) {
    if (a == b || !shades_are_close(a.shade, b.shade)) return std::nullopt;
    if (a.base == b.base) return Lookalike::shade;
    for (const Pair& pair : pairs)
        if ((pair.one == a.base && pair.other == b.base) || (pair.one == b.base && pair.other == a.base))
            return pair.why;
    return std::nullopt;
}

// The same hues on both, in another order.
bool are_swapped(const std::vector<Hue>& a, const std::vector<Hue>& b) {
    return std::ranges::is_permutation(a, b);
}

}  // namespace

std::optional<Lookalike> easily_confused(const WireColour& a, const WireColour& b) {
    const auto hues_a = hues(a), hues_b = hues(b);
    if (a == b || hues_a.size() != hues_b.size()) return std::nullopt;
    std::optional<Lookalike> reason;
    bool all_close = true;
    for (std::size_t i = 0; i < hues_a.size(); ++i) {
        if (hues_a[i] == hues_b[i]) continue;
        const auto why = confused(hues_a[i], hues_b[i]);
        if (!why) all_close = false;
        if (why && (!reason || *why < *reason)) reason = why;
    }
    if (all_close) return reason;
    if (are_swapped(hues_a, hues_b)) return Lookalike::swapped_stripe;
    return std::nullopt;
}

}  // namespace tapbook
