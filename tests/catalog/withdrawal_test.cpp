// Taking a note back: a record of its own, final, by the shop that wrote it.
#include "a_catalog.h"

using namespace tapbook;

namespace {

RecordId only_note(const Catalog& catalog) {
    return record_id(catalog.note_lines(car).at(0));
}

}  // namespace

TEST_CASE("a withdrawal repeats the path of its note and its line round-trips under its id") {
    CatalogFolder folder;
    auto catalog = folder.create();
    catalog.add(one_car(), false, today);
    const RecordId note = only_note(catalog);
    const auto report = catalog.withdraw(note, WithdrawalReason::wrong_car, "2024-06-01");
    CHECK(report.written);
    CHECK(report.before.pair.pair.grade == Grade::one_car);
    CHECK(report.after.pair.pair.grade == Grade::pulled);
    const auto lines = catalog.withdrawal_lines();
    REQUIRE(lines.size() == 1);
    CHECK(lines[0] == "{\"date\":\"2024-06-01\",\"path\":\"" + tap_path + "\",\"reason\":\"wrong-car\",\"shop\":\"" +
                          catalog.own_shop().id + "\",\"target\":\"" + to_hex(note) + "\",\"type\":\"withdrawal\"}");
    CHECK(record_line(read_record_line(lines[0])) == lines[0]);
    sqlite::Database database(folder.file(), sqlite::Open::read_only);
    auto rows = database.prepare("SELECT lower(hex(id)) FROM withdrawal");
    REQUIRE(rows.step());
    CHECK(rows.text(0) == to_hex(record_id(lines[0])));
}

TEST_CASE("the note itself stays, byte for byte") {
    CatalogFolder folder;
    auto catalog = folder.create();
    catalog.add(one_car(), false, today);
    const auto lines = catalog.note_lines(car);
    catalog.withdraw(only_note(catalog), WithdrawalReason::asked_to, today);
    CHECK(catalog.note_lines(car) == lines);
    CHECK(catalog.ledger_at(tap_path).notes.at(0).state == NoteState::withdrawn);
    CHECK(catalog.ledger_at(tap_path).notes.at(0).reason == "asked-to");
}

TEST_CASE("a second withdrawal adds nothing and tells of the first") {
    CatalogFolder folder;
    auto catalog = folder.create();
    catalog.add(one_car(), false, today);
    const RecordId note = only_note(catalog);
    catalog.withdraw(note, WithdrawalReason::typo, today);
    const auto again = catalog.withdraw(note, WithdrawalReason::wrong_car, "2025-01-01");
    CHECK(again.was_withdrawn);
    CHECK_FALSE(again.written);
    CHECK(again.earlier_reason == "typo");
    CHECK(again.earlier_date == today);
    CHECK(catalog.withdrawal_lines().size() == 1);
}

TEST_CASE("a dry run withdraws nothing and says the same") {
    CatalogFolder folder;
    auto catalog = folder.create();
    catalog.add(one_car(), false, today);
    const auto report = catalog.withdraw(only_note(catalog), WithdrawalReason::typo, today, true);
    CHECK_FALSE(report.written);
    CHECK(report.after.pair.pair.grade == Grade::pulled);
    CHECK(catalog.withdrawal_lines().empty());
    CHECK(catalog.car(car, {}).taps.at(0).pair.pair.grade == Grade::one_car);
}

TEST_CASE("another shop's note and an unknown id are not withdrawn") {
    CatalogFolder folder;
    auto catalog = folder.create(CatalogKind::practice);
    Batch batch = one_car();
    batch.shops = {{"other", "Other Shop", {"shops.toml", 1, 1, ""}}};
    batch.notes[0].shop_code = "other";
    catalog.add(batch, false, today);
    const RecordId note = only_note(catalog);
    CHECK(trouble_of([&] { catalog.withdraw(note, WithdrawalReason::typo, today); }) == CatalogTrouble::not_found);
    CHECK(trouble_of([&] { catalog.withdraw(RecordId{}, WithdrawalReason::typo, today); }) ==
          CatalogTrouble::not_found);
    CHECK(catalog.withdrawal_lines().empty());
}

TEST_CASE("a note is found by the first digits of its id, in either case, and nothing else is") {
    CatalogFolder folder;
    auto catalog = folder.create();
    catalog.add(one_car(), false, today);
    const std::string id = to_hex(only_note(catalog));
    for (const std::size_t digits : {8u, 9u, 31u, 32u}) {
        const auto found = catalog.notes_by_id(id.substr(0, digits));
        REQUIRE(found.size() == 1);
        CHECK(to_hex(found[0].id) == id);
        CHECK(found[0].path == tap_path);
        CHECK(found[0].is_own);
    }
    std::string upper = id.substr(0, 12);
    for (char& c : upper) c = static_cast<char>(std::toupper(c));
    CHECK(catalog.notes_by_id(upper).size() == 1);
    const char other = id[7] == '0' ? '1' : '0';
    for (const std::string& wrong : {id.substr(0, 7) + other, id + "0", std::string("xyzxyzxy"), id.substr(0, 8) + "'"})
        CHECK(catalog.notes_by_id(wrong).empty());
}
