// What does a length of cable cost in volts? AWG by ASTM B258 (d = 0.127 mm x 92^((36-n)/39)), metric vehicle cable by
// the d.c. resistance table of ISO 6722, copper 58 MS/m at 20 C (IEC 60028) with 0.00393/K; constant current, this
// length only.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "electrical/named.h"
#include "electrical/units.h"

namespace tapbook {

enum class Metal { copper, copper_clad };

template <>
struct NamedValues<Metal> {
    static constexpr Named<Metal> all[] = {{Metal::copper, "copper"}, {Metal::copper_clad, "cca"}};
};

// Conductivity of copper-clad aluminium relative to copper. Practice.
inline constexpr Ratio copper_clad_conductivity = ratio(0.63);

// An AWG size as its formula number: 36 is 36, 1/0 is 0, 4/0 is -3.
struct Awg {
    int number;
};

// "4", "1/0", "4/0" (also "0", "00", "000", "0000"): from 4/0 to 40; absent for anything else.
std::optional<Awg> parse_awg(std::string_view text);

// The size as written on cable: "4", "1/0".
std::string awg_text(Awg size);

// Is the size within 4/0 to 40, which the other functions require?
bool is_listed(Awg size);

// Cross-section of the solid conductor. REQUIRES is_listed(size).
SquareMillimetres area(Awg size);

struct CableResistance {
    OhmsPerMetre per_metre;
    bool computed;  // not from a printed table: 17.241/A x 1.08 mohm/m
};

// Resistance at `temperature`. AWG: ideal solid copper, 1/58 ohm mm^2/m over the area. REQUIRES is_listed(size).
CableResistance resistance(Awg size, Celsius temperature = celsius(20), Metal metal = Metal::copper,
                           Ratio clad_conductivity = copper_clad_conductivity);

// Resistance of metric vehicle cable of nominal area: the printed maximum, or computed for sizes not printed.
// REQUIRES area above zero.
CableResistance resistance(SquareMillimetres nominal, Celsius temperature = celsius(20), Metal metal = Metal::copper,
                           Ratio clad_conductivity = copper_clad_conductivity);

// Ohms of one length.
Ohms length_resistance(OhmsPerMetre per_metre, Metres length);

// Volts lost along `length` at a constant `current`.
DcVolts drop(OhmsPerMetre per_metre, Metres length, Amps current);

}  // namespace tapbook
