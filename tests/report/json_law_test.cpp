// Is every JSON answer good JSON with nothing in it that a screen would obey, whatever the names are? Read back by
// another writer's parser.
#include <rapidcheck.h>
#include <catch2/catch.hpp>

#include <limits>
#include <nlohmann/json.hpp>

#include "answers.h"

using namespace tapbook;
using namespace tapbook::answers;

namespace {

// One line, a line feed at its end, and no other control byte.
bool is_one_clean_line(const std::string& text) {
    if (text.empty() || text.back() != '\n') return false;
    for (std::size_t i = 0; i + 1 < text.size(); ++i) {
        const auto byte = static_cast<unsigned char>(text[i]);
        if (byte < 0x20 || byte == 0x7f) return false;
    }
    return true;
}

std::string read_back(const std::string& name) {
    Json json;
    json.text(name);
    return nlohmann::json::parse(json.take()).get<std::string>();
}

}  // namespace

TEST_CASE("every JSON answer parses, says ok and names its schema") {
    for (const JobFacts& facts : {cars::plain_car(), cars::disputed_car()})
        for (const auto& [name, text] : jsons(shop_of(facts))) {
            INFO(name);
            CHECK(is_one_clean_line(text));
            const auto answer = nlohmann::json::parse(text);
            CHECK(answer.at("ok") == true);
            CHECK(answer.at("schema") == "tapbook." + name + "/1");
            CHECK(answer.at("data").is_object());
        }
}

TEST_CASE("JSON of hostile names parses and holds no control byte and no direction-changing character") {
    REQUIRE(rc::check("hostile JSON", [](unsigned seed) {
        ledgers::Dice dice(seed);
        const Shop shop = shop_of(cars::disputed_car(), [&] { return hostile_name(dice); });
        for (const auto& [name, text] : jsons(shop)) {
            RC_LOG() << name << '\n';
            RC_ASSERT(is_one_clean_line(text));
            RC_ASSERT(nlohmann::json::accept(text));
            for (const std::string raw : {"\u0085", "\u202e", "\u2066", "\u200b", "\ufeff"})
                RC_ASSERT(text.find(raw) == std::string::npos);
        }
        const std::string failure = json_failure(hostile_name(dice), hostile_name(dice), hostile_name(dice));
        RC_ASSERT(is_one_clean_line(failure) && nlohmann::json::accept(failure));
    }));
}

TEST_CASE("a name comes back from JSON as it went in") {
    for (const std::string name : {"", "plain", "é 日本", "quote \" and \\ and /", "line\nfeed\ttab", "\x1b[31m",
                                   "\x7f", "\u0085", "\u202e", "\U000e0041", "\U0001f600", "{}"})
        CHECK(read_back(name) == name);
    CHECK(read_back(std::string("a\0b", 3)) == std::string("a\0b", 3));
}

TEST_CASE("bytes that are no UTF-8 become the replacement character in JSON") {
    CHECK(read_back("a\xff"
                    "b") == "a\uFFFDb");
    CHECK(read_back("\xc3") == "\uFFFD");
    CHECK(read_back("\xed\xa0\x80") == "\uFFFD\uFFFD\uFFFD");
}

TEST_CASE("numbers in JSON are rounded decimals, and what is no number is null") {
    const auto written = [](double value, int digits = 4) {
        Json json;
        json.number(value, digits);
        return json.take();
    };
    CHECK(written(9.12168) == "9.1217");
    CHECK(written(12.90) == "12.9");
    CHECK(written(100) == "100");
    CHECK(written(-0.00001) == "0");
    CHECK(written(0.00081523, 7) == "0.0008152");
    CHECK(written(1e15) == "1000000000000000");
    CHECK(written(std::numeric_limits<double>::infinity()) == "null");
    CHECK(written(std::numeric_limits<double>::quiet_NaN()) == "null");
}
