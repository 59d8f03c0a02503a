// Does a new note fit what is known already? Nothing here refuses: what contradicts a PROVEN value or every sister trim
// is asked back, and can always be saved, since the reading that disproves the catalog is the most valuable one.
#pragma once

#include <span>
#include <string>
#include <vector>

#include "evidence/entry_checks.h"
#include "evidence/questions.h"

namespace tapbook {

// The same circuit and tap in another sound system or body of the model, with its settled pair.
struct SisterTap {
    std::string path;
    std::string pair;  // value of the pair's standing
};

// What to ask back about `note`, in the order of its questions; then what it should know. `before` are the live notes
// of the place without it.
std::vector<EntryComplaint> check_against_ledger(const Note& note, std::span<const Note> before,
                                                 const Witnesses& witnesses, std::span<const SisterTap> sisters);

}  // namespace tapbook
