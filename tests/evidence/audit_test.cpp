// Published and textbook values of the Beta interval, and laws of the draw.
#include "evidence/audit.h"

#include <catch2/catch.hpp>
#include <cmath>
#include <map>

using namespace tapbook;

TEST_CASE("437 of 980 lies between 0.41506549 and 0.47719977 (Gelman et al., Bayesian Data Analysis, chapter 2)") {
    const auto interval = share_interval(437, 543);  // Beta(438, 544)
    CHECK(interval.low == Approx(0.41506549).margin(1e-7));
    CHECK(interval.high == Approx(0.47719977).margin(1e-7));
}

TEST_CASE("without a check nothing is known but a share between 0 and 1") {
    CHECK(share_interval(0, 0).low == Approx(0.025).margin(1e-12));  // Beta(1, 1) is even
    CHECK(share_interval(0, 0).high == Approx(0.975).margin(1e-12));
}

TEST_CASE("n right ones and no wrong one leave the lower end at 0.025 to the power of 1/(n+1)") {
    for (const int n : {1, 10, 30, 100, 1000})  // Beta(n+1, 1) has the distribution x^(n+1)
        CHECK(share_interval(n, 0).low == Approx(std::pow(0.025, 1.0 / (n + 1))).margin(1e-12));
}

TEST_CASE("right and wrong are mirror images") {
    for (int right = 0; right < 12; ++right)
        for (int wrong = 0; wrong < 12; ++wrong) {
            CHECK(share_interval(right, wrong).low == Approx(1 - share_interval(wrong, right).high).margin(1e-12));
            CHECK(share_interval(right, wrong).low < share_interval(right, wrong).high);
        }
}

TEST_CASE("a draw holds the wanted number of different places, repeats with its seed and differs with another") {
    for (const std::size_t wanted : {0, 1, 7, 50, 99, 100, 101}) {
        const auto drawn = seeded_sample(100, wanted, 7);
        REQUIRE(drawn.size() == std::min<std::size_t>(wanted, 100));
        for (std::size_t i = 0; i < drawn.size(); ++i) {
            CHECK(drawn[i] < 100);
            if (i > 0) CHECK(drawn[i - 1] < drawn[i]);
        }
        CHECK(drawn == seeded_sample(100, wanted, 7));
    }
    CHECK(seeded_sample(100, 10, 7) != seeded_sample(100, 10, 8));
    CHECK(seeded_sample(0, 10, 7).empty());
}

TEST_CASE("every place is drawn about equally often") {
    std::map<std::size_t, int> hits;
    for (std::uint64_t seed = 0; seed < 20000; ++seed)
        for (const auto place : seeded_sample(10, 3, seed)) ++hits[place];
    // 6,000 expected of 20,000 draws of 3 in 10; standard deviation 65
    for (std::size_t place = 0; place < 10; ++place) CHECK(std::abs(hits[place] - 6000) < 5 * 65);
}
