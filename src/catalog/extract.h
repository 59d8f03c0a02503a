// What of the catalog can be written down as a file again? The drafts that adding the file would put in, and beside
// them what only stands in the file as a comment: notes of other shops, notes that were withdrawn.
#pragma once

#include <string>
#include <vector>

#include "catalog/batch.h"

namespace tapbook {

// A note that a file may show but must not add again, and why.
struct CommentedNote {
    NoteDraft note;
    std::string reason;
};

struct Extract {
    Batch batch;                       // adding it to the same catalog adds nothing
    std::vector<CommentedNote> notes;  // by path, date, turn and id
};

}  // namespace tapbook
