// How often did each rule fire, stay silent or come out unsettled over many judgements?
#pragma once

#include <map>
#include <string>
#include <vector>

#include "rules/rules.h"

namespace tapbook::fixture {

struct Seen {
    int fired = 0, silent = 0, unsettled = 0;
};
using RulesSeen = std::map<std::string, Seen>;  // by id

// Counts one judgement: the rules about `relation` ("" for those about tap and part) that were asked said `findings`.
inline void count_said(const RuleBook& rules, std::string_view relation, bool has_amplifier,
                       const std::vector<Finding>& findings, RulesSeen& seen) {
    std::map<std::string, bool> said;  // settled?
    for (const Finding& finding : findings) said.emplace(finding.rule, finding.settled);
    for (std::size_t i = 0; i < rules.rules().size(); ++i) {
        if (rules.is_about(i) != relation || (rules.needs_amplifier(i) && !has_amplifier)) continue;
        Seen& one = seen[rules.rules()[i].id];
        const auto found = said.find(rules.rules()[i].id);
        if (found == said.end())
            ++one.silent;
        else
            ++(found->second ? one.fired : one.unsettled);
    }
}

}  // namespace tapbook::fixture
