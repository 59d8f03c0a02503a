// Three questions voted one by one: when the circuit is live, the conductor's colour, the connector.
#include "evidence/switched_standing.h"

#include "evidence/noted_text.h"
#include "evidence/reliance.h"

namespace tapbook {

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
    return standing;
}

}  // namespace tapbook
