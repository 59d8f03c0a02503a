// Everything the rules and reports need to know about one car and the shop's shelf, read from the store in one go.
// Plain values: no store behind them.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "catalog/batch.h"
#include "evidence/evidence.h"

namespace tapbook {

struct SystemFacts {
    SoundSystem entry;
    std::string code;  // last part of its path
    Standing premium;  // what system notes say; value "true" or "false"
    TextList noted_tells;
};

struct TapFacts {
    std::string code;    // the tap point's whole path
    std::string system;  // code of its sound system
    Circuit circuit;
    TapPoint tap;
    PairStanding pair;          // speaker and line circuits
    SwitchedStanding switched;  // power circuits
    TextList also;              // other paths that were said to be this place
    int concurrent_edits = 0;   // other edits of the same revision that nobody has settled
};

struct CarFacts {
    Vehicle vehicle;                   // under its smallest path
    TextList also;                     // other paths that were said to be this car
    std::vector<SystemFacts> systems;  // by code
    std::vector<TapFacts> taps;        // of all systems, in path order
    std::vector<TapFacts> unrecorded;  // notes on cars whose system was not written down: shown, never counted
    std::optional<SystemFacts> unrecorded_system;  // system notes on such cars; absent when there are none
    std::optional<int> year;                       // the model year that was asked for
};

struct ShelfConverter {
    Converter part;
    Terms terms;
};

// The ledger of one vehicle, for the foot of a page.
struct LedgerState {
    std::int64_t notes = 0;
    std::string newest;
};

struct JobFacts {
    CarFacts car;
    std::vector<ShelfConverter> converters;  // by path
    std::optional<Amplifier> amplifier;
    bool practice = false;
};

// Does the circuit carry a signal that a converter can take (speaker or line level)?
bool carries_signal(Role role);

// Is it a power or turn-on circuit?
bool is_power(Role role);

}  // namespace tapbook
