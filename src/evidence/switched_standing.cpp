// Three questions voted one by one: when the circuit is live, the conductor's colour, the connector.
#include "evidence/switched_standing.h"

#include <algorithm>

#include "evidence/noted_text.h"
#include "evidence/reliance.h"

namespace tapbook {
namespace {

// The notes relied on, newest first.
std::vector<const Note*> supporting_notes(const std::vector<NoteReference>& relied_on,
                                          std::span<const Note* const> notes) {
    std::vector<const Note*> supporting;
    for (const Note* note : notes) {
        const auto is_it = [&](const NoteReference& reference) { return reference.id == note->id; };
        if (std::any_of(relied_on.begin(), relied_on.end(), is_it)) supporting.push_back(note);
    }
    std::sort(supporting.begin(), supporting.end(), [](const Note* a, const Note* b) { return is_newer(*a, *b); });
    return supporting;
}

// For each position of the key what the newest of them read there.
KeyVolts newest_volts(std::span<const Note* const> supporting) {
    KeyVolts volts;
    for (const Note* note : supporting) {
        if (!volts.off) volts.off = note->key_off;
        if (!volts.accessory) volts.accessory = note->accessory;
        if (!volts.run) volts.run = note->run;
        if (!volts.crank) volts.crank = note->crank;
    }
    return volts;
}

// The careful value: the longest that one of them measured.
std::optional<Seconds> longest_retained(std::span<const Note* const> supporting) {
    std::optional<Seconds> longest;
    for (const Note* note : supporting)
        if (note->retained && (!longest || *note->retained > *longest)) longest = note->retained;
    return longest;
}

}  // namespace

SwitchedStanding switched_standing(std::span<const Note> notes, const KnownShops& known, std::optional<int> year,
                                   int withdrawn, std::optional<ConnectorSide> side,
                                   const ProvenElsewhere& proven_elsewhere) {
    SwitchedStanding standing;
    std::vector<const Note*> all;
    std::vector<Vote> classes, wires;
    std::vector<NotedText> connectors;
    for (const Note& note : notes) {
        if (note.kind != NoteKind::switched) continue;
        all.push_back(&note);
        if (const auto live = switched_class(note)) classes.push_back(vote_of(note, std::string(word_of(*live))));
        if (is_other_side(note, side)) {
            ++standing.other_side_notes;
            continue;
        }
        if (note.wire) wires.push_back(vote_of(note, code(*note.wire)));
        connectors.push_back({&note, note.connector});
    }
    standing.notes = static_cast<int>(all.size());
    standing.altered = found_altered(all);
    standing.circuit = unrecorded_standing_of(classes, known, year, withdrawn, proven_elsewhere);
    standing.wire = standing_of(wires, known, year, withdrawn);
    standing.connector = text_standing(connectors, known, year);
    if (standing.circuit.value) standing.live = parse_word<SwitchedClass>(*standing.circuit.value);
    if (standing.wire.value) standing.colour = wire_colour_from_code(*standing.wire.value);
    standing.relied_on = relied_on(standing.circuit, classes, all);
    if (standing.live) {
        const auto supporting = supporting_notes(standing.relied_on, all);
        standing.volts = newest_volts(supporting);
        standing.stays_live = longest_retained(supporting);
    }
    return standing;
}

}  // namespace tapbook
