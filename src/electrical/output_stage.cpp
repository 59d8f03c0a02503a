// What follows from the drive alone: line level or not, minus driven or not, and the stage behind a common return.
#include "electrical/output_stage.h"

namespace tapbook {

static_assert(table_is_sound<Drive>());
static_assert(table_is_sound<Stage>());
static_assert(table_is_sound<RatingKind>());

bool is_line(Drive drive) {
    return drive == Drive::line_differential || drive == Drive::line_single_ended;
}

bool is_boosted(Drive drive) {
    return drive == Drive::boosted_split || drive == Drive::boosted_bridged;
}

Drive behaves_as(const OutputStage& output) {
    if (output.drive != Drive::common_return) return output.drive;
    switch (output.common_stage) {
        case Stage::bridged:
            return Drive::bridged;
        case Stage::single_ended:
            return Drive::single_ended;
        case Stage::unknown:
            break;
    }
    return Drive::unknown;
}

bool minus_is_driven(const OutputStage& output) {
    switch (behaves_as(output)) {
        case Drive::bridged:
        case Drive::boosted_bridged:
        case Drive::line_differential:
        case Drive::common_return:
        case Drive::unknown:
            return true;
        case Drive::boosted_split:
            return output.split_is_bridged.value_or(true);
        case Drive::single_ended:
        case Drive::line_single_ended:
        case Drive::digital:
            break;
    }
    return false;
}

}  // namespace tapbook
