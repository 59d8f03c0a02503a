// A reading of a tone: complete or not, at which notes it holds, and the range it stands for at full scale.
#include "electrical/tone_reading.h"

#include <algorithm>

#include "electrical/laws.h"
#include "electrical/swing.h"

namespace tapbook {

static_assert(table_is_sound<MissingCondition>());

namespace {

// By how much the swing grows from the supply that was read to the fullest one; absent when the reading's own supply
// does not overcome the losses.
std::optional<Ratio> growth(DcVolts read, DcVolts full, DcVolts lost) {
    if (read <= lost) return std::nullopt;
    return std::max(ratio(1), (full - lost) / (read - lost));
}

std::optional<Ratio> supply_factor(const OutputStage& output, DcVolts read, const Supply& supply) {
    switch (behaves_as(output)) {
        case Drive::bridged:
        case Drive::common_return:
        case Drive::unknown:
            return growth(read, supply.clean_high, 2 * supply.loss_high);
        case Drive::single_ended:
            return growth(read / 2, supply.clean_high / 2, supply.loss_high);
        case Drive::boosted_split:
        case Drive::boosted_bridged:
        case Drive::line_differential:
        case Drive::line_single_ended:
        case Drive::digital:
            break;
    }
    return ratio(1);
}

std::optional<RmsVolts> cap(const OutputStage& output, const Supply& supply) {
    if (behaves_as(output) == Drive::unknown || is_line(output.drive)) return std::nullopt;
    const auto peak = peak_limit(output, supply.clean_high, supply.loss_high, SplitGuess::bridged);
    if (!peak) return std::nullopt;
    return rms_of_sine(*peak);
}

}  // namespace

std::vector<MissingCondition> missing_conditions(const ToneReading& reading, const Supply& supply) {
    std::vector<MissingCondition> missing;
    const auto need = [&](bool met, MissingCondition condition) {
        if (!met) missing.push_back(condition);
    };
    need(reading.volts > rms_volts(0), MissingCondition::volts);
    need(reading.frequency && *reading.frequency > hertz(0), MissingCondition::frequency);
    need(reading.level && *reading.level <= dbfs(0), MissingCondition::level);
    need(reading.supply && *reading.supply > 2 * supply.loss_high, MissingCondition::supply);
    need(reading.full_volume == true, MissingCondition::full_volume);
    need(reading.speaker_connected == true, MissingCondition::speaker_connected);
    need(reading.controls_flat == true, MissingCondition::controls_flat);
    need(reading.music != true, MissingCondition::tone);
    return missing;
}

bool holds_at(const ToneReading& reading, Hertz note) {
    return reading.frequency && note <= *reading.frequency * 2 && *reading.frequency <= note * 2;
}

WidenedReading widen(const ToneReading& reading, const OutputStage& output, const Supply& supply) {
    const RmsVolts volts = at_full_scale(reading.volts, reading.level.value_or(dbfs(0)));
    const Ratio tolerance = reading.true_rms == true ? supply.true_rms_tolerance : supply.other_meter_tolerance;
    const Ratio factor = reading.supply ? supply_factor(output, *reading.supply, supply).value_or(ratio(1)) : ratio(1);
    const RmsVolts widened = volts * (ratio(1) + tolerance) * factor;
    const auto most = cap(output, supply);
    const bool capped = most && widened > *most;
    return WidenedReading{
        volts * (ratio(1) - tolerance), volts, capped ? std::max(*most, volts) : widened, tolerance, factor, capped};
}

}  // namespace tapbook
