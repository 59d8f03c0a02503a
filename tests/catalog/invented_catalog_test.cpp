// Are invented catalogs what their makers say: repeatable, of the asked size and shape?
#include <algorithm>
#include <numeric>
#include <set>

#include "a_catalog.h"
#include "invented/cars.h"
#include "invented/catalog.h"

using namespace tapbook;

TEST_CASE("the same seed invents the same cars, another seed others") {
    CHECK(invented::cars(1, 200) == invented::cars(1, 200));
    CHECK(invented::cars(1, 200) != invented::cars(2, 200));
}

TEST_CASE("invented cars have paths of their own, ordered years and no overlapping generations of one body") {
    const auto cars = invented::cars(4, 2000);
    REQUIRE(cars.size() == 2000);
    std::set<std::string> paths;
    for (std::size_t i = 0; i < cars.size(); ++i) {
        const auto& one = cars[i];
        CHECK(paths.insert(one.path).second);
        CHECK(one.first_year <= one.last_year);
        if (i == 0) continue;
        const auto& before = cars[i - 1];
        if (before.make == one.make && before.model == one.model && before.body == one.body)
            CHECK(before.last_year < one.first_year);
    }
}

TEST_CASE("notes add up to the total, and few cars have many") {
    auto counts = invented::note_counts(1, 5000, 1000000);
    CHECK(std::accumulate(counts.begin(), counts.end(), std::int64_t{0}) == 1000000);
    std::sort(counts.begin(), counts.end());
    // Shares of the average (200) that the sizes of the benchmark ask for: half of the cars below 0.8, one in a hundred
    // above about 3.7, none above 5.
    CHECK(counts[2500] == Approx(160).margin(10));
    CHECK(counts[4950] == Approx(730).margin(75));
    CHECK(counts.back() <= 1000);
}

TEST_CASE("an invented car's records are those of its seed and path, and every one is taken by the catalog") {
    const auto cars = invented::cars(9, 40);
    std::size_t systems = 0, circuits = 0, taps = 0;
    CatalogFolder folder;
    auto catalog = folder.create(CatalogKind::practice);
    catalog.add(invented::shops(), false, today);
    for (const auto& named : cars) {
        const Batch batch = invented::car_batch(9, named, 30);
        CHECK(batch.practice);
        CHECK(batch.notes.size() == 30);
        for (const auto& draft : batch.entries) {
            systems += draft.kind == EntryKind::system ? 1 : 0;
            circuits += draft.kind == EntryKind::circuit ? 1 : 0;
            taps += draft.kind == EntryKind::tap ? 1 : 0;
        }
        const AddReport report = catalog.add(batch, false, today);
        CHECK(report.notes_new + report.notes_here == 30);
        CHECK(report.entries_new == static_cast<int>(batch.entries.size()));
    }
    CHECK(catalog.note_lines(cars[3].path).size() == 30);
    // About two systems, 22 circuits and 33 tap points a car.
    CHECK(static_cast<double>(systems) / 40 == Approx(2).margin(0.4));
    CHECK(static_cast<double>(circuits) / 40 == Approx(22).margin(4));
    CHECK(static_cast<double>(taps) / 40 == Approx(33).margin(6));
}
