// When is a reading complete, and at which notes does it hold?
#include "electrical/tone_reading.h"

#include <catch2/catch.hpp>

#include "electrical/electrical.h"

using namespace tapbook;

namespace {

ToneReading complete() {
    return ToneReading{rms_volts(6), hertz(40), dbfs(-10), dc_volts(14), true, true, true, {}, {}};
}

using Missing = std::vector<MissingCondition>;

}  // namespace

TEST_CASE("a reading with all six conditions is complete, whatever the meter") {
    CHECK(missing_conditions(complete()).empty());
    ToneReading stated = complete();
    stated.true_rms = false;
    stated.music = false;
    CHECK(missing_conditions(stated).empty());
}

TEST_CASE("each condition that is absent is named") {
    ToneReading bare{rms_volts(6), {}, {}, {}, {}, {}, {}, {}, {}};
    CHECK(missing_conditions(bare) == Missing{MissingCondition::frequency, MissingCondition::level,
                                              MissingCondition::supply, MissingCondition::full_volume,
                                              MissingCondition::speaker_connected, MissingCondition::controls_flat});
}

TEST_CASE("a condition that is stated and not met is named too") {
    ToneReading r = complete();
    r.full_volume = false;
    CHECK(missing_conditions(r) == Missing{MissingCondition::full_volume});
    r = complete();
    r.speaker_connected = false;
    CHECK(missing_conditions(r) == Missing{MissingCondition::speaker_connected});
    r = complete();
    r.controls_flat = false;
    CHECK(missing_conditions(r) == Missing{MissingCondition::controls_flat});
    r = complete();
    r.music = true;
    CHECK(missing_conditions(r) == Missing{MissingCondition::tone});
}

TEST_CASE("values that cannot be meant count as not stated") {
    ToneReading r = complete();
    r.level = dbfs(3);
    CHECK(missing_conditions(r) == Missing{MissingCondition::level});
    r = complete();
    r.supply = dc_volts(0.8);
    CHECK(missing_conditions(r) == Missing{MissingCondition::supply});
    r = complete();
    r.volts = rms_volts(0);
    CHECK(missing_conditions(r) == Missing{MissingCondition::volts});
    r = complete();
    r.frequency = hertz(0);
    CHECK(missing_conditions(r) == Missing{MissingCondition::frequency});
}

TEST_CASE("a reading holds within one octave of its frequency, both ends included") {
    CHECK(holds_at(complete(), hertz(20)));
    CHECK(holds_at(complete(), hertz(40)));
    CHECK(holds_at(complete(), hertz(80)));
    CHECK_FALSE(holds_at(complete(), hertz(19.9)));
    CHECK_FALSE(holds_at(complete(), hertz(80.1)));
    ToneReading unstated = complete();
    unstated.frequency.reset();
    CHECK_FALSE(holds_at(unstated, hertz(40)));
}
