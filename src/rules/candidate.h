// What is judged? One tap of one car, for one job, with or without a converter and an amplifier: everything that the
// columns of the rules read, side by side. It owns nothing but the numbers of the chain.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "rules/effective_output.h"
#include "rules/install.h"

namespace tapbook {

struct JobRequest {
    Hertz lowest;             // lowest note that shall be played
    int channels_wanted = 2;  // of the amplifier
    std::optional<int> year;  // of the car, when it was asked for
};

// What lies around a tap at its place.
struct TapSurroundings {
    int pairs_here = 1;                   // signal pairs of the same system at the same place, this one included
    std::vector<std::string> lookalikes;  // other conductors of the connector that look alike, in words
    std::optional<Gain> delay_loss = decibels(0);  // what delay between the pairs here costs; absent: not recorded
    int power_taps = 0;                            // of the same system, switched or constant
};

struct Candidate {
    const Vehicle& vehicle;
    const SystemFacts& system;
    const TapFacts& tap;
    const EffectiveOutput& output;
    const TapSignal& signal;
    const TapSurroundings& surroundings;
    JobRequest job;
    const Converter* converter = nullptr;  // nullptr: the tap alone is judged
    const Terms* terms = nullptr;          // of the converter
    const Amplifier* amplifier = nullptr;  // nullptr: nobody has chosen one
    LevelChain chain = {};                 // REQUIRES: of this tap, converter and amplifier
    int pairs = 1;                         // the converter takes on this job
    // What the rules about the whole install read; nullptr while only the tap and the part are judged.
    const TurnOnFacts* turn_on = nullptr;
    const FeedFacts* feed = nullptr;
    const LoadFacts* load = nullptr;
    const PlanFacts* plan = nullptr;
};

}  // namespace tapbook
