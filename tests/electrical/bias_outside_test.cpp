// D.c. on speaker conductors against data sheets. Sources: half-supply note, Philips TDA8543 1997 p. 6 note 2 ("d.c.
// output voltage with respect to ground is approximately 0.5 x VCC"); offsets: 50 mV (STMicroelectronics TDA7850), 150
// mV (Philips TDA8561Q); diagnostic trip level 2 to 4 V (TDA7850 family); capacitor removes bias (textbook). Trap: half
// the supply less the loss (6.45 V) is half the peak swing, not the bias.
#include <catch2/catch.hpp>

#include "electrical/electrical.h"

using namespace tapbook;

namespace {

OutputStage stage(Drive drive) {
    OutputStage output;
    output.drive = drive;
    return output;
}

}  // namespace

TEST_CASE("each conductor of a bridge rests at half the supply") {
    const OutputStage bridged = stage(Drive::bridged);
    CHECK(calculate_swing(bridged, ohms(4), dc_volts(14.4)).dc_each->in(dc_volts) == Approx(7.2));
    CHECK(calculate_swing(bridged, ohms(4), dc_volts(12.6)).dc_each->in(dc_volts) == Approx(6.3));
    CHECK(calculate_swing(bridged, ohms(4), dc_volts(13.2)).dc_each->in(dc_volts) == Approx(6.6));
    CHECK(predict_signal(bridged, {}, hertz(40)).dc_each.likely->in(dc_volts) == Approx(7.2));
}

TEST_CASE("behind a capacitor nothing of the bias is left") {
    CHECK(calculate_swing(stage(Drive::single_ended), ohms(4), dc_volts(14.4)).dc_each == dc_volts(0));
    CHECK(predict_signal(stage(Drive::single_ended), {}, hertz(40)).dc_difference_high == dc_volts(0));
}

TEST_CASE("the predicted offset of a bridge covers the largest one printed") {
    const auto offset = predict_signal(stage(Drive::bridged), {}, hertz(40)).dc_difference_high;
    CHECK(*offset >= dc_millivolts(50));
    CHECK(*offset >= dc_millivolts(150));
    CHECK(*offset < dc_volts(2));
}

TEST_CASE("an offset that trips the output's own diagnosis reads as a fault, one within its data sheet does not") {
    const auto reads = [](std::int64_t positive, std::int64_t negative) {
        return judge({positive, negative, 5000, 14400, {}, {}, true}).reads_as;
    };
    CHECK(reads(8200, 6200) == ReadsAs::fault);
    CHECK(reads(8700, 5700) == ReadsAs::fault);
    CHECK(reads(7225, 7175) == ReadsAs::bridged);
    CHECK(reads(7274, 7125) == ReadsAs::bridged);
}
