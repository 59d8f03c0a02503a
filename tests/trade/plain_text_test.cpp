// Most text is plain ASCII and takes a short way through text.cpp. Does it come out as on the long way, which a
// character outside ASCII beside it forces?
#include <rapidcheck.h>

#include <catch2/catch.hpp>

#include "trade/trade.h"

using namespace tapbook;

namespace {

const std::string accented = "\u00e9";  // é, one column wide, folded to e

// Any ASCII bytes, control characters among them.
std::string ascii_text() {
    std::string text;
    for (const int byte : *rc::gen::container<std::vector<int>>(rc::gen::inRange(0, 128)))
        text += static_cast<char>(byte);
    return text;
}

}  // namespace

TEST_CASE("plain text is shown, measured, normalised and searched for hidden characters as beside an accent") {
    REQUIRE(rc::check([] {
        const std::string text = ascii_text();
        RC_ASSERT(is_utf8(text) == is_utf8(text + accented));
        RC_ASSERT(nfc(text) + accented == nfc(text + accented));
        RC_ASSERT(shown(text) + accented == shown(text + accented));
        RC_ASSERT(shown(text, true) + accented == shown(text + accented, true));
        RC_ASSERT(shown_width(text) + 1 == shown_width(text + accented));
        RC_ASSERT(hidden_character(text) == hidden_character(text + accented));
    }));
}

TEST_CASE("plain text is folded as beside an accented word") {
    REQUIRE(rc::check([] {
        const std::string text = ascii_text();
        const std::string alone = folded(text);
        RC_ASSERT(folded(text + " " + accented) == alone + (alone.empty() ? "e" : " e"));
    }));
}

TEST_CASE("every ASCII character is hidden exactly when it is a control character, and folded to its small letter") {
    for (int byte = 0; byte < 128; ++byte) {
        const std::string one(1, static_cast<char>(byte));
        const bool control = byte < 32 || byte == 127;  // C0 and DEL, ISO/IEC 6429
        INFO(byte);
        CHECK(hidden_character(one).has_value() == control);
        CHECK((shown(one) == one) == !control);
        CHECK(shown_width(one) == (control ? 0 : 1));
        const bool letter = (byte >= 'a' && byte <= 'z') || (byte >= 'A' && byte <= 'Z');
        const bool digit = byte >= '0' && byte <= '9';
        CHECK(folded(one) == (letter ? std::string(1, static_cast<char>(byte | 0x20)) : digit ? one : std::string()));
    }
}

TEST_CASE("an id is written in small hexadecimal digits, two for each byte") {
    RecordId id{};
    id[0] = 0x0f;
    id[1] = 0xf0;
    id[15] = 0xa5;
    CHECK(to_hex(id) == "0ff000000000000000000000000000a5");
}
