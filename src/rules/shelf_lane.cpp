// The same steps as advise(), without words: pairs at the tap's place, each part against each pair it would take, the
// gravest answer counts, and the best tap by the order that advise() uses. No part makes a tap better than its own
// rules say, so the taps are judged in that order until none of the rest can be the best.
#include "rules/shelf_lane.h"

#include <algorithm>
#include <tuple>

#include "rules/merge.h"

namespace tapbook {
namespace {

constexpr double lowest_for_sub_hz = 30;
constexpr double lowest_for_full_range_hz = 60;
constexpr std::size_t most_known_kinds = 4096;  // with hundreds of parts each takes some kilobytes

template <class Answers, class EffectOf>
Effects effects_of(const Answers& answers, EffectOf effect_of) {
    std::vector<Finding> findings(answers.size());
    for (std::size_t i = 0; i < answers.size(); ++i) findings[i].effect = effect_of(answers[i]);
    return {verdict_of(findings), count_of(findings, Effect::care)};
}

}  // namespace

ShelfLane::ShelfLane(std::vector<ShelfConverter> converters, std::optional<Amplifier> amplifier, RuleBook& rules)
    : converters_(std::move(converters)),
      amplifier_(std::move(amplifier)),
      rules_(rules),
      split_(SplitRules::of(rules, amplifier_.has_value())),
      keys_(rules, amplifier_.has_value()),
      request_{hertz(lowest_for_full_range_hz), 2, {}} {
    if (!amplifier_) return;
    if (amplifier_->spec.use == AmplifierUse::sub) request_.lowest = hertz(lowest_for_sub_hz);
    request_.channels_wanted = amplifier_->spec.channels.value_or(2);
    if (const auto spec = speaker_input_as_converter(amplifier_->spec))
        direct_ = Converter{"direct", amplifier_->maker, amplifier_->name, {}, *spec};
}

Candidate ShelfLane::candidate_of(const CarFacts& car, const SystemFacts& system, const View& view) const {
    return {car.vehicle, system, *view.tap, view.output, view.signal, view.surroundings, request_};
}

// The pairs without a part; the amplifier is there for whoever asks.
std::vector<Candidate> ShelfLane::candidates_alone(const CarFacts& car, const SystemFacts& system,
                                                   const std::vector<View>& views) const {
    std::vector<Candidate> all;
    all.reserve(views.size());
    for (const View& view : views)
        all.emplace_back(candidate_of(car, system, view)).amplifier = amplifier_ ? &*amplifier_ : nullptr;
    return all;
}

// The first of them, with the part: as many as it would take.
std::span<Candidate> ShelfLane::with_part(std::vector<Candidate>& candidates, const Converter& part,
                                          const Terms& terms) const {
    const int wanted = std::min(request_.channels_wanted, part.spec.channels.value_or(request_.channels_wanted));
    const int pairs = std::max(1, std::min(wanted, static_cast<int>(candidates.size())));
    const auto taken = std::span(candidates).first(static_cast<std::size_t>(pairs));
    for (Candidate& candidate : taken) {
        candidate.converter = &part;
        candidate.terms = &terms;
        candidate.pairs = pairs;
    }
    return taken;
}

void ShelfLane::make_level(Candidate& candidate) const {
    candidate.chain = level_chain({candidate.signal.clean, request_.lowest, std::nullopt, 1}, candidate.converter->spec,
                                  amplifier_ ? &amplifier_->spec : nullptr);
}

// `number` of the converter, or one more for the amplifier's own input.
Effects ShelfLane::effects_of_part(std::span<Candidate> candidates, std::size_t number, SplitRules::Extent extent) {
    const auto with_level = [this](Candidate& candidate) { make_level(candidate); };
    if (split_) return split_->of_part(candidates, number, extent, with_level);
    std::vector<std::vector<RuleAnswer>> of_pairs;
    for (Candidate& candidate : candidates) {
        make_level(candidate);
        of_pairs.push_back(rules_.answers(candidate));
    }
    return effects_of(merged(of_pairs), [](const PairAnswer& one) { return one.answer.effect; });
}

// Every part with no more cares than is needed to rank the tap: where none suits, how many each has.
ShelfLane::Judged ShelfLane::judge_tap(const CarFacts& car, const SystemFacts& system, const std::vector<View>& views) {
    Judged judged;
    std::optional<Effects> best;
    std::vector<Candidate> candidates = candidates_alone(car, system, views);
    if (split_) split_->look_at(candidates);
    const Terms no_terms;
    const auto look = [&](SplitRules::Extent extent) {
        const auto ask = [&](const Converter& part, const Terms& terms, std::size_t number) {
            const Effects said = effects_of_part(with_part(candidates, part, terms), number, extent);
            const bool counts = said.verdict != Verdict::no || extent == SplitRules::Extent::whole;
            if (counts && (!best || std::pair(said.verdict, said.cares) < std::pair(best->verdict, best->cares)))
                best = said;
            return said;
        };
        if (direct_) judged.direct = ask(*direct_, no_terms, converters_.size()).verdict != Verdict::no;
        for (std::size_t i = 0; i < converters_.size(); ++i)
            if (const Effects said = ask(converters_[i].part, converters_[i].terms, i); said.verdict != Verdict::no)
                judged.suiting.push_back({i, said.verdict, said.cares});
    };
    if (has_parts()) look(SplitRules::Extent::until_stop);
    if (has_parts() && !best) look(SplitRules::Extent::whole);
    if (!best)
        best = effects_of(rules_.tap_answers(candidates.front()), [](const RuleAnswer& one) { return one.effect; });
    judged.verdict = best->verdict;
    judged.cares = best->cares;
    put_in_order(judged.suiting);
    return judged;
}

// What lies on the shelf today counts for nothing here: it is what shall be decided.
void ShelfLane::put_in_order(std::vector<SuitingConverter>& suiting) const {
    const auto key = [&](const SuitingConverter& one) {
        const ShelfConverter& part = converters_[one.converter];
        return std::tuple(one.verdict, one.cares, part.part.spec.topology, !part.terms.cost_cents,
                          part.terms.cost_cents.value_or(0), std::string_view(part.part.path));
    };
    std::sort(suiting.begin(), suiting.end(), [&](const auto& a, const auto& b) { return key(a) < key(b); });
}

ShelfLane::Looked ShelfLane::look_at(const CarFacts& car, const SystemFacts& system, const TapFacts& tap) {
    ++taps_;
    Looked looked;
    const auto pairs = pairs_at_place(car, tap);
    const auto wanted = std::min(pairs.size(), static_cast<std::size_t>(std::max(1, request_.channels_wanted)));
    for (std::size_t i = 0; i < wanted; ++i)
        looked.views.push_back({pairs[i], effective_output(*pairs[i]), predict_tap(car, *pairs[i], request_.lowest),
                                surroundings_of(car, *pairs[i], pairs, request_.lowest)});
    looked.at_best = {&tap, looked.views.front().signal.source, Verdict::fits, 0};
    if (!split_ || !has_parts()) return looked;
    split_->look_at(candidates_alone(car, system, looked.views));
    looked.at_best.verdict = split_->of_tap(1).verdict;
    looked.at_best.cares = split_->of_tap(1).cares;
    return looked;
}

const ShelfLane::Judged& ShelfLane::judged_tap(const CarFacts& car, const SystemFacts& system,
                                               const std::vector<View>& views) {
    std::string key;
    for (const View& view : views) keys_.append(candidate_of(car, system, view), key);
    const auto found = known_.find(key);
    if (found != known_.end()) return found->second;
    kinds_.insert(std::hash<std::string>()(key));
    return known_.emplace(std::move(key), judge_tap(car, system, views)).first->second;
}

std::vector<SuitedSystem> ShelfLane::judge(const CarFacts& car) {
    if (known_.size() >= most_known_kinds) known_.clear();  // what comes next is like what came last, if like any
    std::vector<SuitedSystem> suited;
    for (const SystemFacts& system : car.systems) {
        std::vector<Looked> taps;
        for (const TapFacts& tap : car.taps)
            if (tap.system == system.code && carries_signal(tap.circuit.role))
                taps.push_back(look_at(car, system, tap));
        std::sort(taps.begin(), taps.end(),
                  [](const auto& a, const auto& b) { return ranks_before(a.at_best, b.at_best); });
        std::optional<TapRank> best;
        const Judged* best_judged = nullptr;
        for (const auto& [views, at_best] : taps) {
            if (best && !ranks_before(at_best, *best)) break;
            const Judged& judged = judged_tap(car, system, views);
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

}  // namespace tapbook
