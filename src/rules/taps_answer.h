// What does the installer see before a panel comes off? All tap points of a car by place, with the predicted volts, the
// switched power, the cautions and what nobody has recorded: the facts of the catalog put in order, nothing new.
#pragma once

#include <string>
#include <vector>

#include "catalog/catalog.h"

namespace tapbook {

struct Caution {
    std::string title;
    std::string text;
};

struct TapAnswer {
    TapFacts facts;
    TapSignal signal;
    std::vector<Caution> cautions;        // hazards on the way to this tap
    std::vector<std::string> confusable;  // other conductors of the same connector that look alike
};

// One place in the car, in the order in which the places are reached.
struct PlaceAnswer {
    std::string place;
    std::vector<std::string> panels;  // what comes off, in order; shared by all taps of the place or of the first
    std::optional<int> minutes;
    std::vector<Caution> cautions;  // hazards shared by all taps of the place
    bool hazards_listed = false;
    std::vector<TapAnswer> pairs;  // speaker and line circuits
    std::vector<TapFacts> power;   // switched and constant power, turn-on leads
    std::vector<TapFacts> others;  // grounds, illumination, data: named so that nobody taps them by mistake
};

struct TapsAnswer {
    CarFacts car;  // systems filtered to the one asked for
    std::vector<PlaceAnswer> places;
    std::vector<TapAnswer> unrecorded;  // notes on cars whose system was not written down
    std::vector<Caution> cautions;      // of the whole car and of every job
    std::vector<std::string> unknown;   // what nobody has recorded, in words
    bool practice = false;
};

// `system` "" for all systems. Places by minutes, then panels, then name. Pairs by system, then circuit.
TapsAnswer taps_answer(CarFacts car, std::string_view system, bool practice);

// The terminal number that wiring diagrams usually give to a power circuit that is live like this one; nullptr while
// its class is not settled, and for what is no feed.
const Terminal* diagram_terminal(const TapFacts& facts);

}  // namespace tapbook
