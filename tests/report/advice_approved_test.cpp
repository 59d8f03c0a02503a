// Does the advice still read as it was accepted: fitting, fitting with care, not fitting, direct, without an amplifier,
// without converters?
#include <catch2/catch.hpp>

#include "approved.h"
#include "report/report.h"
#include "report_cars.h"

using namespace tapbook;
using approval::approve;

namespace {

constexpr Screen wide{Colours::none, 100}, narrow{Colours::none, 60};

// One part that fits, one that ties the driven minus to the chassis, one whose limit lacks its note.
JobFacts three_parts() {
    JobFacts facts = cars::plain_car();
    facts.converters.push_back({fixture::plain_divider(), {}});
    Converter vague = fixture::basic_transformer("olb-vague");
    vague.name = "Vague";
    vague.spec.input_max_at.reset();
    vague.spec.low_corner.reset();
    facts.converters.push_back({vague, {}});
    facts.converters.front().terms.on_hand = 2;
    return facts;
}

}  // namespace

TEST_CASE("advice with parts that fit, want care and do not fit reads as approved, short and with its reasons") {
    const Advice advice = cars::advice_of(three_parts());
    REQUIRE(advice.candidates.size() == 3);
    approve("advice-three-parts-short-100", advice_text(advice, Detail::short_form, wide));
    approve("advice-three-parts-short-60", advice_text(advice, Detail::short_form, narrow));
    approve("advice-three-parts-why-100", advice_text(advice, Detail::why, wide));
    approve("advice-three-parts-json", advice_json(advice));
}

TEST_CASE("advice on a mixed pair names no conductor and reads as approved") {
    AdviseRequest request;
    request.system = "base";
    request.tap = fixture::car_path + "/base/front-left/radio";
    const Advice advice = cars::advice_of(cars::disputed_car(), request);
    approve("advice-mixed-short-100", advice_text(advice, Detail::short_form, wide));
    approve("advice-mixed-why-60", advice_text(advice, Detail::why, narrow));
    approve("advice-mixed-json", advice_json(advice));
}

TEST_CASE("an amplifier that takes the tap directly stands among the parts, as approved") {
    JobFacts facts = three_parts();
    SpeakerLevelInput input;
    input.input_min = rms_volts(1);
    input.input_max = rms_volts(12);
    input.reference = Reference::differential;
    input.negatives = Negatives::separate;
    input.dc_tolerance = dc_volts(10);
    facts.amplifier->spec.speaker_input = input;
    const Advice advice = cars::advice_of(facts);
    REQUIRE(advice.candidates.size() == 4);
    approve("advice-direct-short-100", advice_text(advice, Detail::short_form, wide));
    approve("advice-direct-json", advice_json(advice));
}

TEST_CASE("advice without an amplifier says that only the tap was checked, as approved") {
    JobFacts facts = three_parts();
    facts.amplifier.reset();
    const Advice advice = cars::advice_of(facts);
    approve("advice-no-amplifier-short-100", advice_text(advice, Detail::short_form, wide));
    approve("advice-no-amplifier-json", advice_json(advice));
}

TEST_CASE("advice from a catalog without converters says how to put some in, as approved") {
    JobFacts facts = cars::plain_car();
    facts.converters.clear();
    const Advice advice = cars::advice_of(facts);
    CHECK(advice.candidates.empty());
    approve("advice-empty-catalog-short-100", advice_text(advice, Detail::short_form, wide));
    approve("advice-empty-catalog-json", advice_json(advice));
}

TEST_CASE("advice where nothing fits says so, as approved") {
    JobFacts facts = cars::plain_car();
    facts.converters = {{fixture::plain_divider(), {}}};
    const Advice advice = cars::advice_of(facts);
    REQUIRE_FALSE(advice.best);
    approve("advice-nothing-fits-short-100", advice_text(advice, Detail::short_form, wide));
}
