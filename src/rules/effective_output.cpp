// The drive that counts, and the volts that follow from it. Source of the order: a graded note wins over an entry;
// while the drive is disputed or nobody has looked, the more careful value counts.
#include "rules/effective_output.h"

namespace tapbook {

bool is_looked_at(const Standing& standing) {
    if (!standing.value) return false;
    switch (standing.grade) {
        case Grade::one_car:
        case Grade::matched:
        case Grade::proven:
        case Grade::year_split:
            return true;
        case Grade::blank:
        case Grade::paper:
        case Grade::mixed:
        case Grade::pulled:
            break;
    }
    return false;
}

EffectiveOutput effective_output(const TapFacts& tap) {
    EffectiveOutput output{tap.circuit.output};
    const Standing& noted = tap.pair.drive;
    const auto drive = noted.value ? parse_word<Drive>(*noted.value) : std::nullopt;
    if (is_looked_at(noted) && drive) {
        output.differs_from_entry = output.stage.drive != Drive::unknown && output.stage.drive != *drive;
        output.stage.drive = *drive;
        output.source = DriveSource::noted;
        output.minus_is_driven = minus_is_driven(output.stage);
        return output;
    }
    if (noted.grade == Grade::mixed || (noted.grade == Grade::year_split && !noted.value)) {
        output.stage.drive = Drive::unknown;
        output.source = DriveSource::disputed;
        return output;
    }
    output.source = output.stage.drive == Drive::unknown ? DriveSource::unknown : DriveSource::expected;
    return output;
}

TapSignal predict_tap(const CarFacts&, const TapFacts& tap, Hertz lowest) {
    const EffectiveOutput output = effective_output(tap);
    TapSignal signal = predict_signal(output.stage, tap.pair.readings, lowest, {}, tap.pair.dc_difference);
    const bool only_expected_quiet = output.minus_is_driven && !minus_is_driven(output.stage);
    signal.minus_is_driven = output.minus_is_driven;
    if (only_expected_quiet) {
        signal.dc_each.high = std::nullopt;
        signal.common_mode_high = std::nullopt;
    }
    return signal;
}

}  // namespace tapbook
