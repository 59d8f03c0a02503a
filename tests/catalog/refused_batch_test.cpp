// Which batches does the store refuse, and where does it point? Parents that are missing, paths that are there twice,
// authors that are not allowed, records that are too large.
#include "a_catalog.h"

using namespace tapbook;

namespace {

using Lines = std::vector<std::string>;

// Complaints of a new catalog about one_car() after `change`.
template <class Change>
Lines complaints_after(Change change, CatalogKind kind = CatalogKind::real) {
    CatalogFolder folder;
    auto catalog = folder.create(kind);
    Batch batch = one_car();
    change(batch);
    return complaints_of(catalog, batch);
}

}  // namespace

TEST_CASE("a missing parent is named with the line and the nearest one of the file") {
    CHECK(complaints_after([](Batch& b) {
              b.entries[2] = entry(EntryKind::circuit, car + "/bass/front-left", {}, 20);
          }) == Lines{"20:1 there is no system \"bass\" | did you mean \"base\"?",
                      "30:1 there is no circuit \"base/front-left\" | did you mean \"bass/front-left\"?"});
    CHECK(complaints_after([](Batch& b) { b.notes[0] = note_at(car + "/base/front-left/radio-plugg", {}, 40); }) ==
          Lines{"40:6 there is no tap \"base/front-left/radio-plugg\" | did you mean \"base/front-left/radio-plug\"?"});
    CHECK(complaints_after([](Batch& b) {
              b.notes[0] = note_at(car + "/premium", {{"kind", words("system")}}, 40);
          }) == Lines{"40:6 there is no system \"premium\" | write its [[system]] table above this one"});
    CHECK(complaints_after([](Batch& b) { b.entries.erase(b.entries.begin()); }).at(0) ==
          "10:1 there is no vehicle \"" + car + "\" | write its [[vehicle]] table above this one");
}

TEST_CASE("a parent that is stored already need not be in the file") {
    CatalogFolder folder;
    auto catalog = folder.create();
    catalog.add(one_car(), false, today);
    Batch batch;
    batch.entries = {entry(EntryKind::tap, car + "/base/front-left/door-plug", {{"place", words("door")}})};
    batch.notes = {note_at(car + "/base/front-left/door-plug", {})};
    CHECK(complaints_of(catalog, batch).empty());
    CHECK(catalog.counts().taps == 2);
}

TEST_CASE("a path that is in the file twice is refused with the first line") {
    CHECK(complaints_after([](Batch& b) {
              b.entries.push_back(entry(EntryKind::tap, tap_path, {{"place", words("door")}}, 50));
          }) == Lines{"50:1 tap " + tap_path + " is in this file twice, first in line 30 | keep one of them"});
}

TEST_CASE("a converter and an amplifier cannot share a code") {
    CHECK(complaints_after([](Batch& b) {
              b.entries = {entry(EntryKind::converter, "corvane-four", {}, 1),
                           entry(EntryKind::amplifier, "corvane-four", {}, 9)};
              b.notes.clear();
          }) == Lines{"9:1 corvane-four is already the code of a converter | choose another code"});
    CHECK(complaints_after([](Batch& b) {
              b.entries = {entry(EntryKind::amplifier, "corvane-four", {}, 1),
                           entry(EntryKind::converter, "corvane-four", {}, 9)};
              b.notes.clear();
          }) == Lines{"9:1 corvane-four is already the code of an amplifier | choose another code"});
}

TEST_CASE("a note in another shop's name is refused in a real catalog and taken in a practice catalog") {
    const auto other = [](Batch& b) {
        b.notes[0].shop_code = "vennel";
        b.shops = {{"vennel", "Vennel Auto", {"shops.toml", 2, 1, ""}}};
    };
    const auto real = complaints_after(other);
    REQUIRE(real.size() == 2);
    CHECK(real[1] ==
          "40:6 a note in the name of shop \"vennel\" | leave shop out: notes are written in this shop's name; other "
          "shops' notes arrive in packs");
    CHECK(real[0] ==
          "2:1 [[shop]] is taken by practice catalogs only | other shops' notes arrive in packs, signed by them");
    CHECK(complaints_after(other, CatalogKind::practice).empty());
    CHECK(complaints_after([](Batch& b) { b.notes[0].shop_code = "vennel"; }, CatalogKind::practice) ==
          Lines{"40:6 there is no shop \"vennel\" | write its [[shop]] table first"});
}

TEST_CASE("a shop stays known to a practice catalog after the file that named it") {
    CatalogFolder folder;
    auto catalog = folder.create(CatalogKind::practice);
    Batch shops;
    shops.shops = {{"vennel", "Vennel", {}}};
    catalog.add(shops, false, today);
    Batch batch = one_car();
    batch.notes[0].shop_code = "vennel";
    CHECK(complaints_of(catalog, batch).empty());
}

TEST_CASE("a shop whose code is not its name stays known as well") {
    CatalogFolder folder;
    auto catalog = folder.create(CatalogKind::practice);
    Batch shops;
    shops.shops = {{"vennel", "Vennel Auto Electrics", {}}};
    catalog.add(shops, false, today);
    Batch batch = one_car();
    batch.notes[0].shop_code = "vennel";
    CHECK(complaints_of(catalog, batch).empty());
}

TEST_CASE("a record that is too large is refused at its line and nothing is written") {
    const auto large = [](Batch& b) { b.entries[0].values["cautions"] = TextList(20, std::string(3900, 'x')); };
    const auto lines = complaints_after(large);
    REQUIRE(lines.size() == 1);
    CHECK_THAT(lines[0], Catch::StartsWith("1:1 ") && Catch::Contains("longer than 65536 bytes"));
    const auto note = complaints_after([](Batch& b) { b.notes[0].values["remarks"] = words(std::string("a\0b", 3)); });
    REQUIRE(note.size() == 1);
    CHECK_THAT(note[0], Catch::StartsWith("40:6 ") && Catch::Contains("zero byte"));
}

TEST_CASE("no more than twenty complaints are made") {
    CHECK(complaints_after([](Batch& b) {
              for (int i = 0; i < 30; ++i)
                  b.notes.push_back(note_at(car + "/premium", {{"kind", words("system")}}, 50 + i));
          }).size() == 20);
}
