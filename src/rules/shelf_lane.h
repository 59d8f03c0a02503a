// Which converters suit the sound systems of one car after another? One thread's share of shelf_eligibility.h, with
// what it has judged before: taps that look the same to every rule are judged once. For the files of this folder.
#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <unordered_map>
#include <unordered_set>
#include <vector>

#include "rules/ranking.h"
#include "rules/shelf_eligibility.h"
#include "rules/split_rules.h"
#include "rules/surroundings.h"
#include "rules/tap_key.h"

namespace tapbook {

class ShelfLane {
  public:
    // `rules` outlives the lane. Without an amplifier the converters are held against the taps only.
    ShelfLane(std::vector<ShelfConverter> converters, std::optional<Amplifier> amplifier, RuleBook& rules);
    ShelfLane(const ShelfLane&) = delete;
    ShelfLane& operator=(const ShelfLane&) = delete;

    // Each sound system of the car that has a speaker or line tap, in path order.
    std::vector<SuitedSystem> judge(const CarFacts& car);

    // Does judge() leave the rule book alone, so that several lanes may work at once?
    bool works_alone() const { return split_ && has_parts(); }

    std::int64_t taps_looked_at() const { return taps_; }

    // Of each kind of tap that was judged, a hash of 64 bits: enough for counting them.
    const std::unordered_set<std::size_t>& kinds() const { return kinds_; }

  private:
    struct View {
        const TapFacts* tap;
        EffectiveOutput output;
        TapSignal signal;
        TapSurroundings surroundings;
    };
    // A tap before any part is held against it.
    struct Looked {
        std::vector<View> views;
        TapRank at_best;  // no part makes it better
    };
    // What the rules say of one kind of tap.
    struct Judged {
        Verdict verdict = Verdict::no;
        int cares = 0;
        std::vector<SuitingConverter> suiting;
        bool direct = false;
    };

    bool has_parts() const { return direct_ || !converters_.empty(); }
    Candidate candidate_of(const CarFacts& car, const SystemFacts& system, const View& view) const;
    std::vector<Candidate> candidates_alone(const CarFacts& car, const SystemFacts& system,
                                            const std::vector<View>& views) const;
    std::span<Candidate> with_part(std::vector<Candidate>& candidates, const Converter& part, const Terms& terms) const;
    void make_level(Candidate& candidate) const;
    Effects effects_of_part(std::span<Candidate> candidates, std::size_t number, SplitRules::Extent extent);
    Judged judge_tap(const CarFacts& car, const SystemFacts& system, const std::vector<View>& views);
    void put_in_order(std::vector<SuitingConverter>& suiting) const;
    Looked look_at(const CarFacts& car, const SystemFacts& system, const TapFacts& tap);
    const Judged& judged_tap(const CarFacts& car, const SystemFacts& system, const std::vector<View>& views);

    std::vector<ShelfConverter> converters_;
    std::optional<Amplifier> amplifier_;
    RuleBook& rules_;
    std::optional<SplitRules> split_;  // absent when a rule needs SQLite
    TapKeys keys_;
    JobRequest request_;
    std::optional<Converter> direct_;                // the amplifier's own speaker-level input
    std::unordered_map<std::string, Judged> known_;  // kinds met lately
    std::unordered_set<std::size_t> kinds_;
    std::int64_t taps_ = 0;
};

}  // namespace tapbook
