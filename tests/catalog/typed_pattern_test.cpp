// Does the quick distance agree with the plain table, for whole words and for every beginning of the typed word?
#include "catalog/typed_pattern.h"

#include <rapidcheck.h>

#include <bit>
#include <catch2/catch.hpp>
#include <string>

#include "trade/trade.h"

using namespace tapbook;

namespace {

// Few letters, so that equal and swapped ones are common.
std::string word(std::size_t longest) {
    return *rc::gen::resize(static_cast<int>(longest),
                            rc::gen::container<std::string>(rc::gen::element('a', 'b', 'c', 'd', '1', '\xc3')));
}

}  // namespace

TEST_CASE("the quick distance is the plain table's distance") {
    REQUIRE(rc::check([] {
        const std::string typed = word(20) + "a", name = word(20);
        RC_ASSERT(TypedPattern(typed).distance(name) == edit_distance(typed, name));
    }));
}

TEST_CASE("distances of every beginning of the typed word are the plain table's distances") {
    REQUIRE(rc::check([] {
        const std::string typed = "b" + word(14), name = word(14);
        std::array<std::uint8_t, TypedPattern::longest + 1> distances{};
        TypedPattern(typed).prefix_distances(name, distances);
        for (std::size_t i = 0; i <= typed.size(); ++i)
            RC_ASSERT(distances[i] == edit_distance(typed.substr(0, i), name));
    }));
}

TEST_CASE("a word that fills the machine word is measured to its last letter") {
    const std::string longest(TypedPattern::longest, 'a');
    CHECK(TypedPattern(longest).distance(longest) == 0);
    CHECK(TypedPattern(longest).distance(longest.substr(1)) == 1);
    CHECK(TypedPattern(longest).distance(longest.substr(1) + "b") == 1);
    CHECK(TypedPattern(longest).distance("") == longest.size());
}

TEST_CASE("one edit of each kind counts one, a swap of neighbours included") {
    // From the definition of the restricted distance: each of these is a single edit.
    for (const char* name : {"nadrwo", "nadro", "nadroww", "nadruw", "androw", "adrow", "xnadrow"})
        CHECK(TypedPattern("nadrow").distance(name) == 1);
    CHECK(TypedPattern("ca").distance("abc") == 3);  // no letter is edited twice
}

TEST_CASE("letters that one word has and the other has not never outnumber the edits between them") {
    REQUIRE(rc::check([] {
        const std::string typed = word(12) + "a", name = word(12);
        const auto foreign = std::popcount(letters_of(typed) & ~letters_of(name));
        RC_ASSERT(static_cast<std::size_t>(foreign) <= edit_distance(typed, name));
    }));
}
