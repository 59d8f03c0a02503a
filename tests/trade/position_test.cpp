// Which speaker is meant by a typed position, and what is refused? Abbreviations: trade practice, no source.
#include "trade/position.h"

#include <rapidcheck.h>

#include <algorithm>
#include <catch2/catch.hpp>

#include "trade/text.h"

using namespace tapbook;
using Refused = PositionRefusalReason;
using enum tapbook::Position;

namespace {

std::optional<Position> read(std::string_view text) {
    const auto result = parse_position(text);
    const auto* found = std::get_if<Position>(&result);
    return found ? std::optional(*found) : std::nullopt;
}

PositionRefusal refusal_of(std::string_view text) {
    const auto result = parse_position(text);
    INFO(text);
    REQUIRE(std::holds_alternative<PositionRefusal>(result));
    return std::get<PositionRefusal>(result);
}

const std::pair<std::string_view, Position> good[] = {
    {"front left", front_left},
    {"Front-Left", front_left},
    {"front_left", front_left},
    {"front/left", front_left},
    {"left front", front_left},
    {"FL", front_left},
    {"lf", front_left},
    {"F L", front_left},
    {"frt lh", front_left},
    {"FR LH", front_left},
    {"front left speaker", front_left},
    {"  front   left ", front_left},
    {"FR", front_right},
    {"RF", front_right},
    {"f/r", front_right},
    {"right-front", front_right},
    {"RL", rear_left},
    {"LR", rear_left},
    {"back left", rear_left},
    {"rr lh", rear_left},
    {"RR", rear_right},
    {"rear rh", rear_right},
    {"rear right", rear_right},
    {"rr rh", rear_right},
    {"front left tweeter", front_left_tweeter},
    {"tweeter FL", front_left_tweeter},
    {"fr tw", front_right_tweeter},
    {"left rear tweeter", rear_left_tweeter},
    {"RR tweeter", rear_right_tweeter},
    {"front mid left", front_left_midrange},
    {"rf midrange", front_right_midrange},
    {"centre", centre},
    {"CENTER", centre},
    {"ctr", centre},
    {"C", centre},
    {"subwoofer", subwoofer},
    {"sub", subwoofer},
    {"SW", subwoofer},
    {"surround left", surround_left},
    {"left side", surround_left},
    {"SL", surround_left},
    {"rs", surround_right},
};

struct Bad {
    std::string_view text;
    Refused reason;
    std::vector<Position> choices;
};

const Bad bad[] = {
    {"", Refused::empty, {}},
    {"  ", Refused::empty, {}},
    {"-/_", Refused::empty, {}},
    {"front", Refused::ambiguous, {front_left, front_right}},
    {"F", Refused::ambiguous, {front_left, front_right}},
    {"rear", Refused::ambiguous, {rear_left, rear_right}},
    {"left", Refused::ambiguous, {front_left, rear_left, surround_left}},
    {"L", Refused::ambiguous, {front_left, rear_left, surround_left}},
    {"R", Refused::ambiguous, {front_right, rear_right, surround_right}},
    {"side", Refused::ambiguous, {surround_left, surround_right}},
    {"tweeter", Refused::ambiguous, {front_left_tweeter, front_right_tweeter, rear_left_tweeter, rear_right_tweeter}},
    {"front tweeter", Refused::ambiguous, {front_left_tweeter, front_right_tweeter}},
    {"left tweeter", Refused::ambiguous, {front_left_tweeter, rear_left_tweeter}},
    {"mid", Refused::ambiguous, {front_left_midrange, front_right_midrange}},
    {"L/R", Refused::unknown, {}},
    {"R L", Refused::unknown, {}},
    {"left right", Refused::unknown, {}},
    {"front rear", Refused::unknown, {}},
    {"front front", Refused::unknown, {}},
    {"FL FL", Refused::unknown, {}},
    {"FL rear", Refused::unknown, {}},
    {"R R", Refused::unknown, {}},
    {"centre left", Refused::unknown, {}},
    {"rear centre", Refused::unknown, {}},
    {"rear sub", Refused::unknown, {}},
    {"centre tweeter", Refused::unknown, {}},
    {"rear left midrange", Refused::unknown, {}},
    {"left midrange", Refused::unknown, {}},
    {"speaker", Refused::unknown, {}},
    {"door", Refused::unknown, {}},
    {"frontleft", Refused::unknown, {}},
    {"driver", Refused::unknown, {}},
    {"passenger side", Refused::unknown, {}},
    {"front left 2", Refused::unknown, {}},
    {"1", Refused::unknown, {}},
    {"front+left", Refused::unknown, {}},
    {"front,left", Refused::unknown, {}},
    {"FLR", Refused::unknown, {}},
    {"X", Refused::unknown, {}},
    {"vorne links", Refused::unknown, {}},
    {"front left\n", Refused::unknown, {}},
    {"\xC3\xA9", Refused::unknown, {}},
    {"\xFF", Refused::unknown, {}},
    {"front\x1Bleft", Refused::unknown, {}},
};

}  // namespace

TEST_CASE("the trade's spellings of a position are read, words in any order") {
    for (const auto& [text, position] : good) {
        CAPTURE(text);
        CHECK(read(text) == position);
    }
}

TEST_CASE("a position that fits several speakers, or none, is refused") {
    REQUIRE(std::size(bad) > std::size(good));
    for (const Bad& row : bad) {
        CAPTURE(row.text);
        const auto refusal = refusal_of(row.text);
        CHECK(refusal.reason == row.reason);
        CHECK(refusal.choices == row.choices);
    }
}

TEST_CASE("a refusal says what fits or what was probably meant") {
    const std::pair<std::string_view, std::string_view> messages[] = {
        {"", "no speaker position given; write one like \"front left\""},
        {"front", "\"front\" can mean front left or front right; write one of them"},
        {"left", "\"left\" can mean front left, rear left or surround left; write one of them"},
        {"frnt left", "\"frnt left\" is not a speaker position; did you mean \"front left\"?"},
        {"raer rigth", "\"raer rigth\" is not a speaker position; did you mean \"rear right\"?"},
        {"left midrange", "\"left midrange\" is not a speaker position; did you mean \"front left midrange\"?"},
        {"centre tweeter", "\"centre tweeter\" is not a speaker position; write one like \"front left\""},
        {"front\x1Bleft", "\"front<U+001B>left\" is not a speaker position; write one like \"front left\""},
    };
    for (const auto& [text, message] : messages) CHECK(refusal_of(text).message() == message);
}

TEST_CASE("every position is read from its words in every order, with blanks, dashes or capitals") {
    for (const auto& named : words_of<Position>()) {
        std::vector<std::string> words = folded_words(named.word);
        std::ranges::sort(words);
        do {
            std::string spaced, dashed;
            for (const auto& word : words) {
                spaced += (spaced.empty() ? "" : " ") + word;
                dashed += (dashed.empty() ? "" : "-") + word;
            }
            std::ranges::transform(dashed, dashed.begin(),
                                   [](char c) { return c >= 'a' && c <= 'z' ? static_cast<char>(c - 32) : c; });
            CHECK(read(spaced) == named.value);
            CHECK(read(dashed) == named.value);
        } while (std::ranges::next_permutation(words).found);
    }
}

TEST_CASE("stored numbers of positions never change") {
    const Position kept[] = {front_left,
                             front_right,
                             rear_left,
                             rear_right,
                             front_left_tweeter,
                             front_right_tweeter,
                             rear_left_tweeter,
                             rear_right_tweeter,
                             front_left_midrange,
                             front_right_midrange,
                             centre,
                             subwoofer,
                             surround_left,
                             surround_right};
    int number = 0;
    for (const Position position : kept) CHECK(static_cast<int>(position) == ++number);
    CHECK(words_of<Position>().size() == std::size(kept));
}

TEST_CASE("any text is read or refused with one line that is safe to print") {
    REQUIRE(rc::check([] {
        const auto text = *rc::gen::arbitrary<std::string>();
        const auto result = parse_position(text);
        if (const auto* refusal = std::get_if<PositionRefusal>(&result)) {
            RC_ASSERT(refusal->offset <= text.size());
            RC_ASSERT(!hidden_character(refusal->message()));
        }
    }));
}
