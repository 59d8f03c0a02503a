// Which rule files are taken, which are refused, and with which words? Each refusal names its place.
#include <catch2/catch.hpp>

#include "rules/rules.h"

using namespace tapbook;

namespace {

const std::string sound =
    R"([[rule]]
id = "too-much"
asks = "Too much?"
when = "signal.clean_high_v > converter.input_max_v"
effect = "stop"
unknown = "care"
says = "{signal.clean_high_v:.1f} V into {converter.topology}"
basis = "physics"
[[rule.case]]
given = { "signal.clean_high_v" = 9.6, "converter.input_max_v" = 8 }
fires = true
[[rule.case]]
given = { signal.clean_high_v = 7, "converter.input_max_v" = 8.0 }
fires = false
[[rule.case]]
given = { "signal.clean_high_v" = 7.5 }
)";

std::string changed(const std::string& from, const std::string& to) {
    std::string text = sound;
    const auto at = text.find(from);
    REQUIRE(at != std::string::npos);
    return text.replace(at, from.size(), to);
}

// "line:column message | hint" of each complaint.
std::vector<std::string> refusals(const std::string& text) {
    try {
        read_rules(text, "own.toml");
    } catch (const InputRefused& refused) {
        std::vector<std::string> all;
        for (const Complaint& c : refused.complaints())
            all.push_back(std::to_string(c.place.line) + ":" + std::to_string(c.place.column) + " " + c.message +
                          " | " + c.hint);
        return all;
    }
    return {};
}

}  // namespace

TEST_CASE("a sound rule is read with everything it says") {
    const auto rules = read_rules(sound, "own.toml");
    REQUIRE(rules.size() == 1);
    const Rule& rule = rules[0];
    CHECK(rule.id == "too-much");
    CHECK(rule.effect == Effect::stop);
    CHECK(rule.unknown == Unknown::care);
    CHECK_FALSE(rule.says_unknown.has_value());
    CHECK_FALSE(rule.shipped);
    CHECK(rule.place.line == 1);
    REQUIRE(rule.cases.size() == 3);
    CHECK(rule.cases[0].given.size() == 2);
    CHECK(rule.cases[0].given[0] == std::pair<std::string, sqlite::Value>("signal.clean_high_v", 9.6));
    CHECK(rule.cases[0].given[1] == std::pair<std::string, sqlite::Value>("converter.input_max_v", std::int64_t{8}));
    CHECK(rule.cases[1].given[0].first == "signal.clean_high_v");
    CHECK(rule.cases[0].fires == true);
    CHECK(rule.cases[1].fires == false);
    CHECK_FALSE(rule.cases[2].fires.has_value());
    CHECK(RuleBook(rules).run_cases().empty());
}

TEST_CASE("an empty file holds no rules") {
    CHECK(read_rules("", "own.toml").empty());
    CHECK(read_rules("# nothing yet\n", "own.toml").empty());
}

TEST_CASE("what could make a rule useless is refused with its place, its cause and a way out") {
    struct Row {
        std::string from, to, complaint;
    };
    const Row rows[] = {
        {"asks = \"Too much?\"", "asks = 5", "3:8 \"asks\" must be a text | write it in double quotes"},
        {"effect = \"stop\"", "effect = \"stpo\"", "5:11 \"stpo\" is no effect | did you mean stop?"},
        {"effect = \"stop\"", "effect = \"silent\"",
         "5:11 \"silent\" is no effect | write one of stop, care, good, info"},
        {"unknown = \"care\"", "unknown = \"good\"",
         "6:12 \"good\" is no unknown | write one of stop, care, info, silent"},
        {"id = \"too-much\"", "id = \"Too much\"",
         "2:7 the id \"Too much\" must be small letters, digits and hyphens: write \"too-much\" | "},
        {"basis = \"physics\"", "basis = \"published: \"",
         "8:10 \"published: \" is no basis | write \"physics\", \"common practice\" or \"published: <source>\""},
        {"signal.clean_high_v > ", "signal.clean_hihg_v > ",
         "4:9 the condition is refused: unknown column: signal.clean_hihg_v | did you mean signal.clean_high_v?"},
        {"> converter.input_max_v", "> converter.input_mx_v",
         "4:31 the condition is refused: unknown column: converter.input_mx_v | did you mean converter.input_max_v?"},
        {"{converter.topology}", "{converter.topolgy}",
         "7:43 the sentence names an unknown column \"converter.topolgy\" | did you mean converter.topology?"},
        {"{converter.topology}", "{converter.topology:.1f}",
         "7:62 converter.topology is a text and takes no format | write {converter.topology}"},
        {"clean_high_v:.1f}", "clean_high_v:5d}", "7:30 \"5d\" is no format | write .0f to .6f, or no format at all"},
        {"{converter.topology}", "{converter.topology", "7:42 a { is never closed | write {relation.column}"},
        {"V into {", "V} into {", "7:36 a } without its { | write {relation.column}"},
        {"\"signal.clean_high_v\" = 9.6", "\"signal.clean_high\" = 9.6",
         "10:11 the case gives an unknown column \"signal.clean_high\" | did you mean signal.clean_high_v?"},
        {"\"signal.clean_high_v\" = 9.6", "\"signal.clean_high_v\" = \"much\"",
         "10:35 signal.clean_high_v takes a number | leave it out when not known"},
        {"\"signal.clean_high_v\" = 9.6", "\"converter.channels\" = 1.5",
         "10:34 converter.channels takes a whole number | leave it out when not known"},
        {"fires = true", "fires = 1",
         "11:9 \"fires\" must be true or false | leave it out when the rule must be unsettled"},
        {"fires = true", "fires = false",
         "1:1 the rule has no case in which it fires | add [[rule.case]] with given and fires = true"},
        {"fires = false", "fires = true",
         "1:1 the rule has no case in which it stays silent | add [[rule.case]] with given and fires = false"},
        {"[[rule]]\n", "[[rules]]\n", "1:3 a rule file has no \"rules\" | it holds [[rule]] tables only"},
    };
    for (const Row& row : rows) {
        INFO(row.to);
        const auto told = refusals(changed(row.from, row.to));
        REQUIRE_FALSE(told.empty());
        bool found = false;
        for (const auto& one : told) {
            CAPTURE(one);
            found = found || one == row.complaint;
        }
        std::string all;
        for (const auto& one : told) all += one + "\n";
        INFO(all);
        CHECK(found);
    }
}

TEST_CASE("a missing key and an unknown one are both named") {
    const auto told = refusals(changed("asks = \"Too much?\"", "ask = \"Too much?\""));
    REQUIRE(told.size() == 2);
    CHECK(told[0] == "1:1 the rule has no \"asks\" | add asks = \"...\"");
    CHECK(told[1] == "3:1 a rule has no key \"ask\" | did you mean asks?");
}

TEST_CASE("an id that stands twice names the first line") {
    const auto told = refusals(sound + sound);
    REQUIRE(told.size() == 1);
    CHECK(told[0] == "18:6 the id \"too-much\" stands twice | the first rule of that name is on line 1");
}

TEST_CASE("hostile conditions are refused, not run") {
    for (const std::string when : {
             "1",
             "1; DROP TABLE signal",
             "signal.clean_high_v > 1 -- always",
             "signal.clean_high_v > ?1",
             "(SELECT 1 FROM sqlite_schema)",
             "signal.clean_high_v IN (SELECT 1)",
             "load_extension('x') OR signal.clean_high_v",
             "random() > signal.clean_high_v",
             "readfile('x') > signal.clean_high_v",
             "sum(signal.clean_high_v) > 1",
             "0 AND no.such_column",
             "(signal.clean_high_v > 1",
             "signal.clean_high_v > 1)",
             "signal.clean_high_v, 1",
             "signal.*",
             "zeroblob(1000000000) > signal.clean_high_v",
         }) {
        INFO(when);
        const auto told = refusals(changed("signal.clean_high_v > converter.input_max_v", when));
        REQUIRE_FALSE(told.empty());
        CHECK(told[0].starts_with("4:"));
    }
    const auto deep = refusals(changed("signal.clean_high_v > converter.input_max_v",
                                       std::string(60, '(') + "signal.clean_high_v" + std::string(60, ')')));
    CHECK_FALSE(deep.empty());
}

TEST_CASE("whatever is no TOML is refused before any rule is looked at") {
    for (const std::string text :
         {"[[rule", "rule = 5", "[rule]\nid = \"a\"", "rule = [1, 2]", "id == 3", "\xff\xfe"}) {
        INFO(text);
        CHECK_FALSE(refusals(text).empty());
    }
}

TEST_CASE("at most twenty complaints are made at once") {
    std::string text;
    for (int i = 0; i < 40; ++i) text += "[[rule]]\n";
    CHECK(refusals(text).size() == 20);
}
