// Which spellings of a conductor's colour are taken, and as what? English words and IEC 60757 letters; US
// abbreviations and letter notations are trade practice without a source. The (longer) list of refused spellings is
// in wire_colour_refusal_test.cpp.
#include "trade/wire_colour_entry.h"

#include <catch2/catch.hpp>

using namespace tapbook;

namespace {

struct Good {
    std::string_view text;
    std::string_view code;
};

const Good good[] = {
    // English words
    {"white", "WH"},
    {"Black", "BK"},
    {"BROWN", "BN"},
    {"violet", "VT"},
    {"purple", "VT"},
    {"grey", "GY"},
    {"gray", "GY"},
    {"slate", "GY"},
    {"tan", "TN"},
    {"beige", "TN"},
    {"gold", "GD"},
    {"turquoise", "TQ"},
    {"silver", "SR"},
    {"pink", "PK"},
    // light and dark
    {"light blue", "LBU"},
    {"Light-Blue", "LBU"},
    {"lightblue", "LBU"},
    {"sky blue", "LBU"},
    {"sky-blue", "LBU"},
    {"skyblue", "LBU"},
    {"SKY BLU", "LBU"},
    {"dark green", "DGN"},
    {"darkgreen", "DGN"},
    {"LT BLU", "LBU"},
    {"lt blu", "LBU"},
    {"DK GRN", "DGN"},
    {"LTBLU", "LBU"},
    {"ltgrn", "LGN"},
    {"lt-grn", "LGN"},
    {"dk bu", "DBU"},
    {"LBU", "LBU"},
    {"lgn", "LGN"},
    {"DGN", "DGN"},
    {"dtn", "DTN"},
    {"LG", "LGN"},
    {"light purple", "LVT"},
    // US abbreviations
    {"BLK", "BK"},
    {"BRN", "BN"},
    {"RED", "RD"},
    {"ORN", "OG"},
    {"ORG", "OG"},
    {"YEL", "YE"},
    {"GRN", "GN"},
    {"BLU", "BU"},
    {"VIO", "VT"},
    {"vio", "VT"},
    {"PPL", "VT"},
    {"PUR", "VT"},
    {"GRY", "GY"},
    {"GRA", "GY"},
    {"WHT", "WH"},
    {"PNK", "PK"},
    {"TAN", "TN"},
    // letters with one meaning
    {"W", "WH"},
    {"r", "RD"},
    {"Y", "YE"},
    {"O", "OG"},
    {"V", "VT"},
    {"VI", "VT"},
    {"VO", "VT"},
    {"BR", "BN"},
    {"TN", "TN"},
    // a stripe
    {"WHT/RED", "WH/RD"},
    {"WHT-RED", "WH/RD"},
    {"white w/ red stripe", "WH/RD"},
    {"white w/red stripe", "WH/RD"},
    {"white w/ red", "WH/RD"},
    {"WHT W/ RED TRACER", "WH/RD"},
    {"W-R", "WH/RD"},
    {"W/R", "WH/RD"},
    {"w/r", "WH/RD"},
    {"W / R", "WH/RD"},
    {"BR/W", "BN/WH"},
    {"white-red", "WH/RD"},
    {"white/red tracer", "WH/RD"},
    {"white with red stripe", "WH/RD"},
    {"white with a red stripe", "WH/RD"},
    {"white with red", "WH/RD"},
    {"white, red stripe", "WH/RD"},
    {"white red stripe", "WH/RD"},
    {"white/red ring", "WH/RD"},
    {"WH,RD", "WH/RD"},
    {"light blue/red", "LBU/RD"},
    {"lt blu/wht", "LBU/WH"},
    {"dark-green-light-blue", "DGN/LBU"},
    {"LG/R", "LGN/RD"},
    {"green/yellow", "GN/YE"},
    {"GNYE", "GN/YE"},
    {"gn/lgn", "GN/LGN"},
    {"  WH/BK\t", "WH/BK"},
    {"WHT/BK", "WH/BK"},
    // two stripes
    {"WH/BN/BK", "WH/BN/BK"},
    {"white, brown and black stripes", "WH/BN/BK"},
    {"white w/ brown & black stripes", "WH/BN/BK"},
    {"white with brown and black", "WH/BN/BK"},
    {"wht-brn-blk", "WH/BN/BK"},
    {"white/red stripe/black stripe", "WH/RD/BK"},
    {"white, brown, and black stripes", "WH/BN/BK"},
};

}  // namespace

TEST_CASE("the trade's spellings are read, the base colour first") {
    for (const Good& row : good) {
        CAPTURE(row.text);
        const auto result = parse_wire_colour(row.text);
        REQUIRE(std::holds_alternative<WireColour>(result));
        CHECK(code(std::get<WireColour>(result)) == row.code);
    }
}
