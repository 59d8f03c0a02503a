// Which closed lists of words does a job use? Its state, how it ended, the list that is filled as the car came and as
// it left, and the power phases of the work. One table each.
#pragma once

#include "electrical/electrical.h"

namespace tapbook {

enum class JobState { open, closed };
template <>
struct NamedValues<JobState> {
    static constexpr Named<JobState> all[] = {{JobState::open, "open"}, {JobState::closed, "closed"}};
};
static_assert(table_is_sound<JobState>());

// How a job ended.
enum class JobOutcome { fine, noise, thump, comeback };
template <>
struct NamedValues<JobOutcome> {
    static constexpr Named<JobOutcome> all[] = {{JobOutcome::fine, "fine"},
                                                {JobOutcome::noise, "noise"},
                                                {JobOutcome::thump, "thump"},
                                                {JobOutcome::comeback, "comeback"}};
};
static_assert(table_is_sound<JobOutcome>());

// The two times the list is filled.
enum class CheckList { came, left };
template <>
struct NamedValues<CheckList> {
    static constexpr Named<CheckList> all[] = {{CheckList::came, "came"}, {CheckList::left, "left"}};
};
static_assert(table_is_sound<CheckList>());

// What is looked at, in the order in which it is walked through.
enum class CheckItem {
    lamps,
    speakers,
    radio,
    call,
    chime,
    camera,
    damage,
    earlier_work,
    other_radio,
    drain,
};
template <>
struct NamedValues<CheckItem> {
    static constexpr Named<CheckItem> all[] = {{CheckItem::lamps, "lamps"},
                                               {CheckItem::speakers, "speakers"},
                                               {CheckItem::radio, "radio"},
                                               {CheckItem::call, "call"},
                                               {CheckItem::chime, "chime"},
                                               {CheckItem::camera, "camera"},
                                               {CheckItem::damage, "damage"},
                                               {CheckItem::earlier_work, "earlier-work"},
                                               {CheckItem::other_radio, "other-radio"},
                                               {CheckItem::drain, "drain"}};
};
static_assert(table_is_sound<CheckItem>());

// What to look at for an item; "bad" is what speaks against ok.
std::string_view check_question(CheckItem item);

enum class CheckAnswer { ok, bad, none };
template <>
struct NamedValues<CheckAnswer> {
    static constexpr Named<CheckAnswer> all[] = {
        {CheckAnswer::ok, "ok"}, {CheckAnswer::bad, "bad"}, {CheckAnswer::none, "none"}};
};
static_assert(table_is_sound<CheckAnswer>());

// The order of battery, air bags and live work on a job.
enum class PowerPhase { live_check, power_off, dead_work, power_on, final_check };
template <>
struct NamedValues<PowerPhase> {
    static constexpr Named<PowerPhase> all[] = {{PowerPhase::live_check, "A live check"},
                                                {PowerPhase::power_off, "B power off"},
                                                {PowerPhase::dead_work, "C dead work"},
                                                {PowerPhase::power_on, "D power on"},
                                                {PowerPhase::final_check, "E final check"}};
};
static_assert(table_is_sound<PowerPhase>());

// One line of the short list for a job that ends with a noise or a thump: what is heard, and what to look at.
struct NoiseStep {
    std::string_view heard;
    std::string_view look;
};

// The list for this outcome, likeliest first; empty for fine. Common practice.
std::span<const NoiseStep> noise_steps(JobOutcome outcome);

}  // namespace tapbook
