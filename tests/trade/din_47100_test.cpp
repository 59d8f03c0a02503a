// DIN 47100 (withdrawn in November 1998, still used): colours of 45 cores; the first colour is the insulation, the
// others its rings. Cores and aliases read from the published table.
#include <catch2/catch.hpp>

#include "trade/trade.h"

using namespace tapbook;

namespace {

const std::string_view cores[] = {
    "WH",     "BN",   "GN",   "YE",   "GY",   "PK",   "BU",   "RD",   "BK",   "VT",   "GYPK",  // 1 to 11
    "RDBU",   "WHGN", "BNGN", "WHYE", "YEBN", "WHGY", "GYBN", "WHPK", "PKBN", "WHBU", "BNBU",  // 12 to 22
    "WHRD",   "BNRD", "WHBK", "BNBK", "GYGN", "YEGY", "PKGN", "YEPK", "GNBU", "YEBU", "GNRD",  // 23 to 33
    "YERD",   "GNBK", "YEBK", "GYBU", "PKBU", "GYRD", "PKRD", "GYBK", "PKBK", "BUBK", "RDBK",  // 34 to 44
    "WHBNBK",                                                                                  // 45
};

// "WHBNBK" -> "WH/BN/BK"
std::string with_slashes(std::string_view joined) {
    std::string text;
    for (std::size_t at = 0; at < joined.size(); at += 2) {
        if (at > 0) text += '/';
        text += joined.substr(at, 2);
    }
    return text;
}

}  // namespace

TEST_CASE("all 45 cores of DIN 47100 are read with slashes and written back the same") {
    REQUIRE(std::size(cores) == 45);
    for (const auto core : cores) {
        CAPTURE(core);
        const auto result = parse_wire_colour(with_slashes(core));
        REQUIRE(std::holds_alternative<WireColour>(result));
        const auto& colour = std::get<WireColour>(result);
        CHECK(code(colour) == with_slashes(core));
        CHECK(hues(colour).size() == core.size() / 2);
        CHECK(code(colour.base) == core.substr(0, 2));
    }
}

TEST_CASE("every joined core of DIN 47100 is refused, naming exactly the form with slashes") {
    for (const auto core : cores) {
        if (core.size() == 2) continue;
        CAPTURE(core);
        const auto result = parse_wire_colour(core);
        const auto* refusal = std::get_if<ColourRefusal>(&result);
        REQUIRE(refusal);
        CHECK(refusal->reason == ColourRefusalReason::joined_without_slash);
        REQUIRE(refusal->choices.size() == 1);
        CHECK(code(refusal->choices[0]) == with_slashes(core));
        CHECK(refusal->message() == '"' + std::string(core) + "\" joins colours without a slash; write " +
                                        with_slashes(core) + ", base colour first");
    }
}

TEST_CASE("of the aliases seen beside the table, the clear ones are read and the ambiguous ones refused") {
    const auto reads_as = [](std::string_view text, BaseColour base) {
        const auto result = parse_wire_colour(text);
        const auto* colour = std::get_if<WireColour>(&result);
        return colour && *colour == WireColour{Hue{base}};
    };
    CHECK(reads_as("BR", BaseColour::brown));
    CHECK(reads_as("VI", BaseColour::violet));
    for (const auto* text : {"GR", "BL", "YW"}) {  // grey or green; black or blue; yellow, or yellow with white
        const auto result = parse_wire_colour(text);
        const auto* refusal = std::get_if<ColourRefusal>(&result);
        REQUIRE(refusal);
        CHECK(refusal->reason == ColourRefusalReason::ambiguous);
        CHECK(refusal->choices.size() == 2);
    }
}
