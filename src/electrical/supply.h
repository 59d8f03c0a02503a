// Which assumptions does every prediction rest on? They are data: one value each, with meaning and source, printed by
// the program and overridable by passing another Supply.
#pragma once

#include <span>
#include <string_view>
#include <variant>

#include "electrical/units.h"

namespace tapbook {

struct Supply {
    DcVolts low = dc_volts(12.6);         // engine off
    DcVolts likely = dc_volts(14.4);      // the voltage power ratings are stated at
    DcVolts high = dc_volts(15.0);        // cold regulator: decides d.c. and what must be survived when clipping
    DcVolts clean_high = dc_volts(14.4);  // decides the largest clean volts
    DcVolts loss_low = dc_volts(1.2);     // lost per conducting side, for the low result
    DcVolts loss_likely = dc_volts(0.75);
    DcVolts loss_high = dc_volts(0.4);
    Ratio rating_margin = ratio(1.125);  // volts by which a typical part exceeds its rating
    Ratio clip_power_1_percent = ratio(1.0475);
    Ratio clip_power_10_percent = ratio(1.2878);
    Ratio clip_power_square = ratio(2);
    Ratio true_rms_tolerance = percent(2);
    Ratio other_meter_tolerance = percent(11);
    Ratio bias_low = ratio(0.3);  // d.c. on a bridged conductor, as a part of the supply
    Ratio bias_likely = ratio(0.5);
    Ratio bias_high = ratio(0.55);
    Ratio line_bias_high = ratio(0.25);   // d.c. on a differential line conductor, as a part of the supply
    DcVolts offset = dc_millivolts(150);  // d.c. between the two conductors of an output without capacitor
    DcVolts crank = dc_volts(6.0);        // what is left of the supply while the engine starts
};

// One assumption: its name, where it is kept, what it means and who says so ("practice" when nobody does).
struct SupplyField {
    std::string_view name;
    std::variant<DcVolts Supply::*, Ratio Supply::*> member;
    std::string_view unit;  // "V" or "x" (a plain factor)
    std::string_view meaning;
    std::string_view source;
};

// Every field of Supply, in order of declaration.
std::span<const SupplyField> supply_fields();

}  // namespace tapbook
