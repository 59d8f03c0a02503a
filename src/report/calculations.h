// The pure calculators' answers as text and JSON.
#pragma once

#include <optional>
#include <string>
#include <vector>

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

std::string level_text(const LevelAnswer& answer, const Screen& screen);
std::string level_json(const LevelAnswer& answer);

// Where the current of a load comes from when it was given in watts.
struct LoadPowerDraw {
    Watts output;
    DcVolts supply;
    Ratio efficiency;
    std::optional<Ratio> least_efficiency;  // of its class, when that decided
    std::optional<Amps> most_current;       // at the least efficiency
};

struct FuseAnswer {
    std::string cable;  // as it was named: "4 AWG", "16 mm2", "SAE 4"
    bool area_from_memory = false;
    CableFuse fuse;
    std::optional<LoadPowerDraw> draw;
    bool may_blow = false;
    std::vector<BladeOfRating> blades;  // of the rating
};
// Why there is no fuse, and from which size on there is one; empty where there is one.
std::string no_fuse_words(const CableFuse& fuse);

std::string fuse_text(const FuseAnswer& answer, const Screen& screen);
std::string fuse_json(const FuseAnswer& answer);

struct HoldUpAnswer {
    HoldUp hold_up;
    Farads capacitance;
    Draw draw;
    DcVolts from, to;
};
std::string hold_up_text(const HoldUpAnswer& answer, const Screen& screen);
std::string hold_up_json(const HoldUpAnswer& answer);

struct StandardCapacitor {
    Farads capacitance;
    Hertz corner;  // with it
};
struct CornerAnswer {
    Ohms load;
    Farads capacitance;
    Hertz corner;
    std::optional<StandardCapacitor> standard;  // when the capacitor was asked for
    std::optional<Hertz> note;
    std::optional<Gain> loss;  // at the note
};
std::string corner_text(const CornerAnswer& answer, const Screen& screen);
std::string corner_json(const CornerAnswer& answer);

std::string terminal_text(const Terminal& terminal, const Screen& screen);
std::string terminal_json(const Terminal& terminal);

std::string cavity_text(const RadioCavity& cavity, const Screen& screen);
std::string cavity_json(const RadioCavity& cavity);

std::string colour_text(const WireColour& colour, const Screen& screen);
std::string colour_json(const WireColour& colour);

std::string vin_text(const Vin& vin, const Screen& screen);
std::string vin_json(const Vin& vin);

// `tone`: the level of the tone; `load` and `power` as used.
std::string gain_text(RmsVolts target, Watts power, Ohms load, FullScaleLevel tone, const Screen& screen);
std::string gain_json(RmsVolts target);

}  // namespace tapbook
