// Are the shipped rules sound? Their own cases are run, and each must be readable and complete.
#include <catch2/catch.hpp>
#include <set>

#include "embedded.h"
#include "rules/rules.h"

using namespace tapbook;

// The program trusts them at start-up; here they pass the same checks as a shop's own.
TEST_CASE("every shipped rule file passes the checks of a shop's own rule file") {
    std::size_t rules = 0;
    for (const auto& text : embedded_texts()) {
        if (!text.name.starts_with("shipped/")) continue;
        CHECK_NOTHROW(rules += read_rules(text.text, std::string(text.name)).size());
    }
    CHECK(rules == RuleBook::shipped().rules().size());
}

TEST_CASE("every case of every shipped rule comes out as its file says") {
    RuleBook book = RuleBook::shipped();
    for (const CaseFailure& failure : book.run_cases())
        FAIL_CHECK(failure.rule << " case " << failure.number << " " << failure.says);
    CHECK(book.rules().size() >= 25);
}

TEST_CASE("the path to the chassis is asked first") {
    const RuleBook book = RuleBook::shipped();
    CHECK(book.rules()[0].id == "driven-minus-meets-chassis-in-input");
    CHECK(book.rules()[1].id == "driven-minuses-joined-in-converter");
    CHECK(book.rules()[2].id == "driven-minus-meets-chassis-in-amplifier");
}

TEST_CASE("a shipped rule asks a question, reads a column and has an unsettled case where not knowing counts") {
    const RuleBook book = RuleBook::shipped();
    std::set<std::string> ids;
    for (std::size_t i = 0; i < book.rules().size(); ++i) {
        const Rule& rule = book.rules()[i];
        INFO(rule.id);
        CHECK(ids.insert(rule.id).second);
        CHECK(rule.shipped);
        CHECK(rule.asks.find('?') != std::string::npos);
        CHECK_FALSE(book.reads(i).empty());
        if (rule.unknown == Unknown::silent) continue;
        bool unsettled = false;
        for (const RuleCase& one : rule.cases) unsettled = unsettled || !one.fires;
        const bool grade_is_always_there = rule.id == "pair-not-proved" || rule.id == "polarity-not-proved";
        CHECK((unsettled || grade_is_always_there));
    }
}

TEST_CASE("a shipped rule reads only listed columns, and its kind follows from them") {
    const RuleBook book = RuleBook::shipped();
    for (std::size_t i = 0; i < book.rules().size(); ++i) {
        INFO(book.rules()[i].id);
        bool tap_only = true, amplifier = false;
        for (const auto& name : book.reads(i)) {
            const Column* column = find_column(name);
            REQUIRE(column != nullptr);
            tap_only = tap_only && is_of_tap(column->relation);
            amplifier = amplifier || column->needs_amplifier;
        }
        CHECK((!book.is_tap_rule(i) || tap_only));
        CHECK(book.needs_amplifier(i) == amplifier);
    }
}
