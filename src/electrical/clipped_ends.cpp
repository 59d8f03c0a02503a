// What a saturated output sends (to be survived, not to be used): a square wave of the peak limit, and at the high end
// of the whole supply or rail. A line output clips to a square wave of the peak of its largest sine.
#include <algorithm>

#include "electrical/laws.h"
#include "electrical/signal_ends.h"
#include "electrical/swing.h"

namespace tapbook {

namespace {

End saturated(const OutputStage& output, DcVolts supply, DcVolts loss, SplitGuess guess, Why why) {
    const auto peak = peak_limit(output, supply, loss, guess);
    if (!peak) return absent_end(Why::rail_unknown);
    End end = absent_end(why);
    end.volts = rms_of_square(*peak);
    end.reason.supply = is_boosted(output.drive) ? output.rail : supply;
    if (loss > dc_volts(0)) end.reason.loss = loss;
    end.reason.judged_as_bridged = behaves_as(output) == Drive::unknown;
    return end;
}

End saturated_line(const OutputStage& output, const End& clean) {
    if (!clean.volts && !output.line_volts) return absent_end(Why::line_level_unknown);
    const RmsVolts sine = std::max(clean.volts.value_or(rms_volts(0)), output.line_volts.value_or(rms_volts(0)));
    End end = absent_end(Why::saturated_line);
    end.volts = rms_of_square(peak_of_sine(sine));
    return end;
}

void keep_above(End& clipped, const End& clean) {
    if (!clipped.volts || !clean.volts || *clipped.volts >= *clean.volts) return;
    clipped = End{clean.volts, clean.reason};
    clipped.reason.why = Why::not_below_clean;
}

}  // namespace

Ends clipped_ends(const OutputStage& output, const Ends& clean, const Supply& supply) {
    if (output.drive == Drive::digital) {
        const End none = absent_end(Why::no_analogue_signal);
        return {none, none, none};
    }
    if (is_line(output.drive)) {
        return {saturated_line(output, clean.low), saturated_line(output, clean.likely),
                saturated_line(output, clean.high)};
    }
    Ends ends{saturated(output, supply.low, supply.loss_low, SplitGuess::not_bridged, Why::saturated_output),
              saturated(output, supply.likely, supply.loss_likely, SplitGuess::not_bridged, Why::saturated_output),
              saturated(output, supply.high, dc_volts(0), SplitGuess::bridged, Why::lossless_swing)};
    if (behaves_as(output) == Drive::unknown) ends.high = absent_end(Why::drive_unknown);
    keep_above(ends.low, clean.low);
    keep_above(ends.likely, clean.likely);
    keep_above(ends.high, clean.high);
    return ends;
}

}  // namespace tapbook
