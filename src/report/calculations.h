// The pure calculators' answers as text and JSON.
#pragma once

#include <optional>
#include <string>

#include "electrical/electrical.h"
#include "report/screen.h"
#include "trade/trade.h"

namespace tapbook {

std::string swing_text(const Swing& swing, const Screen& screen);
std::string swing_json(const Swing& swing);

struct WireAnswer {
    CableResistance cable;
    DcVolts drop;
    DcVolts supply;  // what the percentage is of
    Metres length;
    Amps current;
};
std::string wire_text(const WireAnswer& answer, const Screen& screen);
std::string wire_json(const WireAnswer& answer);

std::string colour_text(const WireColour& colour, const Screen& screen);
std::string colour_json(const WireColour& colour);

std::string vin_text(const Vin& vin, const Screen& screen);
std::string vin_json(const Vin& vin);

// `tone`: the level of the tone; `load` and `power` as used.
std::string gain_text(RmsVolts target, Watts power, Ohms load, FullScaleLevel tone, const Screen& screen);
std::string gain_json(RmsVolts target);

}  // namespace tapbook
