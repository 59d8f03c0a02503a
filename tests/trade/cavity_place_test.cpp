// The place of a cavity on a face that is numbered along its rows.
#include "trade/cavity_place.h"

#include <rapidcheck.h>
#include <catch2/catch.hpp>

#include <set>
#include <string>

using namespace tapbook;

namespace {

TapPoint face(int cavities, int rows) {
    TapPoint tap;
    tap.cavities = cavities;
    tap.cavity_rows = rows;
    return tap;
}

}  // namespace

TEST_CASE("cavity 5 of a block of two rows of eight is the fifth of the first row, 9 the first of the second") {
    CHECK(cavity_columns(face(16, 2)) == 8);
    CHECK(cavity_place(face(16, 2), "B5") == CavityPlace{1, 5});
    CHECK(cavity_place(face(16, 2), "9") == CavityPlace{2, 1});
    CHECK(cavity_place(face(16, 2), "b 16") == CavityPlace{2, 8});
    CHECK(cavity_place(face(7, 2), "5") == CavityPlace{2, 1});  // four in the first row, three in the second
}

TEST_CASE("a cavity that is not on the face, or not a number, has no place") {
    for (const char* name : {"", "B", "0", "17", "B-5", "5a", "5 ", "99999999999",
                             "\xC3\xA9"
                             "5"})
        CHECK_FALSE(cavity_place(face(16, 2), name));
}

TEST_CASE("a connector whose rows nobody noted shows no face") {
    TapPoint tap;
    tap.cavities = 16;
    CHECK_FALSE(cavity_columns(tap));
    CHECK_FALSE(cavity_place(tap, "5"));
    CHECK_FALSE(cavity_place(face(2, 3), "1"));
}

TEST_CASE("every cavity of a face has a place of its own within its rows and columns") {
    const bool holds = rc::check("places are distinct and inside", [] {
        const int cavities = *rc::gen::inRange(1, 201);
        const int rows = *rc::gen::inRange(1, std::min(cavities, 8) + 1);
        const TapPoint tap = face(cavities, rows);
        std::set<std::pair<int, int>> seen;
        for (int number = 1; number <= cavities; ++number) {
            const auto place = cavity_place(tap, "C" + std::to_string(number));
            RC_ASSERT(place.has_value());
            RC_ASSERT(place->row >= 1 && place->row <= rows);
            RC_ASSERT(place->column >= 1 && place->column <= *cavity_columns(tap));
            RC_ASSERT(seen.insert({place->row, place->column}).second);
        }
    });
    CHECK(holds);
}
