// Is the nearest word really the nearest? Distances from the definition by a slow second way (trying all edits
// recursively), laws on random words, and the limits by hand.
#include "trade/nearest.h"

#include <rapidcheck.h>

#include <algorithm>
#include <catch2/catch.hpp>
#include <string>
#include <vector>

using namespace tapbook;

namespace {

// The definition, read from the ends: skip equal last letters, else try each edit.
// Exponential; for words of a few letters.
std::size_t slow_distance(std::string_view a, std::string_view b) {
    if (a.empty() || b.empty()) return a.size() + b.size();
    const auto a_short = a.substr(0, a.size() - 1), b_short = b.substr(0, b.size() - 1);
    const std::size_t change = a.back() == b.back() ? 0 : 1;
    std::size_t best = std::min(
        {slow_distance(a_short, b) + 1, slow_distance(a, b_short) + 1, slow_distance(a_short, b_short) + change});
    const std::size_t i = a.size(), j = b.size();
    if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1])
        best = std::min(best, slow_distance(a.substr(0, i - 2), b.substr(0, j - 2)) + 1);
    return best;
}

// All words of up to `longest` letters from {a, b, c}.
std::vector<std::string> small_words(std::size_t longest) {
    std::vector<std::string> all{""};
    for (std::size_t i = 0; i < all.size() && all[i].size() < longest; ++i)
        for (const char c : {'a', 'b', 'c'}) all.push_back(all[i] + c);
    return all;
}

rc::Gen<std::string> word() {
    return rc::gen::container<std::string>(rc::gen::inRange('a', 'f'));
}

constexpr std::string_view colours[] = {"black", "brown", "red", "green", "blue", "grey", "turquoise"};

}  // namespace

TEST_CASE("the distance equals the one found by trying all edits, for all pairs of words up to four letters") {
    const auto all = small_words(4);
    REQUIRE(all.size() == 1 + 3 + 9 + 27 + 81);
    std::size_t different = 0;
    for (const auto& a : all)
        for (const auto& b : all)
            if (edit_distance(a, b) != slow_distance(a, b)) ++different;
    CHECK(different == 0);
}

TEST_CASE("distances of single edits, counted by hand") {
    CHECK(edit_distance("", "") == 0);
    CHECK(edit_distance("", "red") == 3);
    CHECK(edit_distance("white", "white") == 0);
    CHECK(edit_distance("wite", "white") == 1);      // left out
    CHECK(edit_distance("whiite", "white") == 1);    // added
    CHECK(edit_distance("whide", "white") == 1);     // changed
    CHECK(edit_distance("wihte", "white") == 1);     // swapped neighbours
    CHECK(edit_distance("WHITE", "white") == 0);     // case does not count
    CHECK(edit_distance("kitten", "sitting") == 3);  // the textbook example of edit distance
}

TEST_CASE(
    "the distance is symmetric, zero only for equal words, and lies between difference and length of the longer") {
    REQUIRE(rc::check([] {
        const auto a = *word(), b = *word();
        const auto distance = edit_distance(a, b);
        RC_ASSERT(distance == edit_distance(b, a));
        RC_ASSERT((distance == 0) == (a == b));
        RC_ASSERT(distance <= std::max(a.size(), b.size()));
        RC_ASSERT(distance + std::min(a.size(), b.size()) >= std::max(a.size(), b.size()));
    }));
}

TEST_CASE("letters in front of or behind both words change nothing") {
    REQUIRE(rc::check([] {
        const auto a = *word(), b = *word(), around = *word();
        RC_ASSERT(edit_distance(around + a, around + b) == edit_distance(a, b));
        RC_ASSERT(edit_distance(a + around, b + around) == edit_distance(a, b));
    }));
}

TEST_CASE("one edit more changes the distance to another word by at most one, unless it tears a swapped pair") {
    // The restricted distance is no metric: ca -> ac -> abc is two edits, but ca -> abc directly is three.
    CHECK(edit_distance("ca", "ac") == 1);
    CHECK(edit_distance("ac", "abc") == 1);
    CHECK(edit_distance("ca", "abc") == 3);
}

TEST_CASE("the nearest word is taken within a third of the length") {
    CHECK(nearest("balck", colours) == "black");
    CHECK(nearest("GREEEN", colours) == "green");
    CHECK(nearest("redd", colours) == "red");
    CHECK(nearest("turkuose", colours) == "turquoise");  // 8 letters: up to 2 edits; turkuose takes 2
    CHECK(nearest("turkose", colours) == std::nullopt);  // 7 letters: up to 2; turkose takes 3
    CHECK(nearest("yellow", colours) == std::nullopt);
    CHECK(nearest("red", colours) == "red");
    CHECK(nearest("", colours) == std::nullopt);
    CHECK(nearest("red", {}) == std::nullopt);
}

TEST_CASE("of equally near words the first in the list's order is taken") {
    CHECK(nearest("gren", colours) == "green");  // grey and green both take one edit; green comes first
    constexpr std::string_view other_order[] = {"grey", "green"};
    CHECK(nearest("gren", other_order) == "grey");
}

TEST_CASE("at most three edits are forgiven, however long the word") {
    constexpr std::string_view words[] = {"front left tweeter"};
    CHECK(nearest("frnt lft tweter", words) == "front left tweeter");
    CHECK(nearest("frnt lft tweer", words) == std::nullopt);
}

TEST_CASE("a single letter is never mended into another letter") {
    constexpr std::string_view letters[] = {"w", "r", "go"};
    CHECK(nearest("x", letters) == std::nullopt);
    CHECK(nearest("g", letters) == "go");
}

TEST_CASE("no word of the list is nearer than the one that is taken, and none is taken when all are too far") {
    const auto all = small_words(3);
    const std::vector<std::string_view> list = {"abc", "cab", "bb", "a"};
    for (const auto& typed : all) {
        const std::size_t limit = std::clamp<std::size_t>(typed.size() / 3, 1, 3);
        std::optional<std::string_view> expected;
        std::size_t best = 99;
        for (const auto candidate : list) {
            const std::size_t distance = slow_distance(typed, candidate);
            const bool possible = distance <= limit && distance < std::max(typed.size(), candidate.size());
            if (possible && distance < best) {
                best = distance;
                expected = candidate;
            }
        }
        CAPTURE(typed);
        CHECK(nearest(typed, list) == expected);
    }
}
