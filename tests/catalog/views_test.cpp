// Do the views say in words what the notes say? What plain sqlite3 reads is compared with what was written.
#include <map>

#include "a_catalog.h"

using namespace tapbook;

namespace {

template <class Enum>
void check_words(const std::map<std::pair<std::string, std::int64_t>, std::string>& spelled, const std::string& kind) {
    const auto named = words_of<Enum>();
    for (std::size_t i = 0; i < named.size(); ++i) {
        INFO(kind << " " << i);
        const auto found = spelled.find({kind, static_cast<std::int64_t>(i)});
        REQUIRE(found != spelled.end());
        CHECK(found->second == named[i].word);
    }
    CHECK_FALSE(spelled.contains({kind, static_cast<std::int64_t>(named.size())}));
}

std::map<std::pair<std::string, std::int64_t>, std::string> spelled_of(sqlite::Database& database) {
    std::map<std::pair<std::string, std::int64_t>, std::string> spelled;
    auto rows = database.prepare("SELECT kind, number, word FROM spelled");
    while (rows.step()) spelled[{std::string(rows.text(0)), rows.integer(1)}] = rows.text(2);
    return spelled;
}

}  // namespace

TEST_CASE("the words of the views are those of the program's tables, and every hue has its code") {
    const CatalogFolder folder;
    folder.create();
    sqlite::Database database(folder.file(), sqlite::Open::read_only);
    const auto spelled = spelled_of(database);
    check_words<NoteKind>(spelled, "kind");
    check_words<Method>(spelled, "method");
    check_words<PolarityMethod>(spelled, "polarity_method");
    check_words<ConnectorSide>(spelled, "side");
    check_words<Drive>(spelled, "drive");
    for (std::int64_t number = 0; number < 64; ++number) {
        INFO("hue " << number);
        const auto colour = wire_colour_from_integer(number);
        const auto found = spelled.find({"hue", number});
        REQUIRE((found != spelled.end()) == colour.has_value());
        if (colour) CHECK(found->second == code(*colour));
    }
}

TEST_CASE("a note reads in the view as it was written: words, colour codes, volts and its day") {
    const CatalogFolder folder;
    {
        auto catalog = folder.create();
        Batch batch = one_car();
        batch.notes = {note_at(tap_path, {{"positive", ::words("LBU/RD")},
                                          {"negative", ::words("WH/BN/BK")},
                                          {"polarity_method", ::words("phase")},
                                          {"method", ::words("scoped")},
                                          {"side", ::words("body")},
                                          {"drive", ::words("boosted_split")},
                                          {"ac_mv", std::int64_t{7512}},
                                          {"date", ::words("2021-06-03")},
                                          {"year", std::int64_t{2014}}})};
        catalog.add(batch, false, today);
    }
    sqlite::Database database(folder.file(), sqlite::Open::read_only);
    auto rows = database.prepare(
        "SELECT path, kind, method, polarity_method, positive, negative, side, drive, date, printf('%.3f', ac_v), "
        "shop, "
        "withdrawn, year, wire IS NULL FROM readable_note");
    REQUIRE(rows.step());
    const std::string expected[] = {tap_path, "pair",          "scoped",     "phase", "LBU/RD",          "WH/BN/BK",
                                    "body",   "boosted_split", "2021-06-03", "7.512", "Tarrow Car Sound"};
    int column = 0;
    for (const auto& text : expected) CHECK(rows.text(column++) == text);
    CHECK(rows.integer(11) == 0);
    CHECK(rows.integer(12) == 2014);
    CHECK(rows.integer(13) == 1);
    CHECK_FALSE(rows.step());
}

TEST_CASE("the view of cars shows only the newest edit and the view of taps what is expected of the circuit") {
    const CatalogFolder folder;
    {
        auto catalog = folder.create();
        catalog.add(one_car(), false, today);
        Batch edit = one_car();
        edit.entries[0].values["last_year"] = std::int64_t{2018};
        catalog.add(edit, false, "2024-06-01");
    }
    sqlite::Database database(folder.file(), sqlite::Open::read_only);
    auto cars = database.prepare("SELECT path, last_year FROM readable_car");
    REQUIRE(cars.step());
    CHECK(cars.text(0) == car);
    CHECK(cars.integer(1) == 2018);
    CHECK_FALSE(cars.step());
    auto taps = database.prepare("SELECT path, role, place FROM readable_tap");
    REQUIRE(taps.step());
    CHECK(taps.text(0) == tap_path);
    CHECK(taps.text(1) == "speaker");
    CHECK(taps.text(2) == "radio");
    CHECK_FALSE(taps.step());
}

TEST_CASE("no view reads the secret") {
    const CatalogFolder folder;
    folder.create();
    sqlite::Database database(folder.file(), sqlite::Open::read_only);
    auto views = database.prepare("SELECT name, sql FROM sqlite_schema WHERE type = 'view'");
    int count = 0;
    while (views.step()) {
        INFO(views.text(0));
        CHECK(std::string(views.text(1)).find("secret") == std::string::npos);
        ++count;
    }
    CHECK(count == 5);
}
