// Does every shipped rule fire on the practice shop, stay silent on it, and come out unsettled where not knowing is
// worth something? All cars, years, sound systems, taps and amplifiers, with low and high lowest notes and few and many
// channels, through advise().
#include <catch2/catch.hpp>
#include <set>

#include "practice_shop.h"
#include "rules_seen.h"

using namespace tapbook;
using namespace tapbook::fixture;

namespace {

class Walk {
  public:
    explicit Walk(const Catalog& catalog) : catalog_(catalog), rules_(RuleBook::shipped(RuleCases::left_out)) {
        facts_.converters = catalog.converters();
        amplifiers_ = {std::nullopt};
        for (const Amplifier& amplifier : catalog.amplifiers()) amplifiers_.emplace_back(amplifier);
    }

    RulesSeen walk() {
        for (const auto& name : catalog_.vehicle_names()) {
            walk_car(name.path, std::nullopt, true);
            walk_car(name.path, name.first_year, false);
            walk_car(name.path, name.last_year, false);
        }
        return std::move(seen_);
    }
    int candidates() const { return candidates_; }

  private:
    void walk_car(const std::string& path, std::optional<int> year, bool with_jobs) {
        facts_.car = catalog_.car(path, year);
        for (const TapFacts& tap : facts_.car.taps) {
            if (!carries_signal(tap.circuit.role)) continue;
            for (const auto& amplifier : amplifiers_) {
                facts_.amplifier = amplifier;
                AdviseRequest request{tap.system, tap.code, {}, {}};
                note(request);
                if (!with_jobs) continue;
                request.lowest = hertz(250);
                note(request);
                for (const int channels : {1, 4}) {
                    request.lowest = hertz(30);
                    request.channels = channels;
                    note(request);
                }
            }
        }
    }

    void note(const AdviseRequest& request) {
        const Advice advice = advise(facts_, request, rules_);
        for (const JudgedCandidate& candidate : advice.candidates) {
            ++candidates_;
            count_said(rules_, "", facts_.amplifier.has_value(), candidate.findings, seen_);
        }
    }

    const Catalog& catalog_;
    RuleBook rules_;
    JobFacts facts_;
    std::vector<std::optional<Amplifier>> amplifiers_;
    RulesSeen seen_;
    int candidates_ = 0;
};

}  // namespace

TEST_CASE("every shipped rule fires and stays silent somewhere in the practice shop, but for those listed here") {
    const PracticeShop shop;
    Walk walk(shop.catalog());
    const auto seen = walk.walk();
    CHECK(walk.candidates() > 10000);
    const RuleBook book = RuleBook::shipped();
    // Two shops that save one entry at the same time: files of entries cannot make that.
    const std::set<std::string> never_fires = {"entry-edited-twice"};
    // Their columns always hold something: a grade, a role, a topology.
    const std::set<std::string> always_settled = {"line-level-into-speaker-level-part", "pair-not-proved",
                                                  "polarity-not-proved"};
    for (std::size_t i = 0; i < book.rules().size(); ++i) {
        if (!book.is_about(i).empty()) continue;
        const Rule& rule = book.rules()[i];
        INFO(rule.id);
        REQUIRE(seen.count(rule.id) == 1);
        const Seen& one = seen.at(rule.id);
        CHECK((one.fired > 0) != (never_fires.count(rule.id) == 1));
        CHECK(one.silent > 0);
        if (rule.unknown != Unknown::silent) CHECK((one.unsettled > 0) != (always_settled.count(rule.id) == 1));
    }
}
