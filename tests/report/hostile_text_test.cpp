// Can a name from somebody else's file move the cursor, turn the text round or hide a word? No control,
// direction-changing or invisible character of any name reaches a text raw.
#include <rapidcheck.h>
#include <catch2/catch.hpp>

#include "answers.h"

using namespace tapbook;
using namespace tapbook::answers;

namespace {

// Decoded by hand, apart from the program's own judgement; "" when nothing is wrong. Ranges: Unicode 15, categories Cc
// and Cf as far as the test's names use them.
std::string what_is_wrong(const std::string& text) {
    for (std::size_t at = 0; at < text.size();) {
        const auto lead = static_cast<unsigned char>(text[at]);
        const std::size_t length = lead < 0x80   ? 1
                                   : lead < 0xc2 ? 0
                                   : lead < 0xe0 ? 2
                                   : lead < 0xf0 ? 3
                                   : lead < 0xf5 ? 4
                                                 : 0;
        if (length == 0 || at + length > text.size()) return "a byte that starts no character";
        unsigned code = length == 1 ? lead : lead & (0xffu >> (length + 1));
        for (std::size_t i = 1; i < length; ++i) {
            const auto byte = static_cast<unsigned char>(text[at + i]);
            if ((byte & 0xc0) != 0x80) return "a broken character";
            code = code << 6 | (byte & 0x3f);
        }
        at += length;
        if (code == '\n') continue;
        if (code < 0x20 || (code >= 0x7f && code < 0xa0)) return "a control character";
        if (code >= 0xd800 && code < 0xe000) return "a surrogate";
        if ((code >= 0x200b && code <= 0x200f) || (code >= 0x2028 && code <= 0x202e) ||
            (code >= 0x2060 && code <= 0x2069) || code == 0xfeff || (code >= 0xe0000 && code <= 0xe007f))
            return "an invisible or direction-changing character";
    }
    return "";
}

}  // namespace

TEST_CASE("the judgement itself finds what it is meant to find") {
    CHECK(what_is_wrong("plain, é, 日本, ▕╱▏\n").empty());
    for (const std::string bad : {"\x1b[0m", "\t", "\r", "\x7f", "\u0085", "\u202e", "\u2066", "\u200b", "\ufeff",
                                  "\xff", "\xc3", "\xed\xa0\x80", "\xe2\x80"})
        CHECK_FALSE(what_is_wrong("x" + bad).empty());
}

TEST_CASE("no hostile name reaches a text raw, and a line feed in a name makes no line") {
    REQUIRE(rc::check("hostile names", [](unsigned seed) {
        ledgers::Dice dice(seed);
        JobFacts facts = dice.one_in(2) ? cars::plain_car() : cars::disputed_car();
        const Shop shop = shop_of(facts, [&] { return hostile_name(dice); });
        const int width = 40 + dice.below(61);
        for (const auto& [name, text] : texts(shop, {Colours::none, width})) {
            RC_LOG() << name << '\n';
            RC_ASSERT(what_is_wrong(text) == "");
        }
        RC_ASSERT(what_is_wrong(complaints_text(shop.complaints)) == "");
        RC_ASSERT(lines_of(complaints_text(shop.complaints)).size() <= 3u);
    }));
}

TEST_CASE("no hostile name adds an escape sequence to a text in colours") {
    REQUIRE(rc::check("hostile names in colours", [](unsigned seed) {
        ledgers::Dice dice(seed);
        const Shop shop = shop_of(cars::disputed_car(), [&] { return hostile_name(dice); });
        for (const auto& [name, text] : texts(shop, {Colours::full, 80})) {
            RC_LOG() << name << '\n';
            RC_ASSERT(what_is_wrong(without_escapes(text)) == "");
            const std::string red = "\x1b[31m";  // the names' own; the program never writes it
            RC_ASSERT(text.find(red) == std::string::npos);
        }
    }));
}
