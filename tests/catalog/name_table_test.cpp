// Do packed names come back as they went in, and is anything else refused?
#include "catalog/name_table.h"

#include <rapidcheck.h>

#include <algorithm>
#include <catch2/catch.hpp>
#include <set>

#include "invented/cars.h"
#include "invented/dice.h"

using namespace tapbook;

namespace {

std::vector<VehicleName> some_cars() {
    const auto seed = *rc::gen::inRange<std::uint64_t>(0, 1000000);
    return invented::cars(seed, *rc::gen::inRange<std::size_t>(1, 60));
}

}  // namespace

TEST_CASE("packed and unpacked, every car has its names, years and path") {
    REQUIRE(rc::check([] {
        const auto cars = some_cars();
        auto shuffled = cars;
        std::reverse(shuffled.begin(), shuffled.end());
        const NameTable table = NameTable::of(shuffled);
        RC_ASSERT(table.vehicles() == cars);
        const auto again = NameTable::unpack(table.pack());
        RC_ASSERT(again.has_value());
        RC_ASSERT(again->vehicles() == cars);
        RC_ASSERT(again->pack() == table.pack());
    }));
}

TEST_CASE("each make, model and body is kept once") {
    const auto cars = invented::cars(3, 500);
    const NameTable table = NameTable::of(cars);
    std::set<std::string> makes, bodies, models;
    for (const auto& car : cars) {
        makes.insert(car.make);
        bodies.insert(car.body);
        models.insert(car.make + "/" + car.model);
    }
    CHECK(table.makes().size() == makes.size());
    CHECK(table.bodies().size() == bodies.size());
    CHECK(table.models().size() == models.size());
    CHECK(table.cars().size() == 500);
}

TEST_CASE("names with the same path words but other spelling, odd last parts and empty names come back") {
    const std::vector<VehicleName> cars = {{"a/b/c/2001", "A", "B", "C", 2001, 2004},
                                           {"a/b/c/2005-late", "\xc3\x84", "B", "C", 2005, 2009},
                                           {"a/b/d/2001", "A", "b", "", 0, 0},
                                           {"a-b/c/d/e/f", "A B", "\xe6\x97\xa5", "D", 1950, 2079}};
    auto sorted = cars;
    std::sort(sorted.begin(), sorted.end(), [](const auto& x, const auto& y) { return x.path < y.path; });
    const auto table = NameTable::unpack(NameTable::of(cars).pack());
    REQUIRE(table.has_value());
    CHECK(table->vehicles() == sorted);
}

TEST_CASE("a path of fewer than four parts names no vehicle and is left out") {
    CHECK(names_a_vehicle("a/b/c/2001"));
    for (const char* path : {"", "a", "a/b", "a/b/c"}) CHECK_FALSE(names_a_vehicle(path));
    CHECK(NameTable::of({{"a/b/c", "A", "B", "C", 1, 2}}).cars().empty());
}

TEST_CASE("a packed table cut short, lengthened or of another layout is refused") {
    const std::string packed = NameTable::of(invented::cars(5, 20)).pack();
    for (std::size_t size = 0; size < packed.size(); ++size) CHECK_FALSE(NameTable::unpack(packed.substr(0, size)));
    CHECK_FALSE(NameTable::unpack(packed + '\0'));
    CHECK_FALSE(NameTable::unpack("TBN2" + packed.substr(4)));
}

TEST_CASE("a packed table with a flipped bit is refused or holds only places that exist") {
    const std::string packed = NameTable::of(invented::cars(6, 20)).pack();
    invented::Dice dice(6);
    for (int i = 0; i < 3000; ++i) {
        std::string broken = packed;
        const std::size_t place = dice.below(broken.size());
        broken[place] = static_cast<char>(static_cast<unsigned char>(broken[place]) ^ (1U << dice.below(8)));
        const auto table = NameTable::unpack(broken);
        if (table) CHECK(table->vehicles().size() == 20);
    }
}
