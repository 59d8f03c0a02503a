// Does the advice on what is lacking hold when it is followed, and is no shorter way passed over?
#include "evidence/next_step.h"

#include <catch2/catch.hpp>
#include <tuple>

#include "evidence/ledgers.h"
#include "evidence/notes.h"

using namespace tapbook;
using ledgers::known;
using ledgers::pair_note;
using ledgers::vote;

namespace {

Witnesses witnesses() {
    Witnesses list;
    list.known = known();
    return list;
}

std::string next_of(const std::vector<Note>& notes) {
    return next_step(NoteKind::pair, notes, witnesses(), "S1");
}

// The votes after the plan was followed with new cars, at this shop and at shops that were not there before.
Grade grade_after(std::vector<Vote> votes, const std::string& value, const ProvingPlan& plan) {
    KnownShops shops = known();
    int number = 900;
    for (int i = 0; i < plan.here; ++i)
        votes.push_back(vote(++number, value, Method::metered, "S1", "new " + std::to_string(i)));
    for (int shop = 0; shop < plan.others; ++shop) {
        const std::string name = "N" + std::to_string(shop);
        shops.insert(name);
        for (int i = 0; i < plan.each; ++i)
            votes.push_back(vote(++number, value, Method::metered, name, "new " + std::to_string(i)));
    }
    return standing_of(votes, shops).grade;
}

}  // namespace

TEST_CASE("what is lacking is said in cars and shops") {
    CHECK(next_of({}) == "No note says it yet; one look is enough to start.");
    CHECK(next_of({pair_note(1, "WH", "BK").in(2014)}) == "One more metered car at another shop would prove it.");
    CHECK(next_of({pair_note(1, "WH", "BK").in(2014), pair_note(2, "WH", "BK").by("S1", "b").in(2015)}) ==
          "One more metered car at another shop would prove it.");
    CHECK(next_of({pair_note(1, "WH", "BK").how(Method::copied)}) ==
          "One more metered car at this shop and one at another shop would prove it.");
    CHECK(next_of({pair_note(1, "WH", "BK"), pair_note(2, "TN", "BK").by("S2")}) ==
          "The notes disagree: nothing is picked until one value leads by far. Meter one more car.");
}

TEST_CASE("shops that are not on the list are named as what is lacking") {
    CHECK(next_of({pair_note(1, "WH", "BK"), pair_note(2, "WH", "BK").by("X1", "b")}) ==
          "It would be proven if the shops behind it were on your list: `tapbook shops` shows them.");
}

TEST_CASE("a proven pair asks for its polarity, and a proven polarity for nothing but a meter") {
    const auto phase = PolarityMethod::phase;
    std::vector<Note> notes = {pair_note(1, "WH", "BK"), pair_note(2, "WH", "BK").by("S2", "b")};
    CHECK(next_of(notes).starts_with("The pair is proven. For the polarity: "));
    for (auto& note : notes) note.polarity = phase;
    CHECK(next_of(notes) == "Proven. Meter before you cut all the same.");
}

TEST_CASE("following the plan proves the value, and no plan with fewer cars does") {
    ledgers::Dice dice(11);
    int followed = 0;
    for (int round = 0; round < 400; ++round) {
        const auto votes = ledgers::any_votes(dice, 7);
        const auto plan = proving_plan(votes, known(), "S1");
        if (!plan) continue;
        ++followed;
        const std::string value = *standing_of(votes, known()).value;
        CHECK(grade_after(votes, value, *plan) == Grade::proven);
        const int cars = plan->here + plan->others * plan->each;
        for (int here = 0; here < cars; ++here)
            for (int others = 0; here + others < cars; ++others) {
                for (int each = 1; here + others * each < cars && each <= 3; ++each)
                    CHECK(grade_after(votes, value, {here, others, each}) != Grade::proven);
            }
    }
    CHECK(followed > 100);
}

TEST_CASE("a plan is said with words for its numbers") {
    CHECK(plan_words({1, 0, 0}, Question::pair) == "One more metered car at this shop would prove it.");
    CHECK(plan_words({0, 1, 2}, Question::polarity) == "Two more phase-checked cars at another shop would prove it.");
    CHECK(plan_words({0, 2, 1}, Question::live) == "One more metered car at each of two other shops would prove it.");
    CHECK(plan_words({1, 3, 1}, Question::premium) ==
          "One more metered car at this shop and one at each of three other shops would prove it.");
}
