// What do the rules say of one tap and very many parts? The rules that read only the tap are asked once for all parts,
// the others once for each, and columns of the tap are worked out once. For the files of this folder.
#pragma once

#include <cstdint>
#include <optional>
#include <vector>

#include "rules/plain_condition.h"
#include "rules/rule_book.h"

namespace tapbook {

// What all rules together come to: of one rule the gravest of several pairs counts once, as merged() has it.
struct Effects {
    Verdict verdict = Verdict::fits;
    int cares = 0;
};

class SplitRules {
  public:
    // Absent when some rule about tap and part needs SQLite: then the rule book has to be asked.
    static std::optional<SplitRules> of(const RuleBook& rules, bool has_amplifier);

    // Further questions are about these pairs of one place; candidates without a converter. REQUIRES: one at least, and
    // they outlive the questions.
    void look_at(const std::vector<Candidate>& pairs);

    // What the rules that read only the tap say of the first `pairs` of them.
    Effects of_tap(std::size_t pairs) const { return of_tap_[pairs - 1]; }

    // Everything about one part, of the first parts.size() pairs: the candidates with it. With `until_stop` it ends at
    // the first stop, and cares are then too few. REQUIRES: parts belong to look_at().
    enum class Extent { whole, until_stop };
    Effects of_part(const std::vector<Candidate>& parts, Extent extent);

  private:
    struct One {
        PlainCondition condition;
        Effect effect;
        std::optional<Effect> unsettled;
    };

    static std::optional<Effect> said(const One& rule, CandidateValues& values);

    std::vector<One> tap_rules_, part_rules_;
    std::vector<CandidateValues> values_;  // of each pair
    std::vector<Effects> of_tap_;          // of so many pairs
};

}  // namespace tapbook
