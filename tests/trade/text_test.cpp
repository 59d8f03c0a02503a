// Which text is safe to store and to show, and when do two words count as equal? Tables; general categories are those
// of the Unicode Character Database.
#include "trade/text.h"

#include <rapidcheck.h>

#include <catch2/catch.hpp>
#include <string>

using namespace tapbook;

using Words = std::vector<std::string>;

namespace {

std::string utf8(char32_t code) {  // RFC 3629
    const auto low = [code](int shift) { return static_cast<char>(0x80 | ((code >> shift) & 0x3F)); };
    if (code < 0x80) return {static_cast<char>(code)};
    if (code < 0x800) return {static_cast<char>(0xC0 | (code >> 6)), low(0)};
    if (code < 0x10000) return {static_cast<char>(0xE0 | (code >> 12)), low(6), low(0)};
    return {static_cast<char>(0xF0 | (code >> 18)), low(12), low(6), low(0)};
}

// Any characters, mostly those of European writing.
rc::Gen<std::string> some_unicode() {
    const auto code =
        rc::gen::oneOf(rc::gen::inRange<char32_t>(0, 0x250), rc::gen::inRange<char32_t>(0x300, 0x600),
                       rc::gen::inRange<char32_t>(0, 0xD800), rc::gen::inRange<char32_t>(0xE000, 0x110000));
    return rc::gen::map(rc::gen::container<std::vector<char32_t>>(code), [](const std::vector<char32_t>& codes) {
        std::string text;
        for (const auto one : codes) text += utf8(one);
        return text;
    });
}

}  // namespace

TEST_CASE("UTF-8 is what RFC 3629 says it is") {
    for (const std::string good : {"", "plain", "é", "日本", "🔧", "\x7f", "\xf4\x8f\xbf\xbf"}) CHECK(is_utf8(good));
    CHECK(is_utf8(std::string(1, '\0')));
    for (const std::string bad :
         {"\x80", "\xbf", "\xc3", "\xc0\xaf", "\xc1\xbf", "\xe0\x80\xaf", "\xed\xa0\x80", "\xed\xbf\xbf",
          "\xf0\x80\x80\xaf", "\xf4\x90\x80\x80", "\xf8\x88\x80\x80\x80", "\xff", "\xfe", "a\xe9z", "\xe2\x82"})
        CHECK_FALSE(is_utf8(bad));
}

TEST_CASE("composed form joins a letter and its accent, and leaves the rest alone") {
    CHECK(nfc("e\xcc\x81") == "é");
    CHECK(nfc("\xe2\x84\xa6") == "Ω");  // ohm sign -> Greek capital omega (UAX 15: singleton)
    CHECK(nfc("a\xcc\x8a") == "å");
    CHECK(nfc("plain") == "plain");
    CHECK(nfc("½ ² ﬁ") == "½ ² ﬁ");  // compatibility characters stay
    CHECK(nfc("\xff") == "\xff");    // not UTF-8: unchanged
    CHECK(nfc(std::string("a\0b", 3)) == std::string("a\0b", 3));
}

TEST_CASE("composing twice changes nothing more") {
    REQUIRE(rc::check([] {
        const std::string text = *some_unicode();
        RC_ASSERT(is_utf8(text));
        RC_ASSERT(nfc(nfc(text)) == nfc(text));
    }));
}

TEST_CASE("hidden characters are found and named") {
    for (const std::string clean : {"", "radio plug", "é", "日本", "🔧", "a-b/c", "½"})
        CHECK_FALSE(hidden_character(clean));
    CHECK(hidden_character("a\nb") == "U+000A");
    CHECK(hidden_character("a\tb") == "U+0009");
    CHECK(hidden_character(std::string("a\0b", 3)) == "U+0000");
    CHECK(hidden_character("\x1b[31m") == "U+001B");
    CHECK(hidden_character("\x7f") == "U+007F");
    CHECK(hidden_character("\u0085") == "U+0085");   // next line
    CHECK(hidden_character("a\u00ad") == "U+00AD");  // soft hyphen
    CHECK(hidden_character("a\u200b"
                           "b") == "U+200B");  // zero width space
    CHECK(hidden_character("\u200d") == "U+200D");
    CHECK(hidden_character("\u202e"
                           "abc") == "U+202E");  // right-to-left override
    CHECK(hidden_character("\u2066") == "U+2066");
    CHECK(hidden_character("\u2028") == "U+2028");  // line separator
    CHECK(hidden_character("\ufeff") == "U+FEFF");
    CHECK(hidden_character("\ue000") == "U+E000");         // private use
    CHECK(hidden_character("x\u202e\u200b") == "U+202E");  // the first
}

TEST_CASE("what is shown on a screen holds no control, no direction change and no bad byte") {
    CHECK(shown("a\u202e"
                "b") == "a<U+202E>b");
    CHECK(shown("\x1b[31mred") == "<U+001B>[31mred");
    CHECK(shown("a\xff"
                "b\xc3") == "a<0xFF>b<0xC3>");
    CHECK(shown("one\ntwo\tthree") == "one<U+000A>two<U+0009>three");
    CHECK(shown("one\ntwo\tthree", true) == "one\ntwo<U+0009>three");
    CHECK(shown("Größe 日本") == "Größe 日本");
    REQUIRE(rc::check([](const std::string& text) {
        const std::string safe = shown(text);
        RC_ASSERT(is_utf8(safe));
        RC_ASSERT(!hidden_character(safe));
    }));
}

TEST_CASE("words are compared without case, accents and punctuation") {
    CHECK(folded("Vel Ostrel") == "vel ostrel");
    CHECK(folded("  Vel--OSTREL!! ") == "vel ostrel");
    CHECK(folded("Ångfäll é E\xcc\x81") == "angfall e e");
    CHECK(folded("STRASSE straße") == "strasse strasse");
    CHECK(folded("ΣΑΣ") == folded("σας"));  // final sigma
    CHECK(folded("ﬁne x²") == "fine x2");
    CHECK(folded("1.6") == "1 6");
    CHECK(folded("日本") == "日本");
    CHECK(folded("") == "");
    CHECK(folded("?!") == "");
    CHECK(folded_words("  Vel   Ostrel, 2012 ") == Words{"vel", "ostrel", "2012"});
    CHECK(folded_words("").empty());
    CHECK(folded_words("...").empty());
}

TEST_CASE("folding twice changes nothing more, and the words joined are the folded text") {
    REQUIRE(rc::check([] {
        const std::string text = *some_unicode();
        const std::string once = folded(text);
        RC_ASSERT(folded(once) == once);
        std::string joined;
        for (const auto& word : folded_words(text)) {
            RC_ASSERT(!word.empty());
            joined += (joined.empty() ? "" : " ") + word;
        }
        RC_ASSERT(joined == once);
    }));
}

TEST_CASE("width counts columns, not bytes") {
    CHECK(shown_width("") == 0);
    CHECK(shown_width("radio") == 5);
    CHECK(shown_width("Größe") == 5);
    CHECK(shown_width("e\xcc\x81") == 1);
    CHECK(shown_width("日本") == 4);  // East Asian Wide, UAX 11
    CHECK(shown_width("\xff") == 1);
}
