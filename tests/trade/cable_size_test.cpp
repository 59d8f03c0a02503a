// Is a cable size read as it is written on cable, and written as it is read? A good list, a longer bad list, and the
// round trip over every size that is sold.
#include "trade/cable_size.h"

#include <rapidcheck.h>

#include <catch2/catch.hpp>

using namespace tapbook;

TEST_CASE("a bare number is AWG, with mm2 it is metric, with sae before it it is marked SAE") {
    CHECK(std::get<Awg>(*parse_cable_size("4")).number == 4);
    CHECK(std::get<Awg>(*parse_cable_size("1/0")).number == 0);
    CHECK(std::get<Awg>(*parse_cable_size("4/0")).number == -3);
    CHECK(std::get<SquareMillimetres>(*parse_cable_size("25mm2")).in(square_millimetres) == 25);
    CHECK(std::get<SquareMillimetres>(*parse_cable_size("2.5mm2")).in(square_millimetres) == 2.5);
    CHECK(std::get<SquareMillimetres>(*parse_cable_size("1000mm2")).in(square_millimetres) == 1000);
    CHECK(std::get<SaeSize>(*parse_cable_size("sae4")).marked == "4");
    CHECK(std::get<SaeSize>(*parse_cable_size("sae1/0")).marked == "1/0");
}

TEST_CASE("what is no size is refused") {
    for (const char* bad :
         {"",          "x",      "mm2",    "sae",   "sae0",  "sae 4", "sae25mm2",    "SAE4",   "4awg",
          "4 ",        " 4",     "+4",     "-4",    "4.5",   "41",    "5/0",         "0/0",    "0mm2",
          "-1mm2",     "+1mm2",  "25 mm2", "25mm",  "25MM2", "25mm²", "1000.001mm2", "2,5mm2", "1e2mm2",
          "0.0001mm2", "sae4/1", "sae99",  "mm225", "4;5"}) {
        INFO(bad);
        CHECK_FALSE(parse_cable_size(bad).has_value());
    }
}

TEST_CASE("every size that is sold is written so that it is read back") {
    for (const auto& [system, word] : words_of<SizeSystem>())
        for (const CableSize& size : sold_sizes(system)) {
            const std::string text = cable_size_text(size);
            INFO(word << " " << text);
            const auto read = parse_cable_size(text);
            REQUIRE(read.has_value());
            CHECK(system_of(*read) == system);
            CHECK(cross_section(*read) == cross_section(size));
            CHECK(cable_size_text(*read) == text);
        }
}

TEST_CASE("sizes are written shortly, in one spelling each") {
    CHECK(cable_size_text(Awg{0}) == "1/0");
    CHECK(cable_size_text(*parse_cable_size("00")) == "2/0");
    CHECK(cable_size_text(*parse_cable_size("025.500mm2")) == "25.5mm2");
    CHECK(cable_size_text(*find_sae_size("2/0")) == "sae2/0");
}

TEST_CASE("every area of whole thousandths survives being written and read") {
    const bool holds = rc::check("round trip of areas", [] {
        const auto area = thousandths_of_square_millimetre(*rc::gen::inRange(1, 1000001));
        const auto read = parse_cable_size(cable_size_text(area));
        RC_ASSERT(read.has_value());
        RC_ASSERT(std::get<SquareMillimetres>(*read) == area);
    });
    CHECK(holds);
}
