// See changes_answer.h.
#include "rules/changes_answer.h"

#include <algorithm>

namespace tapbook {
namespace {

bool is_other(const NotedStanding& a, const NotedStanding& b) {
    for (const Question question : questions_of(a.kind)) {
        const Standing &before = standing_on(a, question), &after = standing_on(b, question);
        if (before.grade != after.grade || before.value != after.value) return true;
    }
    return false;
}

ChangedPlace changed_place(const TapLedger& ledger, const std::string& since, std::optional<int> year) {
    const std::vector<Note> live = ledger.live();
    std::vector<Note> earlier;
    std::copy_if(live.begin(), live.end(), std::back_inserter(earlier),
                 [&](const Note& note) { return note.date < since; });
    ChangedPlace place;
    place.path = ledger.path;
    place.kind = ledger.kind;
    place.before = noted_standing(ledger.kind, earlier, ledger.witnesses, year);
    place.after = noted_standing(ledger.kind, live, ledger.witnesses, year);
    place.is_moved = is_other(place.before, place.after);
    for (auto& note : why_answer(ledger, year).notes)
        if (note.date >= since) place.notes.push_back(std::move(note));
    return place;
}

}  // namespace

ChangesAnswer changes_since(std::span<const TapLedger> ledgers, const std::string& since, std::optional<int> year) {
    ChangesAnswer answer;
    answer.since = since;
    for (const auto& ledger : ledgers) {
        const bool is_new = std::any_of(ledger.notes.begin(), ledger.notes.end(),
                                        [&](const LedgerNote& one) { return one.note.date >= since; });
        if (is_new) answer.places.push_back(changed_place(ledger, since, year));
    }
    std::stable_sort(answer.places.begin(), answer.places.end(), [](const ChangedPlace& a, const ChangedPlace& b) {
        if (a.is_moved != b.is_moved) return a.is_moved;
        return a.path < b.path;
    });
    return answer;
}

}  // namespace tapbook
