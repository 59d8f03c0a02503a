// The largest undistorted volts: from complete readings, else from rating and swing, else from the line level.
#include <algorithm>

#include "electrical/laws.h"
#include "electrical/rating.h"
#include "electrical/signal_ends.h"
#include "electrical/swing.h"

namespace tapbook {

namespace {

// What one end assumes.
struct Assumed {
    DcVolts supply;
    DcVolts loss;
    SplitGuess guess;
    Ratio rating_margin;
};

End from_rating(const OutputStage& output, RmsVolts volts, const Assumed& assumed) {
    Reason reason;
    reason.why = assumed.rating_margin > ratio(1) ? Why::rating_with_margin : Why::rating;
    reason.rated = output.rated;
    reason.rated_at = output.rated_at;
    return End{volts * assumed.rating_margin, reason};
}

End from_swing(const OutputStage& output, PeakVolts peak, const Assumed& assumed) {
    Reason reason;
    reason.why = Why::swing_limit;
    reason.supply = is_boosted(output.drive) ? output.rail : assumed.supply;
    reason.loss = assumed.loss;
    return End{rms_of_sine(peak), reason};
}

End rated_or_swing(const OutputStage& output, const Assumed& assumed, const Supply& supply) {
    const auto peak = peak_limit(output, assumed.supply, assumed.loss, assumed.guess);
    const auto rated = rated_volts(output, supply);
    if (!peak && !rated) return absent_end(Why::rail_unknown);
    if (!peak) return from_rating(output, *rated, assumed);
    const End swing = from_swing(output, *peak, assumed);
    if (!rated) return swing;
    const End rating = from_rating(output, *rated, assumed);
    return *rating.volts < *swing.volts ? rating : swing;
}

End line_end(const OutputStage& output) {
    if (!output.line_volts) return absent_end(Why::line_level_unknown);
    End end = absent_end(Why::line_rating);
    end.volts = output.line_volts;
    return end;
}

End from_reading(RmsVolts volts, const WidenedReading& widened, Why why) {
    Reason reason;
    reason.why = why;
    reason.reading = widened.reading;
    reason.tolerance = widened.tolerance;
    if (widened.supply_factor > ratio(1)) reason.supply_factor = widened.supply_factor;
    return End{volts, reason};
}

// REQUIRES readings not empty. The middle one, or the mean of the middle two.
RmsVolts median(std::vector<WidenedReading> readings) {
    std::sort(readings.begin(), readings.end(), [](const auto& a, const auto& b) { return a.reading < b.reading; });
    const std::size_t half = readings.size() / 2;
    if (readings.size() % 2 == 1) return readings[half].reading;
    return (readings[half - 1].reading + readings[half].reading) / 2;
}

}  // namespace

End absent_end(Why why) {
    Reason reason;
    reason.why = why;
    return End{std::nullopt, reason};
}

Ends clean_without_reading(const OutputStage& output, const Supply& supply) {
    if (output.drive == Drive::digital) {
        const End none = absent_end(Why::no_analogue_signal);
        return {none, none, none};
    }
    if (is_line(output.drive)) {
        const End rated = line_end(output);
        return {rated, rated, rated};
    }
    const Assumed low{supply.low, supply.loss_low, SplitGuess::not_bridged, ratio(1)};
    const Assumed likely{supply.likely, supply.loss_likely, SplitGuess::not_bridged, ratio(1)};
    const Assumed high{supply.clean_high, supply.loss_high, SplitGuess::bridged, supply.rating_margin};
    Ends ends{rated_or_swing(output, low, supply), rated_or_swing(output, likely, supply),
              rated_or_swing(output, high, supply)};
    if (behaves_as(output) == Drive::unknown) {
        ends.low.reason.judged_as_bridged = true;
        ends.likely.reason.judged_as_bridged = true;
        ends.high = absent_end(Why::drive_unknown);
    }
    return ends;
}

Ends clean_from_readings(const OutputStage& output, std::span<const ToneReading> readings, const Supply& supply) {
    std::vector<WidenedReading> widened;
    for (const ToneReading& reading : readings) widened.push_back(widen(reading, output, supply));
    const auto& lowest =
        *std::min_element(widened.begin(), widened.end(), [](const auto& a, const auto& b) { return a.low < b.low; });
    const auto& highest =
        *std::max_element(widened.begin(), widened.end(), [](const auto& a, const auto& b) { return a.high < b.high; });
    Ends ends{from_reading(lowest.low, lowest, Why::lowest_reading), absent_end(Why::median_reading),
              from_reading(highest.high, highest, highest.capped ? Why::highest_reading_capped : Why::highest_reading)};
    ends.low.reason.supply_factor.reset();
    ends.likely.volts = median(widened);
    ends.likely.reason.reading = ends.likely.volts;
    ends.high.reason.judged_as_bridged = behaves_as(output) == Drive::unknown;
    return ends;
}

}  // namespace tapbook
