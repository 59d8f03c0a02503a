// What is a rule? Data: a question, a condition over known columns, what it is worth, a sentence, where it comes from,
// and cases that prove it. Read from TOML by rule_reader.h.
#pragma once

#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "catalog/catalog.h"
#include "rules/finding.h"
#include "sqlite/sqlite.h"

namespace tapbook {

// One run of the condition by hand: the columns given, all others not known.
struct RuleCase {
    std::vector<std::pair<std::string, sqlite::Value>> given;  // "signal.clean_high_v", 9.6
    std::optional<bool> fires;                                 // absent: must be unsettled
    SourcePlace place;
};

// A shop's word that a rule shall say nothing here.
struct SwitchedOff {
    std::string because;
    SourcePlace place;
};

struct Rule {
    std::string id;    // a claim in a slug: "overdriven-at-lowest-note"
    std::string asks;  // the question it answers
    std::string when;  // one SQL expression: true fires, false is silent, NULL is unsettled
    Effect effect = Effect::care;
    Unknown unknown = Unknown::silent;
    std::string says;                         // with {relation.column:.1f}
    std::optional<std::string> says_unknown;  // the same for an unsettled one; without it the unknown columns are named
    std::string basis;                        // "physics", "common practice", "published: <source>"
    std::vector<RuleCase> cases;
    SourcePlace place;
    bool shipped = false;           // comes with the program and is not overridden by the shop
    bool replaces_shipped = false;  // the shop's own, in the place of a shipped one
    std::optional<SwitchedOff> off;
};

}  // namespace tapbook
