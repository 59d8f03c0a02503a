// Which typed words are a VIN, and which cars does a VIN find? VINs are invented (first character 0: no region has it)
// or stand beside their source.
#include <rapidcheck.h>

#include <algorithm>
#include <fstream>

#include "a_catalog.h"
#include "invented/dice.h"

using namespace tapbook;

namespace {

Values vehicle_with(const std::string& model, TextList patterns, int first, int last) {
    Values values = vehicle_fields();
    values["model"] = words(model);
    values["vin_patterns"] = std::move(patterns);
    values["first_year"] = std::int64_t{first};
    values["last_year"] = std::int64_t{last};
    return values;
}

// Position 10 is J (2018, or 1988 in VINs whose position 7 is a digit).
const std::string vin_text = "00DABCXYZJ1234567";

Vin vin(const std::string& text) {
    return std::get<Vin>(parse_vin(text));
}

Catalog with_cars(const CatalogFolder& folder) {
    auto catalog = folder.create();
    Batch batch;
    batch.file = "cars.toml";
    batch.entries = {
        entry(EntryKind::vehicle, "orrery/arn/sedan/2010", vehicle_with("Arn", {"00DABC???????????"}, 2010, 2020)),
        entry(EntryKind::vehicle, "orrery/bel/sedan/2010",
              vehicle_with("Bel", {"00DZZZ???????????", "00dabcx??????????"}, 2010, 2015)),
        entry(EntryKind::vehicle, "orrery/cor/sedan/2010", vehicle_with("Cor", {"00DXXX???????????"}, 2010, 2020)),
        entry(EntryKind::vehicle, "orrery/dun/sedan/2010", vehicle_fields())};
    catalog.add(batch, false, today);
    return catalog;
}

std::vector<std::string> found(const Catalog& catalog, const std::string& typed) {
    std::vector<std::string> paths;
    for (const auto& hit : catalog.find(typed).hits) paths.push_back(hit.vehicle.path);
    return paths;
}

}  // namespace

TEST_CASE("17 letters and digits are a VIN, also in small letters and with blanks and hyphens") {
    for (const char* typed : {"00DABCXYZJ1234567", "00dabcxyzj1234567", "00D ABC XYZ J1 234567", "00DABC-XYZ-J1234567",
                              "1M8GDM9AXKP042788" /* 49 CFR 565 style example, from memory */}) {
        INFO(typed);
        const auto read = vin_in(typed);
        REQUIRE(read.has_value());
        CHECK(std::holds_alternative<Vin>(*read));
    }
}

TEST_CASE("a name, with or without a year behind it, is no VIN") {
    for (const char* typed : {"", "orrery", "dastrel mallen 2012", "dastrelmallen2012", "abcdefghjklmnprst",
                              "00DABCXYZJ123456", "00DABCXYZJ12345678", "00DABCXYZJ123456.",
                              "\xc3\xa4"
                              "0DABCXYZJ123456"}) {
        INFO(typed);
        CHECK_FALSE(vin_in(typed).has_value());
    }
}

TEST_CASE("17 characters with a letter that no VIN has are refused as one, with the letter's place") {
    const auto read = vin_in("O0DABCXYZJ1234567");
    REQUIRE(read.has_value());
    REQUIRE(std::holds_alternative<VinRefusal>(*read));
    CHECK(std::get<VinRefusal>(*read).position == 1);
}

TEST_CASE("a VIN finds every car with a pattern that fits, those of its model year first") {
    CatalogFolder folder;
    const auto catalog = with_cars(folder);
    // A VIN of no region says no model year: path order.
    CHECK(found(catalog, vin_text) == std::vector<std::string>{"orrery/arn/sedan/2010", "orrery/bel/sedan/2010"});
    CHECK(found(catalog, "00d abc xyz j1 234567").size() == 2);
    CHECK(found(catalog, "00DXXXXYZJ1234567") == std::vector<std::string>{"orrery/cor/sedan/2010"});
    CHECK(catalog.find(vin_text).vin == vin(vin_text));
    CHECK(catalog.find("orrery").vin == std::nullopt);
}

TEST_CASE("a VIN that fits no pattern finds nothing and says that it was one") {
    CatalogFolder folder;
    const auto catalog = with_cars(folder);
    const auto nothing = catalog.find("00DQQ");
    CHECK_FALSE(nothing.vin.has_value());
    const auto none = catalog.find("00DWWWXYZJ1234567");
    CHECK(none.hits.empty());
    CHECK(none.vin == vin("00DWWWXYZJ1234567"));
    const auto refused = catalog.find("O0DABCXYZJ1234567");
    CHECK(refused.hits.empty());
    REQUIRE(refused.no_vin.has_value());
    CHECK(refused.no_vin->message() == "\"O\" at position 1 is in no VIN; it may be the digit 0");
}

TEST_CASE("cars of the VIN's model year come before the others") {
    CatalogFolder folder;
    auto catalog = folder.create();
    Batch batch;
    batch.entries = {
        entry(EntryKind::vehicle, "orrery/arn/sedan/1990", vehicle_with("Arn", {"1M8??????????????"}, 1990, 1999)),
        entry(EntryKind::vehicle, "orrery/arn/sedan/1985", vehicle_with("Arn", {"1M8??????????????"}, 1985, 1989))};
    catalog.add(batch, false, today);
    // Position 10 is K, position 7 a digit: 1989 (Table VII of 49 CFR 565.15).
    const auto hits = catalog.find("1M8GDM9AXKP042788").hits;
    REQUIRE(hits.size() == 2);
    CHECK(hits[0].vehicle.path == "orrery/arn/sedan/1985");
    CHECK(hits[0].year_fits);
    CHECK_FALSE(hits[1].year_fits);
}

TEST_CASE("packed patterns find the same cars as asking each pattern by itself") {
    REQUIRE(rc::check([] {
        invented::Dice dice(*rc::gen::arbitrary<std::uint64_t>());
        const Vin one = vin(vin_text);
        std::vector<std::vector<std::string>> patterns(dice.below(8));
        std::vector<std::size_t> wanted;
        for (std::size_t car_place = 0; car_place < patterns.size(); ++car_place) {
            for (std::size_t i = dice.below(4); i > 0; --i) {
                std::string pattern = one.text();
                for (char& c : pattern)
                    if (dice.percent(60)) c = '?';
                if (dice.percent(50)) pattern[dice.below(pattern.size())] = 'A';
                pattern[0] = '0';
                patterns[car_place].push_back(pattern);
            }
            if (std::any_of(patterns[car_place].begin(), patterns[car_place].end(),
                            [&](const std::string& pattern) { return vin_matches(pattern, one); }))
                wanted.push_back(car_place);
        }
        const auto places = cars_of_vin(pack_vin_patterns(patterns), one, patterns.size());
        RC_ASSERT(places.has_value());
        RC_ASSERT(*places == wanted);
    }));
}

TEST_CASE("packed patterns of another layout, cut short, or of a car that is not there are refused") {
    const std::string packed = pack_vin_patterns(std::vector<std::vector<std::string>>{{"00DABC???????????"}});
    CHECK(cars_of_vin(packed, vin(vin_text), 1) == std::vector<std::size_t>{0});
    CHECK_FALSE(cars_of_vin(packed, vin(vin_text), 0));
    CHECK_FALSE(cars_of_vin(packed.substr(0, packed.size() - 1), vin(vin_text), 1));
    CHECK_FALSE(cars_of_vin("TBV2" + packed.substr(4), vin(vin_text), 1));
    CHECK_FALSE(cars_of_vin("", vin(vin_text), 1));
}

TEST_CASE("a VIN that was asked for is written nowhere") {
    CatalogFolder folder;
    auto catalog = with_cars(folder);
    CHECK(catalog.find(vin_text).hits.size() == 2);
    for (const auto& file : std::filesystem::directory_iterator(folder.path())) {
        std::ifstream stream(file.path(), std::ios::binary);
        const std::string bytes{std::istreambuf_iterator<char>(stream), {}};
        CHECK(bytes.find(vin_text) == std::string::npos);
    }
}

TEST_CASE("the pattern suggested for a VIN fits it and hides which car of its kind it is") {
    const std::string pattern = suggested_pattern(vin(vin_text));
    CHECK(pattern == "00DABCXY?????????");
    CHECK(vin_matches(pattern, vin(vin_text)));
}
