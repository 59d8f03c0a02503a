// Laws of records: whatever can be written is read back equal; one changed byte never keeps the id.
#include <rapidcheck.h>

#include <catch2/catch.hpp>
#include <string>

#include "trade/record.h"
#include "trade/text.h"

using namespace tapbook;

namespace {

// Characters with an escape of their own, plain ones, and some of two, three and four bytes.
rc::Gen<std::string> some_text() {
    const auto piece = rc::gen::element<std::string>("a", "Z", "0", " ", "\"", "\\", "/", "\n", "\t", "\r", "\b", "\f",
                                                     "\x01", "\x1f", "\x7f", "é", "ß", "Ω", "–", "日", "🔧", "\u202e");
    return rc::gen::map(rc::gen::container<std::vector<std::string>>(piece),
                        [](const std::vector<std::string>& pieces) {
                            std::string text;
                            for (const auto& one : pieces) text += one;
                            return nfc(text);
                        });
}

rc::Gen<Value> some_value() {
    const auto number = rc::gen::inRange<std::int64_t>(-most_record_integer, most_record_integer + 1);
    return rc::gen::oneOf(
        rc::gen::map(number, [](std::int64_t n) { return Value(n); }),
        rc::gen::map(rc::gen::arbitrary<bool>(), [](bool flag) { return Value(flag); }),
        rc::gen::map(some_text(), [](std::string text) { return Value(std::move(text)); }),
        rc::gen::map(rc::gen::container<TextList>(some_text()), [](TextList list) { return Value(std::move(list)); }));
}

Values some_record() {
    Values record;
    const int fields = *rc::gen::inRange(0, 12);
    for (int i = 0; i < fields; ++i) record[*some_text()] = *some_value();
    for (const auto& [key, value] : record) RC_PRE(key.size() <= most_key_bytes);
    return record;
}

}  // namespace

TEST_CASE("whatever is written is read back equal") {
    REQUIRE(rc::check([] {
        const Values record = some_record();
        RC_ASSERT(read_record_line(record_line(record)) == record);
    }));
}

TEST_CASE("a record with one byte changed is refused or has another id") {
    REQUIRE(rc::check([] {
        const std::string line = record_line(some_record());
        std::string changed = line;
        const auto at = *rc::gen::inRange<std::size_t>(0, line.size());
        changed[at] = static_cast<char>(changed[at] ^ *rc::gen::inRange(1, 256));
        RC_ASSERT(record_id(changed) != record_id(line));
        try {
            RC_ASSERT(read_record_line(changed) != read_record_line(line));
        } catch (const RecordRefused&) {
            RC_SUCCEED("refused");
        }
    }));
}

TEST_CASE("bytes that are no record are refused, never mistaken or crashed on") {
    REQUIRE(rc::check([] {
        const auto bytes = *rc::gen::container<std::string>(rc::gen::oneOf(
            rc::gen::element('{', '}', '[', ']', '"', ':', ',', '\\', '1', '-', 'u', 'a'), rc::gen::arbitrary<char>()));
        try {
            RC_ASSERT(record_line(read_record_line(bytes)) == bytes);
        } catch (const RecordRefused& refused) {
            RC_ASSERT(!std::string(refused.what()).empty());
        }
    }));
}

TEST_CASE("what could not be read back is not written either") {
    const auto refused = [](const Values& record) {
        try {
            record_line(record);
            return false;
        } catch (const RecordRefused&) {
            return true;
        }
    };
    CHECK(refused({{"a", std::string(4001, 'x')}}));
    CHECK(refused({{std::string(65, 'k'), true}}));
    CHECK(refused({{"a", most_record_integer + 1}}));
    CHECK(refused({{"a", -most_record_integer - 1}}));
    CHECK(refused({{"a", std::string("e\xcc\x81")}}));
    CHECK(refused({{"a", TextList{"\xff"}}}));
    CHECK(refused({{"a", std::string(1, '\0')}}));
    CHECK(refused({{"a", TextList(17, std::string(4000, 'x'))}}));
    CHECK_FALSE(refused({{"a", TextList(16, std::string(4000, 'x'))}}));
}
