// How long may a phone write, and how is it let in? Under a clock that the test turns.
#include "page/session.h"

#include <catch2/catch.hpp>
#include <set>

#include "page/pairing.h"

namespace tapbook {
namespace {

using namespace std::chrono_literals;

struct TurnedClock {
    PageTime now{std::chrono::sys_days{std::chrono::year{2026} / 5 / 4} + 8h};
    PageClock reads() {
        return [this] { return now; };
    }
};

}  // namespace

TEST_CASE("a session lives twelve hours after its last use, to the second") {
    TurnedClock clock;
    SessionList list(clock.reads(), repeatable_random("phones"));
    const std::string cookie = list.pair("bay phone");
    for (int day = 0; day < 3; ++day) {
        clock.now += session_idle - 1s;
        REQUIRE(list.use(cookie).has_value());
    }
    clock.now += session_idle;
    CHECK_FALSE(list.use(cookie).has_value());
    clock.now -= session_idle;  // a clock that is put back wakes nobody
    CHECK_FALSE(list.use(cookie).has_value());
    CHECK(list.phones().empty());
}

TEST_CASE("looking at the list of phones is no use of theirs") {
    TurnedClock clock;
    SessionList list(clock.reads(), repeatable_random("phones"));
    list.pair("bay phone");
    clock.now += session_idle - 1s;
    CHECK(list.phones().size() == 1);
    clock.now += 1s;
    CHECK(list.phones().empty());
}

TEST_CASE("a cookie has 128 bits, is never given twice, and no other text opens the session") {
    TurnedClock clock;
    SessionList list(clock.reads(), repeatable_random("phones"));
    std::set<std::string> cookies;
    for (int phone = 0; phone < 500; ++phone) cookies.insert(list.pair(""));
    REQUIRE(cookies.size() == 500);
    for (const auto& cookie : cookies) {
        REQUIRE(cookie.size() == 32);
        REQUIRE(cookie.find_first_not_of("0123456789abcdef") == std::string::npos);
    }
    const std::string cookie = list.pair("bay phone");
    CHECK(list.use(cookie).has_value());
    for (const std::string& other :
         {std::string(), cookie.substr(1), cookie + "0", " " + cookie, std::string(32, '0'), std::string("bay phone")})
        CHECK_FALSE(list.use(other).has_value());
}

TEST_CASE("an ended session is over at once, and the others go on") {
    TurnedClock clock;
    SessionList list(clock.reads(), repeatable_random("phones"));
    const std::string first = list.pair("first"), second = list.pair("");
    const auto phones = list.phones();
    REQUIRE(phones.size() == 2);
    CHECK(phones[0].name == "first");
    CHECK(phones[1].name == "phone 2");
    CHECK(list.end(phones[0].number));
    CHECK_FALSE(list.end(phones[0].number));
    CHECK_FALSE(list.use(first).has_value());
    CHECK(list.use(second).has_value());
}

TEST_CASE("at most 32 phones are paired: the one that was used longest ago makes room") {
    TurnedClock clock;
    SessionList list(clock.reads(), repeatable_random("phones"));
    std::vector<std::string> cookies;
    for (std::size_t phone = 0; phone < most_phones; ++phone) {
        cookies.push_back(list.pair(""));
        clock.now += 1s;
    }
    CHECK(list.use(cookies[0]).has_value());
    clock.now += 1s;
    list.pair("one more");
    CHECK(list.phones().size() == most_phones);
    CHECK(list.use(cookies[0]).has_value());
    CHECK_FALSE(list.use(cookies[1]).has_value());
}

TEST_CASE("what is kept for a phone is bounded in number and size, and the same name replaces") {
    TurnedClock clock;
    SessionList list(clock.reads(), repeatable_random("phones"));
    const std::string cookie = list.pair("bay phone");
    for (std::size_t number = 0; number < most_kept + 5; ++number) list.keep(cookie, std::to_string(number), "x");
    CHECK(list.use(cookie)->kept.size() == most_kept);
    list.keep(cookie, "3", "y");
    CHECK(list.use(cookie)->kept[3] == std::pair<std::string, std::string>{"3", "y"});
    list.keep(cookie, "3", std::string(longest_kept, 'z'));
    CHECK(list.use(cookie)->kept[3].second == "y");
    list.keep("nobody", "3", "z");
    CHECK(list.use(cookie)->kept[3].second == "y");
}

TEST_CASE("a phone's name is cut at 40 bytes, between characters") {
    TurnedClock clock;
    SessionList list(clock.reads(), repeatable_random("phones"));
    list.pair(std::string(39, 'a') + "\u00e9");
    CHECK(list.phones().front().name == std::string(39, 'a'));
}

TEST_CASE("a form's token fits its own cookie alone, and no other server's") {
    const FormTokens tokens(repeatable_random("one")), other(repeatable_random("two"));
    const std::string token = tokens.of("cookie");
    CHECK(token.size() == 32);
    CHECK(tokens.fits(token, "cookie"));
    CHECK_FALSE(tokens.fits(token, "cookie2"));
    CHECK_FALSE(tokens.fits("", "cookie"));
    CHECK_FALSE(tokens.fits(token.substr(1), "cookie"));
    CHECK_FALSE(other.fits(token, "cookie"));
}

TEST_CASE("of 10,000 guessed codes five are compared, then even the right one is not") {
    TurnedClock clock;
    PairingCodes codes(clock.reads(), repeatable_random("codes"));
    const std::string pin = codes.shown().pin;
    REQUIRE(pin.size() == 6);
    int wrong = 0, spent = 0;
    for (int guess = 0; guess < 10'000; ++guess) {
        std::string digits = std::to_string(1'000'000 + guess * 97 % 1'000'000).substr(1);
        if (digits == pin) digits = std::to_string(1'999'999 - guess).substr(1);
        const auto result = codes.try_pin(digits);
        wrong += result == PairingTry::wrong;
        spent += result == PairingTry::spent;
    }
    CHECK(wrong == most_wrong_tries);
    CHECK(spent == 10'000 - most_wrong_tries);
    CHECK(codes.compared() == most_wrong_tries);
    CHECK(codes.try_pin(pin) == PairingTry::spent);
    CHECK(codes.shown().pin.empty());
    CHECK_FALSE(codes.shown().token.empty());  // the symbol still pairs
}

TEST_CASE("wrong tries count in all: right ones between them give none back") {
    TurnedClock clock;
    PairingCodes codes(clock.reads(), repeatable_random("codes"));
    const std::string pin = codes.shown().pin;
    const std::string wrong = pin == "000000" ? "000001" : "000000";
    for (int tried = 0; tried < most_wrong_tries; ++tried) {
        CHECK(codes.try_pin(pin) == PairingTry::right);
        CHECK(codes.try_pin(wrong) == PairingTry::wrong);
    }
    CHECK(codes.try_pin(pin) == PairingTry::spent);
}

TEST_CASE("what is not six digits is no try, and blanks between digits do not matter") {
    TurnedClock clock;
    PairingCodes codes(clock.reads(), repeatable_random("codes"));
    const std::string pin = codes.shown().pin;
    for (const auto* typed : {"", "12345", "1234567", "12345x", "-12345", "１２３４５６", "+12345"})
        CHECK(codes.try_pin(typed) == PairingTry::not_six_digits);
    CHECK(codes.compared() == 0);
    CHECK(codes.try_pin(" " + pin.substr(0, 3) + " " + pin.substr(3) + " ") == PairingTry::right);
}

TEST_CASE("the symbol's token pairs once, within ten minutes, and looking at it uses nothing up") {
    TurnedClock clock;
    PairingCodes codes(clock.reads(), repeatable_random("codes"));
    const std::string token = codes.shown().token;
    CHECK(token.size() == 26);
    CHECK(token.find_first_not_of("ABCDEFGHIJKLMNOPQRSTUVWXYZ234567") == std::string::npos);
    CHECK(codes.try_token("") == PairingTry::wrong);
    CHECK(codes.try_token(token.substr(1)) == PairingTry::wrong);
    clock.now += token_life - 1s;
    CHECK(codes.is_open(token));
    CHECK(codes.is_open(token));
    CHECK(codes.try_token(token) == PairingTry::right);
    CHECK_FALSE(codes.is_open(token));
    CHECK(codes.try_token(token) == PairingTry::spent);
    CHECK(codes.shown().token.empty());

    codes.renew();
    const std::string late = codes.shown().token;
    CHECK(late != token);
    clock.now += token_life;
    CHECK(codes.try_token(late) == PairingTry::spent);
}

TEST_CASE("a new code kills the old one and gives all tries back") {
    TurnedClock clock;
    PairingCodes codes(clock.reads(), repeatable_random("codes"));
    const auto old = codes.shown();
    codes.try_pin(old.pin == "000000" ? "000001" : "000000");
    codes.renew();
    CHECK(codes.compared() == 0);
    CHECK(codes.shown().pin != old.pin);
    CHECK(codes.try_token(old.token) == PairingTry::wrong);
    CHECK(codes.try_pin(old.pin) == PairingTry::wrong);
}

TEST_CASE("codes are drawn evenly: no number is out of reach and none is twice as likely") {
    // A source that counts up through all 32 bits in steps: every million is met alike, the uneven rest is drawn again.
    std::uint32_t next = UINT32_MAX - 10;
    const RandomSource counting = [&next](unsigned char* bytes, std::size_t count) {
        for (std::size_t at = 0; at < count; ++at)
            bytes[at] = count == 4 ? static_cast<unsigned char>(next >> (24 - 8 * at)) : static_cast<unsigned char>(0);
        next += count == 4 ? 1 : 0;
    };
    TurnedClock clock;
    PairingCodes codes(clock.reads(), counting);  // the eleven numbers up to the end are passed over
    CHECK(codes.shown().pin == "000000");
    codes.renew();
    CHECK(codes.shown().pin == "000001");
}

}  // namespace tapbook
