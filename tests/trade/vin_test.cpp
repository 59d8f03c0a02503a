// VINs: reading, check digit, model year. Rules from 49 CFR 565.15 (Tables III to VII); test VINs from the places named
// beside them, their sums worked out apart from this program.
#include "trade/vin.h"

#include <catch2/catch.hpp>
#include <map>
#include <random>

using namespace tapbook;
using Refused = VinRefusalReason;

namespace {

constexpr std::string_view alphabet = "0123456789ABCDEFGHJKLMNPRSTUVWXYZ";

Vin vin(std::string_view text) {
    const auto read = parse_vin(text);
    INFO(text);
    REQUIRE(std::holds_alternative<Vin>(read));
    return std::get<Vin>(read);
}

VinRefusal refusal(std::string_view text) {
    const auto read = parse_vin(text);
    INFO(text);
    REQUIRE(std::holds_alternative<VinRefusal>(read));
    return std::get<VinRefusal>(read);
}

std::string with(std::string text, int position, char c) {
    text[static_cast<std::size_t>(position - 1)] = c;
    return text;
}

// Table III as printed: the letters in rows of nine, value 1 first.
std::map<char, int> values_of_characters() {
    std::map<char, int> values;
    for (const std::string_view row : {"ABCDEFGH", "JKLMN.P.R", ".STUVWXYZ"})
        for (std::size_t i = 0; i < row.size(); ++i)
            if (row[i] != '.') values[row[i]] = static_cast<int>(i) + 1;
    for (int digit = 0; digit <= 9; ++digit) values[static_cast<char>('0' + digit)] = digit;
    return values;
}

// Any VIN of 17 allowed characters that is read: the first from `firsts`, position 10 a year code.
std::string random_text(std::mt19937& random, std::string_view firsts) {
    std::string text;
    for (int i = 0; i < vin_length; ++i) text.push_back(alphabet[random() % alphabet.size()]);
    return with(with(text, 1, firsts[random() % firsts.size()]), 10, "ABCDEFGHJKLMNPRSTVWXY123456789"[random() % 30]);
}

}  // namespace

TEST_CASE("published VINs have the published weighted sum, check digit, verdict and year") {
    struct Published {
        std::string_view text;
        int sum;
        char digit;
        CheckVerdict verdict;
        std::optional<int> year;
    };
    const auto row = GENERATE(values<Published>({
        // Encyclopaedia, worked example: 8+28+48+35+16+12+18+10+0+18+56+0+24+10+28+24+16.
        {"1M8GDM9AXKP042788", 351, 'X', CheckVerdict::matches, 1989},
        {"5GZCZ43D13S812715", 408, '1', CheckVerdict::matches, 2003},  // the same encyclopaedia
        {"11111111111111111", 89, '1', CheckVerdict::matches, 2001},   // the same: every character counts its weight
        {"1G4AH59H45G118341", 411, '4', CheckVerdict::matches, 2005},  // sample in 49 CFR 565, Table V
        {"1HGCM82633A004352", 311, '3', CheckVerdict::matches, 2003},  // in several public test suites
        // Test data of a general barcode library, which prints: expecting '1'.
        {"5GZCZ43D23S812715", 408, '1', CheckVerdict::mismatch, 2003},
        // European: the encyclopaedia says that it does not pass.
        {"WP0ZZZ99ZTS392124", 459, '8', CheckVerdict::not_used, std::nullopt},
    }));
    const Vin read = vin(row.text);
    INFO(row.text);
    CHECK(weighted_sum(read) == row.sum);
    CHECK(check_digit(read) == row.digit);
    CHECK(check_verdict(read) == row.verdict);
    CHECK(model_year(read) == row.year);
}

TEST_CASE("all zeros pass the arithmetic and are refused by their year code") {
    const auto refused = refusal("00000000000000000");
    CHECK(refused.reason == Refused::no_year_code);
    CHECK(refused.piece == "0");
    CHECK(refused.position == 10);
}

TEST_CASE("a North American VIN with 0, U or Z for the year is refused, a European one is not") {
    CHECK(refusal("5GZCZ43D1US812715").reason == Refused::no_year_code);  // in a public test suite
    for (const char code : {'0', 'U', 'Z'}) {
        CHECK(refusal(with("5GZCZ43D13S812715", 10, code)).position == 10);
        CHECK(vin(with("WP0ZZZ99ZTS392124", 10, code)).at(10) == code);
    }
    CHECK(refusal("5GZCZ43D1US812715").message() ==
          R"("U" at position 10 is no model-year code; it is never 0, U or Z)");
}

TEST_CASE("each character counts with its value in Table III") {
    const auto expected = values_of_characters();
    REQUIRE(expected.size() == alphabet.size());
    for (const auto& [character, value] : expected) {
        // Position 17 weighs 2; the other sixteen 1s weigh 87.
        CHECK(weighted_sum(vin(with("11111111111111111", 17, character))) == 87 + 2 * value);
    }
}

TEST_CASE("the weights are those of Table IV, 89 together, and position 9 weighs nothing") {
    const int weights[] = {8, 7, 6, 5, 4, 3, 2, 10, 0, 9, 8, 7, 6, 5, 4, 3, 2};
    int sum = 0;
    for (int position = 1; position <= vin_length; ++position) {
        const int gained = weighted_sum(vin(with("11111111111111111", position, '2'))) - 89;
        CHECK(gained == weights[position - 1]);
        sum += gained;
    }
    CHECK(sum == 89);
}

TEST_CASE("one wrong character outside position 9 changes the check digit unless both have the same value") {
    // Of the same value, so never noticed: A J 1, B K S 2, C L T 3, D M U 4, E N V 5, F W 6, G P X 7, H Y 8, R Z 9.
    const auto value = values_of_characters();
    int unnoticed = 0;
    for (int position = 1; position <= vin_length; ++position)
        for (const char one : alphabet)
            for (const char other : alphabet) {
                if (position == 9 || one == other) continue;
                const Vin before = vin(with("S1111111131111111", position, one));
                const Vin after = vin(with("S1111111131111111", position, other));
                const bool same = check_digit(before) == check_digit(after);
                if (same != (value.at(one) == value.at(other))) FAIL("position " << position << one << other);
                if (same) ++unnoticed;
            }
    // Ordered pairs: 12 in each of five groups of four, 6 in each of four groups of three, at 16 positions.
    CHECK(unnoticed == 16 * (5 * 12 + 4 * 6));
}

TEST_CASE("exactly one of the eleven check characters fits, in 1,000 random VINs") {
    std::mt19937 random(565);
    for (int i = 0; i < 1000; ++i) {
        const std::string text = random_text(random, "12345");
        int fitting = 0;
        for (const char digit : std::string_view("0123456789X"))
            if (check_verdict(vin(with(text, 9, digit))) == CheckVerdict::matches) ++fitting;
        CHECK(fitting == 1);
        CHECK(check_verdict(vin(with(text, 9, check_digit(vin(text))))) == CheckVerdict::matches);
    }
}

TEST_CASE("a check digit that does not fit is a mismatch where the region uses one, else nothing is known") {
    const std::string fitting = "11111111111111111";
    for (const char first : alphabet) {
        std::string text = with(fitting, 1, first);
        const char digit = check_digit(vin(text));
        text = with(text, 9, digit == '5' ? '6' : '5');
        INFO(text);
        // 49 CFR 565.15 for 1 to 5. From memory: 71 to 79 and 7F to 7Z are the United States; L is China, GB 16735.
        const bool used = (first >= '1' && first <= '5') || first == '7' || first == 'L';
        CHECK(check_verdict(vin(text)) == (used ? CheckVerdict::mismatch : CheckVerdict::not_used));
        CHECK(check_verdict(vin(with(text, 9, digit))) == CheckVerdict::matches);
    }
}

TEST_CASE("7A to 7E are Oceania and the rest of 7 is the United States (from memory)") {
    for (const char second : alphabet) {
        const std::string text = with("71111111Z11111111", 2, second);  // Z is never a check digit
        const bool oceania = second >= 'A' && second <= 'E';
        CHECK(check_verdict(vin(text)) == (oceania ? CheckVerdict::not_used : CheckVerdict::mismatch));
        CHECK(model_year(vin(text)).has_value() != oceania);
    }
}

TEST_CASE("year codes run from A 1980 to 9 2009 with a digit at position 7 and 30 years on with a letter") {
    // Table VII of 49 CFR 565.15 and the note to it.
    const std::map<char, int> years = {{'A', 1980}, {'B', 1981}, {'C', 1982}, {'D', 1983}, {'E', 1984}, {'F', 1985},
                                       {'G', 1986}, {'H', 1987}, {'J', 1988}, {'K', 1989}, {'L', 1990}, {'M', 1991},
                                       {'N', 1992}, {'P', 1993}, {'R', 1994}, {'S', 1995}, {'T', 1996}, {'V', 1997},
                                       {'W', 1998}, {'X', 1999}, {'Y', 2000}, {'1', 2001}, {'2', 2002}, {'3', 2003},
                                       {'4', 2004}, {'5', 2005}, {'6', 2006}, {'7', 2007}, {'8', 2008}, {'9', 2009}};
    REQUIRE(years.size() == 30);
    for (const auto& [code, year] : years) {
        const std::string text = with("11111111111111111", 10, code);
        for (const char seventh : alphabet) {
            const bool letter = seventh >= 'A';
            CHECK(model_year(vin(with(text, 7, seventh))) == (letter ? year + 30 : year));
        }
    }
}

TEST_CASE("outside North America no model year is claimed") {
    for (const char first : alphabet)
        if (first == '0' || first == '6' || first >= '8')
            CHECK_FALSE(model_year(vin(with("11111111111111111", 1, first))));
}

TEST_CASE("small letters, blanks and hyphens do not change a VIN") {
    const Vin plain = vin("1M8GDM9AXKP042788");
    CHECK(vin("1m8gdm9axkp042788") == plain);
    CHECK(vin("  1M8-GDM9AX KP-04 2788 ") == plain);
    CHECK(vin("1m8gdm9axkp042788").text() == "1M8GDM9AXKP042788");
}

TEST_CASE("texts that are no VIN are refused with the first reason and its place") {
    struct Bad {
        std::string_view text;
        Refused reason;
        int position;
        std::string_view message;
    };
    const auto row = GENERATE(values<Bad>({
        {"", Refused::empty, 0, "no VIN given; write its 17 characters"},
        {" - - ", Refused::empty, 0, "no VIN given; write its 17 characters"},
        {"1", Refused::wrong_length, 0, "a VIN has 17 characters, this has 1"},
        {"1M8GDM9AXKP04278", Refused::wrong_length, 0, "a VIN has 17 characters, this has 16"},
        {"1M8GDM9AXKP0427880", Refused::wrong_length, 0, "a VIN has 17 characters, this has 18"},
        // In a public test suite for its illegal letters.
        {"IGZOZ43Q13S812715", Refused::confusable_letter, 1,
         R"("I" at position 1 is in no VIN; it may be the digit 1)"},
        {"1M8 GoM9AXKP042788", Refused::confusable_letter, 5,
         R"("o" at position 5 is in no VIN; it may be the digit 0)"},
        {"1M8GDM9QXKP042788", Refused::confusable_letter, 8,
         R"("Q" at position 8 is in no VIN; it may be the digit 0)"},
        {"1M8GDM9AXKP04278#", Refused::foreign_character, 17,
         R"("#" at position 17 is in no VIN; write digits and the letters A to Z without I, O and Q)"},
        {"1M8GDM9AXKP04278?", Refused::foreign_character, 17,
         R"("?" at position 17 is in no VIN; write digits and the letters A to Z without I, O and Q)"},
        // A Cyrillic letter that looks like M counts as one character.
        {"1М8GDM9AXKP042788", Refused::foreign_character, 2,
         R"("М" at position 2 is in no VIN; write digits and the letters A to Z without I, O and Q)"},
        {"1M8GDM9AXKP\n042788", Refused::foreign_character, 12,
         R"("<U+000A>" at position 12 is in no VIN; write digits and the letters A to Z without I, O and Q)"},
        {"1M8GDM9AXKP0427\xFF", Refused::foreign_character, 16,
         R"("<0xFF>" at position 16 is in no VIN; write digits and the letters A to Z without I, O and Q)"},
    }));
    const auto refused = refusal(row.text);
    CHECK(refused.reason == row.reason);
    CHECK(refused.position == row.position);
    CHECK(refused.message() == row.message);
}

TEST_CASE("a pattern finds the VINs that agree at every place but ?") {
    const Vin car = vin("1M8GDM9AXKP042788");
    CHECK(vin_matches("1M8GDM9AXKP042788", car));
    CHECK(vin_matches("1M8GDM9A?K???????", car));
    CHECK(vin_matches("1m8-gdm9a?-k???????", car));
    CHECK(vin_matches("????????????????8", car));
    CHECK_FALSE(vin_matches("????????????????7", car));
    CHECK_FALSE(vin_matches("1M8GDM9A?L???????", car));
}

TEST_CASE("a pattern that is too short, too long, misspelt or empty of meaning matches no VIN and is refused") {
    const Vin car = vin("11111111111111111");
    for (const std::string_view bad : {"", "1", "1111111111111111", "1111111111111111??", "I????????????????", "1*",
                                       "1111111111111111%", "?????????????????"}) {
        INFO(bad);
        CHECK(std::holds_alternative<VinRefusal>(parse_vin_pattern(bad)));
        CHECK_FALSE(vin_matches(bad, car));
    }
    const auto all = parse_vin_pattern("?????????????????");
    CHECK(std::get<VinRefusal>(all).reason == Refused::names_nothing);
    CHECK(std::get<VinRefusal>(all).message() ==
          "a pattern of nothing but ? fits every car; write the characters you know");
}

TEST_CASE("any VIN matches itself with any of its characters hidden, and not with one changed") {
    std::mt19937 random(3779);
    for (int i = 0; i < 1000; ++i) {
        const std::string text = random_text(random, alphabet);
        std::string pattern = text;
        for (char& c : pattern)
            if (random() % 2 == 0) c = '?';
        const auto kept = pattern.find_first_not_of('?');
        if (kept == pattern.npos) continue;
        CHECK(vin_matches(pattern, vin(text)));
        pattern[kept] = pattern[kept] == 'A' ? 'B' : 'A';
        CHECK_FALSE(vin_matches(pattern, vin(text)));
    }
}
