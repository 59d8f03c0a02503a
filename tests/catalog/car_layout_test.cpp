// Is a car without its notes the same car?
#include "a_catalog.h"

using namespace tapbook;

TEST_CASE("the layout of a car holds its systems, circuits and taps, and nothing that notes say") {
    const CatalogFolder folder;
    auto catalog = folder.create();
    catalog.add(one_car(), false, today);
    const CarFacts whole = catalog.car(car, {}), layout = catalog.car_layout(car);
    REQUIRE(layout.taps.size() == whole.taps.size());
    CHECK(layout.vehicle.path == whole.vehicle.path);
    CHECK(layout.systems.front().code == whole.systems.front().code);
    CHECK(layout.taps.front().code == tap_path);
    CHECK(layout.taps.front().circuit.role == Role::speaker);
    CHECK(whole.taps.front().pair.pair.grade == Grade::one_car);
    CHECK(layout.taps.front().pair.pair.grade == Grade::blank);
    CHECK(trouble_of([&] { catalog.car_layout("no/such/car/1999"); }) == CatalogTrouble::not_found);
}
