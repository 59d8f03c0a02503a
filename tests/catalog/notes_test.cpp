// Are notes stored so that their bytes and ids can be given out again, on every machine alike?
#include <algorithm>
#include <set>

#include "a_catalog.h"

using namespace tapbook;

namespace {

std::string id_of(const std::string& line) {
    return to_hex(record_id(line));
}

// The ids in the ledger, in hex.
std::set<std::string> stored_ids(const CatalogFolder& folder) {
    sqlite::Database database(folder.file(), sqlite::Open::read_only);
    auto rows = database.prepare("SELECT lower(hex(id)) FROM note");
    std::set<std::string> ids;
    while (rows.step()) ids.emplace(rows.text(0));
    return ids;
}

// A note of each kind, with every type of field among them.
Batch many_notes() {
    Batch batch = one_car();
    const std::string power = car + "/base/accessory";
    batch.entries.push_back(entry(EntryKind::circuit, power, {{"role", words("switched_power")}}));
    batch.entries.push_back(entry(EntryKind::tap, power + "/radio-plug", {{"place", words("radio")}}));
    batch.notes.push_back(note_at(tap_path, {{"positive", words("LBU/RD")},
                                             {"negative", words("BK")},
                                             {"polarity_method", words("cell")},
                                             {"dc_negative_mv", std::int64_t{-15}},
                                             {"full_volume", true},
                                             {"music", false},
                                             {"hazards", TextList{"exhaust", "sharp_edges"}},
                                             {"remarks", words("one\ntwo \"three\" – größer")},
                                             {"year", std::int64_t{2014}},
                                             {"turn", std::int64_t{2}}}));
    batch.notes.push_back(note_at(power + "/radio-plug", {{"kind", words("switched")},
                                                          {"wire", words("YE")},
                                                          {"key_off_mv", std::int64_t{0}},
                                                          {"hazards", TextList{}}}));
    batch.notes.push_back(
        note_at(car + "/base", {{"kind", words("system")}, {"premium", false}, {"tell", words("cassette slot")}}));
    batch.notes[1].car_words = "AB 123 C";
    return batch;
}

}  // namespace

TEST_CASE("note lines are canonical and have the ids under which the notes are stored") {
    CatalogFolder folder;
    auto catalog = folder.create();
    catalog.add(many_notes(), false, today);
    const auto lines = catalog.note_lines(car);
    REQUIRE(lines.size() == 4);
    std::set<std::string> ids;
    std::vector<std::string> in_order;
    for (const auto& line : lines) {
        INFO(line);
        CHECK(record_line(read_record_line(line)) == line);
        ids.insert(id_of(line));
        in_order.push_back(id_of(line));
    }
    CHECK(ids == stored_ids(folder));
    CHECK(std::is_sorted(in_order.begin(), in_order.end()));  // "in id order"
}

TEST_CASE("a note's record holds what the file said, its author and its type, and nothing else") {
    CatalogFolder folder;
    auto catalog = folder.create();
    catalog.add(one_car(), false, today);
    Values wanted = one_car().notes[0].values;
    wanted["type"] = words("note");
    wanted["shop"] = words(catalog.own_shop().id);
    REQUIRE(catalog.note_lines(car).size() == 1);
    CHECK(read_record_line(catalog.note_lines(car)[0]) == wanted);
}

TEST_CASE("notes have the same ids in every catalog of the same shop, in whatever order they came") {
    CatalogFolder first, second;
    auto a = first.create(), b = second.create();
    Batch batch = many_notes();
    a.add(batch, false, today);
    std::reverse(batch.notes.begin(), batch.notes.end());
    b.add(batch, false, "2030-01-01");
    CHECK(a.note_lines(car) == b.note_lines(car));
}

TEST_CASE("a note that differs in anything is another note") {
    CatalogFolder folder;
    auto catalog = folder.create();
    catalog.add(one_car(), false, today);
    int notes = 1;
    const auto add = [&](auto change) {
        Batch batch = one_car();
        change(batch.notes[0]);
        CHECK(catalog.add(batch, false, today).notes_new == 1);
        CHECK(catalog.counts().notes == ++notes);
    };
    add([](NoteDraft& n) { n.values["ac_mv"] = std::int64_t{7501}; });
    add([](NoteDraft& n) { n.values["turn"] = std::int64_t{1}; });
    add([](NoteDraft& n) { n.values["date"] = words("2021-06-04"); });
    add([](NoteDraft& n) { n.values["hazards"] = TextList{}; });
    add([](NoteDraft& n) { n.car_words = "AB 123"; });
    CHECK(catalog.note_lines(car).size() == 6);
}

TEST_CASE("a car's plate is kept as a token only, the same for the same plate however it is typed") {
    CatalogFolder folder;
    auto catalog = folder.create();
    Batch batch = one_car();
    batch.notes[0].car_words = "AB 123 C";
    catalog.add(batch, false, today);
    const auto line = catalog.note_lines(car).at(0);
    CHECK(line.find("123") == std::string::npos);
    CHECK(text_field(read_record_line(line), "car").size() == 32);
    for (const char* again : {"ab123c", "AB-123-C", " ab 123 c "}) {
        batch.notes[0].car_words = again;
        CHECK(catalog.add(batch, false, today).notes_here == 1);
    }
    CatalogFolder elsewhere;
    auto other =
        Catalog::create(elsewhere.file(), "Vennel", CatalogKind::real, today, repeatable_random("another salt"));
    other.add(batch, false, today);
    CHECK(text_field(read_record_line(other.note_lines(car).at(0)), "car") !=
          text_field(read_record_line(line), "car"));
}

TEST_CASE("notes of a practice catalog say so inside, those of a real one do not") {
    CatalogFolder real_folder, practice_folder;
    auto real = real_folder.create(), practice = practice_folder.create(CatalogKind::practice);
    CHECK(practice.is_practice());
    CHECK(practice_folder.open(Access::read).is_practice());
    real.add(one_car(), false, today);
    practice.add(one_car(), false, today);
    const auto real_line = real.note_lines(car).at(0), practice_line = practice.note_lines(car).at(0);
    CHECK(practice_line.find("\"practice\":true") != std::string::npos);
    CHECK(real_line.find("practice") == std::string::npos);
    CHECK(id_of(real_line) != id_of(practice_line));
    CHECK(stored_ids(practice_folder) == std::set<std::string>{id_of(practice_line)});
}

TEST_CASE("another shop's note in a practice catalog is written in its name, and counts as known") {
    CatalogFolder folder;
    auto catalog = folder.create(CatalogKind::practice);
    Batch batch = one_car();
    batch.shops = {{"vennel", "Vennel Auto", {}}};
    batch.notes[0].shop_code = "vennel";
    catalog.add(batch, false, today);
    const auto shop = text_field(read_record_line(catalog.note_lines(car).at(0)), "shop");
    CHECK(shop.size() == 32);
    CHECK(shop != catalog.own_shop().id);
    CHECK(catalog.counts().shops == 2);
}

TEST_CASE("in a practice catalog the shop of the catalog's own name is this shop, also for the files that follow") {
    CatalogFolder folder;
    auto catalog = folder.create(CatalogKind::practice);
    Batch shops;
    shops.shops = {{"tarrow", "Tarrow Car Sound", {}}};
    catalog.add(shops, false, today);
    Batch batch = one_car();
    batch.notes[0].shop_code = "tarrow";
    catalog.add(batch, false, today);
    CHECK(text_field(read_record_line(catalog.note_lines(car).at(0)), "shop") == catalog.own_shop().id);
    CHECK(catalog.counts().shops == 1);
}

TEST_CASE("notes on a car whose system was not written down stand apart and need no entry") {
    CatalogFolder folder;
    auto catalog = folder.create();
    Batch batch = one_car();
    const std::string path = car + "/unrecorded/front-left/radio-plug";
    batch.notes = {note_at(path, {{"positive", words("GY")}, {"negative", words("GY/BK")}})};
    CHECK(complaints_of(catalog, batch).empty());
    const auto facts = catalog.car(car, {});
    REQUIRE(facts.unrecorded.size() == 1);
    CHECK(facts.unrecorded[0].code == path);
    CHECK(facts.unrecorded[0].system == "unrecorded");
    CHECK(facts.taps.size() == 1);
    CHECK(facts.systems.size() == 1);
    CHECK(catalog.note_lines(car).size() == 1);
}

TEST_CASE("a car whose path begins like another's keeps its own notes") {
    CatalogFolder folder;
    auto catalog = folder.create();
    catalog.add(one_car(), false, today);
    const std::string longer = car + "0";  // first year 20120: no year, but a path
    Batch batch;
    batch.entries = {entry(EntryKind::vehicle, longer, vehicle_fields()),
                     entry(EntryKind::system, longer + "/base", {})};
    batch.notes = {note_at(longer + "/base", {{"kind", words("system")}, {"premium", true}})};
    catalog.add(batch, false, today);
    CHECK(catalog.note_lines(car).size() == 1);
    CHECK(catalog.note_lines(longer).size() == 1);
    CHECK(catalog.car(car, {}).systems.size() == 1);
    CHECK(catalog.note_lines("orrery/vel-ostrel/sedan").empty());
    CHECK(catalog.note_lines("").empty());
}

TEST_CASE("asking for a car that is not there is told, with the way out") {
    CatalogFolder folder;
    const auto catalog = folder.create();
    CHECK(trouble_of([&] { catalog.car(car, {}); }) == CatalogTrouble::not_found);
    CHECK(catalog.vehicle_names().empty());
}
