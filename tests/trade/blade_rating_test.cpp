// Which blades have a rating? A slow twin over every fuse of every body.
#include <catch2/catch.hpp>

#include <algorithm>
#include <vector>

#include "trade/trade.h"

using namespace tapbook;

TEST_CASE("the blades of a rating are exactly the fuses that carry it, one for a body at most") {
    for (int tenths = 1; tenths <= 3100; ++tenths) {
        const Amps rating = amps(tenths / 10.0);
        std::vector<BladeBody> expected;
        for (const auto& [body, word] : words_of<BladeBody>())
            for (const BladeFuse& fuse : blade_fuses(body))
                if (fuse.rating == rating) expected.push_back(body);
        std::vector<BladeBody> bodies;
        for (const auto& blade : blades_rated(rating)) {
            bodies.push_back(blade.body);
            CHECK(blade.fuse.rating == rating);
        }
        CAPTURE(tenths);
        CHECK(bodies == expected);
    }
}

TEST_CASE("30 A is made in all three bodies, 50 A as maxi only, 125 A as no blade") {
    CHECK(blades_rated(amps(30)).size() == 3);
    REQUIRE(blades_rated(amps(50)).size() == 1);
    CHECK(blades_rated(amps(50)).front().fuse.colour == FuseColour::red);
    CHECK(blades_rated(amps(125)).empty());
}

// A fuse one cannot buy is no answer: every blade is also a listed rating (ratings as sold, common practice).
TEST_CASE("every blade rating is a listed fuse rating") {
    const auto listed = listed_fuse_ratings();
    for (const Amps rating : standard_blade_ratings())
        CHECK(std::find(listed.begin(), listed.end(), rating) != listed.end());
}
