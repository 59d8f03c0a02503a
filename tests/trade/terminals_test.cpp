// Terminal numbers. Meanings of DIN 72552 from public copies of the table; "from memory" where none could be read. What
// a terminal is worth for turn-on is practice.
#include "trade/terminals.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <map>
#include <string>

using namespace tapbook;

namespace {

const Terminal& terminal(std::string_view number) {
    const Terminal* found = find_terminal(number);
    INFO(number);
    REQUIRE(found != nullptr);
    return *found;
}

}  // namespace

TEST_CASE("the words of turn-on use are sound") {
    CHECK(table_is_sound<TurnOnUse>());
}

TEST_CASE("every terminal of the published table is there, once, with a meaning") {
    const std::string_view published[] = {"15", "15a", "30",  "30a", "31",  "31b", "49", "49a", "50", "51",
                                          "54", "55",  "56",  "56a", "56b", "57",  "58", "61",  "75", "85",
                                          "86", "87",  "87a", "B+",  "B-",  "D+",  "D-", "DF"};
    CHECK(terminals().size() == std::size(published));
    for (const auto number : published) {
        CHECK(terminal(number).number == number);
        CHECK_FALSE(terminal(number).meaning.empty());
        CHECK(std::ranges::count(terminals(), number, &Terminal::number) == 1);
    }
}

TEST_CASE("only switched supplies turn an amplifier on") {
    // Practice; the reasons stand beside each in the table.
    const std::map<std::string_view, TurnOnUse> other_than_no = {
        {"15", TurnOnUse::yes}, {"75", TurnOnUse::yes}, {"50", TurnOnUse::blanking}, {"61", TurnOnUse::hint}};
    for (const Terminal& each : terminals()) {
        INFO(each.number);
        const auto found = other_than_no.find(each.number);
        CHECK(each.turn_on == (found == other_than_no.end() ? TurnOnUse::no : found->second));
    }
}

TEST_CASE("a terminal that is tempting and wrong says why") {
    for (const std::string_view tempting : {"30", "58", "50", "87", "85", "86", "61", "B+"}) {
        INFO(tempting);
        CHECK_FALSE(terminal(tempting).because.empty());
    }
}

TEST_CASE("30 is constant, 31 is ground, 15 is switched, 50 is the starter, 58 the lights") {
    // DIN 72552, public copies of the table.
    CHECK(terminal("30").meaning == "direct from battery positive");
    CHECK(terminal("31").meaning == "ground, direct to battery negative");
    CHECK(terminal("15").meaning == "switched positive after the ignition switch");
    CHECK(terminal("50").meaning == "starter control");
    CHECK(terminal("58").meaning == "side, tail and instrument lights");
    CHECK(terminal("61").meaning == "charge indicator");
}

TEST_CASE("old designations lead to the number of today") {
    // The same public copies: 15 was 16 or 54/15, 30 was 30/51.
    CHECK(terminal("16").number == "15");
    CHECK(terminal("54/15").number == "15");
    CHECK(terminal("30/51").number == "30");
    CHECK(terminal("54").number == "54");  // a number of its own: brake lights
    CHECK(terminal("51").number == "51");
}

TEST_CASE("capital and small letters make no difference") {
    CHECK(terminal("15A").number == "15a");
    CHECK(terminal("b+").number == "B+");
    CHECK(terminal("df").number == "DF");
}

TEST_CASE("a number that is not in the table is not guessed") {
    for (const std::string_view bad :
         {"", " ", "1", "3", "5", "15 ", " 15", "15b", "300", "B", "16,", "16, 54/15", ", ", "54/", "KL15"}) {
        INFO(bad);
        CHECK(find_terminal(bad) == nullptr);
    }
}

TEST_CASE("what could not be read anywhere is marked as from memory") {
    for (const Terminal& each : terminals()) {
        INFO(each.number);
        CHECK(each.from_memory == (each.number == "75" || each.number == "87a"));
    }
}
