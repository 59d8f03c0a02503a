// Codes, words and stored numbers of conductor colours. Letters: IEC 60757 table 1.
#include "trade/wire_colour.h"

#include <algorithm>

namespace tapbook {
namespace {

constexpr Named<BaseColour> codes[] = {
    {BaseColour::black, "BK"},     {BaseColour::brown, "BN"},  {BaseColour::red, "RD"},  {BaseColour::orange, "OG"},
    {BaseColour::yellow, "YE"},    {BaseColour::green, "GN"},  {BaseColour::blue, "BU"}, {BaseColour::violet, "VT"},
    {BaseColour::grey, "GY"},      {BaseColour::white, "WH"},  {BaseColour::pink, "PK"}, {BaseColour::gold, "GD"},
    {BaseColour::turquoise, "TQ"}, {BaseColour::silver, "SR"}, {BaseColour::tan, "TN"},
};

constexpr int hue_bits = 6;
constexpr std::int64_t hue_mask = (1 << hue_bits) - 1;
constexpr int base_bits = 4;
constexpr std::int64_t base_mask = (1 << base_bits) - 1;

std::int64_t packed(Hue hue) {
    return static_cast<std::int64_t>(hue.base) + (static_cast<std::int64_t>(hue.shade) << base_bits);
}

std::optional<Hue> unpacked(std::int64_t number) {
    const std::int64_t base = number & base_mask;
    const std::int64_t shade = number >> base_bits;
    if (base == 0 || shade > static_cast<std::int64_t>(Shade::dark)) return std::nullopt;
    return Hue{static_cast<BaseColour>(base), static_cast<Shade>(shade)};
}

std::optional<Hue> hue_from_code(std::string_view text) {
    Shade shade = Shade::plain;
    if (text.size() == 3 && (text[0] == 'L' || text[0] == 'D')) {
        shade = text[0] == 'L' ? Shade::light : Shade::dark;
        text.remove_prefix(1);
    }
    for (const auto& named : codes)
        if (named.word == text) return Hue{named.value, shade};
    return std::nullopt;
}

}  // namespace

std::span<const Named<BaseColour>> colour_codes() {
    return codes;
}

bool has_shades(BaseColour base) {
    return base != BaseColour::black && base != BaseColour::white && base != BaseColour::gold &&
           base != BaseColour::silver;
}

std::string code(Hue hue) {
    std::string text;
    if (hue.shade != Shade::plain) text = hue.shade == Shade::light ? "L" : "D";
    const auto named = std::ranges::find(codes, hue.base, &Named<BaseColour>::value);
    return text.append(named->word);
}

std::string words(Hue hue) {
    std::string text;
    if (hue.shade != Shade::plain) text.append(word_of(hue.shade)).append(" ");
    return text.append(word_of(hue.base));
}

std::vector<Hue> hues(const WireColour& colour) {
    std::vector<Hue> all{colour.base};
    if (colour.first_stripe) all.push_back(*colour.first_stripe);
    if (colour.second_stripe) all.push_back(*colour.second_stripe);
    return all;
}

std::optional<WireColour> wire_colour_of(std::span<const Hue> hues) {
    if (hues.empty() || hues.size() > 3) return std::nullopt;
    for (std::size_t i = 0; i < hues.size(); ++i) {
        if (hues[i].shade != Shade::plain && !has_shades(hues[i].base)) return std::nullopt;
        if (std::ranges::count(hues, hues[i]) > 1) return std::nullopt;
    }
    WireColour colour{hues[0]};
    if (hues.size() > 1) colour.first_stripe = hues[1];
    if (hues.size() > 2) colour.second_stripe = hues[2];
    return colour;
}

std::string code(const WireColour& colour) {
    std::string text = code(colour.base);
    if (colour.first_stripe) text.append("/").append(code(*colour.first_stripe));
    if (colour.second_stripe) text.append("/").append(code(*colour.second_stripe));
    return text;
}

std::string words(const WireColour& colour) {
    std::string text = words(colour.base);
    if (!colour.first_stripe) return text;
    text.append(", ").append(words(*colour.first_stripe));
    if (!colour.second_stripe) return text.append(" stripe");
    return text.append(" and ").append(words(*colour.second_stripe)).append(" stripes");
}

std::optional<WireColour> wire_colour_from_code(std::string_view text) {
    std::vector<Hue> found;
    for (std::size_t at = 0; at <= text.size();) {
        const std::size_t end = std::min(text.find('/', at), text.size());
        const auto hue = hue_from_code(text.substr(at, end - at));
        if (!hue) return std::nullopt;
        found.push_back(*hue);
        at = end + 1;
    }
    return wire_colour_of(found);
}

std::int64_t to_integer(const WireColour& colour) {
    std::int64_t number = 0;
    int shift = 0;
    for (const Hue& hue : hues(colour)) {
        number |= packed(hue) << shift;
        shift += hue_bits;
    }
    return number;
}

std::optional<WireColour> wire_colour_from_integer(std::int64_t number) {
    if (number < 0) return std::nullopt;
    std::vector<Hue> found;
    for (; number != 0 && found.size() <= 3; number >>= hue_bits) {
        const auto hue = unpacked(number & hue_mask);
        if (!hue) return std::nullopt;
        found.push_back(*hue);
    }
    return wire_colour_of(found);
}

}  // namespace tapbook
