// How does a factory output feed the pair? The drive, and the few facts that decide how far it can swing.
// How far each drive swings is in swing.h. Everything not recorded is absent.
#pragma once

#include <optional>

#include "electrical/named.h"
#include "electrical/units.h"

namespace tapbook {

enum class Drive {
    bridged,            // from the vehicle supply; neither conductor is ground
    single_ended,       // one side through a capacitor
    boosted_split,      // own converter, two rails around ground
    boosted_bridged,    // own converter, one rail, neither conductor is ground
    line_differential,  // low level, two driven conductors
    line_single_ended,  // low level, one driven conductor
    common_return,      // one minus for several speakers; behaves as its stage
    digital,            // no analogue signal exists here
    unknown,
};

template <>
struct NamedValues<Drive> {
    static constexpr Named<Drive> all[] = {
        {Drive::bridged, "bridged"},
        {Drive::single_ended, "single_ended"},
        {Drive::boosted_split, "boosted_split"},
        {Drive::boosted_bridged, "boosted_bridged"},
        {Drive::line_differential, "line_differential"},
        {Drive::line_single_ended, "line_single_ended"},
        {Drive::common_return, "common_return"},
        {Drive::digital, "digital"},
        {Drive::unknown, "unknown"},
    };
};

enum class Stage { bridged, single_ended, unknown };

template <>
struct NamedValues<Stage> {
    static constexpr Named<Stage> all[] = {
        {Stage::bridged, "bridged"}, {Stage::single_ended, "single_ended"}, {Stage::unknown, "unknown"}};
};

// What a printed power means: 1 % distortion or less, 10 %, or the saturated square wave.
enum class RatingKind { continuous, at_10_percent, maximum };

template <>
struct NamedValues<RatingKind> {
    static constexpr Named<RatingKind> all[] = {{RatingKind::continuous, "continuous"},
                                                {RatingKind::at_10_percent, "at_10_percent"},
                                                {RatingKind::maximum, "maximum"}};
};

struct OutputStage {
    Drive drive = Drive::unknown;
    std::optional<DcVolts> rail;           // of a boosted stage; for two rails, one of them to ground
    std::optional<bool> split_is_bridged;  // boosted_split only
    Stage common_stage = Stage::unknown;   // common_return only
    std::optional<Watts> rated;            // as printed
    RatingKind rating_kind = RatingKind::continuous;
    std::optional<Ohms> rated_at;        // the load the rating is stated for, not the speaker's
    std::optional<RmsVolts> line_volts;  // rated level of a line drive
    std::optional<Ohms> output_impedance;
};

// Is this a low-level output, meant for another amplifier and not for a speaker?
bool is_line(Drive drive);

// Is the output fed by a converter of its own, so that its rail counts and not the vehicle supply?
bool is_boosted(Drive drive);

// May the minus conductor carry signal or bias, so that a path from it to chassis or to another output does harm?
// True for bridged, boosted_bridged, boosted_split (bridged or not known), common_return (stage bridged or not known),
// line_differential and unknown. False for single_ended, line_single_ended and digital.
bool minus_is_driven(const OutputStage& output);

// The drive whose swing and bias this output shares: common_return becomes bridged, single_ended or unknown by its
// stage; every other drive is its own.
Drive behaves_as(const OutputStage& output);

}  // namespace tapbook
