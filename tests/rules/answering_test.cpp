// Do the quick ways to an advice end where the slow ones end? Rules read line by line against the same rules read as
// TOML; conditions answered here against conditions answered by SQLite, over the whole practice shop and over random
// candidates.
#include <rapidcheck.h>

#include <catch2/catch.hpp>

#include "embedded.h"
#include "facts_fixture.h"
#include "practice_shop.h"
#include "rules/shipped_lines.h"

using namespace tapbook;
using namespace tapbook::fixture;

namespace {

std::string told(const std::vector<Finding>& findings) {
    std::string text;
    for (const Finding& f : findings) {
        text += f.rule + "|" + std::string(word_of(f.effect)) + (f.settled ? "|" : "|unsettled|") + f.says + "|" +
                f.basis + "|" + f.pair;
        for (const auto& compared : f.compared) text += "|" + compared.column + "=" + compared.value;
        for (const auto& unknown : f.unknown_columns) text += "|?" + unknown;
        text += "\n";
    }
    return text;
}

std::string told(const Advice& advice) {
    std::string text = advice.tap.tap.code + " " + advice.best.value_or("-") + "\n" + told(advice.tap.findings);
    for (const auto& part : advice.candidates)
        text += part.converter + " " + std::string(word_of(part.verdict)) + "\n" + told(part.findings);
    for (const auto& other : advice.other_taps) text += other.tap.code + "\n" + told(other.findings);
    return text;
}

}  // namespace

TEST_CASE("shipped rules read line by line are those read as TOML, without their cases") {
    for (const auto& text : embedded_texts()) {
        if (!text.name.starts_with("shipped/")) continue;
        INFO(text.name);
        const auto quick = rules_in_plain_lines(text.text, text.name);
        const auto whole = read_rules(text.text, std::string(text.name));
        if (!quick) continue;
        REQUIRE(quick->size() == whole.size());
        for (std::size_t i = 0; i < whole.size(); ++i) {
            const Rule &a = (*quick)[i], &b = whole[i];
            INFO(b.id);
            CHECK(std::tie(a.id, a.asks, a.when, a.effect, a.unknown, a.says, a.says_unknown, a.basis) ==
                  std::tie(b.id, b.asks, b.when, b.effect, b.unknown, b.says, b.says_unknown, b.basis));
            CHECK(std::tie(a.place.file, a.place.line, a.place.column, a.place.line_text) ==
                  std::tie(b.place.file, b.place.line, b.place.column, b.place.line_text));
            CHECK(a.cases.empty());
        }
    }
}

TEST_CASE("most shipped rule files can be read line by line") {
    int files = 0, quick = 0;
    for (const auto& text : embedded_texts()) {
        if (!text.name.starts_with("shipped/")) continue;
        ++files;
        if (rules_in_plain_lines(text.text, text.name)) ++quick;
    }
    CHECK(files > 0);
    CHECK(quick * 10 >= files * 8);  // else start-up pays for TOML again
}

TEST_CASE("rules of any other form are left to the TOML reader") {
    const std::string good =
        "# one\n\n[[rule]]\nid = \"a\"\nasks = \"?\"\nwhen = \"level.pairs > 1\"\neffect = \"care\"\n"
        "unknown = \"silent\"\nsays = \"b\"\nbasis = \"physics\"\n[[rule.case]]\ngiven = { \"level.pairs\" = 2 }\n"
        "fires = true\n";
    const auto with = [&](const std::string& old, const std::string& changed) {
        std::string text = good;
        return text.replace(text.find(old), old.size(), changed);
    };
    const auto rules = rules_in_plain_lines(good, "own.toml");
    REQUIRE(rules);
    REQUIRE(rules->size() == 1);
    CHECK(rules->front().place.line == 3);
    CHECK(rules_in_plain_lines("", "own.toml")->empty());
    for (const auto& text : {with("\"b\"", "\"a \\\"b\\\"\""),
                             with("\"b\"", "'b'"),
                             with("\"b\"", "\"\"\"b\"\"\""),
                             with("\"b\"", "\"\""),
                             with("\"b\"", "\"b\" # why"),
                             with("says = ", "says="),
                             with("says", "  says"),
                             with("\"silent\"", "\"maybe\""),
                             with("\"care\"", "\"bad\""),
                             with("asks = \"?\"\n", ""),
                             with("effect = \"care\"\n", ""),
                             with("asks = \"?\"\n", "asks = \"?\"\nasks = \"?\"\n"),
                             with("\"care\"\n", "\"care\"\neffect = \"care\"\n"),
                             with("asks", "ask"),
                             with("[[rule]]", "[rule]"),
                             with("[[rule]]", "[[rules]]"),
                             with("# one", "id = \"x\""),
                             with("# one", "[[rule.case]]"),
                             with("fires = true", "fires = 1"),
                             with("given = {", "given = [ {"),
                             with("\"b\"\n", "\"b\"\r\n")}) {
        INFO(text);
        CHECK_FALSE(rules_in_plain_lines(text, "own.toml"));
    }
}

TEST_CASE("advice on the whole practice shop is the same with and without SQLite") {
    const PracticeShop shop;
    RuleBook quick = RuleBook::shipped(RuleCases::left_out);
    RuleBook slow = RuleBook::shipped(RuleCases::read, Answering::sandbox_only);
    JobFacts facts;
    facts.converters = shop.catalog().converters();
    std::vector<std::optional<Amplifier>> amplifiers = {std::nullopt};
    for (const Amplifier& amplifier : shop.catalog().amplifiers()) amplifiers.emplace_back(amplifier);
    int advices = 0;
    for (const auto& name : shop.catalog().vehicle_names()) {
        facts.car = shop.catalog().car(name.path, std::nullopt);
        for (const SystemFacts& system : facts.car.systems)
            for (const auto& amplifier : amplifiers) {
                facts.amplifier = amplifier;
                AdviseRequest request;
                request.system = system.code;
                try {
                    const std::string with_sqlite = told(advise(facts, request, slow));
                    CHECK(told(advise(facts, request, quick)) == with_sqlite);
                    ++advices;
                } catch (const AdviseError&) {
                    CHECK_THROWS_AS(advise(facts, request, quick), AdviseError);
                }
            }
    }
    CHECK(advices > 20);
    for (std::size_t i = 0; i < slow.rules().size(); ++i) CHECK_FALSE(slow.is_plain(i));
}

TEST_CASE("a random candidate is judged the same with and without SQLite") {
    RuleBook quick = RuleBook::shipped(RuleCases::left_out);
    RuleBook slow = RuleBook::shipped(RuleCases::left_out, Answering::sandbox_only);
    REQUIRE(rc::check("quick agrees with slow", [&] {
        Bench bench;
        const auto maybe = [] { return *rc::gen::inRange(0, 3) > 0; };
        ConverterSpec& spec = bench.converter.spec;
        spec.topology = *rc::gen::element(Topology::transformer, Topology::resistive, Topology::active_line_level,
                                          Topology::active_speaker_level);
        spec.input_max = maybe() ? std::optional(rms_volts(*rc::gen::inRange(4, 16))) : std::nullopt;
        spec.input_max_at = maybe() ? std::optional(hertz(*rc::gen::inRange(10, 100))) : std::nullopt;
        spec.input_min = maybe() ? std::optional(rms_volts(*rc::gen::inRange(1, 16))) : std::nullopt;
        spec.survives = maybe() ? std::optional(rms_volts(*rc::gen::inRange(4, 30))) : std::nullopt;
        spec.reference = *rc::gen::element(Reference::floating, Reference::unknown, Reference::chassis);
        spec.negatives = *rc::gen::element(Negatives::separate, Negatives::joined, Negatives::unknown);
        if (maybe()) spec.channels.reset();
        bench.pairs = *rc::gen::inRange(1, 5);
        bench.signal.clean.high = rms_volts(*rc::gen::inRange(4, 16));
        bench.tap.pair.altered = maybe();
        bench.tap.pair.pair.grade = *rc::gen::element(Grade::proven, Grade::blank, Grade::mixed, Grade::one_car);
        if (!maybe()) bench.amplifier.reset();
        RC_ASSERT(told(quick.evaluate(bench.candidate())) == told(slow.evaluate(bench.candidate())));
        RC_ASSERT(told(quick.evaluate_tap_rules(bench.candidate())) ==
                  told(slow.evaluate_tap_rules(bench.candidate())));
    }));
}
