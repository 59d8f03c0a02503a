// How many amps may a cable carry all the time? The column of its insulation in table 5 of 33 CFR 183.425 (allowable
// amperage of insulated stranded copper, 30 C around it), the table's factor for engine spaces (50 C), and 0.794 for
// copper-clad aluminium. An ampacity without its conditions means nothing: they travel with the answer. Metric cable
// and cable marked in SAE sizes are placed by their area, rounded down to a row of the table.
#pragma once

#include <optional>
#include <span>
#include <string_view>

#include "electrical/conductor.h"
#include "electrical/named.h"
#include "electrical/units.h"

namespace tapbook {

// The temperature the insulation is rated for, in degrees Celsius.
enum class Insulation { rated_60, rated_75, rated_80, rated_90, rated_105, rated_125, rated_200 };

template <>
struct NamedValues<Insulation> {
    static constexpr Named<Insulation> all[] = {
        {Insulation::rated_60, "60"},   {Insulation::rated_75, "75"},   {Insulation::rated_80, "80"},
        {Insulation::rated_90, "90"},   {Insulation::rated_105, "105"}, {Insulation::rated_125, "125"},
        {Insulation::rated_200, "200"},
    };
};

enum class CablePlace { elsewhere, engine_space };

template <>
struct NamedValues<CablePlace> {
    static constexpr Named<CablePlace> all[] = {{CablePlace::elsewhere, "elsewhere"},
                                                {CablePlace::engine_space, "engine_space"}};
};

// Amps of copper-clad aluminium relative to copper: the square root of its conductivity, 0.63. Practice.
inline constexpr Ratio copper_clad_ampacity = ratio(0.794);

struct CableConditions {
    Metal metal = Metal::copper;
    std::optional<Insulation> insulation;  // not known: the 60 C column, the most careful
    CablePlace place = CablePlace::elsewhere;
};

struct Ampacity {
    Amps allowed;
    Awg row;                  // of the table
    bool rounded_down;        // the cable lies between two rows; the thinner one counts
    Insulation column;        // of the table
    bool insulation_assumed;  // it was not known
    CablePlace place;
    bool factor_from_memory;  // the engine-space factor of this column could not be confirmed
    Metal metal;
};

// Ampacity of AWG cable; absent below 18 AWG, where the table begins. REQUIRES is_listed(size).
std::optional<Ampacity> ampacity(Awg size, const CableConditions& conditions);

// The same for a conductor of this area: the thickest row that is not thicker. Areas above 4/0 count as 4/0; absent
// below the area of 18 AWG. REQUIRES area above zero.
std::optional<Ampacity> ampacity(SquareMillimetres area, const CableConditions& conditions);

// The thinnest row of the table that carries `current`; absent when not even 4/0 does. REQUIRES current not negative.
std::optional<Awg> thinnest_for(Amps current, const CableConditions& conditions);

// The rows of the table, thinnest first: 18 to 4/0.
std::span<const Awg> ampacity_rows();

// A cable size marked by SAE J1127/J1128: less copper than the AWG size of the same number.
struct SaeSize {
    std::string_view marked;  // "4", "1/0"
    SquareMillimetres least_area;
    bool from_memory;  // nothing could be read to confirm the area
};

// Thinnest first. Areas from a cable-trade page on SAE J1127/J1128, in circular mils (1 cmil = 5.067075e-4 mm^2).
std::span<const SaeSize> sae_sizes();

// nullptr for a size that is not in the table ("0" is written 1/0).
const SaeSize* find_sae_size(std::string_view marked);

}  // namespace tapbook
