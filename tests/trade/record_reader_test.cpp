// Which lines are records and which are refused? Two tables, the bad one longer; the limits at one below, at and one
// above. JSON's grammar is RFC 8259, the range of numbers and the ban on repeated keys RFC 7493; the rest is design.
#include <catch2/catch.hpp>
#include <optional>
#include <string>

#include "trade/record.h"

using namespace tapbook;

namespace {

// Why the line is refused; absent when it is taken.
std::optional<std::string> refusal(const std::string& line) {
    try {
        read_record_line(line);
        return std::nullopt;
    } catch (const RecordRefused& refused) {
        return refused.what();
    }
}

struct Bad {
    std::string line;
    std::string reason;  // a part of the message
};

constexpr const char* other_form = "not written in the one accepted form";

void check_refused(const Bad& bad) {
    INFO(bad.line.substr(0, 200));
    const auto reason = refusal(bad.line);
    REQUIRE(reason.has_value());
    CHECK_THAT(*reason, Catch::Contains(bad.reason));
}

std::string text_of(std::size_t bytes) {
    return "{\"a\":\"" + std::string(bytes, 'x') + "\"}";
}

std::string keys_of(std::size_t count) {
    std::string line = "{";
    for (std::size_t i = 0; i < count; ++i)
        line += (i == 0 ? "\"" : ",\"") + std::string(i < 10 ? "k0" : "k") + std::to_string(i) + "\":1";
    return line + "}";
}

// A record of exactly `bytes` bytes: texts of 3,000 bytes and one that fills up.
std::string line_of(std::size_t bytes) {
    std::string line = "{\"a\":[";
    while (bytes - line.size() > 3100) line += "\"" + std::string(3000, 'x') + "\",";
    return line + "\"" + std::string(bytes - line.size() - 4, 'y') + "\"]}";
}

}  // namespace

TEST_CASE("a line in the accepted form is read and written back byte for byte") {
    for (const std::string line :
         {R"({})", R"({"":""})", R"({"a":0})", R"({"a":-1,"b":1})", R"({"a":true,"b":false})", R"({"a":[]})",
          R"({"a":["","x"]})", R"({"A":1,"a":2})", R"({"a":1,"a ":2,"aa":3})", R"({"a":"\"\\/"})",
          R"({"a":"\b\f\n\r\t"})", R"({"a":"\u0001\u001f"})", "{\"a\":\"\x7f\"}", R"({"a":"é"})", R"({"é":1})",
          R"({"a":"日本 🔧"})", R"({"a":9007199254740991,"b":-9007199254740991})", R"({"a\nb":1})"}) {
        INFO(line);
        CHECK(refusal(line) == std::nullopt);
        if (!refusal(line)) CHECK(record_line(read_record_line(line)) == line);
    }
}

TEST_CASE("what is no JSON object on one line is refused") {
    for (const auto& bad : {Bad{"", "not JSON"},
                            Bad{" ", "not JSON"},
                            Bad{"x", "not JSON"},
                            Bad{"{", "not JSON"},
                            Bad{R"({"a")", "not JSON"},
                            Bad{R"({"a":})", "not JSON"},
                            Bad{R"({"a":1,})", "not JSON"},
                            Bad{R"({a:1})", "not JSON"},
                            Bad{R"({'a':1})", "not JSON"},
                            Bad{R"({"a":1}{})", "not JSON"},
                            Bad{R"({"a":1} x)", "not JSON"},
                            Bad{R"({"a":1})"
                                "\n"
                                R"({"b":2})",
                                "not JSON"},
                            Bad{R"({"a":tru})", "not JSON"},
                            Bad{R"({"a":"x)", "not JSON"},
                            Bad{R"({"a":1}//)", "not JSON"},
                            Bad{"1", "one object"},
                            Bad{"true", "one object"},
                            Bad{R"("a")", "one object"},
                            Bad{"null", "null"},
                            Bad{"[]", "list where none"},
                            Bad{R"([{"a":1}])", "list where none"}})
        check_refused(bad);
}

TEST_CASE("values that a record does not have are refused") {
    for (const auto& bad : {Bad{R"({"a":null})", "null"},
                            Bad{R"({"a":[null]})", "null"},
                            Bad{R"({"a":{}})", "object inside"},
                            Bad{R"({"a":{"b":1}})", "object inside"},
                            Bad{R"({"a":[{}]})", "object inside"},
                            Bad{R"({"a":[[]]})", "list where none"},
                            Bad{R"({"a":["x",["y"]]})", "list where none"},
                            Bad{R"({"a":[1]})", "texts only"},
                            Bad{R"({"a":["x",true]})", "texts only"},
                            Bad{R"({"a":1.0})", "not a whole number"},
                            Bad{R"({"a":0.1})", "not a whole number"},
                            Bad{R"({"a":1e3})", "not a whole number"},
                            Bad{R"({"a":1E3})", "not a whole number"},
                            Bad{R"({"a":-0.0})", "not a whole number"},
                            Bad{R"({"a":1e400})", "not JSON"},
                            Bad{R"({"a":NaN})", "not JSON"},
                            Bad{R"({"a":-})", "not JSON"},
                            Bad{R"({"a":+1})", "not JSON"},
                            Bad{R"({"a":.5})", "not JSON"},
                            Bad{R"({"a":01})", "not JSON"},
                            Bad{R"({"a":-01})", "not JSON"},
                            Bad{R"({"a":0x1f})", "not JSON"}})
        check_refused(bad);
}

TEST_CASE("a key that is there twice is refused, also when the two are spelled differently") {
    for (const auto& bad :
         {Bad{R"({"a":1,"a":1})", "\"a\" is there twice"}, Bad{R"({"a":1,"b":2,"a":3})", "\"a\" is there twice"},
          Bad{R"({"a":1,"\u0061":1})", "\"a\" is there twice"}, Bad{R"({"a\/":1,"a/":1})", "\"a/\" is there twice"},
          Bad{R"({"":1,"":2})", "is there twice"}})
        check_refused(bad);
}

TEST_CASE("any other spelling of a record is refused") {
    for (const auto& bad :
         {Bad{R"({"b":1,"a":2})", other_form}, Bad{R"({"a":1,"B":2})", other_form}, Bad{R"({ "a":1})", other_form},
          Bad{R"({"a": 1})", other_form}, Bad{R"({"a":1} )", other_form}, Bad{"{\"a\":1}\n", other_form},
          Bad{"{\"a\":1}\r", other_form}, Bad{R"({"a":["x", "y"]})", other_form}, Bad{R"({"a":-0})", other_form},
          Bad{R"({"a":"\/"})", other_form}, Bad{R"({"a":"\u0041"})", other_form}, Bad{R"({"a":"\u00e9"})", other_form},
          Bad{R"({"a":"\u000a"})", other_form}, Bad{R"({"a":"\u000A"})", other_form},
          Bad{R"({"a":"\u001F"})", other_form}, Bad{R"({"a":"\u007f"})", other_form},
          Bad{R"({"a":"\ud83d\udd27"})", other_form}, Bad{R"({"\u0061":1})", other_form},
          Bad{"\xEF\xBB\xBF{\"a\":1}", other_form}})
        check_refused(bad);
}

TEST_CASE("text that is not clean composed UTF-8 is refused") {
    for (const auto& bad :
         {Bad{R"({"a":"\u0000"})", "zero byte"}, Bad{R"({"\u0000":1})", "zero byte"},
          Bad{std::string("{\"a\":\"\0\"}", 9), "not JSON"}, Bad{R"({"a":"\ud83d"})", "not JSON"},
          Bad{R"({"a":"\udd27"})", "not JSON"}, Bad{R"({"a":"\udd27\ud83d"})", "not JSON"},
          Bad{R"({"a":"\ud83dx"})", "not JSON"}, Bad{"{\"a\":\"\xed\xa0\xbd\"}", "not JSON"},
          Bad{"{\"a\":\"\xff\"}", "not JSON"}, Bad{"{\"a\":\"\xc3\"}", "not JSON"},
          Bad{"{\"a\":\"\xc0\xaf\"}", "not JSON"}, Bad{"{\"a\":\"\xf4\x90\x80\x80\"}", "not JSON"},
          Bad{"{\"a\":\"x\ny\"}", "not JSON"}, Bad{"{\"a\":\"x\ty\"}", "not JSON"}, Bad{R"({"a":"\x41"})", "not JSON"},
          Bad{R"({"a":"\u12"})", "not JSON"},
          // e and a combining acute accent; the ohm sign, whose composed form is the Greek letter
          Bad{"{\"a\":\"e\xcc\x81\"}", "NFC"}, Bad{"{\"e\xcc\x81\":1}", "NFC"}, Bad{"{\"a\":[\"e\xcc\x81\"]}", "NFC"},
          Bad{"{\"a\":\"\xe2\x84\xa6\"}", "NFC"}, Bad{R"({"a":"e\u0301"})", "NFC"}})
        check_refused(bad);
}

TEST_CASE("numbers up to 2^53 - 1 are taken and larger ones refused") {
    for (const char* number : {"9007199254740990", "9007199254740991", "-9007199254740990", "-9007199254740991"})
        CHECK(refusal(std::string("{\"a\":") + number + "}") == std::nullopt);
    for (const char* number : {"9007199254740992", "-9007199254740992", "9223372036854775807", "9223372036854775808",
                               "18446744073709551615", "-9223372036854775808"})
        check_refused({std::string("{\"a\":") + number + "}", "beyond 2^53 - 1"});
    CHECK(refusal(R"({"a":99999999999999999999999999})").has_value());
}

TEST_CASE("64 fields are taken and 65 refused") {
    CHECK(refusal(keys_of(63)) == std::nullopt);
    CHECK(refusal(keys_of(64)) == std::nullopt);
    check_refused({keys_of(65), "more than 64 fields"});
}

TEST_CASE("a field's name of 64 bytes is taken and one of 65 refused") {
    const auto named = [](const std::string& name) { return "{\"" + name + "\":1}"; };
    CHECK(refusal(named(std::string(63, 'k'))) == std::nullopt);
    CHECK(refusal(named(std::string(64, 'k'))) == std::nullopt);
    check_refused({named(std::string(65, 'k')), "name is longer than 64 bytes"});
    check_refused({named(std::string(63, 'k') + "é"), "name is longer than 64 bytes"});  // bytes, not characters
}

TEST_CASE("a text of 4,000 bytes is taken and one of 4,001 refused") {
    CHECK(refusal(text_of(3999)) == std::nullopt);
    CHECK(refusal(text_of(4000)) == std::nullopt);
    check_refused({text_of(4001), "longer than 4000 bytes"});
    check_refused({"{\"a\":[\"" + std::string(4001, 'x') + "\"]}", "longer than 4000 bytes"});
}

TEST_CASE("a line of 64 KiB is taken and one a byte longer refused") {
    for (const std::size_t bytes : {65535, 65536}) {
        REQUIRE(line_of(bytes).size() == bytes);
        CHECK(refusal(line_of(bytes)) == std::nullopt);
    }
    check_refused({line_of(65537), "line is longer than 65536 bytes"});
}

TEST_CASE("the refusal points at the byte where the accepted form ends") {
    const auto column = [](const std::string& line) {
        try {
            read_record_line(line);
        } catch (const RecordRefused& refused) {
            return refused.column();
        }
        return std::size_t{9999};
    };
    CHECK(column(R"({"a": 1})") == 6);
    CHECK(column(R"({"a":1} )") == 8);
    CHECK(column(R"({"é": 1})") == 7);  // é is two bytes
    CHECK(column("\xEF\xBB\xBF{}") == 1);
    CHECK(column(R"({"a":01})") == 7);
    CHECK(column(text_of(70000)) == 0);  // the line as a whole
}

TEST_CASE("depth does not matter: sixty thousand brackets are refused at the second") {
    CHECK(refusal(std::string(60000, '[')).has_value());
    CHECK(refusal("{\"a\":" + std::string(60000, '[')).has_value());
    std::string nested;
    for (int i = 0; i < 10000; ++i) nested += "{\"a\":";
    CHECK(refusal(nested).has_value());
}
