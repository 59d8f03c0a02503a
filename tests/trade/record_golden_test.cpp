// Do records written today still have the bytes and the names they had on the first day? Twelve records whose ids were
// computed by another library (tests/records/ids.py, Python's hashlib).
#include <catch2/catch.hpp>
#include <fstream>
#include <set>
#include <string>
#include <vector>

#include "trade/record.h"

using namespace tapbook;

namespace {

std::vector<std::string> lines_of(const std::string& name) {
    std::ifstream file(std::string(TAPBOOK_SOURCE) + "/tests/records/" + name, std::ios::binary);
    std::vector<std::string> lines;
    for (std::string line; std::getline(file, line);) lines.push_back(line);
    return lines;
}

}  // namespace

TEST_CASE("the twelve golden records keep their bytes and their ids: these never change") {
    const auto lines = lines_of("golden.jsonl"), ids = lines_of("golden.ids");
    REQUIRE(lines.size() == 12);
    REQUIRE(ids.size() == 12);
    for (std::size_t i = 0; i < lines.size(); ++i) {
        INFO("golden.jsonl line " << i + 1);
        CHECK(record_line(read_record_line(lines[i])) == lines[i]);
        CHECK(to_hex(record_id(lines[i])) == ids[i]);
    }
}

TEST_CASE("the golden records hold every type of record, every kind of note and every type of value") {
    std::set<std::string> types, kinds;
    std::set<std::size_t> values;
    bool negative = false, empty_list = false;
    for (const auto& line : lines_of("golden.jsonl")) {
        const Values record = read_record_line(line);
        types.insert(*find_value<std::string>(record, "type"));
        if (const auto* kind = find_value<std::string>(record, "kind")) kinds.insert(*kind);
        for (const auto& [key, value] : record) {
            values.insert(value.index());
            if (const auto* number = std::get_if<std::int64_t>(&value)) negative = negative || *number < 0;
            if (const auto* list = std::get_if<TextList>(&value)) empty_list = empty_list || list->empty();
        }
    }
    CHECK(types == std::set<std::string>{"note", "withdrawal", "vehicle", "system", "circuit", "tap", "converter",
                                         "amplifier", "alias", "key"});
    CHECK(kinds == std::set<std::string>{"pair", "switched", "system"});
    CHECK(values.size() == std::variant_size_v<Value>);
    CHECK(negative);
    CHECK(empty_list);
}

TEST_CASE("the id is the first half of SHA-256, by the standard's own example") {
    // SHA-256("abc") = ba7816bf 8f01cfea 414140de 5dae2223 b00361a3 ..., FIPS 180-4 example values (NIST).
    CHECK(to_hex(short_hash("abc")) == "ba7816bf8f01cfea414140de5dae2223");
    // The empty message: e3b0c442 98fc1c14 9afbf4c8 996fb924 ... (same source).
    CHECK(to_hex(short_hash("")) == "e3b0c44298fc1c149afbf4c8996fb924");
    CHECK(record_id("{}") == short_hash("tapbook/1\n{}"));
}

TEST_CASE("an id is written as 32 small hexadecimal digits and nothing else is read as one") {
    RecordId id{};
    REQUIRE(from_hex("00ff17a4c3b2e5d6908172635445362a", id));
    CHECK(id[1] == 0xff);
    CHECK(id[15] == 0x2a);
    CHECK(to_hex(id) == "00ff17a4c3b2e5d6908172635445362a");
    for (const std::string bad : {"", "00ff17a4c3b2e5d6908172635445362", "00ff17a4c3b2e5d6908172635445362a0",
                                  "00FF17A4C3B2E5D6908172635445362A", "00ff17a4c3b2e5d6908172635445362g",
                                  "0x0f17a4c3b2e5d6908172635445362a", " 0ff17a4c3b2e5d6908172635445362a"}) {
        INFO(bad);
        RecordId ignored{};
        CHECK_FALSE(from_hex(bad, ignored));
    }
}
