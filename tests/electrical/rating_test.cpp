// Which printed ratings can be true? Limits of the signal specification, section 1: 27.15, 33.38 and (square) 51.84 W
// at 14.4 V and 4 ohm.
#include "electrical/rating.h"

#include <catch2/catch.hpp>

#include "arbitrary.h"

using namespace tapbook;

namespace {

OutputStage rated(double power, RatingKind kind, Drive drive = Drive::bridged, double load = 4) {
    OutputStage output;
    output.drive = drive;
    output.rated = watts(power);
    output.rating_kind = kind;
    output.rated_at = ohms(load);
    return output;
}

}  // namespace

TEST_CASE("a continuous rating beyond 27.15 W at 4 ohm is refused with that limit") {
    const auto refused = impossible_rating(rated(28, RatingKind::continuous));
    REQUIRE(refused);
    CHECK(refused->limit.in(watts) == Approx(27.15).margin(5e-3));
    CHECK_FALSE(impossible_rating(rated(27.1, RatingKind::continuous)));
    CHECK(impossible_rating(rated(27.2, RatingKind::continuous)));
}

TEST_CASE("a rating at 10 % beyond 33.38 W at 4 ohm is refused with that limit") {
    const auto refused = impossible_rating(rated(35, RatingKind::at_10_percent));
    REQUIRE(refused);
    CHECK(refused->limit.in(watts) == Approx(33.38).margin(5e-3));
    CHECK_FALSE(impossible_rating(rated(33.3, RatingKind::at_10_percent)));
}

TEST_CASE("the limit doubles at half the load") {
    const auto refused = impossible_rating(rated(60, RatingKind::continuous, Drive::bridged, 2));
    REQUIRE(refused);
    CHECK(refused->limit.in(watts) == Approx(2 * 27.15).margin(0.01));
}

TEST_CASE("a saturated rating is never refused but beyond a square wave it is a label only") {
    CHECK_FALSE(impossible_rating(rated(200, RatingKind::maximum)));
    CHECK_FALSE(is_label_only(rated(50, RatingKind::maximum)));  // 14.14 V: possible
    CHECK_FALSE(is_label_only(rated(51.8, RatingKind::maximum)));
    CHECK(is_label_only(rated(51.9, RatingKind::maximum)));  // 14.41 V
    CHECK_FALSE(is_label_only(rated(200, RatingKind::continuous)));
}

TEST_CASE("only an unboosted bridge is held against the vehicle supply") {
    for (const auto drive : {Drive::single_ended, Drive::boosted_split, Drive::boosted_bridged, Drive::unknown}) {
        CHECK_FALSE(impossible_rating(rated(100, RatingKind::continuous, drive)));
        CHECK_FALSE(is_label_only(rated(100, RatingKind::maximum, drive)));
    }
    OutputStage common = rated(100, RatingKind::continuous, Drive::common_return);
    CHECK_FALSE(impossible_rating(common));
    common.common_stage = Stage::bridged;
    CHECK(impossible_rating(common));
}

TEST_CASE("without a stated load a rating says nothing about volts") {
    OutputStage output = rated(100, RatingKind::continuous);
    output.rated_at.reset();
    CHECK_FALSE(impossible_rating(output));
    CHECK_FALSE(rated_volts(output));
    output = rated(20, RatingKind::continuous);
    CHECK(rated_volts(output)->in(rms_volts) == Approx(8.944).margin(1e-3));
    output.rated.reset();
    CHECK_FALSE(rated_volts(output));
}

TEST_CASE("a refused rating and a label are not used as volts") {
    CHECK_FALSE(rated_volts(rated(28, RatingKind::continuous)));
    CHECK_FALSE(rated_volts(rated(60, RatingKind::maximum)));
    CHECK(rated_volts(rated(50, RatingKind::maximum)));
}

TEST_CASE("a rating is worth less the more distortion it allows, and never more than printed") {
    REQUIRE(rc::check([] {
        const Watts power = arbitrary::between(milliwatts, 1, 1000000);
        const Watts clean = continuous_watts(power, RatingKind::continuous);
        const Watts ten = continuous_watts(power, RatingKind::at_10_percent);
        const Watts most = continuous_watts(power, RatingKind::maximum);
        RC_ASSERT(clean == power && ten < clean && most < ten);
    }));
}

TEST_CASE("what is refused is exactly what lies above the limit it names") {
    REQUIRE(rc::check([] {
        OutputStage output = arbitrary::output_stage();
        const auto refused = impossible_rating(output);
        if (!refused) return;
        RC_ASSERT(*output.rated > refused->limit);
        output.rated = refused->limit;
        RC_ASSERT(!impossible_rating(output));
    }));
}
