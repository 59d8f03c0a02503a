// Which car is found by which words? Twelve invented cars; tables of what people type and the car that must come first,
// and of what must find nothing at all.
#include "catalog/search.h"

#include <rapidcheck.h>

#include <algorithm>
#include <catch2/catch.hpp>
#include <string>

#include "catalog/name_table.h"
#include "trade/trade.h"

using namespace tapbook;

namespace {

VehicleName name(const std::string& make, const std::string& model, const std::string& body, int first, int last) {
    const std::string path =
        slug_from(make) + "/" + slug_from(model) + "/" + slug_from(body) + "/" + std::to_string(first);
    return {path, make, model, body, first, last};
}

const std::vector<VehicleName> cars = {
    name("Orrery", "Vel Ostrel", "sedan", 2012, 2016), name("Orrery", "Vel Ostrel", "wagon", 2012, 2016),
    name("Orrery", "Vel Ostrel", "sedan", 2017, 2022), name("Orrery", "Kimbra", "hatchback", 2008, 2014),
    name("Pellor", "Sallick", "van", 1996, 2003),      name("Pellor", "Sallick", "van", 2004, 2015),
    name("Pellor", "Nadrow", "pickup", 2019, 2024),    name("Ångfall", "Tröskel", "coupe", 1999, 2006),
    name("Quorn", "T-4", "sedan", 2010, 2018),         name("Quorn", "Brevant", "suv", 2015, 2021),
    name("Dastrel", "Mirrin", "sedan", 2011, 2019),    name("Dastrel", "Mirrin Long", "wagon", 2013, 2019)};

std::vector<std::string> paths(const std::vector<VehicleHit>& hits) {
    std::vector<std::string> found;
    for (const auto& hit : hits) found.push_back(hit.vehicle.path);
    return found;
}

struct Row {
    const char* typed;
    const char* first;
};

void check_first(const Row& row, bool exact) {
    INFO(row.typed);
    const auto hits = find_vehicles(cars, row.typed);
    REQUIRE_FALSE(hits.empty());
    CHECK(hits.front().vehicle.path == row.first);
    CHECK((hits.front().cost == 0) == exact);
    CHECK(hits.front().year_fits);
}

}  // namespace

TEST_CASE("exact words in any order find their car at no cost") {
    for (const auto& row :
         {Row{"Pellor Nadrow pickup", "pellor/nadrow/pickup/2019"}, Row{"nadrow", "pellor/nadrow/pickup/2019"},
          Row{"pickup pellor", "pellor/nadrow/pickup/2019"}, Row{"NADROW PELLOR", "pellor/nadrow/pickup/2019"},
          Row{"vel ostrel wagon", "orrery/vel-ostrel/wagon/2012"}, Row{"wagon orrery", "orrery/vel-ostrel/wagon/2012"},
          Row{"troskel", "angfall/troskel/coupe/1999"}, Row{"Tröskel", "angfall/troskel/coupe/1999"},
          Row{"long mirrin", "dastrel/mirrin-long/wagon/2013"}, Row{"quorn, brevant!", "quorn/brevant/suv/2015"}})
        check_first(row, true);
}

TEST_CASE("words glued together or split are read as the words they are") {
    for (const auto& row :
         {Row{"velostrel wagon", "orrery/vel-ostrel/wagon/2012"}, Row{"pellornadrow", "pellor/nadrow/pickup/2019"},
          Row{"nadrowpickup", "pellor/nadrow/pickup/2019"}, Row{"nad row", "pellor/nadrow/pickup/2019"},
          Row{"pel lor nadrow", "pellor/nadrow/pickup/2019"}, Row{"t4", "quorn/t-4/sedan/2010"},
          Row{"quorn t4", "quorn/t-4/sedan/2010"}, Row{"quornt4", "quorn/t-4/sedan/2010"}})
        check_first(row, true);
}

TEST_CASE("typing mistakes are bridged and cost something") {
    for (const auto& row :
         {Row{"nadrwo", "pellor/nadrow/pickup/2019"}, Row{"nadow pellor", "pellor/nadrow/pickup/2019"},
          Row{"naddrow", "pellor/nadrow/pickup/2019"}, Row{"brevent", "quorn/brevant/suv/2015"},
          Row{"kymbra", "orrery/kimbra/hatchback/2008"}, Row{"velostrell wagon", "orrery/vel-ostrel/wagon/2012"},
          Row{"kimb", "orrery/kimbra/hatchback/2008"}, Row{"angfal troskell", "angfall/troskel/coupe/1999"}})
        check_first(row, false);
}

TEST_CASE("a year of four or two digits chooses between the years of one car") {
    for (const auto& row :
         {Row{"sallick 1999", "pellor/sallick/van/1996"}, Row{"sallick 99", "pellor/sallick/van/1996"},
          Row{"sallick 2010", "pellor/sallick/van/2004"}, Row{"sallick 10", "pellor/sallick/van/2004"},
          Row{"04 sallick", "pellor/sallick/van/2004"}, Row{"ostrel 2016 sedan", "orrery/vel-ostrel/sedan/2012"},
          Row{"ostrel 17", "orrery/vel-ostrel/sedan/2017"}, Row{"ostrel sedan 22", "orrery/vel-ostrel/sedan/2017"}})
        check_first(row, true);
    CHECK(year_in("sallick 99") == 1999);
    CHECK(year_in("18 sallick") == 2018);
    CHECK(year_in("2018") == 2018);
    for (const char* none : {"", "sallick", "t4", "123", "20188", "1"}) CHECK(year_in(none) == std::nullopt);
}

TEST_CASE("a number is a year or part of a name, whichever names a car") {
    const std::vector<VehicleName> numbered = {name("Quorn", "Velt 50", "sedan", 2010, 2018),
                                               name("Quorn", "Velt", "sedan", 1948, 1955),
                                               name("Quorn", "Velt 15", "sedan", 2019, 2022)};
    const auto exact = [&](const char* typed) {
        std::vector<std::string> found;
        for (const auto& one : exact_vehicles(numbered, typed)) found.push_back(one.path);
        std::sort(found.begin(), found.end());
        return found;
    };
    CHECK(exact("velt 50 2012") == std::vector<std::string>{"quorn/velt-50/sedan/2010"});
    CHECK(exact("velt 50") == std::vector<std::string>{"quorn/velt-50/sedan/2010", "quorn/velt/sedan/1948"});
    CHECK(exact("velt 15 20") == std::vector<std::string>{"quorn/velt-15/sedan/2019"});
    CHECK(find_vehicles(numbered, "velt 50 2012").front().vehicle.path == "quorn/velt-50/sedan/2010");
    CHECK(find_vehicles(numbered, "velt50").front().vehicle.path == "quorn/velt-50/sedan/2010");
    CHECK(find_vehicles(numbered, "velt2012").front().vehicle.path == "quorn/velt-50/sedan/2010");
    const auto named = vehicles_named(NameTable::of(numbered), "velt 50 2012");
    REQUIRE(named.size() == 1);
    CHECK(named.front().year == 2012);
}

TEST_CASE("a year outside the car's years is told, and such a car comes after one whose years fit") {
    const auto hits = find_vehicles(cars, "sallick 2003");
    REQUIRE(hits.size() >= 2);
    CHECK(hits[0].vehicle.path == "pellor/sallick/van/1996");
    CHECK(hits[1].vehicle.path == "pellor/sallick/van/2004");
    CHECK_FALSE(hits[1].year_fits);
    const auto later = find_vehicles(cars, "nadrow 2005");
    REQUIRE_FALSE(later.empty());
    CHECK(later.front().vehicle.path == "pellor/nadrow/pickup/2019");
    CHECK_FALSE(later.front().year_fits);
}

TEST_CASE("a year alone finds the cars of that year") {
    std::vector<std::string> wanted;
    for (const auto& one : cars)
        if (one.first_year <= 2000 && 2000 <= one.last_year) wanted.push_back(one.path);
    std::sort(wanted.begin(), wanted.end());
    CHECK(paths(find_vehicles(cars, "2000")) == wanted);
    CHECK(find_vehicles(cars, "1970").empty());
}

TEST_CASE("for garbage nothing is guessed") {
    for (const char* garbage : {"xyzzyx", "qqqq", "zzzzzzzzzz", "aaaa bbbb", "12345", "日本", "x", "se",
                                "velvet underpass", "1234567 890123"}) {
        INFO(garbage);

        CHECK(find_vehicles(cars, garbage).empty());
        CHECK(exact_vehicles(cars, garbage).empty());
    }
}

TEST_CASE("a word typed again says nothing more") {
    for (const auto* again : {"wagon wagon wagon", "wagon wagon", "Wagon wagon"})
        CHECK(paths(find_vehicles(cars, again)) == paths(find_vehicles(cars, "wagon")));
}

TEST_CASE("no words find all cars, in path order") {
    const auto all = paths(find_vehicles(cars, ""));
    CHECK(all.size() == cars.size());
    CHECK(std::is_sorted(all.begin(), all.end()));
    CHECK(paths(find_vehicles(cars, " !! ")) == all);
    CHECK(find_vehicles(std::vector<VehicleName>{}, "nadrow").empty());
}

TEST_CASE("one car is named exactly by whole words or by the end of its path, never by a mistake") {
    const auto exact = [](const char* words) {
        std::vector<std::string> found;
        for (const auto& one : exact_vehicles(cars, words)) found.push_back(one.path);
        return found;
    };
    CHECK(exact("nadrow") == std::vector<std::string>{"pellor/nadrow/pickup/2019"});
    CHECK(exact("pickup/2019") == std::vector<std::string>{"pellor/nadrow/pickup/2019"});
    CHECK(exact("pellor/nadrow/pickup/2019") == std::vector<std::string>{"pellor/nadrow/pickup/2019"});
    CHECK(exact("2019") == std::vector<std::string>{"pellor/nadrow/pickup/2019"});  // an end of one path only
    CHECK(exact("sallick 99") == std::vector<std::string>{"pellor/sallick/van/1996"});
    CHECK(exact("sallick").size() == 2);
    CHECK(exact("orrery wagon") == std::vector<std::string>{"orrery/vel-ostrel/wagon/2012"});
    for (const char* none : {"", "nadrwo", "nadro", "sallick 1970", "nadrow sallick", "ickup/2019", "velostrel"}) {
        INFO(none);
        CHECK(exact(none).empty());
    }
}

TEST_CASE("whatever is typed, hits come best first and every hit is one of the cars") {
    REQUIRE(rc::check([] {
        std::string typed;
        for (const auto& word : *rc::gen::container<std::vector<std::string>>(
                 rc::gen::element<std::string>("orrery", "vel", "ostrel", "sedn", "wagon", "99", "2015", "x", "mirrin",
                                               "sal", "lick", "T-4", "\xff")))
            typed += word + " ";
        const auto hits = find_vehicles(cars, typed);
        const auto rank = [](const VehicleHit& hit) { return hit.cost + (hit.year_fits ? 0 : 3); };
        RC_ASSERT(
            std::is_sorted(hits.begin(), hits.end(), [&](const auto& a, const auto& b) { return rank(a) < rank(b); }));
        for (const auto& hit : hits) RC_ASSERT(hit.cost >= 0);
        RC_ASSERT(hits.size() <= cars.size());
        for (const auto& exact : exact_vehicles(cars, typed))
            RC_ASSERT(
                std::any_of(hits.begin(), hits.end(), [&](const auto& hit) { return hit.vehicle.path == exact.path; }));
    }));
}
