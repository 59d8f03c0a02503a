// The printed table of assumptions, one row per field of Supply, with the source of its default.
#include "electrical/supply.h"

namespace tapbook {

namespace {

constexpr std::string_view volts = "V";
constexpr std::string_view factor = "x";
constexpr std::string_view practice = "practice";
constexpr std::string_view clipped_sine = "an ideally clipped sine, computed";

constexpr SupplyField fields[] = {
    {"low", &Supply::low, volts, "supply with the engine off", practice},
    {"likely", &Supply::likely, volts, "supply that power ratings are stated at", "CTA-2006"},
    {"high", &Supply::high, volts, "supply from a cold regulator: d.c. and clipping", practice},
    {"clean_high", &Supply::clean_high, volts, "supply for the largest clean volts", "CTA-2006"},
    {"loss_low", &Supply::loss_low, volts, "lost per conducting side, for the low result", practice},
    {"loss_likely", &Supply::loss_likely, volts, "lost per conducting side, for the likely result", practice},
    {"loss_high", &Supply::loss_high, volts, "lost per conducting side, for the high result", practice},
    {"rating_margin", &Supply::rating_margin, factor, "volts by which a typical part exceeds its rating",
     "power amplifier data sheets, typical against least"},
    {"clip_power_1_percent", &Supply::clip_power_1_percent, factor, "power at 1 % distortion over the clipping point",
     clipped_sine},
    {"clip_power_10_percent", &Supply::clip_power_10_percent, factor,
     "power at 10 % distortion over the clipping point", clipped_sine},
    {"clip_power_square", &Supply::clip_power_square, factor, "power of a saturated output over the clipping point",
     "textbook"},
    {"true_rms_tolerance", &Supply::true_rms_tolerance, factor, "tolerance of a true-RMS meter", practice},
    {"other_meter_tolerance", &Supply::other_meter_tolerance, factor, "tolerance of any other meter",
     "an averaging meter on a square wave reads pi / (2 sqrt 2) = 1.11 high"},
    {"bias_low", &Supply::bias_low, factor, "least d.c. on a bridged conductor, as a part of the supply", practice},
    {"bias_likely", &Supply::bias_likely, factor, "likely d.c. on a bridged conductor, as a part of the supply",
     "power amplifier data sheets: about half the supply"},
    {"bias_high", &Supply::bias_high, factor, "largest d.c. on a bridged conductor, as a part of the supply", practice},
    {"line_bias_high", &Supply::line_bias_high, factor,
     "largest d.c. on a differential line conductor, as a part of the supply", practice},
    {"offset", &Supply::offset, volts, "d.c. between the conductors of an output without capacitor",
     "largest offset in a power amplifier data sheet"},
    {"crank", &Supply::crank, volts, "what is left of the supply while the engine starts", practice},
};

}  // namespace

std::span<const SupplyField> supply_fields() {
    return fields;
}

}  // namespace tapbook
