// See output_load.h. The load is compared in whole milliohms, as amplifiers are recorded: three coils of 12 ohm side by
// side are 4 ohm, whatever their sum comes to in binary.
#include "electrical/output_load.h"

#include <cmath>

#include "electrical/return_path.h"

namespace tapbook {
namespace {

Ohms in_whole_milliohms(Ohms load) {
    return milliohms(std::round(load.in(milliohms)));
}

}  // namespace

OutputLoad output_load(const AmplifierSpec& amplifier, Ohms load, bool bridged) {
    const Ohms compared = in_whole_milliohms(load);
    OutputLoad seen{load, bridged, bridged ? amplifier.least_load_bridged : amplifier.least_load, {}, {}};
    if (seen.least) seen.allowed = compared >= *seen.least;
    if (!bridged) seen.rated = rated_power(amplifier, compared);
    return seen;
}

LoadResistor load_resistor(RmsVolts clean_high, Ohms speaker) {
    return {speaker, load_resistor_power(clean_high, speaker)};
}

}  // namespace tapbook
