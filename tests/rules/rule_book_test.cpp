// Does a rule book answer in three values, take new rules by text alone, and stay right while it saves work?
#include <rapidcheck.h>
#include <catch2/catch.hpp>

#include "facts_fixture.h"

using namespace tapbook;
using namespace tapbook::fixture;

namespace {

std::string rule_text(const std::string& id, const std::string& when, const std::string& effect,
                      const std::string& unknown) {
    return "[[rule]]\nid = \"" + id + "\"\nasks = \"?\"\nwhen = \"" + when + "\"\neffect = \"" + effect +
           "\"\nunknown = \"" + unknown +
           "\"\nsays = \"limit {converter.limit_at_lowest_v:.1f}\"\nbasis = \"common practice\"\n" +
           "[[rule.case]]\ngiven = { \"converter.limit_at_lowest_v\" = 5 }\nfires = true\n" +
           "[[rule.case]]\ngiven = { \"converter.limit_at_lowest_v\" = 15 }\nfires = false\n";
}

std::string told(const std::vector<Finding>& findings) {
    std::string text;
    for (const Finding& f : findings)
        text += f.rule + "|" + std::string(word_of(f.effect)) + "|" + (f.settled ? "settled" : "unsettled") + "|" +
                f.says + "\n";
    return text;
}

}  // namespace

TEST_CASE("true fires, false is silent, NULL counts as what not knowing is worth") {
    for (const auto& [word, effect] : {std::pair{"stop", std::optional(Effect::stop)},
                                       {"care", Effect::care},
                                       {"info", Effect::info},
                                       {"silent", std::optional<Effect>()}}) {
        RuleBook book(read_rules(rule_text("low-limit", "converter.limit_at_lowest_v < 9", "good", word), "own.toml"));
        Bench bench;
        CHECK(book.evaluate(bench.candidate()).empty());
        bench.converter.spec.input_max = rms_volts(8);
        auto findings = book.evaluate(bench.candidate());
        REQUIRE(findings.size() == 1);
        CHECK(findings[0].effect == Effect::good);
        CHECK(findings[0].settled);
        CHECK(findings[0].says == "limit 8.0");
        CHECK(findings[0].compared.size() == 1);
        CHECK(findings[0].compared[0].value == "8 V");
        CHECK(findings[0].unknown_columns.empty());
        bench.converter.spec.input_max_at.reset();
        findings = book.evaluate(bench.candidate());
        CHECK(findings.empty() == !effect.has_value());
        if (!effect) continue;
        CHECK(findings[0].effect == *effect);
        CHECK_FALSE(findings[0].settled);
        CHECK(findings[0].says == "cannot tell: what the converter takes at the lowest note is not known");
        CHECK(findings[0].unknown_columns == std::vector<std::string>{"converter.limit_at_lowest_v"});
    }
}

TEST_CASE("a new rule over existing columns changes a verdict by text alone") {
    const JobFacts facts = plain_job();
    RuleBook book = RuleBook::shipped();
    CHECK(advise(facts, {}, book).candidates[0].verdict == Verdict::fits);
    book.override_with(read_rules(
        rule_text("house-wants-twelve-volts", "converter.limit_at_lowest_v < 12", "stop", "care"), "own.toml"));
    const Advice advice = advise(facts, {}, book);
    CHECK(advice.candidates[0].verdict == Verdict::no);
    CHECK(advice.candidates[0].findings[0].rule == "house-wants-twelve-volts");
    CHECK_FALSE(advice.best.has_value());
}

TEST_CASE("a rule with a known id takes the old one's place, and only its place") {
    RuleBook book = RuleBook::shipped();
    const auto count = book.rules().size();
    std::size_t at = 0;
    while (book.rules()[at].id != "overdriven-at-lowest-note") ++at;
    book.override_with(read_rules(
        rule_text("overdriven-at-lowest-note", "converter.limit_at_lowest_v < 12", "info", "info"), "own.toml"));
    CHECK(book.rules().size() == count);
    CHECK(book.rules()[at].id == "overdriven-at-lowest-note");
    CHECK(book.rules()[at].effect == Effect::info);
    CHECK_FALSE(book.rules()[at].shipped);
    Bench bench;
    const auto findings = book.evaluate(bench.candidate());
    REQUIRE(find_rule(findings, "overdriven-at-lowest-note") != nullptr);
    CHECK(find_rule(findings, "overdriven-at-lowest-note")->says == "limit 10.0");
}

TEST_CASE("a rule that is switched off keeps its words, says nothing, and is named in the advice") {
    JobFacts facts = plain_job();
    facts.converters[0].part.spec.reference = Reference::chassis;
    RuleBook book = RuleBook::shipped();
    const auto count = book.rules().size();
    REQUIRE(find_rule(advise(facts, {}, book).candidates[0].findings, "driven-minus-meets-chassis-in-input") !=
            nullptr);
    book.override_with(
        read_rules("[[rule]]\nid = \"driven-minus-meets-chassis-in-input\"\noff = \"bench only\"\n", "own.toml"));
    const Advice advice = advise(facts, {}, book);
    CHECK(find_rule(advice.candidates[0].findings, "driven-minus-meets-chassis-in-input") == nullptr);
    CHECK(advice.rules_off == std::vector<std::string>{"driven-minus-meets-chassis-in-input"});
    CHECK(book.rules().size() == count);
    CHECK(book.rules()[0].shipped);
    CHECK(book.rules()[0].off->because == "bench only");
    CHECK(book.rules()[0].off->place.line == 3);
    CHECK(book.run_cases().empty());
}

TEST_CASE("only a rule that is there can be switched off") {
    RuleBook book = RuleBook::shipped();
    const auto off = [&](const std::string& id) {
        try {
            book.override_with(read_rules("[[rule]]\nid = \"" + id + "\"\noff = \"why\"\n", "own.toml"));
        } catch (const InputRefused& refused) {
            return refused.complaints()[0].message + " | " + refused.complaints()[0].hint;
        }
        return std::string("switched off");
    };
    CHECK(off("pair-mixde") == "there is no rule \"pair-mixde\" to switch off | did you mean pair-mixed?");
    CHECK(off("quite-another-thing") ==
          "there is no rule \"quite-another-thing\" to switch off | tapbook rules lists them");
    CHECK(off("pair-mixed") == "switched off");
}

TEST_CASE("one file may add a rule, replace one and switch one off, and each is known as such") {
    RuleBook book = RuleBook::shipped();
    book.override_with(read_rules(rule_text("house-rule", "converter.limit_at_lowest_v < 12", "stop", "care") +
                                      "[[rule]]\nid = \"pair-mixed\"\noff = \"we never do\"\n" +
                                      rule_text("on-the-shelf", "converter.limit_at_lowest_v < 12", "info", "info"),
                                  "own.toml"));
    CHECK_FALSE(book.rules().back().shipped);
    CHECK_FALSE(book.rules().back().replaces_shipped);
    for (const Rule& rule : book.rules()) {
        INFO(rule.id);
        CHECK(rule.off.has_value() == (rule.id == "pair-mixed"));
        CHECK(rule.replaces_shipped == (rule.id == "on-the-shelf"));
    }
}

TEST_CASE("a case that comes out otherwise is named with its numbers") {
    auto text = rule_text("low-limit", "converter.limit_at_lowest_v < 9", "care", "care");
    text += "[[rule.case]]\ngiven = { \"converter.limit_at_lowest_v\" = 9.5 }\nfires = true\n";
    RuleBook book(read_rules(text, "own.toml"));
    const auto failures = book.run_cases();
    REQUIRE(failures.size() == 1);
    CHECK(failures[0].rule == "low-limit");
    CHECK(failures[0].number == 3);
    CHECK(failures[0].place.line == 15);
    CHECK(failures[0].says == "should fire, but would stay silent with converter.limit_at_lowest_v = 9.5 V");
}

TEST_CASE("without an amplifier the rules about it are left out") {
    RuleBook book = RuleBook::shipped();
    Bench bench;
    bench.amplifier->spec.sensitivity_highest_gain = rms_volts(6);
    CHECK(find_rule(book.evaluate(bench.candidate()), "amplifier-stays-below-rated-power") != nullptr);
    bench.amplifier.reset();
    for (const auto& finding : book.evaluate(bench.candidate()))
        CHECK(finding.rule.find("amplifier") == std::string::npos);
}

TEST_CASE("a book that has judged others says the same as a fresh one") {
    RuleBook used = RuleBook::shipped();
    RuleBook fresh = RuleBook::shipped();
    REQUIRE(rc::check("used agrees with fresh", [&] {
        Bench bench;
        bench.converter.spec.input_max = rms_volts(*rc::gen::inRange(4, 16));
        bench.converter.spec.reference = *rc::gen::element(Reference::floating, Reference::unknown, Reference::chassis);
        bench.signal.clean.high = rms_volts(*rc::gen::inRange(4, 16));
        bench.tap.pair.altered = *rc::gen::arbitrary<bool>();
        if (*rc::gen::arbitrary<bool>()) bench.converter.spec.channels.reset();
        if (*rc::gen::arbitrary<bool>()) bench.amplifier.reset();
        const auto again = told(used.evaluate(bench.candidate()));
        RuleBook untouched({fresh.rules().begin(), fresh.rules().end()});
        RC_ASSERT(again == told(untouched.evaluate(bench.candidate())));
    }));
}
