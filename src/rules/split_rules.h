// What do the rules say of one tap and very many parts? A rule that says the same whichever part is held against the
// tap is asked once for all, one that reads few words of the tap and the part alone once for these words and each part,
// the others every time, and columns of the tap are worked out once. For the files of this folder.
#pragma once

#include <cstdint>
#include <functional>
#include <optional>
#include <span>
#include <string>
#include <unordered_map>
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

    // Further questions are about these pairs of one place, whatever their converter. REQUIRES: one at least, they
    // outlive the questions, and the job is the same at every look.
    void look_at(std::span<const Candidate> pairs);

    // What is certain of the first `pairs` of them, whichever part they get.
    Effects of_tap(std::size_t pairs) const { return of_tap_[pairs - 1]; }

    // Everything about the part of these candidates, the first parts.size() pairs with it. With `until_stop` it ends at
    // the first stop, and cares are then too few. `make_level` fills the chain of a candidate, for the first rule that
    // reads it; `number` is the part's, below the number of parts. REQUIRES: parts belong to look_at(), and a number
    // means the same part every time.
    enum class Extent { whole, until_stop };
    using MakeLevel = std::function<void(Candidate&)>;
    Effects of_part(std::span<Candidate> parts, std::size_t number, Extent extent, const MakeLevel& make_level);

  private:
    enum class Said : unsigned char { not_asked, nothing, care, stop };
    using SaidOfParts = std::vector<Said>;  // by the part's number, as far as it goes

    struct One {
        PlainCondition condition;
        Said fires, unsettled;
        bool reads_level = false;
        bool is_kept = false;                    // by the words that it reads of the tap:
        std::vector<const Column*> of_tap = {};  // these
        std::unordered_map<std::string, SaidOfParts> kept = {};
    };
    // The pairs with a part, while rules are asked about them.
    struct Asked {
        std::span<Candidate> parts;
        std::size_t number;
        const MakeLevel& make_level;
        bool has_level = false;
    };

    static One one_of(const Rule& rule, PlainCondition condition);
    static void add(Effects& all, Said said);
    bool foresee(std::size_t rule, std::size_t pairs);
    void find_kept(std::size_t rule, std::size_t pairs);
    Said ask(std::size_t rule, std::size_t pair, Asked& asked);
    Said said(std::size_t rule, std::size_t pair, Asked& asked);
    Said gravest(std::size_t rule, Asked& asked);

    std::vector<One> rules_;                              // the cheap ones first
    std::vector<CandidateValues> values_;                 // of each pair
    std::vector<Effects> of_tap_;                         // of so many pairs
    std::vector<std::size_t> open_;                       // rules that hang on the part
    std::vector<bool> is_open_;                           // of each rule
    std::vector<std::vector<SaidOfParts*>> kept_;         // of each rule and pair; nullptr: asked every time
    std::vector<std::optional<std::size_t>> stopped_by_;  // the rule that last spoke against each part
};

}  // namespace tapbook
