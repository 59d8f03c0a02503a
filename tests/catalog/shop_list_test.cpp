// The shop's own list of known and blocked shops: local, and grades follow it at once.
#include <algorithm>

#include "a_catalog.h"

using namespace tapbook;

namespace {

// A practice catalog with a pair that this shop and another have metered.
Catalog two_shops(const CatalogFolder& folder) {
    auto catalog = folder.create(CatalogKind::practice);
    Batch batch = one_car();
    batch.shops = {{"other", "Other Shop", {"shops.toml", 1, 1, ""}}};
    batch.notes.push_back(batch.notes[0]);
    batch.notes[1].shop_code = "other";
    batch.notes[1].car_words = "CD 2";
    catalog.add(batch, false, today);
    return catalog;
}

std::string other_shop(const Catalog& catalog) {
    for (const auto& shop : catalog.shops())
        if (!shop.is_own) return shop.id;
    return {};
}

Grade grade(const Catalog& catalog) {
    return catalog.car(car, {}).taps.at(0).pair.pair.grade;
}

}  // namespace

TEST_CASE("shops are listed with this one first and the number of their notes") {
    CatalogFolder folder;
    const auto catalog = two_shops(folder);
    const auto shops = catalog.shops();
    REQUIRE(shops.size() == 2);
    CHECK(shops[0].is_own);
    CHECK(shops[1].name == "Other Shop");
    CHECK(shops[1].is_known);
    CHECK(shops[1].notes == 1);
}

TEST_CASE("forgetting and knowing a shop moves grades there and back") {
    CatalogFolder folder;
    auto catalog = two_shops(folder);
    const std::string other = other_shop(catalog);
    REQUIRE(grade(catalog) == Grade::proven);
    const auto forgotten = catalog.change_shop(other, ShopChange::forget, {});
    CHECK(forgotten.written);
    REQUIRE(forgotten.moves.size() == 1);
    CHECK(forgotten.moves[0].before == Grade::proven);
    CHECK(forgotten.moves[0].after == Grade::matched);
    CHECK(grade(catalog) == Grade::matched);
    CHECK_FALSE(catalog.change_shop(other, ShopChange::forget, {}).is_changed);
    const auto known = catalog.change_shop(other, ShopChange::know, "Renamed");
    CHECK(known.moves.size() == 1);
    CHECK(known.shop.name == "Renamed");
    CHECK(grade(catalog) == Grade::proven);
}

TEST_CASE("a blocked shop's notes are left out and come back when it is unblocked") {
    CatalogFolder folder;
    auto catalog = two_shops(folder);
    const std::string other = other_shop(catalog);
    catalog.change_shop(other, ShopChange::block, {});
    CHECK(grade(catalog) == Grade::one_car);
    const auto ledger = catalog.ledger_at(tap_path);
    CHECK(ledger.live().size() == 1);
    CHECK(std::any_of(ledger.notes.begin(), ledger.notes.end(),
                      [](const LedgerNote& note) { return note.state == NoteState::blocked; }));
    catalog.change_shop(other, ShopChange::unblock, {});
    CHECK(grade(catalog) == Grade::proven);
}

TEST_CASE("a dry run tells the moves and changes nothing, and neither touches a record") {
    CatalogFolder folder;
    auto catalog = two_shops(folder);
    const auto lines = catalog.note_lines(car);
    const auto promised = catalog.change_shop(other_shop(catalog), ShopChange::block, {}, true);
    CHECK_FALSE(promised.written);
    CHECK(promised.moves.size() == 1);
    CHECK(grade(catalog) == Grade::proven);
    catalog.change_shop(other_shop(catalog), ShopChange::block, {});
    CHECK(catalog.note_lines(car) == lines);
}

TEST_CASE("a shop not seen yet can be known or blocked by its whole id, but not forgotten") {
    CatalogFolder folder;
    auto catalog = folder.create();
    const std::string id(32, 'a');
    CHECK(trouble_of([&] { catalog.change_shop(id, ShopChange::forget, {}); }) == CatalogTrouble::not_found);
    CHECK(catalog.change_shop(id, ShopChange::know, "Far Shop").is_changed);
    CHECK(catalog.shops().at(1).name == "Far Shop");
    CHECK(trouble_of([&] { catalog.change_shop("zz", ShopChange::know, {}); }) == CatalogTrouble::not_found);
}

TEST_CASE("this shop stays on its own list") {
    CatalogFolder folder;
    auto catalog = folder.create();
    const std::string own = catalog.own_shop().id;
    for (const auto& change : words_of<ShopChange>())
        CHECK(trouble_of([&] { catalog.change_shop(own, change.value, {}); }) == CatalogTrouble::not_found);
    CHECK(catalog.shops().at(0).is_known);
}

TEST_CASE("system notes on cars whose system was not written down are read with the car") {
    CatalogFolder folder;
    auto catalog = folder.create();
    Batch batch = one_car();
    batch.notes = {
        note_at(car + "/unrecorded", {{"kind", words("system")}, {"premium", true}, {"tell", words("third grille")}})};
    catalog.add(batch, false, today);
    const CarFacts facts = catalog.car(car, {});
    REQUIRE(facts.unrecorded_system);
    CHECK(facts.unrecorded_system->premium.value == "true");
    CHECK(facts.unrecorded_system->noted_tells == TextList{"third grille"});
    CHECK(facts.systems.size() == 1);
}
