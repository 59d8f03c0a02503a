// What do all rules together say about a candidate? Every condition is read once; the plain ones (plain_condition.h)
// are answered here, the others by SQLite in a sandbox, which is made for the first of them.
#pragma once

#include <cstddef>
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

// What one rule says, without its words.
struct RuleAnswer {
    std::size_t rule = 0;  // its number in rules()
    Effect effect = Effect::info;
    bool settled = true;
};

// Are the cases of the shipped rules wanted? Only run_cases() and those who show rules need them, and reading them
// costs more than all else.
enum class RuleCases { read, left_out };

// `sandbox_only` asks SQLite for the plain conditions too: slower, the same answers.
enum class Answering { plain_where_possible, sandbox_only };

// Not to be shared between threads.
class RuleBook {
  public:
    // The rules that come with the program, in the order of their files.
    static RuleBook shipped(RuleCases cases = RuleCases::read, Answering how = Answering::plain_where_possible);

    // REQUIRES: rules come from read_rules().
    explicit RuleBook(std::vector<Rule> rules, Answering how = Answering::plain_where_possible);
    ~RuleBook();
    RuleBook(RuleBook&&) noexcept;
    RuleBook& operator=(RuleBook&&) noexcept;

    // Rules with a known id take the place of the old ones, others are added at the end; one that is switched off
    // keeps its words and says nothing. Throws InputRefused when there is no rule of that id to switch off.
    void override_with(std::vector<Rule> rules);

    std::span<const Rule> rules() const;

    // Columns rule number `index` reads, as "relation.column", in the order of the table.
    std::vector<std::string> reads(std::size_t index) const;

    // Does it read nothing but the car, its tap and the job?
    bool is_tap_rule(std::size_t index) const;

    // Is it left out while no amplifier is chosen?
    bool needs_amplifier(std::size_t index) const;

    // The last of the relations turn_on, feed, load and plan that it reads; "" when it reads none of them.
    std::string_view is_about(std::size_t index) const;

    // Is it answered without SQLite?
    bool is_plain(std::size_t index) const;

    // Runs every case of every rule.
    std::vector<CaseFailure> run_cases();

    // Answers of the rules about tap and part, in the order of the rules; silent ones give none. A rule that needs an
    // amplifier is left out when the candidate has none. REQUIRES: the candidate has a converter.
    std::vector<RuleAnswer> answers(const Candidate& candidate);

    // The same for the rules that read only the car, its tap and the job.
    std::vector<RuleAnswer> tap_answers(const Candidate& candidate);

    // The answer with its sentence and the numbers compared. REQUIRES: it was given about this candidate.
    Finding in_words(const Candidate& candidate, const RuleAnswer& answer);

    // What the rules about this relation (is_about) say, gravest first, in words. REQUIRES: the candidate points to
    // what the relation is read from.
    std::vector<Finding> evaluate_about(std::string_view relation, const Candidate& candidate);

    // answers() and tap_answers() in words.
    std::vector<Finding> evaluate(const Candidate& candidate);
    std::vector<Finding> evaluate_tap_rules(const Candidate& candidate);

  private:
    struct State;
    std::unique_ptr<State> state_;
};

}  // namespace tapbook
