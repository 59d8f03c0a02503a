// The same steps as advise(), without words: pairs at the tap's place, each part against each pair it would take, the
// gravest answer counts, and the best tap by the order that advise() uses.
#include "rules/shelf_eligibility.h"

#include <algorithm>
#include <map>
#include <tuple>
#include <unordered_map>

#include "rules/merge.h"
#include "rules/ranking.h"
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

// The effects alone, which is all that a verdict asks for.
struct Effects {
    Verdict verdict;
    int cares;
};

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

    Effects judge_part(const CarFacts& car, const SystemFacts& system, const std::vector<View>& views,
                       const Converter& part, const Terms& terms) {
        const int wanted = std::min(request.channels_wanted, part.spec.channels.value_or(request.channels_wanted));
        const int pairs = std::max(1, std::min(wanted, static_cast<int>(views.size())));
        std::vector<std::vector<RuleAnswer>> of_pairs;
        for (std::size_t i = 0; i < static_cast<std::size_t>(pairs); ++i) {
            Candidate candidate = candidate_of(car, system, views[i]);
            candidate.converter = &part;
            candidate.terms = &terms;
            candidate.amplifier = amplifier ? &*amplifier : nullptr;
            candidate.pairs = pairs;
            candidate.chain = level_chain({views[i].signal.clean, request.lowest, std::nullopt, 1}, part.spec,
                                          amplifier ? &amplifier->spec : nullptr);
            of_pairs.push_back(rules.answers(candidate));
        }
        return effects_of(merged(of_pairs));
    }

    Judged judge_tap(const CarFacts& car, const SystemFacts& system, const std::vector<View>& views) {
        Judged judged;
        std::optional<Effects> best;
        const auto note = [&](const Effects& said) {
            if (!best || std::pair(said.verdict, said.cares) < std::pair(best->verdict, best->cares)) best = said;
        };
        if (direct) {
            const Effects said = judge_part(car, system, views, *direct, Terms{});
            judged.direct = said.verdict != Verdict::no;
            note(said);
        }
        for (std::size_t i = 0; i < converters.size(); ++i) {
            const Effects said = judge_part(car, system, views, converters[i].part, converters[i].terms);
            if (said.verdict != Verdict::no) judged.suiting.push_back({i, said.verdict, said.cares});
            note(said);
        }
        if (!best) {
            Candidate alone = candidate_of(car, system, views.front());
            alone.amplifier = amplifier ? &*amplifier : nullptr;
            best = effects_of(rules.tap_answers(alone));
        }
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

    const Judged& judged_tap(const CarFacts& car, const SystemFacts& system, const TapFacts& tap,
                             SignalSource& source) {
        const auto pairs = pairs_at_place(car, tap);
        const auto wanted = std::min(pairs.size(), static_cast<std::size_t>(std::max(1, request.channels_wanted)));
        std::vector<View> views;
        std::string key;
        for (std::size_t i = 0; i < wanted; ++i) {
            views.push_back({pairs[i], effective_output(*pairs[i]), predict_tap(car, *pairs[i], request.lowest),
                             surroundings_of(car, *pairs[i], pairs, request.lowest)});
            keys.append(candidate_of(car, system, views.back()), key);
        }
        source = views.front().signal.source;
        ++count.taps;
        const auto found = known.find(key);
        if (found != known.end()) return found->second;
        ++count.kinds;
        return known.emplace(std::move(key), judge_tap(car, system, views)).first->second;
    }

    std::vector<ShelfConverter> converters;
    std::optional<Amplifier> amplifier;
    RuleBook& rules;
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
        std::optional<TapRank> best;
        const Judged* best_judged = nullptr;
        for (const TapFacts& tap : car.taps) {
            if (tap.system != system.code || !carries_signal(tap.circuit.role)) continue;
            SignalSource source = SignalSource::none;
            const Judged& judged = state_->judged_tap(car, system, tap, source);
            const TapRank rank{&tap, source, judged.verdict, judged.cares};
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
