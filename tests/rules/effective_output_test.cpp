// Which drive counts? The decisions of the design, row by row.
#include <catch2/catch.hpp>

#include "facts_fixture.h"

using namespace tapbook;
using namespace tapbook::fixture;

TEST_CASE("a settled note wins over the entry, a dispute leaves the drive unknown, silence leaves the minus suspect") {
    struct Row {
        Drive expected;
        Standing noted;
        Drive counts;
        bool minus;
        DriveSource source;
        bool differs;
    };
    const auto one_car = Grade::one_car;
    const Row rows[] = {
        {Drive::bridged, settled("bridged", one_car), Drive::bridged, true, DriveSource::noted, false},
        {Drive::bridged, settled("single_ended", one_car), Drive::single_ended, false, DriveSource::noted, true},
        {Drive::bridged, settled("single_ended", Grade::matched), Drive::single_ended, false, DriveSource::noted, true},
        {Drive::single_ended, settled("bridged", Grade::proven), Drive::bridged, true, DriveSource::noted, true},
        {Drive::unknown, settled("line_single_ended", one_car), Drive::line_single_ended, false, DriveSource::noted,
         false},
        {Drive::single_ended, settled("single_ended", one_car), Drive::single_ended, false, DriveSource::noted, false},
        {Drive::single_ended, settled("single_ended", Grade::year_split), Drive::single_ended, false,
         DriveSource::noted, false},
        {Drive::single_ended, graded(Grade::year_split), Drive::unknown, true, DriveSource::disputed, false},
        {Drive::single_ended, graded(Grade::mixed), Drive::unknown, true, DriveSource::disputed, false},
        {Drive::bridged, graded(Grade::mixed), Drive::unknown, true, DriveSource::disputed, false},
        {Drive::single_ended, graded(Grade::blank), Drive::single_ended, true, DriveSource::expected, false},
        {Drive::single_ended, settled("single_ended", Grade::paper), Drive::single_ended, true, DriveSource::expected,
         false},
        {Drive::bridged, settled("single_ended", Grade::paper), Drive::bridged, true, DriveSource::expected, false},
        {Drive::line_single_ended, graded(Grade::pulled), Drive::line_single_ended, true, DriveSource::expected, false},
        {Drive::unknown, graded(Grade::blank), Drive::unknown, true, DriveSource::unknown, false},
    };
    for (const Row& row : rows) {
        INFO("row " << &row - rows);
        TapFacts tap = radio_tap("front-left");
        tap.circuit.output.drive = row.expected;
        tap.pair.drive = row.noted;
        const EffectiveOutput output = effective_output(tap);
        CHECK(output.stage.drive == row.counts);
        CHECK(output.minus_is_driven == row.minus);
        CHECK(output.source == row.source);
        CHECK(output.differs_from_entry == row.differs);
        CHECK(predict_tap({}, tap, hertz(60)).minus_is_driven == row.minus);
    }
}

TEST_CASE("d.c. that is only expected to be absent counts as not known") {
    TapFacts tap = radio_tap("front-left");
    tap.circuit.output.drive = Drive::single_ended;
    tap.pair.drive = graded(Grade::blank);
    CHECK_FALSE(predict_tap({}, tap, hertz(60)).common_mode_high.has_value());
    tap.pair.drive = settled("single_ended");
    CHECK(predict_tap({}, tap, hertz(60)).common_mode_high == dc_volts(0));
}
