// Do the list of rules, one rule explained and the columns still read as they were accepted?
#include <catch2/catch.hpp>

#include <algorithm>

#include "approved.h"
#include "report/report.h"

using namespace tapbook;
using approval::approve;

namespace {

constexpr Screen wide{Colours::none, 100}, narrow{Colours::none, 60};

// Two own rules: what a shop writes, without what changes with the shipped ones.
RuleBook own_rules() {
    return RuleBook(read_rules(R"([[rule]]
id = "no-more-than-nine-volts"
asks = "Does the tap reach more than nine volts at the lowest note that shall be played?"
when = "signal.clean_high_v > 9 AND converter.topology = 'transformer'"
effect = "stop"
unknown = "care"
says = "the tap reaches {signal.clean_high_v:.1f} V"
basis = "common practice"
[[rule.case]]
given = { "signal.clean_high_v" = 9.5, "converter.topology" = "transformer" }
fires = true
[[rule.case]]
given = { "signal.clean_high_v" = 8.5 }
fires = false
[[rule]]
id = "seat-mat"
asks = "Is a seat-occupancy mat on the way?"
when = "tap.hazards > 0"
effect = "care"
unknown = "silent"
says = "mind the mat"
basis = "common practice"
[[rule.case]]
given = { "tap.hazards" = 1 }
fires = true
[[rule.case]]
given = { "tap.hazards" = 0 }
fires = false
)",
                               "shop.rules.toml"));
}

std::size_t index_called(const RuleBook& book, std::string_view id) {
    const auto rules = book.rules();
    return static_cast<std::size_t>(
        std::find_if(rules.begin(), rules.end(), [&](const Rule& rule) { return rule.id == id; }) - rules.begin());
}

}  // namespace

TEST_CASE("a list of own rules reads as approved") {
    const RuleBook book = own_rules();
    approve("rules-own-100", rules_text(book, wide));
    approve("rules-own-60", rules_text(book, narrow));
    approve("rules-own-json", rules_json(book));
    approve("rule-own-60", rule_text(book, 0, narrow));
}

TEST_CASE("the shipped rules are listed with their effect, one of them explained as approved") {
    const RuleBook book = RuleBook::shipped();
    const std::string list = rules_text(book, wide);
    for (const Rule& rule : book.rules()) CHECK(list.find(rule.id) != std::string::npos);
    CHECK(list.find("[own]") == std::string::npos);
    approve("rule-shipped-100", rule_text(book, index_called(book, "overdriven-at-lowest-note"), wide));
}

TEST_CASE("the columns that rules read are listed as approved") {
    approve("rule-columns-100", columns_text(wide));
    approve("rule-columns-60", columns_text(narrow));
    approve("rule-columns-json", columns_json());
}
