// One vote for each system note that says yes or no.
#include "evidence/premium_standing.h"

namespace tapbook {

Standing premium_standing(std::span<const Note> notes, const KnownShops& known, std::optional<int> year,
                          int withdrawn) {
    std::vector<Vote> votes;
    for (const Note& note : notes)
        if (note.kind == NoteKind::system && note.premium)
            votes.push_back(vote_of(note, *note.premium ? "true" : "false"));
    return standing_of(votes, known, year, withdrawn);
}

}  // namespace tapbook
