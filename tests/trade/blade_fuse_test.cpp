// Blade fuses. Regular and mini: 3 to 30 A from T. Denton, Automobile Mechanical and Electrical Systems, table 3.2; 1
// and 2 A from a public reference page; 35 and 40 A from memory. Maxi: public reference pages; 100 A from memory.
#include "trade/blade_fuse.h"

#include <catch2/catch.hpp>
#include <utility>

using namespace tapbook;
using Colour = FuseColour;

namespace {

using Row = std::pair<double, FuseColour>;

constexpr Row small_rows[] = {{1, Colour::black},   {2, Colour::grey},    {3, Colour::violet}, {4, Colour::pink},
                              {5, Colour::tan},     {7.5, Colour::brown}, {10, Colour::red},   {15, Colour::blue},
                              {20, Colour::yellow}, {25, Colour::clear},  {30, Colour::green}, {35, Colour::blue_green},
                              {40, Colour::orange}};
constexpr Row maxi_rows[] = {{20, Colour::yellow}, {30, Colour::green}, {40, Colour::orange}, {50, Colour::red},
                             {60, Colour::blue},   {70, Colour::tan},   {80, Colour::clear},  {100, Colour::violet}};

std::span<const Row> rows(BladeBody body) {
    if (body == BladeBody::maxi) return maxi_rows;
    return small_rows;
}

AmbiguousFuseColour ambiguous(FuseColour colour) {
    const auto answer = blade_rating(colour);
    INFO(word_of(colour));
    REQUIRE(std::holds_alternative<AmbiguousFuseColour>(answer));
    return std::get<AmbiguousFuseColour>(answer);
}

}  // namespace

TEST_CASE("the words of bodies and fuse colours are sound") {
    CHECK(table_is_sound<BladeBody>());
    CHECK(table_is_sound<FuseColour>());
}

TEST_CASE("each rating of each body has the published colour, and each colour leads back to the rating") {
    for (const auto& [body, word] : words_of<BladeBody>()) {
        CHECK(blade_fuses(body).size() == rows(body).size());
        for (const auto& [rating, colour] : rows(body)) {
            INFO(word << ' ' << rating);
            const BladeFuse* fuse = find_blade_fuse(body, amps(rating));
            REQUIRE(fuse != nullptr);
            CHECK(fuse->colour == colour);
            CHECK(blade_rating(body, colour) == amps(rating));
        }
    }
}

TEST_CASE("a rating that is not made has no fuse") {
    for (const double rating : {0.0, -10.0, 0.5, 6.0, 7.0, 7.4, 8.0, 12.0, 45.0, 50.0, 100.0})
        CHECK(find_blade_fuse(BladeBody::mini, amps(rating)) == nullptr);
    for (const double rating : {0.0, 7.5, 10.0, 25.0, 35.0, 90.0, 120.0})
        CHECK(find_blade_fuse(BladeBody::maxi, amps(rating)) == nullptr);
}

TEST_CASE("a colour no fuse of the body has gives no rating") {
    for (const FuseColour colour : {Colour::black, Colour::grey, Colour::pink, Colour::blue_green})
        CHECK_FALSE(blade_rating(BladeBody::maxi, colour));
    for (const auto& [colour, word] : words_of<FuseColour>()) {
        CHECK(blade_rating(BladeBody::regular, colour));
        CHECK(blade_rating(BladeBody::regular, colour) == blade_rating(BladeBody::mini, colour));
    }
}

TEST_CASE("a maxi fuse of 70 A is tan or brown") {
    // Public reference pages differ.
    CHECK(blade_rating(BladeBody::maxi, Colour::tan) == amps(70));
    CHECK(blade_rating(BladeBody::maxi, Colour::brown) == amps(70));
}

TEST_CASE("ratings rise in each table, and the standard ratings are all of them once") {
    for (const auto& [body, word] : words_of<BladeBody>())
        for (std::size_t i = 1; i < blade_fuses(body).size(); ++i)
            CHECK(blade_fuses(body)[i - 1].rating < blade_fuses(body)[i].rating);
    const std::vector<Amps> expected = {amps(1),  amps(2),  amps(3),  amps(4),  amps(5),  amps(7.5),
                                        amps(10), amps(15), amps(20), amps(25), amps(30), amps(35),
                                        amps(40), amps(50), amps(60), amps(70), amps(80), amps(100)};
    CHECK(standard_blade_ratings() == expected);
}

TEST_CASE("red alone is refused with 10 A and 50 A") {
    const auto red_fuse = ambiguous(Colour::red);
    REQUIRE(red_fuse.choices.size() == 3);
    CHECK(red_fuse.choices[0].body == BladeBody::regular);
    CHECK(red_fuse.choices[0].rating == amps(10));
    CHECK(red_fuse.choices[1].body == BladeBody::mini);
    CHECK(red_fuse.choices[1].rating == amps(10));
    CHECK(red_fuse.choices[2].body == BladeBody::maxi);
    CHECK(red_fuse.choices[2].rating == amps(50));
    CHECK(red_fuse.message() ==
          "red is 10 A on a regular or mini fuse and 50 A on a maxi fuse; name the body or read the figure on it");
    CHECK(ambiguous(Colour::brown).message() ==
          "brown is 7.5 A on a regular or mini fuse and 70 A on a maxi fuse; name the body or read the figure on it");
}

TEST_CASE("a colour alone is refused exactly where bodies differ") {
    // From the two tables above: violet 3/100, tan 5/70, brown 7.5/70, red 10/50, blue 15/60, clear 25/80.
    for (const FuseColour colour :
         {Colour::violet, Colour::tan, Colour::brown, Colour::red, Colour::blue, Colour::clear})
        CHECK(ambiguous(colour).choices.size() == 3);
    const Row agreed[] = {{1, Colour::black},  {2, Colour::grey},        {4, Colour::pink},   {20, Colour::yellow},
                          {30, Colour::green}, {35, Colour::blue_green}, {40, Colour::orange}};
    for (const auto& [rating, colour] : agreed) {
        const auto answer = blade_rating(colour);
        INFO(word_of(colour));
        REQUIRE(std::holds_alternative<Amps>(answer));
        CHECK(std::get<Amps>(answer) == amps(rating));
    }
}

TEST_CASE("every colour is read by its word and by its other names") {
    for (const auto& [colour, word] : words_of<FuseColour>()) CHECK(parse_fuse_colour(word) == colour);
    CHECK(parse_fuse_colour("beige") == Colour::tan);
    CHECK(parse_fuse_colour("white") == Colour::clear);
    CHECK(parse_fuse_colour("natural") == Colour::clear);
    CHECK(parse_fuse_colour("amber") == Colour::orange);
    CHECK(parse_fuse_colour("purple") == Colour::violet);
    CHECK(parse_fuse_colour("gray") == Colour::grey);
    CHECK(parse_fuse_colour("turquoise") == Colour::blue_green);
    CHECK(parse_fuse_colour("Blue-Green") == Colour::blue_green);
    for (const std::string_view bad :
         {"", " ", "re", "red ", "reddish", "blue green", "green-blue", "gold", "RD", "10"}) {
        INFO(bad);
        CHECK_FALSE(parse_fuse_colour(bad));
    }
}

TEST_CASE("colours that could not be confirmed are marked as from memory") {
    for (const auto& [body, word] : words_of<BladeBody>())
        for (const BladeFuse& fuse : blade_fuses(body)) {
            const bool recalled =
                body == BladeBody::maxi ? fuse.rating == amps(100) : fuse.rating == amps(35) || fuse.rating == amps(40);
            CHECK(fuse.from_memory == recalled);
        }
}
