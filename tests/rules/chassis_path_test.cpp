// The rule that keeps radios from burning, against a second way: the specification's sentence written out as plain code
// and tried on every combination of words.
#include <catch2/catch.hpp>

#include "facts_fixture.h"

using namespace tapbook;
using namespace tapbook::fixture;

namespace {

struct Words {
    Drive drive;
    Stage stage;
    std::optional<bool> split_is_bridged;
    Reference reference;
    Negatives negatives;
    int pairs;
    std::optional<bool> isolates;
    std::optional<OutputShield> shield;
    AmplifierShield amplifier;
    std::optional<Ohms> lift;
};

bool driven(const Words& w) {
    if (w.drive == Drive::bridged || w.drive == Drive::boosted_bridged || w.drive == Drive::line_differential)
        return true;
    if (w.drive == Drive::unknown) return true;
    if (w.drive == Drive::boosted_split) return w.split_is_bridged.value_or(true);
    if (w.drive == Drive::common_return) return w.stage != Stage::single_ended;
    return false;
}

bool must_stop(const Words& w) {
    if (!driven(w)) return false;
    if (w.reference == Reference::chassis || w.reference == Reference::unknown) return true;
    if (w.pairs > 1 && w.negatives != Negatives::separate) return true;
    const bool isolating = w.isolates == true;
    const bool tied = !w.shield || *w.shield == OutputShield::input_conductor;
    bool grounded = w.amplifier == AmplifierShield::chassis || w.amplifier == AmplifierShield::unknown;
    if (w.amplifier == AmplifierShield::lifted) grounded = !w.lift || *w.lift < ohms(100);
    return !isolating && tied && grounded;
}

bool stops(RuleBook& book, const Words& w) {
    Bench bench;
    bench.tap.pair.drive = w.drive == Drive::unknown ? graded(Grade::mixed) : settled(std::string(word_of(w.drive)));
    bench.tap.circuit.output.common_stage = w.stage;
    bench.tap.circuit.output.split_is_bridged = w.split_is_bridged;
    bench.output = effective_output(bench.tap);
    bench.converter.spec.reference = w.reference;
    bench.converter.spec.negatives = w.negatives;
    bench.converter.spec.isolates_grounds = w.isolates;
    bench.converter.spec.output_shield = w.shield;
    bench.amplifier->spec.shield = w.amplifier;
    bench.amplifier->spec.shield_lift = w.lift;
    bench.pairs = w.pairs;
    const auto findings = book.evaluate(bench.candidate());
    for (const auto rule : {"driven-minus-meets-chassis-in-input", "driven-minuses-joined-in-converter",
                            "driven-minus-meets-chassis-in-amplifier"}) {
        const Finding* found = find_rule(findings, rule);
        if (found != nullptr && found->effect == Effect::stop) return true;
    }
    return false;
}

// The three rules alone: the others have nothing to say here.
RuleBook chassis_rules() {
    const RuleBook shipped = RuleBook::shipped();
    return RuleBook({shipped.rules().begin(), shipped.rules().begin() + 3});
}

template <class Visit>
void every_part(Visit visit) {
    const std::optional<bool> answers[] = {std::nullopt, false, true};
    const std::optional<OutputShield> shields[] = {std::nullopt, OutputShield::isolated, OutputShield::input_conductor,
                                                   OutputShield::chassis};
    for (const auto& reference : words_of<Reference>())
        for (const auto& negatives : words_of<Negatives>())
            for (const int pairs : {1, 2})
                for (const auto& isolates : answers)
                    for (const auto& shield : shields) visit(reference.value, negatives.value, pairs, isolates, shield);
}

}  // namespace

TEST_CASE("a path from a driven minus to chassis or another output is stopped in every combination of words") {
    RuleBook book = chassis_rules();
    struct Lift {
        AmplifierShield shield;
        std::optional<Ohms> ohms;
    };
    const Lift lifts[] = {{AmplifierShield::chassis, {}},      {AmplifierShield::differential, {}},
                          {AmplifierShield::unknown, {}},      {AmplifierShield::lifted, {}},
                          {AmplifierShield::lifted, ohms(99)}, {AmplifierShield::lifted, ohms(100)}};
    const Words sources[] = {
#define SOURCE(drive, stage, split)                                  \
    {                                                                \
        Drive::drive, Stage::stage, split, {}, {}, 1, {}, {}, {}, {} \
    }
        SOURCE(bridged, unknown, {}),
        SOURCE(single_ended, unknown, {}),
        SOURCE(boosted_split, unknown, {}),
        SOURCE(boosted_split, unknown, true),
        SOURCE(boosted_split, unknown, false),
        SOURCE(boosted_bridged, unknown, {}),
        SOURCE(line_differential, unknown, {}),
        SOURCE(line_single_ended, unknown, {}),
        SOURCE(common_return, unknown, {}),
        SOURCE(common_return, bridged, {}),
        SOURCE(common_return, single_ended, {}),
        SOURCE(digital, unknown, {}),
        SOURCE(unknown, unknown, {}),
#undef SOURCE
    };
    int tried = 0, stopped = 0, wrong = 0;
    for (const Words& source : sources)
        for (const Lift& lift : lifts)
            every_part([&](Reference reference, Negatives negatives, int pairs, std::optional<bool> isolates,
                           std::optional<OutputShield> shield) {
                const Words w{
                    source.drive, source.stage, source.split_is_bridged, reference, negatives, pairs, isolates, shield,
                    lift.shield,  lift.ohms};
                ++tried;
                stopped += must_stop(w);
                wrong += stops(book, w) != must_stop(w);
            });
    CHECK(wrong == 0);
    CHECK(tried == 13 * 6 * 4 * 3 * 2 * 3 * 4);
    CHECK(stopped > tried / 4);
    CHECK(stopped < tried);
}

TEST_CASE("without an amplifier its shield counts as unknown only for parts that do not isolate") {
    RuleBook book = RuleBook::shipped();
    Bench bench;
    bench.amplifier.reset();
    CHECK(find_rule(book.evaluate(bench.candidate()), "driven-minus-meets-chassis-in-amplifier") == nullptr);
    bench.converter = plain_divider();
    const auto findings = book.evaluate(bench.candidate());
    const Finding* found = find_rule(findings, "driven-minus-meets-chassis-in-amplifier");
    REQUIRE(found != nullptr);
    CHECK(found->effect == Effect::stop);
    CHECK_FALSE(found->settled);
    CHECK(found->unknown_columns == std::vector<std::string>{"amplifier.shield", "amplifier.shield_lift_ohms"});
}

TEST_CASE("the amplifier's own speaker-level input is judged by the same rule") {
    RuleBook book = RuleBook::shipped();
    for (const Reference reference : {Reference::differential, Reference::chassis, Reference::unknown}) {
        Bench bench;
        SpeakerLevelInput input;
        input.reference = reference;
        input.negatives = Negatives::separate;
        bench.amplifier->spec.speaker_input = input;
        bench.converter.spec = *speaker_input_as_converter(bench.amplifier->spec);
        const bool stopped =
            find_rule(book.evaluate(bench.candidate()), "driven-minus-meets-chassis-in-input") != nullptr;
        CHECK(stopped == (reference != Reference::differential));
    }
}
