// What has been found on a car since a day? For each place with newer notes: who found what, and how each answer stood
// before and stands now. The facts of the ledger put in order, nothing new.
#pragma once

#include <span>
#include <string>
#include <vector>

#include "rules/why_answer.h"

namespace tapbook {

struct ChangedPlace {
    std::string path;
    NoteKind kind = NoteKind::pair;
    NotedStanding before, after;  // from the notes before that day, and from all
    std::vector<WhyNote> notes;   // of that day and later, by date
    bool is_moved = false;        // a grade or a value is another one now
};

struct ChangesAnswer {
    std::string since;
    std::vector<ChangedPlace> places;  // those that moved first, then by path
};

// Notes count as of the day they were taken; a withdrawn one is told as such and counts neither before nor now.
ChangesAnswer changes_since(std::span<const TapLedger> ledgers, const std::string& since, std::optional<int> year);

}  // namespace tapbook
