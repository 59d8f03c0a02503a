// How often is the right car among the first three, over 5,000 invented cars, by the kind of mistake? The shares asked
// for are the project's goals: 97 % for one typing mistake, 95 % for every other kind.
#include <fmt/format.h>

#include <algorithm>
#include <catch2/catch.hpp>

#include "catalog/name_table.h"
#include "invented/cars.h"
#include "invented/typing.h"

using namespace tapbook;

namespace {

constexpr int queries = 300, among = 3;

struct Share {
    int first = 0, found = 0;
    std::string missed;  // some examples
};

Share share_of(const std::vector<VehicleName>& cars, const NameTable& names, invented::Typing typing) {
    invented::Dice dice(7);
    Share share;
    for (int i = 0; i < queries; ++i) {
        const std::size_t place = dice.below(cars.size());
        const std::string typed = invented::typed(cars, place, typing, dice);
        const auto hits = find_vehicles(names, typed);
        const auto end = hits.begin() + std::min<std::ptrdiff_t>(among, std::ssize(hits));
        const auto hit =
            std::find_if(hits.begin(), end, [&](const VehicleHit& h) { return h.vehicle.path == cars[place].path; });
        share.found += hit != end ? 1 : 0;
        share.first += hit == hits.begin() && hit != end ? 1 : 0;
        if (hit == end)
            share.missed += fmt::format("\n  \"{}\" for {}, first is {}", typed, cars[place].path,
                                        hits.empty() ? "nothing" : hits.front().vehicle.path);
    }
    return share;
}

}  // namespace

TEST_CASE("of 5000 invented cars the right one is among the first three, whatever the mistake") {
    const auto cars = invented::cars(1, 5000);
    const NameTable names = NameTable::of(cars);
    for (const auto& [typing, name] : invented::typing_classes) {
        const Share share = share_of(cars, names, typing);
        const double percent = 100.0 * share.found / queries;
        WARN(fmt::format("{:<15} first {:5.1f} %, among the first three {:5.1f} %", name, 100.0 * share.first / queries,
                         percent));
        INFO(share.missed);
        CHECK(percent >= (typing == invented::Typing::one_typo ? 97.0 : 95.0));
    }
}
