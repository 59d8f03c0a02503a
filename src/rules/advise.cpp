// Judging: for each tap its pairs, for each part its chain, for each pair every rule; then two sorts. Each channel of a
// converter is held against its own tap: of one rule the gravest answer over the pairs counts.
#include "rules/advise.h"

#include <fmt/format.h>

#include <algorithm>

#include "rules/merge.h"
#include "rules/ranking.h"
#include "rules/surroundings.h"

namespace tapbook {
namespace {

// A converter to judge; `part` of the amplifier's own input is made here.
struct Part {
    Converter part;
    Terms terms;
};

// One pair with everything a candidate refers to.
struct PairView {
    const TapFacts* tap;
    EffectiveOutput output;
    TapSignal signal;
    TapSurroundings surroundings;
};

struct Job {
    const JobFacts& facts;
    const SystemFacts& system;
    JobRequest request;
    std::vector<Part> parts;
};

constexpr double lowest_for_sub_hz = 30;
constexpr double lowest_for_full_range_hz = 60;

Hertz lowest_of(const JobFacts& facts, const AdviseRequest& request) {
    if (request.lowest) return *request.lowest;
    const bool sub = facts.amplifier && facts.amplifier->spec.use == AmplifierUse::sub;
    return hertz(sub ? lowest_for_sub_hz : lowest_for_full_range_hz);
}

int channels_of(const JobFacts& facts, const AdviseRequest& request) {
    if (request.channels) return *request.channels;
    return facts.amplifier ? facts.amplifier->spec.channels.value_or(2) : 2;
}

const SystemFacts& chosen_system(const CarFacts& car, const std::string& code) {
    if (code.empty() && car.systems.size() == 1) return car.systems.front();
    if (code.empty() && car.systems.size() > 1)
        throw AdviseError(AdviseTrouble::needs_system,
                          fmt::format("this car came with {} sound systems: say which", car.systems.size()));
    for (const SystemFacts& system : car.systems)
        if (system.code == code) return system;
    throw AdviseError(AdviseTrouble::no_such_system,
                      code.empty() ? std::string("no sound system of this car is recorded")
                                   : fmt::format("this car has no sound system \"{}\"", shown(code)));
}

std::vector<const TapFacts*> chosen_taps(const CarFacts& car, const SystemFacts& system, const std::string& named) {
    std::vector<const TapFacts*> taps;
    for (const TapFacts& tap : car.taps)
        if (tap.system == system.code && carries_signal(tap.circuit.role)) taps.push_back(&tap);
    if (taps.empty())
        throw AdviseError(AdviseTrouble::no_signal_tap,
                          fmt::format("no speaker or line tap of {} is recorded", shown(system.code)));
    const auto is_named = [&](const TapFacts* tap) { return tap->code == named; };
    if (!named.empty() && std::none_of(taps.begin(), taps.end(), is_named))
        throw AdviseError(AdviseTrouble::no_such_tap,
                          fmt::format("{} has no speaker or line tap \"{}\"", shown(system.code), shown(named)));
    return taps;
}

std::vector<Part> parts_of(const JobFacts& facts) {
    std::vector<Part> parts;
    if (facts.amplifier) {
        if (auto direct = speaker_input_as_converter(facts.amplifier->spec))
            parts.push_back({Converter{"direct", facts.amplifier->maker, facts.amplifier->name, {}, *direct}, Terms{}});
    }
    for (const ShelfConverter& one : facts.converters) parts.push_back({one.part, one.terms});
    return parts;
}

PairView view_of(const Job& job, const TapFacts& tap, const std::vector<const TapFacts*>& pairs) {
    const CarFacts& car = job.facts.car;
    return {&tap, effective_output(tap), predict_tap(car, tap, job.request.lowest),
            surroundings_of(car, tap, pairs, job.request.lowest)};
}

Candidate candidate_of(const Job& job, const PairView& view) {
    return {job.facts.car.vehicle, job.system, *view.tap, view.output, view.signal, view.surroundings, job.request};
}

Candidate candidate_of(const Job& job, const PairView& view, const Part& part, int pairs) {
    Candidate candidate = candidate_of(job, view);
    candidate.converter = &part.part;
    candidate.terms = &part.terms;
    candidate.amplifier = job.facts.amplifier ? &*job.facts.amplifier : nullptr;
    candidate.pairs = pairs;
    const AmplifierSpec* amplifier = candidate.amplifier == nullptr ? nullptr : &candidate.amplifier->spec;
    candidate.chain = level_chain({view.signal.clean, job.request.lowest, std::nullopt, 1}, part.part.spec, amplifier);
    return candidate;
}

int pairs_taken(const Job& job, const Part& part, std::size_t offered) {
    const int wanted =
        std::min(job.request.channels_wanted, part.part.spec.channels.value_or(job.request.channels_wanted));
    return std::max(1, std::min(wanted, static_cast<int>(offered)));
}

JudgedCandidate numbers_of(const Candidate& candidate, const Part& part) {
    const ConverterSpec& spec = part.part.spec;
    JudgedCandidate judged;
    judged.converter = part.part.path;
    judged.maker = part.part.maker;
    judged.name = part.part.name;
    judged.topology = spec.topology;
    judged.headroom = headroom(spec, candidate.job.lowest, candidate.signal.clean.high);
    judged.drive_margin = drive_margin(spec, candidate.signal.clean.low);
    judged.limit_at_lowest = limit_at(spec, candidate.job.lowest);
    judged.output_open = candidate.chain.output_open;
    judged.output = candidate.chain.output;
    judged.shortfall = candidate.chain.shortfall;
    judged.reachable = candidate.chain.reachable;
    judged.on_hand = part.terms.on_hand;
    judged.cost_cents = part.terms.cost_cents;
    return judged;
}

// A part judged, without words: `judged.findings` hold effects only, which is all that the order asks for.
struct JudgedPart {
    const Part* part;
    int pairs;
    std::vector<PairAnswer> answers;
    JudgedCandidate judged;
};

std::vector<JudgedPart> judge_parts(const Job& job, const std::vector<PairView>& views, RuleBook& rules) {
    std::vector<JudgedPart> all;
    for (const Part& part : job.parts) {
        const int pairs = pairs_taken(job, part, views.size());
        std::vector<std::vector<RuleAnswer>> of_pairs;
        for (int i = 0; i < pairs; ++i) {
            const Candidate candidate = candidate_of(job, views[static_cast<std::size_t>(i)], part, pairs);
            of_pairs.push_back(rules.answers(candidate));
            if (i == 0) all.push_back({&part, pairs, {}, numbers_of(candidate, part)});
        }
        all.back().answers = merged(of_pairs);
        for (const PairAnswer& one : all.back().answers) {
            all.back().judged.findings.emplace_back();
            all.back().judged.findings.back().effect = one.answer.effect;
        }
        all.back().judged.verdict = verdict_of(all.back().judged.findings);
    }
    std::sort(all.begin(), all.end(), [](const auto& a, const auto& b) { return ranks_before(a.judged, b.judged); });
    return all;
}

// A finding about another pair than the tap's own begins with its circuit.
JudgedCandidate in_words(const Job& job, const std::vector<PairView>& views, JudgedPart part, RuleBook& rules) {
    for (std::size_t i = 0; i < part.answers.size(); ++i) {
        const PairAnswer& one = part.answers[i];
        const PairView& view = views[one.pair];
        Finding finding = rules.in_words(candidate_of(job, view, *part.part, part.pairs), one.answer);
        if (one.pair > 0) {
            finding.pair = view.tap->code;
            finding.says =
                fmt::format("{}: {}", path_tail(path_head(finding.pair, circuit_depth), system_depth), finding.says);
        }
        part.judged.findings[i] = std::move(finding);
    }
    return std::move(part.judged);
}

// A tap judged with every part.
struct WholeTap {
    RankedTap ranked;
    std::vector<PairView> pairs;
    std::vector<JudgedPart> parts;
};

WholeTap judge_tap(const Job& job, const TapFacts& tap, RuleBook& rules) {
    WholeTap whole;
    const auto pairs = pairs_at_place(job.facts.car, tap);
    const auto wanted = std::min(pairs.size(), static_cast<std::size_t>(std::max(1, job.request.channels_wanted)));
    for (std::size_t i = 0; i < wanted; ++i) whole.pairs.push_back(view_of(job, *pairs[i], pairs));
    Candidate alone = candidate_of(job, whole.pairs.front());
    alone.amplifier = job.facts.amplifier ? &*job.facts.amplifier : nullptr;
    std::vector<Finding> findings;
    for (const RuleAnswer& answer : in_order(rules.tap_answers(alone)))
        findings.push_back(rules.in_words(alone, answer));
    whole.parts = judge_parts(job, whole.pairs, rules);
    const auto& deciding = whole.parts.empty() ? findings : whole.parts.front().judged.findings;
    whole.ranked.verdict = verdict_of(deciding);
    whole.ranked.cares = count_of(deciding, Effect::care);
    whole.ranked.judged = {tap, whole.pairs.front().signal, std::move(findings)};
    return whole;
}

std::optional<std::string> best_of(const std::vector<JudgedCandidate>& candidates) {
    const auto usable = [](const JudgedCandidate& c) { return c.verdict != Verdict::no; };
    const auto found = std::find_if(candidates.begin(), candidates.end(), usable);
    return found == candidates.end() ? std::nullopt : std::optional(found->converter);
}

}  // namespace

Advice advise(const JobFacts& facts, const AdviseRequest& request, RuleBook& rules) {
    const SystemFacts& system = chosen_system(facts.car, request.system);
    const auto taps = chosen_taps(facts.car, system, request.tap);
    const JobRequest asked{lowest_of(facts, request), channels_of(facts, request), facts.car.year};
    const Job job{facts, system, asked, parts_of(facts)};
    std::vector<WholeTap> judged;
    for (const TapFacts* tap : taps) judged.push_back(judge_tap(job, *tap, rules));
    std::sort(judged.begin(), judged.end(), [&](const WholeTap& a, const WholeTap& b) {
        const bool a_named = a.ranked.judged.tap.code == request.tap;
        const bool b_named = b.ranked.judged.tap.code == request.tap;
        return a_named != b_named ? a_named : ranks_before(a.ranked, b.ranked);
    });
    WholeTap& chosen = judged.front();
    Advice advice{facts.car.vehicle,
                  system,
                  std::move(chosen.ranked.judged),
                  {},
                  {},
                  asked.lowest,
                  asked.channels_wanted,
                  facts.amplifier,
                  {},
                  {},
                  facts.practice};
    for (const Rule& rule : rules.rules())
        if (rule.off) advice.rules_off.push_back(rule.id);
    for (const PairView& view : chosen.pairs) advice.pairs.push_back(*view.tap);
    for (JudgedPart& part : chosen.parts)
        advice.candidates.push_back(in_words(job, chosen.pairs, std::move(part), rules));
    advice.best = best_of(advice.candidates);
    for (std::size_t i = 1; i < judged.size(); ++i) advice.other_taps.push_back(std::move(judged[i].ranked.judged));
    return advice;
}

}  // namespace tapbook
