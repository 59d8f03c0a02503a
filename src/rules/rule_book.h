// What do all rules together say about a candidate? Conditions are compiled once; a rule runs again only when a
// relation it reads has changed since.
#pragma once

#include <memory>
#include <span>
#include <string>
#include <vector>

#include "rules/candidate.h"
#include "rules/rule.h"

namespace tapbook {

// A case that did not come out as its file says.
struct CaseFailure {
    std::string rule;
    int number = 0;     // of the case in its rule, from 1
    SourcePlace place;  // of the case
    std::string says;   // "expected to fire, was unsettled: converter.input_max_v is not known"
};

// Not to be shared between threads.
class RuleBook {
  public:
    // The rules that come with the program, in the order of their files.
    static RuleBook shipped();

    // REQUIRES: rules come from read_rules().
    explicit RuleBook(std::vector<Rule> rules);
    ~RuleBook();
    RuleBook(RuleBook&&) noexcept;
    RuleBook& operator=(RuleBook&&) noexcept;

    // Rules with a known id take the place of the old ones, others are added at the end.
    void override_with(std::vector<Rule> rules);

    std::span<const Rule> rules() const;

    // Columns rule number `index` reads, as "relation.column", in the order of the table.
    std::vector<std::string> reads(std::size_t index) const;

    // Does it read nothing but the car, its tap and the job?
    bool is_tap_rule(std::size_t index) const;

    // Is it left out while no amplifier is chosen?
    bool needs_amplifier(std::size_t index) const;

    // Runs every case of every rule.
    std::vector<CaseFailure> run_cases();

    // Findings of all rules, in the order of the rules; silent ones leave none. A rule that needs an amplifier is left
    // out when the candidate has none. REQUIRES: the candidate has a converter.
    std::vector<Finding> evaluate(const Candidate& candidate);

    // The same for the rules that read only the car, its tap and the job.
    std::vector<Finding> evaluate_tap_rules(const Candidate& candidate);

  private:
    struct State;
    std::unique_ptr<State> state_;
};

}  // namespace tapbook
