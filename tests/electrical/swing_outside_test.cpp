// Supply-limited output against a table computed outside this project from Vpk = Vs - 2 Vsat and Vs/2 - Vsat, to 1e-3
// (power and RMS volts of bridge and single-ended stages), and the fourfold power of a bridge over a single-ended stage
// (Texas Instruments TPA311 and relatives, "bridged-tied load": 62.5 mW to 250 mW).
// Trap: losing the saturation once per bridge instead of twice gives 21.8 W where 19.22 W stands.
#include <catch2/catch.hpp>

#include "electrical/electrical.h"

using namespace tapbook;

namespace {

struct Row {
    Drive drive;
    double supply, load, ideal_watts, ideal_volts, square_watts, watts_1_volt, watts_1_5_volt;  // 0: not in the table
};

constexpr Row table[] = {
    {Drive::bridged, 12.0, 4, 18.000, 8.4853, 36.00, 12.500, 10.125},
    {Drive::bridged, 12.6, 4, 19.845, 8.9095, 39.69, 14.045, 11.520},
    {Drive::bridged, 13.2, 4, 21.780, 9.3338, 43.56, 15.680, 13.005},
    {Drive::bridged, 13.8, 4, 23.805, 9.7581, 47.61, 17.405, 14.580},
    {Drive::bridged, 14.4, 4, 25.920, 10.1823, 51.84, 19.220, 16.245},
    {Drive::bridged, 14.4, 2, 51.840, 10.1823, 103.68, 38.440, 32.490},
    {Drive::bridged, 14.4, 8, 12.960, 10.1823, 25.92, 9.610, 8.1225},
    {Drive::single_ended, 14.4, 4, 6.480, 5.0912, 12.96, 0, 0},
    {Drive::single_ended, 14.4, 2, 12.960, 5.0912, 25.92, 0, 0},
};

Swing swing(const Row& row, double loss) {
    OutputStage output;
    output.drive = row.drive;
    return calculate_swing(output, ohms(row.load), dc_volts(row.supply), dc_volts(loss));
}

}  // namespace

TEST_CASE("swing and power of a stage are those of the table") {
    for (const Row& row : table) {
        CAPTURE(word_of(row.drive), row.supply, row.load);
        const Swing ideal = swing(row, 0);
        CHECK(ideal.clean_power->in(watts) == Approx(row.ideal_watts).margin(1e-3));
        CHECK(ideal.clean->in(rms_volts) == Approx(row.ideal_volts).margin(1e-3));
        CHECK(power_in(*ideal.clipped, ohms(row.load)).in(watts) == Approx(row.square_watts).margin(1e-2));
        if (row.watts_1_volt == 0) continue;
        CHECK(swing(row, 1).clean_power->in(watts) == Approx(row.watts_1_volt).margin(1e-3));
        CHECK(swing(row, 1.5).clean_power->in(watts) == Approx(row.watts_1_5_volt).margin(1e-3));
    }
}

TEST_CASE("a bridge gives four times the power of a single-ended stage from one supply") {
    CHECK(swing(table[4], 0).clean_power->in(watts) == Approx(4 * swing(table[7], 0).clean_power->in(watts)));
    CHECK(gain_between(*swing(table[7], 0).clean, *swing(table[4], 0).clean).in(decibels) == Approx(6.02).margin(0.01));
}

// the signal specification, section 1, the worked case of the bench calculation.
TEST_CASE("a bridge from 14.4 V losing 0.75 V per side puts 20.80 W into 4 ohm") {
    const Swing bench = swing(table[4], 0.75);
    CHECK(bench.peak->in(peak_volts) == Approx(12.9));
    CHECK(bench.clean->in(rms_volts) == Approx(9.122).margin(5e-4));
    CHECK(bench.clean_power->in(watts) == Approx(20.80).margin(5e-3));
    CHECK(bench.dc_each->in(dc_volts) == Approx(7.2));
    CHECK(bench.clipped->in(rms_volts) == Approx(12.9));
}
