// When is a power circuit live, and which conductor is it? What the notes of one power tap say together.
#pragma once

#include <optional>
#include <span>
#include <vector>

#include "evidence/note_reference.h"
#include "evidence/standing.h"

namespace tapbook {

struct SwitchedStanding {
    Standing circuit;                   // values are the words of SwitchedClass
    Standing wire;                      // values are colour codes
    Standing connector;                 // values as noted
    std::optional<SwitchedClass> live;  // when `circuit` is settled
    std::optional<WireColour> colour;   // when `wire` is settled
    int notes = 0;
    int other_side_notes = 0;  // say nothing on wire and connector
    bool altered = false;
    std::vector<NoteReference> relied_on;  // support the settled class (any class when none is), best method first
    KeyVolts volts;                        // each as the newest note read it that supports the settled class
    std::optional<Seconds> stays_live;     // after key off: the longest that one of `relied_on` measured
};

// Notes of another kind than `switched` are left out; one whose volts were not all read has no say on the class.
// `side` and `proven_elsewhere` as for pair_standing(). `withdrawn` counts for circuit and wire.
SwitchedStanding switched_standing(std::span<const Note> notes, const KnownShops& known, std::optional<int> year = {},
                                   int withdrawn = 0, std::optional<ConnectorSide> side = {},
                                   const ProvenElsewhere& proven_elsewhere = {});

}  // namespace tapbook
