// Which paths are one thing, and do all their notes count together? Laws of the classes against a slow twin that writes
// every path of a small world down and merges until nothing changes; then the reads of a catalog.
#include <rapidcheck/catch.h>

#include <catch2/catch.hpp>
#include <numeric>

#include "catalog/alias_classes.h"
#include "exchange/shop_fixture.h"

using namespace tapbook;

namespace {

const std::vector<std::string> world_cars = {"a/x/sedan/2010", "a/x-2/sedan/2010", "b/y/wagon/2011"};
const std::vector<std::string> labels = {"p", "p-2"};

// Every path of a world of three cars with two labels at each of three depths.
const std::vector<std::string>& world() {
    static const std::vector<std::string> all = [] {
        std::vector<std::string> paths = world_cars;
        for (std::size_t first = 0, depth = 0; depth < 3; ++depth) {
            const std::size_t end = paths.size();
            for (std::size_t i = first; i < end; ++i)
                for (const auto& label : labels) paths.push_back(path_join(paths[i], label));
            first = end;
        }
        return paths;
    }();
    return all;
}

// The slow twin: a number for each path; equal numbers spread to whatever was said and to what lies below.
std::map<std::string, int> numbers_by_trying(const std::vector<AliasClasses::Pair>& said) {
    std::map<std::string, int> number;
    for (const auto& path : world()) number[path] = static_cast<int>(number.size());
    const auto merge = [&](const std::string& one, const std::string& other) {
        const int keep = std::min(number[one], number[other]), gone = std::max(number[one], number[other]);
        for (auto& [path, value] : number)
            if (value == gone) value = keep;
        return keep != gone;
    };
    for (bool is_changed = true; is_changed;) {
        is_changed = false;
        for (const auto& [one, other] : said) is_changed = merge(one, other) || is_changed;
        for (const auto& one : world())
            for (const auto& other : world())
                if (one < other && number[one] == number[other] && path_parts(one).size() < tap_depth)
                    for (const auto& label : labels)
                        is_changed = merge(path_join(one, label), path_join(other, label)) || is_changed;
    }
    return number;
}

rc::Gen<std::vector<AliasClasses::Pair>> some_aliases() {
    const auto path = rc::gen::elementOf(world());
    const auto pair = rc::gen::suchThat(rc::gen::pair(path, path), [](const AliasClasses::Pair& said) {
        return path_parts(said.first).size() == path_parts(said.second).size();
    });
    return rc::gen::resize(5, rc::gen::container<std::vector<AliasClasses::Pair>>(pair));
}

std::vector<std::string> names_of_world(const AliasClasses& same) {
    std::vector<std::string> names;
    for (const auto& path : world()) names.push_back(same.name_of(path));
    return names;
}

}  // namespace

TEST_CASE("two paths have one name exactly when following what was said, and below it, leads from one to the other") {
    rc::prop("classes agree with the slow twin", [] {
        const auto said = *some_aliases();
        const AliasClasses same(said);
        auto number = numbers_by_trying(said);
        for (const auto& one : world()) {
            const auto members = same.members(one);
            RC_ASSERT(std::find(members.begin(), members.end(), same.name_of(one)) != members.end());
            for (const auto& other : world()) {
                const bool is_same = number[one] == number[other];
                RC_ASSERT((same.name_of(one) == same.name_of(other)) == is_same);
                RC_ASSERT((std::find(members.begin(), members.end(), other) != members.end()) == is_same);
            }
        }
    });
}

TEST_CASE("neither order, direction nor repetition of aliases matters, and a class's name names itself") {
    rc::prop("order, symmetry, repetition", [] {
        const auto said = *some_aliases();
        auto other = said;
        for (auto& [first, second] : other)
            if (*rc::gen::arbitrary<bool>()) std::swap(first, second);
        other.insert(other.end(), said.begin(), said.end());
        std::shuffle(other.begin(), other.end(), std::mt19937(*rc::gen::arbitrary<unsigned>()));
        const AliasClasses same(said);
        RC_ASSERT(names_of_world(AliasClasses(other)) == names_of_world(same));
        for (const auto& path : world()) RC_ASSERT(same.name_of(same.name_of(path)) == same.name_of(path));
    });
}

TEST_CASE("a car's class has its smallest path as its name, and what lies in a car stays in it") {
    rc::prop("smallest path, name within a car", [] {
        const AliasClasses same(*some_aliases());
        for (const auto& whole : world_cars) RC_ASSERT(same.name_of(whole) == same.members(whole).front());
        for (const auto& path : world()) {
            const std::string head(path_head(path, vehicle_depth)), name = same.name_in(head, path);
            RC_ASSERT(path_head(name, vehicle_depth) == same.name_of(head));
            RC_ASSERT(same.name_of(name) == same.name_of(path));
        }
    });
}

namespace {

const std::string sport = "orrery/vel-ostrel-sport/sedan/2012", third = "orrery/vel-ostrel-tour/sedan/2012";

std::string at(const std::string& path) {
    return path + "/base/front-left/radio-plug";
}

const TapFacts& only_tap(const CarFacts& facts) {
    REQUIRE(facts.taps.size() == 1);
    return facts.taps.front();
}

std::string summary(const Catalog& catalog, const std::string& path) {
    const CarFacts facts = catalog.car(path, 2014);
    const auto& pair = only_tap(facts).pair;
    std::string text = facts.vehicle.path + " " + only_tap(facts).code + " " + pair.pair.value.value_or("-") + " ";
    text += std::string(word_of(pair.pair.grade)) + " " + std::to_string(pair.notes);
    for (const auto& also : facts.also) text += " " + also;
    return text;
}

}  // namespace

TEST_CASE("notes under two names of a car count together, once, whichever name is asked for") {
    const Places places;
    Catalog one = places.shop("Bench Three"), other = places.shop("Quill Audio");
    one.change_shop(other.own_shop().id, ShopChange::know, "Quill Audio");
    one.add(one_car(), false, today);
    other.add(one_car(sport), false, today);
    for (const char* plate : {"AB 1", "AB 2"}) add_note(one, "WH", plate);
    for (const char* plate : {"CD 1", "CD 2"}) add_note(other, "WH", plate, "2026-03-04", at(sport));
    take(one, pack_of(other));
    CHECK(grade_at(one) == Grade::matched);
    CHECK(grade_at(one, at(sport)) == Grade::matched);
    CHECK(one.find("vel ostrel").hits.size() == 2);
    const AliasReport said = one.add_alias(car, sport, today, false);
    CHECK(said.name == sport);
    CHECK(grade_at(one) == Grade::proven);
    CHECK(grade_at(one, at(sport)) == Grade::proven);
    CHECK(summary(one, car) == sport + " " + at(sport) + " BK|WH PROVEN 4 " + car);
    CHECK(summary(one, car) == summary(one, sport));
    CHECK(one.ledger_at(tap_path).notes.size() == 4);
    CHECK(one.ledger_at(tap_path).also == std::vector<std::string>{tap_path});
    REQUIRE(one.find("vel ostrel").hits.size() == 1);
    CHECK(one.find("vel ostrel sport").hits.front().vehicle.path == sport);
    CHECK(one.find("vel ostrel").hits.front().also == std::vector<std::string>{car});
    REQUIRE(one.named("vel ostrel").size() == 1);
    CHECK(one.named("vel ostrel").front().vehicle.path == sport);
    CHECK(one.proven_facts("").size() == 1);  // the pair; no shop alone proves it
    CHECK(one.ledger_state(car).notes == 4);
    CHECK(one.check(CheckDepth::full).sound());
}

TEST_CASE("a car is found by a name that only an alias gives, and notes can be written under it") {
    const Places places;
    Catalog one = places.shop("Bench Three");
    one.add(one_car(), false, today);
    one.add_alias(third, car, today, false);
    one.add_alias(sport, third, today, false);
    REQUIRE(one.named("vel ostrel tour").size() == 1);
    CHECK(one.named("vel ostrel tour").front().vehicle.path == car);
    CHECK(one.named("vel ostrel tour").front().vehicle.model == "Vel Ostrel");
    CHECK(one.find("vel ostrel tour").hits.front().vehicle.path == sport);
    CHECK(one.has_entry(EntryKind::tap, at(third)));
    NoteDraft draft;
    draft.values = {{"kind", words("pair")},   {"path", words(at(sport))}, {"method", words("metered")},
                    {"positive", words("WH")}, {"negative", words("BK")},  {"year", std::int64_t{2014}}};
    CHECK(one.take_note(draft, {"note", false, false}, today).written);
    CHECK(grade_at(one, tap_path) == Grade::one_car);
    CHECK(one.car(third, 2014).also == TextList{third, car});
}

TEST_CASE("places that are the same count together: within a car and between cars") {
    const Places places;
    Catalog one = places.shop("Bench Three");
    one.add(one_car(), false, today);
    one.add(one_car(third), false, today);
    const std::string unit = car + "/base/front-left/head-unit";
    for (const char* plate : {"AB 1", "AB 2"}) add_note(one, "WH", plate);
    add_note(one, "WH", "AB 3", "2026-03-04", unit);
    add_note(one, "WH", "AB 4", "2026-03-04", at(third));
    one.add_alias(tap_path, unit, today, false);
    CHECK(summary(one, car).find(" MATCHED 3") != std::string::npos);
    CHECK(only_tap(one.car(car, {})).code == unit);
    CHECK(only_tap(one.car(car, {})).also == TextList{tap_path});
    one.add_alias(car + "/base", third + "/base", today, false);
    CHECK(summary(one, car).find(" MATCHED 4") != std::string::npos);
    CHECK(summary(one, third).find(" MATCHED 4") != std::string::npos);
    CHECK(one.car(third, {}).vehicle.path == third);
    CHECK(only_tap(one.car(third, {})).code == third + "/base/front-left/head-unit");
    CHECK(one.find("vel ostrel").hits.size() == 2);
}

TEST_CASE("what a stranger calls the same has no effect until its shop is known, and none when it is blocked") {
    const Places places;
    Catalog one = places.shop("Bench Three"), stranger = places.shop("Quill Audio");
    one.add(one_car(), false, today);
    one.add(one_car(third), false, today);
    for (const char* plate : {"AB 1", "AB 2"}) add_note(one, "WH", plate, "2026-03-04", at(third));
    stranger.add_alias(car, third, today, false);
    take(one, pack_of(stranger));
    CHECK(grade_at(one) == Grade::blank);
    CHECK(one.find("vel ostrel").hits.size() == 2);
    const std::string id = stranger.own_shop().id;
    one.change_shop(id, ShopChange::know, "Quill Audio");
    CHECK(grade_at(one) == Grade::matched);
    one.change_shop(id, ShopChange::block, {});
    CHECK(grade_at(one) == Grade::blank);
    CHECK(one.find("vel ostrel").hits.size() == 2);
}

TEST_CASE("grades of a class are those of all its notes at one path") {
    const Places places;
    Catalog many = places.shop("Bench Three"), single = places.shop("Quill Audio");
    many.add_alias(car, sport, today, false);
    many.add_alias(third, sport, today, false);
    std::mt19937 random(20260502);
    const std::vector<std::string> names = {car, sport, third};
    for (int note = 0; note < 24; ++note) {
        const char* colour = random() % 4 == 0 ? "BN" : "WH";
        const std::string plate = std::to_string(random() % 6), day = "2026-03-0" + std::to_string(1 + random() % 9);
        add_note(many, colour, plate, day, at(names[random() % names.size()]));
        add_note(single, colour, plate, day, at(sport));
        for (const auto& name : names) REQUIRE(grade_at(many, at(name)) == grade_at(single, at(sport)));
    }
}
