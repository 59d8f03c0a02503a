// What would prove this fact? The smallest number of further cars, tried out on the votes by the same rules that grade
// them.
#pragma once

#include <optional>
#include <span>
#include <string>

#include "evidence/questions.h"

namespace tapbook {

// Cars that agree with the leading value: `here` at this shop, `each` at every one of `others` further known shops.
struct ProvingPlan {
    int here = 0, others = 0, each = 0;
    friend bool operator==(const ProvingPlan&, const ProvingPlan&) = default;
};

// The first plan, fewest cars first and this shop's own before others', after which the votes are PROVEN. Absent when
// they are already, when no value leads, or when no plan of at most six shops with three cars each does it.
std::optional<ProvingPlan> proving_plan(std::span<const Vote> votes, const KnownShops& known,
                                        const std::string& own_shop);

// "One more metered car at another shop would prove it."
std::string plan_words(const ProvingPlan& plan, Question question);

// What to do next about what these notes say, in one sentence. Never empty.
std::string next_step(NoteKind kind, std::span<const Note> notes, const Witnesses& witnesses,
                      const std::string& own_shop);

}  // namespace tapbook
