// Resistance and drop of cable. Sources in the header; the metric table is the largest d.c. resistance at 20 C of plain
// copper vehicle cable (ISO 6722 part 3, as reproduced in a public vehicle-electrics wiki; below 1 mm^2 from memory).
#include "electrical/conductor.h"

#include <algorithm>
#include <charconv>
#include <cmath>
#include <numbers>

namespace tapbook {

static_assert(table_is_sound<Metal>());

namespace {

constexpr int thickest = -3;
constexpr int thinnest = 40;

struct PrintedSize {
    SquareMillimetres nominal;
    OhmsPerMetre most;
};

constexpr PrintedSize printed_sizes[] = {
    {square_millimetres(0.35), milliohms_per_metre(54.4)}, {square_millimetres(0.5), milliohms_per_metre(37.1)},
    {square_millimetres(0.75), milliohms_per_metre(24.7)}, {square_millimetres(1), milliohms_per_metre(18.5)},
    {square_millimetres(1.5), milliohms_per_metre(12.7)},  {square_millimetres(4), milliohms_per_metre(4.71)},
    {square_millimetres(6), milliohms_per_metre(3.14)},    {square_millimetres(10), milliohms_per_metre(1.82)},
    {square_millimetres(16), milliohms_per_metre(1.16)},   {square_millimetres(25), milliohms_per_metre(0.743)},
    {square_millimetres(50), milliohms_per_metre(0.368)},  {square_millimetres(70), milliohms_per_metre(0.259)},
    {square_millimetres(95), milliohms_per_metre(0.196)},  {square_millimetres(120), milliohms_per_metre(0.153)},
};

// Resistance of a conductor of `ohm_square_millimetre_per_metre`, relative to its area.
OhmsPerMetre ideal(double ohm_square_millimetre_per_metre, SquareMillimetres size) {
    return ohms_per_metre(ohm_square_millimetre_per_metre / size.in(square_millimetres));
}

OhmsPerMetre adjusted(OhmsPerMetre at_20, Celsius temperature, Metal metal, Ratio clad_conductivity) {
    const Ratio warming = ratio(1 + 0.00393 * (temperature - celsius(20)).in(kelvins));
    const Ratio conductivity = metal == Metal::copper_clad ? clad_conductivity : ratio(1);
    return at_20 * warming / conductivity;
}

const PrintedSize* find_printed(SquareMillimetres nominal) {
    for (const PrintedSize& size : printed_sizes) {
        if (std::abs((nominal - size.nominal).in(square_millimetres)) < 0.0005) return &size;
    }
    return nullptr;
}

}  // namespace

bool is_listed(Awg size) {
    return size.number >= thickest && size.number <= thinnest;
}

std::optional<Awg> parse_awg(std::string_view text) {
    for (int number = thickest; number <= 0; ++number) {
        const std::string zeros(static_cast<std::size_t>(1 - number), '0');
        if (text == zeros || text == awg_text(Awg{number})) return Awg{number};
    }
    int number = 0;
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), number);
    if (error != std::errc{} || end != text.data() + text.size()) return std::nullopt;
    if (text.front() == '0' || number < 1 || number > thinnest) return std::nullopt;
    return Awg{number};
}

std::string awg_text(Awg size) {
    return size.number <= 0 ? std::to_string(1 - size.number) + "/0" : std::to_string(size.number);
}

SquareMillimetres area(Awg size) {
    const double diameter = 0.127 * std::pow(92, (36 - size.number) / 39.0);
    return square_millimetres(std::numbers::pi / 4 * diameter * diameter);
}

CableResistance resistance(Awg size, Celsius temperature, Metal metal, Ratio clad_conductivity) {
    return {adjusted(ideal(1 / 58.0, area(size)), temperature, metal, clad_conductivity), false};
}

CableResistance resistance(SquareMillimetres nominal, Celsius temperature, Metal metal, Ratio clad_conductivity) {
    const PrintedSize* printed = find_printed(nominal);
    const OhmsPerMetre at_20 = printed ? printed->most : ideal(0.017241 * 1.08, nominal);
    return {adjusted(at_20, temperature, metal, clad_conductivity), printed == nullptr};
}

Ohms length_resistance(OhmsPerMetre per_metre, Metres length) {
    return ohms(per_metre.in(ohms_per_metre)*length.in(metres));
}

DcVolts drop(OhmsPerMetre per_metre, Metres length, Amps current) {
    return dc_volts(length_resistance(per_metre, length).in(ohms)*current.in(amps));
}

}  // namespace tapbook
