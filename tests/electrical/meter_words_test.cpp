// What does the installer read? The sentences that belong to each verdict, and the advice behind it.
#include <algorithm>
#include <catch2/catch.hpp>
#include <string>

#include "electrical/electrical.h"

using namespace tapbook;

namespace {

bool has(const MeterVerdict& verdict, MeterSentence sentence) {
    return std::find(verdict.sentences.begin(), verdict.sentences.end(), sentence) != verdict.sentences.end();
}

std::string text(const MeterVerdict& verdict) {
    std::string all;
    for (const auto line : verdict.says()) all.append(line).append("\n");
    return all;
}

MeterVerdict grounded(std::int64_t ac, std::optional<bool> full_volume) {
    return judge({0, 0, ac, 14400, {}, {}, full_volume});
}

}  // namespace

TEST_CASE("a doubtful line level asks for the 100 ohm test, a plain one does not") {
    CHECK_FALSE(has(grounded(2999, true), MeterSentence::could_be_turned_down));
    CHECK(has(grounded(3000, true), MeterSentence::could_be_turned_down));
    CHECK(has(grounded(500, false), MeterSentence::could_be_turned_down));
    CHECK(has(grounded(500, std::nullopt), MeterSentence::could_be_turned_down));
    CHECK(text(grounded(500, false)).find("100 ohm 1 W") != std::string::npos);
}

TEST_CASE(
    "every pair that reads as an output is told that a meter shows no polarity and where a scope's ground may not go") {
    for (const MeterVerdict& verdict :
         {judge({7200, 7200, 6000, 14400, {}, {}, true}), grounded(6000, true), grounded(500, true),
          judge({2500, 2500, 1000, 14400, {}, {}, true}), judge({7200, 7200, 0, 14400, {}, {}, true})}) {
        CHECK(has(verdict, MeterSentence::no_polarity));
        CHECK(has(verdict, MeterSentence::scope_ground));
    }
}

TEST_CASE("balance and fader are only moved while there is a tone") {
    CHECK(has(judge({7200, 7200, 6000, 14400, {}, {}, true}), MeterSentence::balance_and_fader));
    CHECK_FALSE(has(judge({7200, 7200, 0, 14400, {}, {}, true}), MeterSentence::balance_and_fader));
}

TEST_CASE("the finding comes before the advice") {
    CHECK(judge({7200, 7200, 6000, 14400, {}, {}, true}).sentences.front() == MeterSentence::both_half_supply);
    CHECK(judge({12000, 12000, 6000, 14400, {}, {}, true}).sentences.front() == MeterSentence::treat_as_bridged);
    CHECK(text(judge({0, 0, 0, {}, {}, {}, {}})).rfind("Read the supply first", 0) == 0);
}

TEST_CASE("the phrases an installer must not miss are in the texts") {
    CHECK(
        text(judge({12000, 12000, 6000, 14400, {}, {}, true})).find("treat as bridged until a scope says otherwise") !=
        std::string::npos);
    CHECK(text(judge({7200, 7200, 0, 14400, {}, {}, true})).find("No tone") != std::string::npos);
    CHECK(text(judge({7200, 7200, 100, 14400, 3000, 3000, true})).find("two conductors of different channels") !=
          std::string::npos);
    CHECK(text(judge({7275, 7125, 6000, 14400, {}, {}, true})).find("do not connect") != std::string::npos);
    CHECK(text(judge({2500, 2500, 1000, 14400, {}, {}, true})).find("neither conductor goes to chassis") !=
          std::string::npos);
    CHECK(text(grounded(0, true)).find("two grounds") != std::string::npos);
}

TEST_CASE("every sentence of the table belongs to some verdict") {
    std::vector<MeterSentence> used;
    const std::int64_t dc[] = {0, 2500, 7200, 7350, 9500, 12000, 14400};
    for (const auto positive : dc) {
        for (const auto negative : dc) {
            for (const std::int64_t ac : {0, 1000, 3000, 6000}) {
                for (const std::optional<std::int64_t> each : {std::optional<std::int64_t>{}, {500}, {3000}}) {
                    for (const std::optional<std::int64_t> supply : {std::optional<std::int64_t>{}, {14400}}) {
                        const auto verdict = judge({positive, negative, ac, supply, each, each, true});
                        used.insert(used.end(), verdict.sentences.begin(), verdict.sentences.end());
                    }
                }
            }
        }
    }
    for (const auto& named : words_of<MeterSentence>()) {
        CAPTURE(std::string(named.word));
        CHECK(std::find(used.begin(), used.end(), named.value) != used.end());
    }
}
