// The d.c. on the conductors of a tap: about half the supply on a bridge (power amplifier data sheets), half the rail
// on a boosted bridge, nothing behind a capacitor or between two rails.
#include "electrical/signal_ends.h"

namespace tapbook {

DcRange bias_range(const OutputStage& output, const Supply& supply) {
    const DcVolts none = dc_volts(0);
    switch (behaves_as(output)) {
        case Drive::bridged:
            return {supply.low * supply.bias_low, supply.likely * supply.bias_likely, supply.high * supply.bias_high};
        case Drive::boosted_bridged: {
            if (!output.rail) return {};
            const DcVolts half = *output.rail / 2;
            return {half, half, half};
        }
        case Drive::single_ended:
        case Drive::boosted_split:
        case Drive::line_single_ended:
            return {none, none, none};
        case Drive::line_differential:
            return {none, std::nullopt, supply.high * supply.line_bias_high};
        case Drive::common_return:
        case Drive::unknown:
            return {none, supply.likely * supply.bias_likely, std::nullopt};
        case Drive::digital:
            break;
    }
    return {};
}

std::optional<DcVolts> largest_offset(const OutputStage& output, const Supply& supply) {
    switch (behaves_as(output)) {
        case Drive::bridged:
        case Drive::boosted_split:
        case Drive::boosted_bridged:
        case Drive::line_differential:
        case Drive::common_return:
        case Drive::unknown:
            return supply.offset;
        case Drive::single_ended:
        case Drive::line_single_ended:
            return dc_volts(0);
        case Drive::digital:
            break;
    }
    return std::nullopt;
}

}  // namespace tapbook
