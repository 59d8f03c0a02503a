// The same steps as advise(), without words: pairs at the tap's place, each part against each pair it would take, the
// gravest answer counts, and the best tap by the order that advise() uses. No part makes a tap better than its own
// rules say, so the taps are judged in that order until none of the rest can be the best.
#include "rules/shelf_eligibility.h"

#include <algorithm>
#include <map>
#include <tuple>
#include <unordered_map>

#include "rules/merge.h"
#include "rules/ranking.h"
#include "rules/split_rules.h"
#include "rules/surroundings.h"
#include "rules/tap_key.h"

namespace tapbook {
namespace {

struct View {
    const TapFacts* tap;
    EffectiveOutput output;
    TapSignal signal;
    TapSurroundings surroundings;
};

// What the rules say of one kind of tap.
struct Judged {
    Verdict verdict = Verdict::no;
    int cares = 0;
    std::vector<SuitingConverter> suiting;
    bool direct = false;
};

constexpr double lowest_for_sub_hz = 30;
constexpr double lowest_for_full_range_hz = 60;

Effects effects_of(const std::vector<PairAnswer>& answers) {
    std::vector<Finding> findings(answers.size());
    for (std::size_t i = 0; i < answers.size(); ++i) findings[i].effect = answers[i].answer.effect;
    return {verdict_of(findings), count_of(findings, Effect::care)};
}

Effects effects_of(const std::vector<RuleAnswer>& answers) {
    std::vector<Finding> findings(answers.size());
    for (std::size_t i = 0; i < answers.size(); ++i) findings[i].effect = answers[i].effect;
    return {verdict_of(findings), count_of(findings, Effect::care)};
}

}  // namespace

struct ConverterJudge::State {
    State(std::vector<ShelfConverter> parts, std::optional<Amplifier> amp, RuleBook& book)
        : converters(std::move(parts)),
          amplifier(std::move(amp)),
          rules(book),
          split(SplitRules::of(book, amplifier.has_value())),
          keys(book, amplifier.has_value()),
          request{hertz(lowest_for_full_range_hz), 2, {}} {
        if (!amplifier) return;
        if (amplifier->spec.use == AmplifierUse::sub) request.lowest = hertz(lowest_for_sub_hz);
        request.channels_wanted = amplifier->spec.channels.value_or(2);
        if (const auto spec = speaker_input_as_converter(amplifier->spec))
            direct = Converter{"direct", amplifier->maker, amplifier->name, {}, *spec};
    }

    Candidate candidate_of(const CarFacts& car, const SystemFacts& system, const View& view) const {
        return {car.vehicle, system, *view.tap, view.output, view.signal, view.surroundings, request};
    }

    // The candidates of the part at the pairs it would take.
    std::vector<Candidate> candidates_with(const CarFacts& car, const SystemFacts& system,
                                           const std::vector<View>& views, const Converter& part, const Terms& terms) {
        const int wanted = std::min(request.channels_wanted, part.spec.channels.value_or(request.channels_wanted));
        const int pairs = std::max(1, std::min(wanted, static_cast<int>(views.size())));
        std::vector<Candidate> all;
        for (std::size_t i = 0; i < static_cast<std::size_t>(pairs); ++i) {
            Candidate& candidate = all.emplace_back(candidate_of(car, system, views[i]));
            candidate.converter = &part;
            candidate.terms = &terms;
            candidate.amplifier = amplifier ? &*amplifier : nullptr;
            candidate.pairs = pairs;
            candidate.chain = level_chain({views[i].signal.clean, request.lowest, std::nullopt, 1}, part.spec,
                                          amplifier ? &amplifier->spec : nullptr);
        }
        return all;
    }

    Effects effects_at(const std::vector<Candidate>& candidates, SplitRules::Extent extent) {
        if (split) return split->of_part(candidates, extent);
        std::vector<std::vector<RuleAnswer>> of_pairs;
        for (const Candidate& candidate : candidates) of_pairs.push_back(rules.answers(candidate));
        return effects_of(merged(of_pairs));
    }

    // Candidates without a part; the amplifier is there for whoever asks.
    std::vector<Candidate> candidates_alone(const CarFacts& car, const SystemFacts& system,
                                            const std::vector<View>& views) const {
        std::vector<Candidate> all;
        for (const View& view : views)
            all.emplace_back(candidate_of(car, system, view)).amplifier = amplifier ? &*amplifier : nullptr;
        return all;
    }

    bool has_parts() const { return direct || !converters.empty(); }

    // Every part with no more cares than is needed to rank the tap: where none suits, how many each has.
    Judged judge_tap(const CarFacts& car, const SystemFacts& system, const std::vector<View>& views) {
        Judged judged;
        std::optional<Effects> best;
        const std::vector<Candidate> alone = candidates_alone(car, system, views);
        if (split) split->look_at(alone);
        const auto look = [&](SplitRules::Extent extent) {
            const auto ask = [&](const Converter& part, const Terms& terms) {
                const Effects said = effects_at(candidates_with(car, system, views, part, terms), extent);
                const bool counts = said.verdict != Verdict::no || extent == SplitRules::Extent::whole;
                if (counts && (!best || std::pair(said.verdict, said.cares) < std::pair(best->verdict, best->cares)))
                    best = said;
                return said;
            };
            if (direct) judged.direct = ask(*direct, Terms{}).verdict != Verdict::no;
            for (std::size_t i = 0; i < converters.size(); ++i)
                if (const Effects said = ask(converters[i].part, converters[i].terms); said.verdict != Verdict::no)
                    judged.suiting.push_back({i, said.verdict, said.cares});
        };
        if (has_parts()) look(SplitRules::Extent::until_stop);
        if (has_parts() && !best) look(SplitRules::Extent::whole);
        if (!best) best = effects_of(rules.tap_answers(alone.front()));
        judged.verdict = best->verdict;
        judged.cares = best->cares;
        put_in_order(judged.suiting);
        return judged;
    }

    // What lies on the shelf today counts for nothing here: it is what shall be decided.
    void put_in_order(std::vector<SuitingConverter>& suiting) const {
        const auto key = [&](const SuitingConverter& one) {
            const ShelfConverter& part = converters[one.converter];
            return std::tuple(one.verdict, one.cares, part.part.spec.topology, !part.terms.cost_cents,
                              part.terms.cost_cents.value_or(0), std::string_view(part.part.path));
        };
        std::sort(suiting.begin(), suiting.end(), [&](const auto& a, const auto& b) { return key(a) < key(b); });
    }

    // A tap before any part is held against it.
    struct Looked {
        std::vector<View> views;
        TapRank at_best;  // no part makes it better
    };

    Looked look_at(const CarFacts& car, const SystemFacts& system, const TapFacts& tap) {
        ++count.taps;
        Looked looked;
        const auto pairs = pairs_at_place(car, tap);
        const auto wanted = std::min(pairs.size(), static_cast<std::size_t>(std::max(1, request.channels_wanted)));
        for (std::size_t i = 0; i < wanted; ++i)
            looked.views.push_back({pairs[i], effective_output(*pairs[i]), predict_tap(car, *pairs[i], request.lowest),
                                    surroundings_of(car, *pairs[i], pairs, request.lowest)});
        looked.at_best = {&tap, looked.views.front().signal.source, Verdict::fits, 0};
        if (!split || !has_parts()) return looked;
        split->look_at(candidates_alone(car, system, looked.views));
        looked.at_best.verdict = split->of_tap(1).verdict;
        looked.at_best.cares = split->of_tap(1).cares;
        return looked;
    }

    const Judged& judged_tap(const CarFacts& car, const SystemFacts& system, const std::vector<View>& views) {
        std::string key;
        for (const View& view : views) keys.append(candidate_of(car, system, view), key);
        const auto found = known.find(key);
        if (found != known.end()) return found->second;
        ++count.kinds;
        return known.emplace(std::move(key), judge_tap(car, system, views)).first->second;
    }

    std::vector<ShelfConverter> converters;
    std::optional<Amplifier> amplifier;
    RuleBook& rules;
    std::optional<SplitRules> split;  // absent when a rule needs SQLite
    TapKeys keys;
    JobRequest request;
    std::optional<Converter> direct;
    std::unordered_map<std::string, Judged> known;
    JudgedTaps count;
};

ConverterJudge::ConverterJudge(std::vector<ShelfConverter> converters, std::optional<Amplifier> amplifier,
                               RuleBook& rules)
    : state_(std::make_unique<State>(std::move(converters), std::move(amplifier), rules)) {}
ConverterJudge::~ConverterJudge() = default;
ConverterJudge::ConverterJudge(ConverterJudge&&) noexcept = default;
ConverterJudge& ConverterJudge::operator=(ConverterJudge&&) noexcept = default;

std::vector<SuitedSystem> ConverterJudge::judge(const CarFacts& car) {
    std::vector<SuitedSystem> suited;
    for (const SystemFacts& system : car.systems) {
        std::vector<State::Looked> taps;
        for (const TapFacts& tap : car.taps)
            if (tap.system == system.code && carries_signal(tap.circuit.role))
                taps.push_back(state_->look_at(car, system, tap));
        std::sort(taps.begin(), taps.end(),
                  [](const auto& a, const auto& b) { return ranks_before(a.at_best, b.at_best); });
        std::optional<TapRank> best;
        const Judged* best_judged = nullptr;
        for (const auto& [views, at_best] : taps) {
            if (best && !ranks_before(at_best, *best)) break;
            const Judged& judged = state_->judged_tap(car, system, views);
            const TapRank rank{at_best.tap, at_best.source, judged.verdict, judged.cares};
            if (best && !ranks_before(rank, *best)) continue;
            best = rank;
            best_judged = &judged;
        }
        if (best_judged != nullptr)
            suited.push_back({system.entry.path, best->tap->code, best_judged->suiting, best_judged->direct});
    }
    return suited;
}

JudgedTaps ConverterJudge::judged() const {
    return state_->count;
}

}  // namespace tapbook
