// One chain and the stage that clips first. Method in the header.
#include "electrical/level_answer.h"

#include "electrical/adding.h"
#include "electrical/laws.h"

namespace tapbook {

static_assert(table_is_sound<ClipPlace>());

namespace {

// Tap volts that make `sent` volts behind the adding point and the smallest gain. Absent when either is not known.
std::optional<RmsVolts> tap_volts_sending(RmsVolts sent, const LevelRequest& request, const ConverterSpec& converter) {
    if (!converter.gain_min) return std::nullopt;
    const RmsVolts at_adding_point = sent / *converter.gain_min;
    if (request.added_taps <= 1) return at_adding_point;
    if (!converter.adding) return std::nullopt;
    return raised(at_adding_point, -coherent_gain(*converter.adding, request.added_taps));
}

void consider(std::optional<FirstClip>& first, ClipPlace place, std::optional<RmsVolts> tap) {
    if (tap && (!first || *tap < first->tap)) first = FirstClip{place, *tap};
}

}  // namespace

std::optional<FirstClip> first_clip(const LevelRequest& request, const ConverterSpec& converter,
                                    const AmplifierSpec* amplifier) {
    std::optional<FirstClip> first;
    const auto input_limit = limit_at(converter, request.lowest);
    if (converter.topology == Topology::direct) {
        consider(first, ClipPlace::amplifier_input, input_limit);
        return first;
    }
    consider(first, ClipPlace::converter_input, input_limit);
    const auto& output_limit = converter.output_max;
    if (output_limit)
        consider(first, ClipPlace::converter_output, tap_volts_sending(*output_limit, request, converter));
    const auto amplifier_limit = level_chain(request, converter, amplifier).overload_limit;
    if (amplifier_limit && !(output_limit && *output_limit <= *amplifier_limit))
        consider(first, ClipPlace::amplifier_input, tap_volts_sending(*amplifier_limit, request, converter));
    return first;
}

LevelAnswer calculate_level(const LevelRequest& request, const ConverterSpec& converter,
                            const AmplifierSpec* amplifier) {
    LevelAnswer answer{request, converter.topology, {}, {}, {}, {}, {}, {}, {}, {}};
    answer.limit_at_lowest = limit_at(converter, request.lowest);
    answer.headroom = headroom(converter, request.lowest, request.clean.high);
    answer.drive_margin = drive_margin(converter, request.clean.low);
    answer.corner_loss = corner_loss(converter, request.lowest);
    answer.chain = level_chain(request, converter, amplifier);
    if (amplifier) answer.rated = rated_power(*amplifier, request.load);
    answer.first_clip = first_clip(request, converter, amplifier);
    if (answer.first_clip && request.clean.high) answer.clips = *request.clean.high > answer.first_clip->tap;
    return answer;
}

}  // namespace tapbook
