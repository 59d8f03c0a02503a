// What do the notes of one tap point say together: which two conductors, which of them is positive, where they sit and
// how they are driven?
//
// Colours change at a connector: a note from another side of it than the tap's own has no say on colours, marks,
// cavities or connector. It still has one on the drive, and its readings count.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <vector>

#include "evidence/note_reference.h"
#include "evidence/standing.h"

namespace tapbook {

// One colour that notes name for a conductor.
struct ColourClaim {
    WireColour colour;
    Grade grade = Grade::blank;  // of this colour by itself; within its own years when the year split them
    std::optional<int> first_year, last_year;
    int notes = 0;
};

struct PairStanding {
    // Values "BK|WH": the two codes in order of their text; with equal colours each with its mark, "BN|BN ring". A note
    // that names one colour supports the one pair that holds it; where several or none do, it stands by itself.
    Standing pair;
    // Values: the positive conductor as it stands in the pair. Once a pair is settled, only the notes that support it
    // have a say. "not BN" from notes that only name BN as the negative one.
    Standing polarity;
    std::optional<WireColour> positive, negative;  // only when the pair is settled and the polarity is not disputed
    std::vector<WireColour> conductors;            // of a settled pair, even while the polarity is disputed
    Standing positive_cavity, negative_cavity, connector;
    Standing drive;  // values are the words of Drive; "unknown" has no vote
    std::string positive_mark, negative_mark;
    std::vector<ColourClaim> positive_claims, negative_claims;  // leading first
    int notes = 0;
    int other_side_notes = 0;
    bool altered = false;                  // earlier work by others, found by a note that looked at a car
    std::vector<ToneReading> readings;     // of notes that looked at a car
    std::optional<DcVolts> dc_difference;  // the largest between the two conductors of one car
    std::optional<Gain> bass_cut;          // with rising volume, as one visit read it: see bass_cut.h
    std::vector<NoteReference> relied_on;  // support the settled pair (any pair when none is), best method first
    bool same_colours = false;             // settled, and colour does not tell the two apart
};

// Notes of another kind than `pair` are left out. `side` is the connector side of the tap point; without it, and for
// notes without a side, every note counts as taken there. `withdrawn` counts for the pair and the polarity.
// `proven_elsewhere` only for notes on cars whose sound system was not written down.
PairStanding pair_standing(std::span<const Note> notes, std::optional<ConnectorSide> side, const KnownShops& known,
                           std::optional<int> year = {}, int withdrawn = 0,
                           const ProvenElsewhere& proven_elsewhere = {});

}  // namespace tapbook
