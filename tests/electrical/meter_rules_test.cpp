// Which verdict do the readings get? One row per case and boundary, in the order of the rules of the signal
// specification, section 5.
#include <catch2/catch.hpp>
#include <string>
#include <vector>

#include "electrical/electrical.h"

using namespace tapbook;

namespace {

struct Row {
    const char* what;
    std::int64_t positive, negative, ac;
    std::int64_t supply;  // 0: not read
    ReadsAs reads_as;
    bool stop;
    int rule;
};

using enum ReadsAs;

constexpr Row rows[] = {
    {"no supply", 7200, 7200, 6000, 0, unsettled, false, 1},
    {"8.999 V of supply", 4500, 4500, 6000, 8999, unsettled, false, 1},
    {"9.000 V of supply", 4500, 4500, 6000, 9000, bridged, false, 5},
    {"16.000 V of supply", 8000, 8000, 6000, 16000, bridged, false, 5},
    {"16.001 V of supply", 8000, 8000, 6000, 16001, unsettled, false, 1},
    {"supply and ground", 14400, 0, 0, 14400, supply, true, 2},
    {"ground and supply", 0, 14400, 0, 14400, supply, true, 2},
    {"1.000 V under the supply, 0.999 V", 13400, 999, 0, 14400, supply, true, 2},
    {"1.000 V over the supply", 15400, 0, 0, 14400, supply, true, 2},
    {"1.001 V under the supply", 13399, 0, 0, 14400, fault, true, 3},
    {"other at 1.000 V", 14400, 1000, 0, 14400, fault, true, 3},
    {"both at the supply", 14400, 14400, 0, 14400, unsettled, true, 8},
    {"2.000 V apart", 8200, 6200, 6000, 14400, fault, true, 3},
    {"1.999 V apart", 8199, 6200, 6000, 14400, unsettled, true, 4},
    {"0.150 V apart", 7275, 7125, 6000, 14400, unsettled, true, 4},
    {"0.149 V apart", 7274, 7125, 6000, 14400, bridged, false, 5},
    {"15 % above half", 8280, 8280, 6000, 14400, bridged, false, 5},
    {"more than 15 % above half", 8281, 8281, 6000, 14400, unsettled, true, 8},
    {"one conductor more than 15 % above half", 8200, 8281, 6000, 14400, unsettled, true, 8},
    {"15 % below half", 6120, 6120, 6000, 14400, bridged, false, 5},
    {"more than 15 % below half", 6119, 6119, 6000, 14400, unsettled, true, 8},
    {"half of another supply", 6000, 6000, 6000, 12000, bridged, false, 5},
    {"half of a supply it has not", 7200, 7200, 6000, 12000, unsettled, true, 8},
    {"nothing", 0, 0, 0, 14400, unsettled, false, 6},
    {"20 mV of tone", 0, 0, 20, 14400, unsettled, false, 6},
    {"21 mV of tone", 0, 0, 21, 14400, line_level, false, 6},
    {"3.999 V of tone", 10, 5, 3999, 14400, line_level, false, 6},
    {"4.000 V of tone", 10, 5, 4000, 14400, ground_centred, false, 6},
    {"300 mV of d.c.", 300, 300, 5000, 14400, ground_centred, false, 6},
    {"-300 mV of d.c.", -300, -300, 5000, 14400, ground_centred, false, 6},
    {"one above 300 mV", 301, 300, 2000, 14400, line_level, false, 7},
    {"low bias and tone", 2500, 2500, 2000, 14400, line_level, false, 7},
    {"low bias, 3.999 V", 2500, 2400, 3999, 14400, line_level, false, 7},
    {"low bias, 4.000 V", 2500, 2400, 4000, 14400, unsettled, true, 8},
    {"just below a quarter", 3599, 3599, 2000, 14400, line_level, false, 7},
    {"a quarter", 3600, 3600, 2000, 14400, unsettled, true, 8},
    {"raised rail", 12000, 12000, 9000, 14400, unsettled, true, 8},
    {"negative bias", -2500, -2500, 2000, 14400, unsettled, true, 8},
};

MeterVerdict verdict(const Row& row) {
    MeterReadings readings{row.positive, row.negative, row.ac, {}, {}, {}, true};
    if (row.supply != 0) readings.supply_mv = row.supply;
    return judge(readings);
}

}  // namespace

TEST_CASE("each reading gets the verdict of the first rule that applies") {
    for (const Row& row : rows) {
        CAPTURE(row.what);
        const MeterVerdict got = verdict(row);
        CHECK(std::string(word_of(got.reads_as)) == std::string(word_of(row.reads_as)));
        CHECK(got.stop == row.stop);
        CHECK(got.rule == row.rule);
    }
}

TEST_CASE("swapping the two conductors changes no verdict") {
    for (Row row : rows) {
        const MeterVerdict before = verdict(row);
        std::swap(row.positive, row.negative);
        const MeterVerdict after = verdict(row);
        CAPTURE(row.what);
        CHECK(after.reads_as == before.reads_as);
        CHECK(after.rule == before.rule);
    }
}

TEST_CASE("a bridged pair must read what its conductors read together") {
    const auto check = [](std::int64_t pair, std::optional<std::int64_t> positive, std::optional<std::int64_t> negative,
                          ReadsAs reads_as, bool stop, MeterSentence said) {
        CAPTURE(pair);
        const MeterVerdict got = judge({7200, 7200, pair, 14400, positive, negative, true});
        CHECK(got.reads_as == reads_as);
        CHECK(got.stop == stop);
        CHECK(got.rule == 5);
        CHECK(std::count(got.sentences.begin(), got.sentences.end(), said) == 1);
    };
    check(6000, 3000, 3000, bridged, false, MeterSentence::pair_is_sum);
    check(4800, 3000, 3000, bridged, false, MeterSentence::pair_is_sum);  // 20 % less
    check(7200, 3000, 3000, bridged, false, MeterSentence::pair_is_sum);  // 20 % more
    check(4799, 3000, 3000, unsettled, true, MeterSentence::sum_does_not_match);
    check(7201, 3000, 3000, unsettled, true, MeterSentence::sum_does_not_match);
    check(1500, 3000, 3000, unsettled, true, MeterSentence::sum_does_not_match);  // a quarter
    check(1499, 3000, 3000, fault, true, MeterSentence::different_channels);
    check(0, 3000, 3000, fault, true, MeterSentence::different_channels);  // equal signals cancel
    check(6000, 0, 0, unsettled, true, MeterSentence::sum_does_not_match);
    check(6000, 3000, {}, bridged, false, MeterSentence::both_half_supply);  // one alone counts as none
    check(20, {}, {}, bridged, false, MeterSentence::no_tone_pair_not_proven);
    check(20, 10, 10, bridged, false, MeterSentence::no_tone_pair_not_proven);
}

TEST_CASE("readings no meter can show are judged without overflow") {
    const auto most = std::numeric_limits<std::int64_t>::max(), least = std::numeric_limits<std::int64_t>::min();
    CHECK(judge({most, least, most, 14400, most, most, true}).stop);
    CHECK(judge({7200, 7200, most, 14400, most, most, true}).stop);
    CHECK(judge({0, 0, 0, most, {}, {}, {}}).rule == 1);
}
