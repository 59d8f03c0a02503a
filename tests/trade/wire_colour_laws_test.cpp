// What must hold for every text a person can type as a colour: tried on all colours, on all
// short texts, and on random ones.
#include <rapidcheck.h>

#include <catch2/catch.hpp>
#include <set>

#include "trade/every_wire_colour.h"

using namespace tapbook;

namespace {

bool reads_as(std::string_view text, const WireColour& colour) {
    const auto result = parse_wire_colour(text);
    const auto* found = std::get_if<WireColour>(&result);
    return found && *found == colour;
}

std::string in_capitals(std::string text) {
    for (char& c : text)
        if (c >= 'a' && c <= 'z') c = static_cast<char>(c - 'a' + 'A');
    return text;
}

// Every text of one to three small letters: 26 + 676 + 17,576.
std::vector<std::string> every_short_text() {
    std::vector<std::string> all;
    for (char a = 'a'; a <= 'z'; ++a) all.emplace_back(1, a);
    for (std::size_t i = 0; all[i].size() < 3; ++i)
        for (char c = 'a'; c <= 'z'; ++c) all.push_back(all[i] + c);
    return all;
}

// Texts like those people type: pieces of spellings, separators and noise in any order.
rc::Gen<std::string> typed_text() {
    const auto piece = rc::gen::element<std::string>(
        "white", "wht", "wh", "w", "lt", "light ", "sky", "blu", "b", "r", "rdbu", "/", "-", " ", ", ", " with ",
        " w/ ", " and ", "&", " stripe", " a ", "gnye", "lbu", "+", "\n", "\xC3\xA9", "\xFF", "X", "BR", "DK");
    return rc::gen::map(rc::gen::container<std::vector<std::string>>(piece),
                        [](const std::vector<std::string>& pieces) {
                            std::string text;
                            for (const auto& p : pieces) text += p;
                            return text;
                        });
}

}  // namespace

TEST_CASE("every colour is read back from its code and from its words, in capitals too") {
    auto colours = every_solid_colour();
    for (const WireColour& colour : every_one_striped_colour()) colours.push_back(colour);
    const auto two_striped = every_two_striped_colour();
    for (std::size_t i = 0; i < two_striped.size(); i += 11)
        colours.push_back(two_striped[i]);  // a sample: each takes its time
    std::size_t lost = 0;
    for (const WireColour& colour : colours)
        for (const auto& text : {code(colour), words(colour)})
            if (!reads_as(text, colour) || !reads_as(in_capitals(text), colour)) ++lost;
    CHECK(lost == 0);
}

TEST_CASE("the texts of one or two letters that are taken are exactly these") {
    // IEC 60757 table 1, our TN, and the letters of experience with one meaning: W R Y O V, BR, LG, VI, VO.
    const std::set<std::string> expected = {"w",  "r",  "y",  "o",  "v",  "br", "lg", "vi", "vo", "bk", "bn", "rd",
                                            "og", "ye", "gn", "bu", "vt", "gy", "wh", "pk", "gd", "tq", "sr", "tn"};
    std::set<std::string> taken;
    for (const auto& text : every_short_text())
        if (text.size() < 3 && std::holds_alternative<WireColour>(parse_wire_colour(text))) taken.insert(text);
    CHECK(taken == expected);
}

TEST_CASE("a refusal that offers choices offers only texts that are taken as exactly those") {
    std::size_t offered = 0, wrong = 0;
    for (const auto& text : every_short_text()) {
        const auto result = parse_wire_colour(text);
        const auto* refusal = std::get_if<ColourRefusal>(&result);
        if (!refusal) continue;
        for (const WireColour& choice : refusal->choices) {
            ++offered;
            if (!reads_as(code(choice), choice)) ++wrong;
        }
    }
    CHECK(offered > 100);
    CHECK(wrong == 0);
}

TEST_CASE("any text is either taken or refused at a place inside it, with one line that is safe to print") {
    REQUIRE(rc::check([] {
        const auto text = *rc::gen::oneOf(typed_text(), rc::gen::arbitrary<std::string>());
        const auto result = parse_wire_colour(text);
        if (const auto* colour = std::get_if<WireColour>(&result)) {
            RC_ASSERT(reads_as(code(*colour), *colour));
            RC_ASSERT(reads_as(in_capitals(text), *colour));
            return;
        }
        const auto& refusal = std::get<ColourRefusal>(result);
        RC_ASSERT(refusal.offset <= text.size());
        RC_ASSERT(text.substr(refusal.offset, refusal.piece.size()) == refusal.piece);
        const auto message = refusal.message();
        RC_ASSERT(!message.empty());
        RC_ASSERT(!hidden_character(message));
        RC_ASSERT(is_utf8(message));
    }));
}

TEST_CASE("an English colour with one letter changed is refused with the right suggestion") {
    for (const auto& named : words_of<BaseColour>()) {
        if (named.word.size() < 5) continue;  // shorter words may become other words, or joined letters
        for (std::size_t at = 0; at < named.word.size(); ++at) {
            std::string typed(named.word);
            typed[at] = 'x';
            CAPTURE(typed);
            const auto result = parse_wire_colour(typed);
            REQUIRE(std::holds_alternative<ColourRefusal>(result));
            CHECK(std::get<ColourRefusal>(result).nearest == named.word);
        }
    }
}
