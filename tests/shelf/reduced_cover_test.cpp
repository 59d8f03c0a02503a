// Does leaving out what another column covers lose nothing of what can be covered?
#include "shelf/reduced_cover.h"

#include <catch2/catch.hpp>

#include "shelf/planned.h"
#include "shelf_fixture.h"

using namespace tapbook;
using namespace tapbook::fixture;

TEST_CASE("without what others cover as well, as much can be covered with as many models, in 1,000 random shops") {
    std::mt19937 random(31);
    int smaller = 0;
    for (int trial = 0; trial < 1000; ++trial) {
        // Dear columns cover more and cheap ones less, so that prices alone keep the small ones.
        std::vector<std::vector<int>> sets;
        for (int column = 0; column < 9; ++column) {
            auto& set = sets.emplace_back();
            for (int row = 1; row <= 14; ++row)
                if (random() % 10 < 1 + static_cast<unsigned>(column)) set.push_back(row);
        }
        std::vector<double> weights;
        for (int row = 0; row < 14; ++row) weights.push_back(1 + static_cast<int>(random() % 9));
        ShelfInput input = input_of(sets, weights);
        for (std::size_t column = 0; column < 9; ++column)
            input.converters[column].cost_cents = 100 * static_cast<std::int64_t>(column + 1);
        const int most = 1 + static_cast<int>(random() % 4);
        const Cover cover = groundwork_of(input, at_most(most)).cover;
        const ReducedCover reduced = reduced_without_costs(cover);
        const CoverLimit limit{.at_most = most, .budget = {}};
        const BestCover whole = best_cover(cover, limit, 1'000'000'000),
                        small = best_cover(reduced.cover, limit, 1'000'000'000);
        REQUIRE(whole.proved);
        REQUIRE(small.proved);
        REQUIRE(small.weight == whole.weight);
        const BestCover back = of_the_whole(cover, reduced, small);
        REQUIRE(back.weight == whole.weight);
        REQUIRE(back.columns.size() <= static_cast<std::size_t>(most));
        for (std::uint32_t column = 0; column < cover.costs.size(); ++column) {
            const std::uint32_t place = reduced.columns[reduced.instead[column]];
            for (const std::uint32_t row : cover.rows_of[column])
                REQUIRE(std::ranges::count(cover.rows_of[place], row) == 1);
        }
        smaller += reduced.columns.size() < cover.costs.size() ? 1 : 0;
    }
    CHECK(smaller > 300);
}
