// What becomes of the install beside tap and part: turn-on, feed, loads and level of one plan, judged by their rules.
#pragma once

#include "rules/advise.h"
#include "rules/install.h"

namespace tapbook {

// Everything a candidate of this plan refers to. It stays where it was made: the candidate points into it.
class PlannedCandidate {
  public:
    // REQUIRES: `advice` was given on `facts`, `part` is one of its candidates, and all three outlive this.
    PlannedCandidate(const JobFacts& facts, const Advice& advice, const JudgedCandidate& part);
    PlannedCandidate(const PlannedCandidate&) = delete;
    PlannedCandidate& operator=(const PlannedCandidate&) = delete;

    const Candidate& candidate() const { return candidate_; }

  private:
    std::optional<Converter> direct_;
    EffectiveOutput output_;
    TapSurroundings surroundings_;
    Candidate candidate_;
};

// The install of the plan, without its list of work. REQUIRES as above.
Install judge_install(const JobFacts& facts, const Advice& advice, const JudgedCandidate& part, const InstallAsk& ask,
                      RuleBook& rules);

}  // namespace tapbook
