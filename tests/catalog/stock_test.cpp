// The shelf: movements are booked, never lost, and what lies there is always their sum.
#include "a_job.h"

using namespace tapbook;

namespace {

Batch one_part(std::optional<int> on_hand, std::optional<int> on_order) {
    Batch batch;
    batch.file = "stock.toml";
    batch.entries = {entry(EntryKind::converter, "orlin-two", {{"name", words("Two")}, {"channels", std::int64_t{2}}}),
                     entry(EntryKind::converter, "orlin-four", {{"name", words("Four")}})};
    Terms terms;
    terms.cost_cents = 2495;
    terms.on_hand = on_hand;
    terms.on_order = on_order;
    batch.terms = {{"orlin-two", terms, {"stock.toml", 9, 1, ""}}};
    return batch;
}

StockChange change(Booking booking, int pieces, std::optional<int> job = {}) {
    return {"orlin-two", booking, pieces, job, {}};
}

StockRow part_of(const Catalog& catalog, const std::string& part = "orlin-two") {
    for (auto& row : catalog.stock())
        if (row.part == part) return row;
    FAIL("no such part");
    return {};
}

// Shelf and order as they stand, then the sums of the movements.
std::vector<int> sums_of(const StockRow& row) {
    std::vector<int> sums = {row.terms.on_hand.value_or(0), row.terms.on_order.value_or(0), 0, 0};
    for (const auto& movement : row.movements) {
        sums[2] += movement.on_hand_change;
        sums[3] += movement.on_order_change;
    }
    return sums;
}

JobPlan plan_with(const std::string& converter) {
    JobPlan plan;
    plan.tap = tap_path;
    plan.converter = converter;
    return plan;
}

// A catalog with one open job planned with `converter`, and `on_hand` of orlin-two.
Catalog catalog_with_plan(const CatalogFolder& folder, const std::string& converter, std::optional<int> on_hand) {
    auto catalog = catalog_with_job(folder);
    catalog.add(one_part(on_hand, {}), false, today);
    catalog.plan_job(1, plan_with(converter), "base");
    return catalog;
}

}  // namespace

TEST_CASE("a stock file is a movement, and what lies there is the sum of the movements") {
    CatalogFolder folder;
    auto catalog = folder.create();
    catalog.add(one_part(4, 2), false, today);
    catalog.add(one_part(3, 2), false, today);
    const StockRow row = part_of(catalog);
    CHECK(row.movements.size() == 2);
    CHECK(sums_of(row) == std::vector<int>{3, 2, 3, 2});
    CHECK(catalog.check(CheckDepth::full).sound());
}

TEST_CASE("what is received comes off the order as far as it was ordered") {
    CatalogFolder folder;
    auto catalog = folder.create();
    catalog.add(one_part(1, 2), false, today);
    catalog.book_stock(change(Booking::receive, 5), today);
    CHECK(sums_of(part_of(catalog)) == std::vector<int>{6, 0, 6, 0});
    catalog.book_stock(change(Booking::order, 3), today);
    catalog.book_stock(change(Booking::cancel, 1), today);
    CHECK(sums_of(part_of(catalog)) == std::vector<int>{6, 2, 6, 2});
}

TEST_CASE("a part that nobody counted can be counted to none, and then it is counted") {
    CatalogFolder folder;
    auto catalog = folder.create();
    catalog.add(one_part({}, {}), false, today);
    const auto report = catalog.book_stock(change(Booking::correct, 0), today);
    REQUIRE(report.movement);
    CHECK(part_of(catalog).terms.on_hand == 0);
    CHECK_FALSE(catalog.book_stock(change(Booking::correct, 0), today).movement);
}

TEST_CASE("more than lies there is not taken, more than is ordered not cancelled, and nothing changes") {
    CatalogFolder folder;
    auto catalog = folder.create();
    catalog.add(one_part(1, 0), false, today);
    using Lines = std::vector<std::string>;
    CHECK(refusals_of([&] { catalog.book_stock(change(Booking::use, 2), today); }) ==
          Lines{"orlin-two: only 1 lies on the shelf: 2 cannot be taken | count them and write `tapbook shelf count "
                "orlin-two correct N` first"});
    CHECK(refusals_of([&] { catalog.book_stock(change(Booking::cancel, 1), today); }) ==
          Lines{"orlin-two: none are ordered: 1 cannot be cancelled | `tapbook shelf count` shows what is on order"});
    CHECK(refusals_of([&] { catalog.book_stock(change(Booking::receive, 100'000), today); }) ==
          Lines{"orlin-two: that would be more than 100000 pieces | check the number"});
    CHECK(sums_of(part_of(catalog)) == std::vector<int>{1, 0, 1, 0});
    CHECK(part_of(catalog).movements.size() == 1);
}

TEST_CASE("a part or a job that is not there is said so") {
    CatalogFolder folder;
    auto catalog = folder.create();
    catalog.add(one_part(1, 0), false, today);
    CHECK(trouble_of([&] {
              catalog.book_stock({"orlin-six", Booking::use, 1, {}, {}}, today);
          }) == CatalogTrouble::not_found);
    CHECK(trouble_of([&] { catalog.book_stock(change(Booking::use, 1, 7), today); }) == CatalogTrouble::not_found);
}

TEST_CASE("undo takes a booking back by another movement, and a dry run books nothing") {
    CatalogFolder folder;
    auto catalog = folder.create();
    catalog.add(one_part(4, 2), false, today);
    CHECK_FALSE(catalog.book_stock(change(Booking::use, 3), today, true).written);
    CHECK(part_of(catalog).terms.on_hand == 4);
    catalog.book_stock(change(Booking::use, 3), today);
    CHECK(catalog.undo(today).words == "shelf count orlin-two use 3");
    const StockRow row = part_of(catalog);
    CHECK(sums_of(row) == std::vector<int>{4, 2, 4, 2});
    REQUIRE(row.movements.size() == 3);
    CHECK(row.movements.back().kind == MovementKind::undone);
    CHECK(catalog.check(CheckDepth::full).sound());
}

TEST_CASE("closing a job takes its converter once, also when it is closed again") {
    CatalogFolder folder;
    auto catalog = catalog_with_plan(folder, "orlin-two", 2);
    const auto closed = catalog.close_job(1, fine_closing(), today);
    REQUIRE(closed.stock);
    CHECK(closed.stock->taking == JobTaking::taken);
    CHECK(closed.stock->on_hand == 1);
    catalog.reopen_job(1);
    const auto again = catalog.close_job(1, fine_closing(), today);
    REQUIRE(again.stock);
    CHECK(again.stock->taking == JobTaking::taken_before);
    CHECK(part_of(catalog).terms.on_hand == 1);
    CHECK(part_of(catalog).movements.back().job == 1);
    CHECK(catalog.check(CheckDepth::full).sound());
}

TEST_CASE("what was taken for the job by hand is not taken again by closing it") {
    CatalogFolder folder;
    auto catalog = catalog_with_plan(folder, "orlin-two", 2);
    catalog.book_stock(change(Booking::use, 1, 1), today);
    CHECK(catalog.close_job(1, fine_closing(), today).stock->taking == JobTaking::taken_before);
    CHECK(part_of(catalog).terms.on_hand == 1);
}

TEST_CASE("closing again with another converter gives the first one back") {
    CatalogFolder folder;
    auto catalog = catalog_with_plan(folder, "orlin-two", 2);
    catalog.close_job(1, fine_closing(), today);
    catalog.reopen_job(1);
    catalog.plan_job(1, plan_with("orlin-four"), "base");
    const auto closed = catalog.close_job(1, fine_closing(), today);
    REQUIRE(closed.stock);
    CHECK(closed.stock->returned == std::vector<std::string>{"orlin-two"});
    CHECK(closed.stock->taking == JobTaking::not_counted);
    CHECK(part_of(catalog).terms.on_hand == 2);
}

TEST_CASE("a shelf that is empty by the count stays at none, and a direct plan touches nothing") {
    CatalogFolder folder;
    auto catalog = catalog_with_plan(folder, "orlin-two", 0);
    CHECK(catalog.close_job(1, fine_closing(), today).stock->taking == JobTaking::none_there);
    CHECK(part_of(catalog).terms.on_hand == 0);
    CatalogFolder other;
    auto direct = catalog_with_plan(other, "direct", 3);
    CHECK_FALSE(direct.close_job(1, fine_closing(), today).stock);
    CHECK(part_of(direct).terms.on_hand == 3);
}

TEST_CASE("a job that was closed before without a movement of its own takes nothing when it is closed again") {
    CatalogFolder folder;
    auto catalog = catalog_with_plan(folder, "orlin-two", 0);
    catalog.close_job(1, fine_closing(), today);
    catalog.book_stock(change(Booking::receive, 2), today);
    catalog.reopen_job(1);
    CHECK(catalog.close_job(1, fine_closing(), today).stock->taking == JobTaking::closed_before);
    CHECK(part_of(catalog).terms.on_hand == 2);
}

TEST_CASE("undoing the closing puts the converter back, and closing again takes it again") {
    CatalogFolder folder;
    auto catalog = catalog_with_plan(folder, "orlin-two", 2);
    catalog.close_job(1, fine_closing(), today);
    CHECK(catalog.undo(today).words == "close job 1");
    CHECK(part_of(catalog).terms.on_hand == 2);
    catalog.reopen_job(1);
    CHECK(catalog.close_job(1, fine_closing(), today).stock->taking == JobTaking::taken);
    CHECK(part_of(catalog).terms.on_hand == 1);
    CHECK(catalog.check(CheckDepth::full).sound());
}

TEST_CASE("a count that was changed behind the movements' back is found by the check") {
    CatalogFolder folder;
    {
        auto catalog = folder.create();
        catalog.add(one_part(4, 2), false, today);
    }
    sqlite::Database(folder.file(), sqlite::Open::read_write).execute("UPDATE terms SET on_hand = 5");
    const auto report = folder.open().check(CheckDepth::full);
    REQUIRE(report.damages.size() == 1);
    CHECK(report.damages.front().what == "parts whose count is not the sum of their movements");
}

TEST_CASE("all cars read at once are the cars read one by one") {
    CatalogFolder folder;
    auto catalog = folder.create();
    catalog.add(bare_car(), false, today);
    Batch between;  // its path lies between the car's own path and those below it
    between.entries = {entry(EntryKind::vehicle, car + "-b", vehicle_fields())};
    catalog.add(between, false, today);
    std::vector<std::string> cars;
    catalog.each_layout([&](const CarFacts& one) {
        cars.push_back(one.vehicle.path);
        const CarFacts alone = catalog.car_layout(one.vehicle.path);
        REQUIRE(one.systems.size() == alone.systems.size());
        REQUIRE(one.taps.size() == alone.taps.size());
        for (std::size_t i = 0; i < one.taps.size(); ++i) {
            CHECK(one.taps[i].code == alone.taps[i].code);
            CHECK(one.taps[i].system == alone.taps[i].system);
            CHECK(one.taps[i].tap.place == alone.taps[i].tap.place);
            CHECK(one.taps[i].pair.pair.grade == alone.taps[i].pair.pair.grade);
        }
    });
    CHECK(cars.size() == 2);
}

TEST_CASE("a small part is counted, used and undone like any other, and undo gives its terms back whole") {
    CatalogFolder folder;
    auto catalog = catalog_with_job(folder);
    Batch batch;
    batch.file = "stock.toml";
    const SmallTerms fuse{SmallKind::main_fuse, "main fuse 60 A", 500, 60, ""};
    batch.terms = {{"main-fuse", {240, 6, 5, 3, {}, fuse}, {"stock.toml", 2, 1, ""}}};
    catalog.add(batch, false, today);
    CHECK(part_of(catalog, "main-fuse").name == "main fuse 60 A");
    catalog.book_stock({"main-fuse", Booking::use, 2, 1, "two"}, today);
    CHECK(part_of(catalog, "main-fuse").terms == Terms{240, 6, 5, 1, {}, fuse});
    catalog.undo(today);
    CHECK(part_of(catalog, "main-fuse").terms == Terms{240, 6, 5, 3, {}, fuse});
    CHECK(sums_of(part_of(catalog, "main-fuse")) == std::vector<int>{3, 0, 3, 0});

    Batch other = batch;
    other.terms[0].terms.small = SmallTerms{SmallKind::main_cable, "cable", {}, {}, "21mm2"};
    catalog.add(other, false, today);
    CHECK(part_of(catalog, "main-fuse").terms.small->cable_size == "21mm2");
    catalog.undo(today);
    CHECK(part_of(catalog, "main-fuse").terms.small == fuse);
    CHECK(catalog.extract_stock().batch.terms.at(0).terms.small == fuse);
    CHECK(catalog.check(CheckDepth::full).sound());
}
