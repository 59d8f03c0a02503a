// Cavities of the ISO radio connector. Use of each cavity from public tables that agree with each other; the text of
// ISO 10487-1 could not be read.
#include "trade/radio_connector.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <string>

using namespace tapbook;

namespace {

const RadioCavity& cavity(std::string_view name) {
    const RadioCavity* found = find_radio_cavity(name);
    INFO(name);
    REQUIRE(found != nullptr);
    return *found;
}

}  // namespace

TEST_CASE("the words of the blocks and signs are sound") {
    CHECK(table_is_sound<RadioBlock>());
    CHECK(table_is_sound<SpeakerSign>());
}

TEST_CASE("the table has A1 to A8, B1 to B8, C1 to C6 and C13 to C20 in this order and nothing else") {
    std::vector<std::string> expected;
    const auto add = [&](char block, int first, int last) {
        for (int number = first; number <= last; ++number) expected.push_back(block + std::to_string(number));
    };
    add('A', 1, 8);
    add('B', 1, 8);
    add('C', 1, 6);
    add('C', 13, 20);
    std::vector<std::string> names;
    for (const RadioCavity& each : radio_cavities()) names.emplace_back(each.name);
    CHECK(names == expected);
}

TEST_CASE("each name is its block and number, and each cavity has a function") {
    for (const RadioCavity& each : radio_cavities()) {
        CHECK(each.name == std::string(word_of(each.block)) + std::to_string(each.number));
        CHECK_FALSE(each.function.empty());
        CHECK(find_radio_cavity(each.name) == &each);
    }
}

TEST_CASE("block A carries supplies, ground and the remote output") {
    // Public tables: A4 permanent, A5 aerial and remote, A6 illumination, A7 switched, A8 ground.
    CHECK(cavity("A4").role == Role::constant_power);
    CHECK(cavity("A5").role == Role::turn_on_lead);
    CHECK(cavity("A6").role == Role::illumination);
    CHECK(cavity("A7").role == Role::switched_power);
    CHECK(cavity("A8").role == Role::ground);
    for (const std::string_view name : {"A1", "A2", "A3"}) {  // often empty or used otherwise
        CHECK(cavity(name).optional_use);
        CHECK_FALSE(cavity(name).role);
    }
}

TEST_CASE("block B carries four speakers, right rear first, plus on odd numbers") {
    // Public tables: B1 B2 right rear, B3 B4 right front, B5 B6 left front, B7 B8 left rear.
    const std::pair<Position, int> pairs[] = {
        {Position::rear_right, 1}, {Position::front_right, 3}, {Position::front_left, 5}, {Position::rear_left, 7}};
    for (const auto& [position, plus] : pairs) {
        const RadioCavity* positive = speaker_cavity(position, SpeakerSign::positive);
        const RadioCavity* negative = speaker_cavity(position, SpeakerSign::negative);
        REQUIRE(positive != nullptr);
        REQUIRE(negative != nullptr);
        CHECK(positive->name == "B" + std::to_string(plus));
        CHECK(negative->name == "B" + std::to_string(plus + 1));
        CHECK(positive->role == Role::speaker);
        CHECK(positive->function.ends_with('+'));
        CHECK(negative->function.ends_with('-'));
    }
}

TEST_CASE("a speaker that is no corner has no cavity") {
    for (const auto& [position, word] : words_of<Position>()) {
        const bool corner = position == Position::front_left || position == Position::front_right ||
                            position == Position::rear_left || position == Position::rear_right;
        INFO(word);
        CHECK((speaker_cavity(position, SpeakerSign::positive) != nullptr) == corner);
        CHECK((speaker_cavity(position, SpeakerSign::negative) != nullptr) == corner);
    }
}

TEST_CASE("block C carries four line outputs with one common, left before right, then a small supply") {
    // Public tables: C1 left rear, C2 right rear, C3 common, C4 left front, C5 right front, C6 switched, C13 on
    // changer.
    CHECK(cavity("C1").speaker == Position::rear_left);
    CHECK(cavity("C2").speaker == Position::rear_right);
    CHECK_FALSE(cavity("C3").speaker);
    CHECK(cavity("C4").speaker == Position::front_left);
    CHECK(cavity("C5").speaker == Position::front_right);
    for (const std::string_view name : {"C1", "C2", "C3", "C4", "C5"}) CHECK(cavity(name).role == Role::line_level);
    CHECK(cavity("C6").role == Role::switched_power);
    CHECK(cavity("C13").function == "disc changer");
    CHECK(cavity("C20").function == "disc changer");
}

TEST_CASE("A4 and A7 may be swapped, and no others") {
    // Public tables, two of them.
    CHECK(cavity("A4").sometimes_swapped_with == "A7");
    CHECK(cavity("A7").sometimes_swapped_with == "A4");
    for (const RadioCavity& each : radio_cavities())
        CHECK(each.sometimes_swapped_with.empty() == (each.name != "A4" && each.name != "A7"));
    CHECK(swapped_supply_caution.find("A4") != std::string_view::npos);
    CHECK(swapped_supply_caution.find("A7") != std::string_view::npos);
}

TEST_CASE("A5 and C6 give 150 mA at most") {
    // Public tables: A5 150 to 300 mA, of which the least is kept; C6 150 mA.
    for (const RadioCavity& each : radio_cavities()) {
        INFO(each.name);
        if (each.name == "A5" || each.name == "C6")
            CHECK(each.limit == milliamps(150));
        else
            CHECK_FALSE(each.limit);
    }
}

TEST_CASE("a cavity is found by its name only, small letters included") {
    CHECK(cavity("a4").name == "A4");
    CHECK(cavity("c13").name == "C13");
    for (const std::string_view bad :
         {"", "A", "4", "A0", "A9", "B9", "C7", "C12", "C21", "D1", "A 4", "A-4", "A04", "A44", " A4"}) {
        INFO(bad);
        CHECK(find_radio_cavity(bad) == nullptr);
    }
}
