// The swing of one output from one supply with one loss, by the formulas named in the header.
#include "electrical/swing.h"

#include <algorithm>

#include "electrical/laws.h"
#include "electrical/rating.h"

namespace tapbook {

namespace {

PeakVolts swing_of(DcVolts available) {
    return std::max(peak_volts(0), peak_volts(available.in(dc_volts)));
}

std::optional<PeakVolts> line_peak(const OutputStage& output) {
    if (!output.line_volts) return std::nullopt;
    return peak_of_sine(*output.line_volts);
}

std::optional<DcVolts> bias(const OutputStage& output, DcVolts supply) {
    switch (behaves_as(output)) {
        case Drive::bridged:
            return supply / 2;
        case Drive::boosted_bridged:
            if (!output.rail) return std::nullopt;
            return *output.rail / 2;
        case Drive::single_ended:
        case Drive::boosted_split:
        case Drive::line_single_ended:
            return dc_volts(0);
        case Drive::line_differential:
        case Drive::common_return:
        case Drive::digital:
        case Drive::unknown:
            break;
    }
    return std::nullopt;
}

}  // namespace

std::optional<PeakVolts> peak_limit(const OutputStage& output, DcVolts supply, DcVolts loss, SplitGuess guess) {
    switch (behaves_as(output)) {
        case Drive::bridged:
        case Drive::common_return:
        case Drive::unknown:
            return swing_of(supply - 2 * loss);
        case Drive::single_ended:
            return swing_of(supply / 2 - loss);
        case Drive::boosted_split: {
            if (!output.rail) return std::nullopt;
            const bool bridged = output.split_is_bridged.value_or(guess == SplitGuess::bridged);
            return swing_of((bridged ? 2 : 1) * (*output.rail - loss));
        }
        case Drive::boosted_bridged:
            if (!output.rail) return std::nullopt;
            return swing_of(*output.rail - 2 * loss);
        case Drive::line_differential:
        case Drive::line_single_ended:
            return line_peak(output);
        case Drive::digital:
            break;
    }
    return std::nullopt;
}

std::optional<PeakVolts> lossless_swing(const OutputStage& output, DcVolts supply, SplitGuess guess) {
    return peak_limit(output, supply, dc_volts(0), guess);
}

Swing calculate_swing(const OutputStage& output, std::optional<Ohms> load, DcVolts supply, DcVolts loss) {
    Swing swing;
    if (output.drive == Drive::digital) return swing;
    OutputStage rated_here = output;
    if (!rated_here.rated_at) rated_here.rated_at = load;
    Supply own;
    own.likely = supply;

    swing.peak = peak_limit(output, supply, loss, SplitGuess::not_bridged);
    if (swing.peak) {
        swing.clean = rms_of_sine(*swing.peak);
        swing.clipped = rms_of_square(*swing.peak);
    }
    const auto rated = is_line(output.drive) ? std::nullopt : rated_volts(rated_here, own);
    if (rated) swing.clean = swing.clean ? std::min(*swing.clean, *rated) : *rated;
    if (swing.clean && load) swing.clean_power = power_in(*swing.clean, *load);
    swing.dc_each = bias(output, supply);
    return swing;
}

}  // namespace tapbook
