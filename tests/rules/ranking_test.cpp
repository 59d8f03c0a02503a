// Are candidates and taps in the order that can be read out? A second way, the sentence of the specification taken key
// by key, must agree on random judged ones.
#include <rapidcheck.h>

#include <algorithm>
#include <catch2/catch.hpp>

#include "facts_fixture.h"

using namespace tapbook;
using namespace tapbook::fixture;

namespace {

JudgedCandidate any_candidate() {
    JudgedCandidate c;
    c.verdict = *rc::gen::element(Verdict::fits, Verdict::care, Verdict::no);
    c.topology = *rc::gen::element(Topology::direct, Topology::transformer, Topology::resistive,
                                   Topology::active_line_level, Topology::active_speaker_level);
    c.findings.resize(static_cast<std::size_t>(*rc::gen::inRange(0, 3)));
    for (Finding& f : c.findings) f.effect = *rc::gen::element(Effect::care, Effect::info, Effect::good);
    if (*rc::gen::arbitrary<bool>()) c.on_hand = *rc::gen::inRange(0, 3);
    if (*rc::gen::arbitrary<bool>()) c.cost_cents = *rc::gen::inRange(0, 3) * 1000;
    if (*rc::gen::arbitrary<bool>()) c.headroom = decibels(*rc::gen::inRange(-2, 3));
    c.name = *rc::gen::element<std::string>("a", "b");
    c.converter = *rc::gen::element<std::string>("x", "y");
    return c;
}

// Simplest first, as the specification lists them.
int simplicity(Topology topology) {
    const Topology order[] = {Topology::direct, Topology::transformer, Topology::resistive, Topology::active_line_level,
                              Topology::active_speaker_level};
    return static_cast<int>(std::find(std::begin(order), std::end(order), topology) - std::begin(order));
}

int badness(Verdict v) {
    return v == Verdict::no ? 2 : v == Verdict::care ? 1 : 0;
}

// -1: a before b; 1: after; 0: alike.
int by_hand(const JudgedCandidate& a, const JudgedCandidate& b) {
    if (badness(a.verdict) != badness(b.verdict)) return badness(a.verdict) < badness(b.verdict) ? -1 : 1;
    const auto cares = [](const JudgedCandidate& c) {
        int n = 0;
        for (const auto& f : c.findings)
            if (f.effect == Effect::care) ++n;
        return n;
    };
    if (cares(a) != cares(b)) return cares(a) < cares(b) ? -1 : 1;
    if (a.topology != b.topology) return simplicity(a.topology) < simplicity(b.topology) ? -1 : 1;
    const auto here = [](const JudgedCandidate& c) { return c.on_hand && *c.on_hand >= 1; };
    if (here(a) != here(b)) return here(a) ? -1 : 1;
    if (a.cost_cents.has_value() != b.cost_cents.has_value()) return a.cost_cents ? -1 : 1;
    if (a.cost_cents && *a.cost_cents != *b.cost_cents) return *a.cost_cents < *b.cost_cents ? -1 : 1;
    if (a.headroom.has_value() != b.headroom.has_value()) return a.headroom ? -1 : 1;
    if (a.headroom && *a.headroom != *b.headroom) return *a.headroom > *b.headroom ? -1 : 1;
    if (a.name != b.name) return a.name < b.name ? -1 : 1;
    if (a.converter != b.converter) return a.converter < b.converter ? -1 : 1;
    return 0;
}

RankedTap base_tap() {
    RankedTap tap{{radio_tap("front-left"), {}, {}}, Verdict::care, 2};
    tap.judged.signal.source = SignalSource::rated;
    tap.judged.tap.tap.panels = {"trim", "radio"};
    return tap;
}

}  // namespace

TEST_CASE("candidates are ordered as the comparison by hand orders them") {
    REQUIRE(rc::check("ranks_before agrees with the second way", [] {
        const JudgedCandidate a = any_candidate(), b = any_candidate();
        RC_ASSERT(ranks_before(a, b) == (by_hand(a, b) < 0));
        RC_ASSERT(ranks_before(b, a) == (by_hand(a, b) > 0));
    }));
}

TEST_CASE("a sorted list has no later candidate that ranks before an earlier one") {
    REQUIRE(rc::check("every pair is in order", [] {
        std::vector<JudgedCandidate> list;
        for (int i = 0; i < 7; ++i) list.push_back(any_candidate());
        std::sort(list.begin(), list.end(), [](const auto& a, const auto& b) { return ranks_before(a, b); });
        for (std::size_t i = 0; i < list.size(); ++i)
            for (std::size_t j = i + 1; j < list.size(); ++j) RC_ASSERT(by_hand(list[j], list[i]) >= 0);
    }));
}

TEST_CASE("each key of a tap's order decides when all before it are alike") {
    // Better in one key and worse in every later one, in the order of the specification.
    std::vector<RankedTap> ladder(10, base_tap());
    const auto worsen_after = [&](std::size_t step, auto worsen) {
        for (std::size_t i = 0; i < step; ++i) worsen(ladder[i]);
    };
    ladder[0].verdict = Verdict::fits;
    for (std::size_t i = 1; i < ladder.size(); ++i) ladder[i].verdict = Verdict::no;
    worsen_after(1, [](RankedTap& t) { t.cares = 9; });
    ladder[1].cares = 1;
    for (std::size_t i = 2; i < ladder.size(); ++i) ladder[i].cares = 2;
    ladder[2].judged.signal.source = SignalSource::measured;
    worsen_after(2, [](RankedTap& t) { t.judged.signal.source = SignalSource::supply_limited; });
    worsen_after(3, [](RankedTap& t) { t.judged.tap.pair.pair.grade = Grade::mixed; });
    for (std::size_t i = 4; i < ladder.size(); ++i) ladder[i].judged.tap.pair.pair.grade = Grade::matched;
    worsen_after(4, [](RankedTap& t) { t.judged.tap.pair.polarity.grade = Grade::mixed; });
    for (std::size_t i = 5; i < ladder.size(); ++i) ladder[i].judged.tap.pair.polarity.grade = Grade::one_car;
    ladder[5].judged.tap.tap.plug_in_lead = "lead";
    worsen_after(5, [](RankedTap& t) { t.judged.tap.tap.plug_in_lead.clear(); });
    ladder[6].judged.tap.tap.minutes = 5;
    worsen_after(6, [](RankedTap& t) { t.judged.tap.tap.minutes.reset(); });
    ladder[7].judged.tap.tap.panels = {"trim"};
    worsen_after(7, [](RankedTap& t) { t.judged.tap.tap.panels = {"a", "b", "c"}; });
    worsen_after(8, [](RankedTap& t) { t.judged.tap.code = "z"; });
    ladder[8].judged.tap.code = "a";
    ladder[9].judged.tap.code = "b";
    for (std::size_t i = 0; i + 1 < ladder.size(); ++i) {
        INFO("key " << i);
        CHECK(ranks_before(ladder[i], ladder[i + 1]));
        CHECK_FALSE(ranks_before(ladder[i + 1], ladder[i]));
    }
}

TEST_CASE("grades from best to worst end with the one that must not be cut on") {
    const Grade order[] = {Grade::proven, Grade::matched, Grade::year_split, Grade::one_car,
                           Grade::paper,  Grade::blank,   Grade::pulled,     Grade::mixed};
    for (std::size_t i = 0; i + 1 < std::size(order); ++i) CHECK(grade_rank(order[i]) < grade_rank(order[i + 1]));
}
