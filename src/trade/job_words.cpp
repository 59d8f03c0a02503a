// The questions behind the list of a car's state, and what to look at when a job ends with a noise. All common
// practice.
#include "trade/job_words.h"

namespace tapbook {

std::string_view check_question(CheckItem item) {
    switch (item) {
        case CheckItem::lamps:
            return "warning lamps out with the engine running";
        case CheckItem::speakers:
            return "every speaker plays, one after the other";
        case CheckItem::radio:
            return "reception, sources, steering-wheel keys";
        case CheckItem::call:
            return "a call: both sides hear each other";
        case CheckItem::chime:
            return "chimes, indicator and parking sounds";
        case CheckItem::camera:
            return "camera picture";
        case CheckItem::damage:
            return "trim, glass, paint and seats without damage";
        case CheckItem::earlier_work:
            return "no earlier work by others on the sound wiring";
        case CheckItem::other_radio:
            return "the factory radio is in the car";
        case CheckItem::drain:
            return "standby drain once the modules sleep; write the mA";
    }
    return {};
}

namespace {

constexpr NoiseStep noise[] = {
    {"whine that follows the engine's revs",
     "a ground loop or the feed: both grounds of the signal chain to one bare place, feed and signal cable on opposite "
     "sides of the car, an isolating converter"},
    {"hiss, the same at every volume", "gain too high: set it again by the meter (tapbook gain), boost off"},
    {"hum or buzz with the engine off",
     "a shield on chassis at both ends, or a signal cable along mains or lamp leads"},
    {"clicks with switches or indicators", "turn-on lead or signal cable beside that harness; its own fuse-tap source"},
    {"crackle over bumps", "a joint at the tap or a loose ground: pull at each while it plays"},
    {"pops when a source changes", "the radio's own muting: a converter with signal sensing does not see it"},
    {"harsh only when loud", "the converter or the amplifier's input is driven past its limit: read the tap again"}};

constexpr NoiseStep thump[] = {
    {"thump at switching on", "turn-on comes before the radio has settled: delay it one to two seconds"},
    {"thump at switching off", "turn-on stays too long: take it from a lead that falls with the radio"},
    {"thump while starting", "the supply falls below the converter's or amplifier's least volts: hold-up or delay"},
    {"thump at each wake-up", "half-supply sensing on an output that wakes by itself: use a switched circuit"}};

constexpr NoiseStep comeback[] = {
    {"works, then stops", "heat or a fuse: current at full level, cable size, air around the amplifier"},
    {"battery flat", "standby drain after the modules sleep: pull the turn-on lead, then the converter's feed"},
    {"one side weak or thin", "polarity of one tap: send a tone and compare with the catalog's note"},
    {"less bass than before", "volume-dependent bass cut or a tap behind a capacitor: read at two volume steps"}};

}  // namespace

std::span<const NoiseStep> noise_steps(JobOutcome outcome) {
    switch (outcome) {
        case JobOutcome::fine:
            break;
        case JobOutcome::noise:
            return noise;
        case JobOutcome::thump:
            return thump;
        case JobOutcome::comeback:
            return comeback;
    }
    return {};
}

}  // namespace tapbook
