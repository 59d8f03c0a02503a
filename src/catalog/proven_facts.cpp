// Each place's notes are parted at the day; the earlier ones are graded, the later ones are held against the grade.
#include <algorithm>

#include "catalog/noted_cars.h"
#include "catalog/proven_fact.h"

namespace tapbook {
namespace {

struct Parted {
    std::vector<Note> earlier, later;
};

Parted parted_at(const std::vector<Note>& notes, const std::string& day) {
    Parted parted;
    for (const Note& note : notes) (day.empty() || note.date < day ? parted.earlier : parted.later).push_back(note);
    return parted;
}

// Polarity and pair are only settled by an instrument; whether an amplifier is there can be seen.
bool settles(const Vote& vote, Question question) {
    return vote.looked_at && (vote.measured || question == Question::premium);
}

void judge_by(ProvenFact& fact, const std::vector<Vote>& later, const std::string& value) {
    for (const Vote& vote : later) {
        if (!settles(vote, fact.question)) continue;
        ++fact.looks;
        if (vote.value != value) fact.verdict = AuditVerdict::wrong;
        if (vote.value == value && fact.verdict == AuditVerdict::open) fact.verdict = AuditVerdict::right;
    }
}

}  // namespace

std::vector<ProvenFact> Catalog::proven_facts(const std::string& day) const {
    try {
        auto& database = state_->database;
        const auto [known, same] = counting_in(database);
        std::vector<ProvenFact> facts;
        const auto cars = noted_cars(database);
        PlacesSeen seen(same);
        Steps steps(state_->progress, static_cast<std::int64_t>(cars.size()));
        for (const auto& car : cars) {
            steps.one();
            const LedgerNotes ledger = notes_of_car(database, same, car);
            const auto sides = sides_of_taps(database, same, car);
            for (const auto& [path, notes] : ledger.live) {
                const Parted parted = parted_at(notes, day);
                if (parted.earlier.empty() || !seen.insert_first(path)) continue;
                const NoteKind kind = parted.earlier.front().kind;
                const auto side = sides.find(path);
                const Witnesses witnesses{
                    side == sides.end() ? std::nullopt : std::optional(side->second), known, 0, {}};
                const NotedStanding standing = noted_standing(kind, parted.earlier, witnesses);
                for (const Question question : questions_of(kind)) {
                    const Standing& answer = standing_on(standing, question);
                    if (answer.grade != Grade::proven || !answer.value) continue;
                    ProvenFact fact{path, question, value_words(question, *answer.value), line_on(standing, question)};
                    judge_by(fact, votes_on(question, parted.later, witnesses.side, standing.pair.pair.value),
                             *answer.value);
                    facts.push_back(std::move(fact));
                }
            }
        }
        return facts;
    } catch (const sqlite::Error& error) {
        throw_catalog_error(error, state_->file);
    }
}

}  // namespace tapbook
