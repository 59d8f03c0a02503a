// Do the predictions agree with what the trade takes for granted? Common practice, no source: bands, not values.
#include <catch2/catch.hpp>

#include "electrical/electrical.h"

using namespace tapbook;

TEST_CASE("a base radio gives about 15 to 20 W per channel, whatever is printed on it") {
    OutputStage radio;
    radio.drive = Drive::bridged;
    radio.rated = watts(50);
    radio.rated_at = ohms(4);
    radio.rating_kind = RatingKind::maximum;
    const TapSignal signal = predict_signal(radio, {}, hertz(30));
    CHECK(power_in(*signal.clean.low, ohms(4)).in(watts) == Approx(15).margin(3));
    CHECK(power_in(*signal.clean.likely, ohms(4)).in(watts) == Approx(20).margin(2));
}

TEST_CASE("a base tap carries about 7.5 to 9.5 V at full clean volume") {
    OutputStage radio;
    radio.drive = Drive::bridged;
    const TapSignal signal = predict_signal(radio, {}, hertz(30));
    CHECK(signal.clean.low->in(rms_volts) == Approx(7.5).margin(0.5));
    CHECK(signal.clean.high->in(rms_volts) == Approx(9.5).margin(0.5));
}

TEST_CASE("a separately amplified 100 W channel carries 15 to 25 V") {
    OutputStage premium;
    premium.drive = Drive::boosted_split;
    premium.rated = watts(100);
    premium.rated_at = ohms(4);
    const TapSignal signal = predict_signal(premium, {}, hertz(30));
    CHECK(*signal.clean.likely > rms_volts(15));
    CHECK(*signal.clean.high < rms_volts(25));
}

TEST_CASE("fifty watts printed is worth about half to two fifths") {
    const double part = 50 / continuous_watts(watts(50), RatingKind::maximum).in(watts);
    CHECK(part > 1.8);
    CHECK(part < 2.5);
}

TEST_CASE("gauge 8 carries an amplifier of 300 to 400 W and gauge 4 one of 1000 W over 5 m within 5 %") {
    const auto share = [](int number, double current) {
        return (drop(resistance(Awg{number}).per_metre, metres(5), amps(current)) / dc_volts(13.8)).in(percent);
    };
    CHECK(share(8, 400 / (0.80 * 13.8)) < 5);
    CHECK(share(4, 1000 / (0.80 * 13.8)) < 5);
    CHECK(share(8, 1000 / (0.80 * 13.8)) > 5);
}
