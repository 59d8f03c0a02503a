// Levels against published values. Sources: Self, "Small Signal Audio Design" (0 dBV = 1 V, +4 dBu = 1.2276 V, -10 dBV
// = 0.3162 V); the dBu rows follow from 1 mW in 600 ohm. Trap: 10 log10 instead of 20 log10 gives half of every level.
#include <catch2/catch.hpp>

#include "electrical/electrical.h"

using namespace tapbook;

TEST_CASE("well-known voltages have their published levels") {
    CHECK(level_dbv(rms_volts(1)).in(dbv) == 0);
    CHECK(level_dbv(rms_volts(2)).in(dbv) == Approx(6.02).margin(0.01));
    CHECK(level_dbv(rms_volts(4)).in(dbv) == Approx(12.04).margin(0.01));
    CHECK(level_dbv(rms_volts(5)).in(dbv) == Approx(13.98).margin(0.01));
    CHECK(level_dbv(rms_volts(0.25)).in(dbv) == Approx(-12.04).margin(0.01));
    CHECK(level_dbv(rms_volts(1.2276)).in(dbv) == Approx(1.7815).margin(1e-3));
    CHECK(volts_at(dbv(-10)).in(rms_volts) == Approx(0.3162).margin(1e-4));
}

TEST_CASE("the studio and the consumer reference are 11.78 dB apart") {
    const Level studio = level_dbv(rms_volts(1.227653));
    CHECK((studio - dbv(-10)).in(decibels) == Approx(11.78).margin(0.01));
}

TEST_CASE("a milliwatt in 600 ohm and in 50 ohm is the published voltage") {
    CHECK(sine_volts(milliwatts(1), ohms(600)).in(rms_volts) == Approx(0.7745967).epsilon(1e-6));
    CHECK(sine_volts(milliwatts(1), ohms(50)).in(rms_volts) == Approx(0.22361).margin(1e-5));
}

// IEC 61938 by way of an audio lexicon: 0.5 V reference at -12 dBFS, so full scale is 1.99 V, about 2 V.
TEST_CASE("a player's reference of 0.5 V at -12 dB stands for about 2 V at full scale") {
    CHECK(at_full_scale(rms_volts(0.5), dbfs(-12)).in(rms_volts) == Approx(1.99).epsilon(0.01));
}
