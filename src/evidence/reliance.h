// Which notes does an answer rest on, and did anybody find earlier work? For this folder only.
#pragma once

#include <span>
#include <vector>

#include "evidence/note_reference.h"
#include "evidence/standing.h"

namespace tapbook {

// The votes that support the standing's value (any value when none is picked) and were not struck, as references to
// their notes: most points first, then newest. REQUIRES every vote's note among `notes`.
std::vector<NoteReference> relied_on(const Standing& standing, std::span<const Vote> votes,
                                     std::span<const Note* const> notes);

// Earlier work by others, found by a note that looked at a car.
bool found_altered(std::span<const Note* const> notes);

// Was the note taken on another side of the connector than `side`? False when either is not known.
bool is_other_side(const Note& note, std::optional<ConnectorSide> side);

}  // namespace tapbook
