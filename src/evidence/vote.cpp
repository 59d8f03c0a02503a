// A note's claim becomes a vote: its weight by the scale of the question.
#include "evidence/vote.h"

#include <utility>

#include "evidence/points.h"

namespace tapbook {
namespace {

// Who, which car and when; the weight is left at that of paper.
Vote paper_vote(const Note& note, std::string value) {
    Vote vote;
    vote.value = std::move(value);
    vote.shop = note.shop;
    vote.car = note.car;
    vote.source = folded(note.source);
    vote.year = note.year;
    vote.date = note.date;
    vote.turn = note.turn;
    vote.note = note.id;
    vote.vouched = note.vouched;
    return vote;
}

}  // namespace

Vote vote_of(const Note& note, std::string value) {
    Vote vote = paper_vote(note, std::move(value));
    vote.points = points_after_knowing(pair_points(note.method), note.knew_first, note.has_proof);
    vote.looked_at = looked_at(note.method);
    vote.measured = measured(note.method);
    vote.method_word = word_of(note.method);
    return vote;
}

Vote polarity_vote_of(const Note& note, std::string value) {
    Vote vote = paper_vote(note, std::move(value));
    const bool was_tested = note.polarity && looked_at(*note.polarity) && looked_at(note.method);
    vote.method_word = note.polarity ? method_words(*note.polarity) : "assumed";
    if (!was_tested) return vote;
    vote.points = points_after_knowing(polarity_points(*note.polarity), note.knew_first, note.has_proof);
    vote.looked_at = vote.measured = true;
    return vote;
}

}  // namespace tapbook
