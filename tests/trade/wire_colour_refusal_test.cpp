// Which spellings of a conductor's colour are refused, why, where, and with which choices? The letters with two
// meanings are all seen in wiring diagrams (several makers' guides, read in secondary copies).
#include <catch2/catch.hpp>

#include "trade/wire_colour_entry.h"

using namespace tapbook;
using Refused = ColourRefusalReason;

namespace {

struct Bad {
    std::string_view text;
    Refused reason;
    std::string_view piece;    // as reported
    std::string_view choices;  // their codes, separated by blanks
};

const Bad bad[] = {
    {"", Refused::empty, "", ""},
    {"   ", Refused::empty, "", ""},
    {"\t", Refused::empty, "", ""},
    // two meanings
    {"B", Refused::ambiguous, "B", "BK BU"},
    {"BL", Refused::ambiguous, "BL", "BK BU"},
    {"bl", Refused::ambiguous, "bl", "BK BU"},
    {"GR", Refused::ambiguous, "GR", "GY GN"},
    {"SB", Refused::ambiguous, "SB", "LBU BK"},
    {"P", Refused::ambiguous, "P", "PK VT"},
    {"G", Refused::ambiguous, "G", "GN GY"},
    {"L", Refused::ambiguous, "L", "BU LBU"},
    {"W/B", Refused::ambiguous, "B", "BK BU"},
    {"B/W", Refused::ambiguous, "B", "BK BU"},
    {"P-W", Refused::ambiguous, "P", "PK VT"},
    {"WHT/GR", Refused::ambiguous, "GR", "GY GN"},
    {"L/R", Refused::ambiguous, "L", "BU LBU"},
    {"white with bl stripe", Refused::ambiguous, "bl", "BK BU"},
    {"lt gr", Refused::ambiguous, "gr", "LGY LGN"},
    {"lt bl", Refused::ambiguous, "bl", "LBU"},
    {"DB", Refused::ambiguous, "DB", "DBU DBN"},
    {"DG", Refused::ambiguous, "DG", "DGN DGY"},
    {"LB", Refused::ambiguous, "LB", "LBU BU/BK"},
    {"YW", Refused::ambiguous, "YW", "YE YE/WH"},
    {"OR", Refused::ambiguous, "OR", "OG OG/RD"},
    // two colours, no slash
    {"WR", Refused::joined_without_slash, "WR", "WH/RD"},
    {"RDBU", Refused::joined_without_slash, "RDBU", "RD/BU"},
    {"WHBK", Refused::joined_without_slash, "WHBK", "WH/BK"},
    {"WHTBLK", Refused::joined_without_slash, "WHTBLK", "WH/BK"},
    {"whitered", Refused::joined_without_slash, "whitered", "WH/RD"},
    {"WHLBU", Refused::joined_without_slash, "WHLBU", "WH/LBU"},
    {"whiteskyblue", Refused::joined_without_slash, "whiteskyblue", "WH/LBU"},
    {"WB", Refused::joined_without_slash, "WB", "WH/BK WH/BU"},
    {"GB", Refused::joined_without_slash, "GB", "GN/BK GN/BU GY/BK GY/BU"},
    {"BRW", Refused::joined_without_slash, "BRW", "BN/WH"},
    {"WHBNBK", Refused::joined_without_slash, "WHBNBK", "WH/BN/BK"},
    {"WH/GNYE", Refused::joined_without_slash, "GNYE", "GN/YE"},
    {"white black", Refused::joined_without_slash, "white black", "WH/BK"},
    {"lt blu wht", Refused::joined_without_slash, "lt blu wht", "LBU/WH"},
    {" WH BK ", Refused::joined_without_slash, "WH BK", "WH/BK"},
    {"white and black", Refused::joined_without_slash, "white and black", "WH/BK"},
    {"white & black stripe", Refused::joined_without_slash, "white & black", "WH/BK"},
    {"R W/Y", Refused::joined_without_slash, "R W/Y", "RD/WH/YE"},
    {"white/red stripe black", Refused::joined_without_slash, "white/red stripe black", "WH/RD/BK"},
    // something is missing
    {"/", Refused::missing, "", ""},
    {"-", Refused::missing, "", ""},
    {"/RD", Refused::missing, "", ""},
    {"WH/", Refused::missing, "", ""},
    {"wht//blk", Refused::missing, "", ""},
    {"WH/-BK", Refused::missing, "", ""},
    {"WH--BK", Refused::missing, "", ""},
    {"light", Refused::missing, "", ""},
    {"lt", Refused::missing, "", ""},
    {"light/blue", Refused::missing, "", ""},
    {"white stripe", Refused::missing, "", ""},
    {"stripe", Refused::missing, "", ""},
    {"with red stripe", Refused::missing, "", ""},
    {"w/ red stripe", Refused::missing, "", ""},
    {"w/ red", Refused::missing, "", ""},
    {"w/red stripe", Refused::missing, "", ""},
    {"white with stripe", Refused::missing, "", ""},
    {"white w/ stripe", Refused::missing, "", ""},
    {"red stripe white", Refused::missing, "", ""},
    {"red stripe on white", Refused::missing, "", ""},
    {"white,", Refused::missing, "", ""},
    {"white, black stripe,", Refused::missing, "", ""},
    {"a white", Refused::missing, "", ""},
    {"& white", Refused::missing, "", ""},
    // no colour
    {"whi", Refused::unknown, "whi", ""},
    {"balck", Refused::unknown, "balck", ""},
    {"#fff", Refused::unknown, "#", ""},
    {"white-ish", Refused::unknown, "ish", ""},
    {"WH*", Refused::unknown, "*", ""},
    {"BK+BN", Refused::unknown, "+", ""},
    {"WH_BK", Refused::unknown, "_", ""},
    {"WH|BK", Refused::unknown, "|", ""},
    {"WH\\BK", Refused::unknown, "\\", ""},
    {"white (red)", Refused::unknown, "(", ""},
    {"9", Refused::unknown, "9", ""},
    {"WH/9", Refused::unknown, "9", ""},
    {"wei\xC3\x9F", Refused::unknown, "\xC3\x9F", ""},
    {"WH\xE2\x80\xAE/BK", Refused::unknown, "\xE2\x80\xAE", ""},
    {"WH\n", Refused::unknown, "\n", ""},
    {"WH\x1B[31m", Refused::unknown, "\x1B", ""},
    {"\xFF", Refused::unknown, "\xFF", ""},
    {"S", Refused::unknown, "S", ""},
    {"sw", Refused::unknown, "sw", ""},
    {"ws", Refused::unknown, "ws", ""},
    {"rot", Refused::unknown, "rot", ""},
    {"blau", Refused::unknown, "blau", ""},
    {"LBK", Refused::unknown, "LBK", ""},
    {"DWH", Refused::unknown, "DWH", ""},
    {"light black", Refused::unknown, "light black", ""},
    {"dark white", Refused::unknown, "dark white", ""},
    {"sky red", Refused::unknown, "sky red", ""},
    {"sky gr", Refused::unknown, "sky gr", ""},
    {"light light blue", Refused::unknown, "light", ""},
    {"light LBU", Refused::unknown, "light LBU", ""},
    {"LBLU", Refused::unknown, "LBLU", ""},
    {"solid white", Refused::unknown, "solid", ""},
    {"none", Refused::unknown, "none", ""},
    {"black striped white", Refused::unknown, "striped", ""},
    {"clear", Refused::unknown, "clear", ""},
    {"RDBUWHBK", Refused::unknown, "RDBUWHBK", ""},
    {"lt. blu", Refused::unknown, ".", ""},
    // too much
    {"WH/BN/BK/RD", Refused::too_many_stripes, "RD", ""},
    {"white, brown and black and red stripes", Refused::too_many_stripes, "red", ""},
    {"WH/WH", Refused::same_stripe, "WH", ""},
    {"white/wht", Refused::same_stripe, "wht", ""},
    {"purple/violet", Refused::same_stripe, "violet", ""},
    {"WH/BK/BK", Refused::same_stripe, "BK", ""},
    {"WH/BK/WH", Refused::same_stripe, "WH", ""},
    {"lt blu/light blue", Refused::same_stripe, "light blue", ""},
    {"white w/ white stripe", Refused::same_stripe, "white", ""},
};

// The refusal of `text`; a failed test when it was taken.
ColourRefusal refusal_of(std::string_view text) {
    const auto result = parse_wire_colour(text);
    INFO(text);
    REQUIRE(std::holds_alternative<ColourRefusal>(result));
    return std::get<ColourRefusal>(result);
}

std::string codes_of(const std::vector<WireColour>& colours) {
    std::string text;
    for (const WireColour& colour : colours) text.append(text.empty() ? "" : " ").append(code(colour));
    return text;
}

}  // namespace

TEST_CASE(
    "whatever is no colour, has two meanings, or leaves base and stripe unclear is refused at its place with its "
    "choices") {
    for (const Bad& row : bad) {
        CAPTURE(row.text);
        const auto refusal = refusal_of(row.text);
        CHECK(refusal.reason == row.reason);
        CHECK(refusal.piece == row.piece);
        CHECK(row.text.substr(refusal.offset, row.piece.size()) == row.piece);
        CHECK(codes_of(refusal.choices) == row.choices);
    }
}

TEST_CASE("a refusal says what is wrong and what to write instead") {
    const std::pair<std::string_view, std::string_view> messages[] = {
        {"", "no colour given; write the base colour and, after a slash, its stripe: WH/BK"},
        {"GR", "\"GR\" can mean grey or green; write GY or GN"},
        {"sb", "\"sb\" can mean light blue or black; write LBU or BK"},
        {"YW", "\"YW\" can mean yellow or yellow with a white stripe; write YE or YE/WH"},
        {"lt bl", "\"bl\" is ambiguous; write LBU"},
        {"RDBU", "\"RDBU\" joins colours without a slash; write RD/BU, base colour first"},
        {"GB", "\"GB\" joins colours without a slash; write GN/BK, GN/BU, GY/BK or GY/BU, base colour first"},
        {"wht//blk", "a colour is missing at column 5; write the base colour and, after a slash, its stripe: WH/BK"},
        {"WH/BN/BK/RD", "\"RD\" would be a third stripe; a conductor has a base colour and at most two stripes"},
        {"white/wht", "\"wht\" repeats a colour of the same conductor; write each colour once"},
        {"blau", "\"blau\" is not a wire colour; did you mean \"blu\"?"},
        {"yelow/red", "\"yelow\" is not a wire colour; did you mean \"yellow\"?"},
        {"balck", "\"balck\" is not a wire colour; did you mean \"black\"?"},
        {"solid white", "\"solid\" is not a wire colour"},
        {"WH\xE2\x80\xAE", "\"<U+202E>\" is not a wire colour"},
        {"WH\x1B[31m", "\"<U+001B>\" is not a wire colour"},
        {"\xFF", "\"<0xFF>\" is not a wire colour"},
    };
    for (const auto& [text, message] : messages) CHECK(refusal_of(text).message() == message);
}
