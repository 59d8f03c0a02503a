// What belongs to an install beside tap, converter and amplifier: what wakes it, what feeds it, what it drives, and
// what each may say of itself. The values the relations turn_on, feed, load and plan are read from.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "catalog/catalog.h"
#include "rules/finding.h"

namespace tapbook {

// One way to wake the amplifier.
struct TurnOnFacts {
    TurnOnKind kind = TurnOnKind::converter;
    std::string code;             // "own-input", "converter", or the tap point's whole path
    std::optional<TapFacts> tap;  // of a lead or a power circuit
    KeyVolts volts;               // newest of the notes relied on
    TurnOnCurrent current;
};

// The main cable of one amplifier, as judged.
struct FeedFacts {
    FeedReport report;
    Metres length = metres(0);  // as measured on the car
};

struct LoadFacts {
    OutputLoad load;
    std::optional<Watts> speaker;  // continuous power of what hangs there
    std::optional<Watts> set_for;  // what the gain is set for; absent when the amplifier prints nothing for this load
};

// What the plan's own list of work shows when it is looked at as a whole.
struct PlanFacts {
    int conductors = 0;             // that are joined
    int conductors_twice = 0;       // of them, named more than once
    int conductors_unknown = 0;     // of them, without a proved colour
    int steps_out_of_order = 0;     // before something they need
    int live_with_airbag_open = 0;  // live steps while an air-bag connector may be open
    std::optional<StandingTime> standing;
    std::optional<int> minutes_to_tap;
    std::optional<int> minutes_taken_before;  // median of this shop's closed jobs on this car and sound system
};

// What the job says beyond the car, the tap and the parts.
struct InstallAsk {
    std::string turn_on;            // code of a TurnOnFacts; "" for the best
    std::optional<Metres> length;   // main cable, one way
    std::optional<CableSize> size;  // absent: the thinnest good one
    CableConditions conditions = {};
    std::optional<Ohms> load;  // of one output
    std::string load_words;    // as it was written
    bool bridged = false;
    std::optional<Watts> speaker;
};

// The ask in a job's plan. REQUIRES: the plan's texts were read when they were written; what cannot be read is absent.
InstallAsk ask_of(const JobPlan& plan);

struct JudgedTurnOn {
    TurnOnFacts facts;
    Verdict verdict = Verdict::fits;
    std::vector<Finding> findings;
};

// Everything that was judged, ready to be shown.
struct Install {
    InstallAsk ask;
    std::vector<JudgedTurnOn> turn_ons;  // best first: verdict, fewer cares, the order of TurnOnKind, code
    std::size_t turn_on = 0;             // index of the one that is planned; see planned_turn_on()
    std::optional<FeedFacts> feed;       // absent without an amplifier, its power or the measured length
    std::string feed_missing;            // why it is absent, in words; "" when it is there
    std::vector<Finding> feed_findings;
    std::optional<LoadFacts> load;  // absent without amplifier or load
    std::vector<Finding> load_findings;
    std::optional<LoadResistor> resistor;  // in the place of a speaker that is removed and watched
    std::optional<LevelAnswer> levels;     // absent without a part
    std::optional<RmsVolts> gain_target;   // at full scale; absent without amplifier power
    std::optional<Watts> gain_power;       // that it is set for
    std::optional<Ohms> gain_load;
    PlanFacts plan;
    std::vector<Finding> plan_findings;
};

// The planned turn-on; nullptr when none is known, or the chosen one is refused.
const JudgedTurnOn* planned_turn_on(const Install& install);

}  // namespace tapbook
