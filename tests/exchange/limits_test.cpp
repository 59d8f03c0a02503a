// Where do the limits of a pack lie? Each at one below, at and one above (the figures of src/exchange/pack.h).
#include "exchange/shop_fixture.h"

using namespace tapbook;

namespace {

// Records of an unknown kind: nothing but the pack's own limits speaks to them. `bytes` long with their line feed.
std::string filler(const std::string& shop, int number, std::size_t bytes) {
    const std::string path = "p" + std::string(7 - std::to_string(number).size(), '0') + std::to_string(number);
    const std::string start = "{\"fill\":[",
                      end = "],\"path\":\"" + path + "\",\"shop\":\"" + shop + "\",\"type\":\"zebra\"}\n";
    std::string fill;
    std::size_t left = bytes - start.size() - end.size();
    while (left > 0) {
        const std::size_t most = 4000 + 2, comma = fill.empty() ? 0 : 1;
        std::size_t item = std::min(left - comma, most);
        if (left - comma - item == 1 || left - comma - item == 2) item -= 2;  // room for one more pair of quotes
        fill += std::string(comma, ',') + "\"" + std::string(item - 2, 'x') + "\"";
        left -= item + comma;
    }
    return start + fill + end.substr(0, end.size() - 1);
}

// A signed pack of exactly `bytes` bytes.
std::string pack_of_size(const Catalog& catalog, std::size_t bytes) {
    const std::string shop = catalog.own_shop().id;
    const std::size_t frame = signed_pack(catalog, {}).size(), line = 60'000;
    std::vector<std::string> lines;
    std::size_t left = bytes - frame;
    for (int number = 0; left > 0; ++number) {
        const std::size_t size = left > 2 * line ? line : left > line ? left / 2 : left;
        lines.push_back(filler(shop, number, size));
        left -= size;
    }
    return signed_pack(catalog, in_order(std::move(lines)));
}

std::string pack_of_lines(const Catalog& catalog, std::size_t count) {
    const std::string shop = catalog.own_shop().id;
    std::vector<std::string> lines;
    for (std::size_t number = 0; number + 2 < count; ++number)
        lines.push_back("{\"path\":\"" + std::to_string(100'000'000 + number) + "\",\"shop\":\"" + shop +
                        "\",\"type\":\"zebra\"}");
    return signed_pack(catalog, lines);
}

}  // namespace

TEST_CASE("a pack of 64 MiB is taken and one a byte larger refused") {
    const Places places;
    const Catalog catalog = places.shop("Bench Three");
    for (const std::size_t bytes : {most_pack_bytes - 1, most_pack_bytes}) {
        const std::string text = pack_of_size(catalog, bytes);
        REQUIRE(text.size() == bytes);
        CHECK(refusal_of(text).empty());
    }
    CHECK(refusal_of(pack_of_size(catalog, most_pack_bytes + 1)) == "0:0 is larger than 64 MiB");
}

TEST_CASE("a pack of 200,000 lines is taken and one of a line more refused") {
    const Places places;
    const Catalog catalog = places.shop("Bench Three");
    CHECK(refusal_of(pack_of_lines(catalog, most_pack_lines - 1)).empty());
    CHECK(refusal_of(pack_of_lines(catalog, most_pack_lines)).empty());
    CHECK(refusal_of(pack_of_lines(catalog, most_pack_lines + 1)) == "200000:0 has more than 200000 lines");
}

TEST_CASE("a line of 64 KiB is taken in a pack and one a byte longer refused") {
    const Places places;
    const Catalog catalog = places.shop("Bench Three");
    const std::string shop = catalog.own_shop().id;
    for (const std::size_t bytes : {most_record_bytes - 1, most_record_bytes})
        CHECK(refusal_of(signed_pack(catalog, {filler(shop, 1, bytes + 1)})).empty());
    CHECK(refusal_of(signed_pack(catalog, {filler(shop, 1, most_record_bytes + 2)})) ==
          "2:0 the line is longer than 65536 bytes");
}

TEST_CASE("64 fields, names of 64 bytes, texts of 4,000 bytes and whole numbers up to 2^53 - 1 are taken, no more") {
    const Places places;
    const Catalog catalog = places.shop("Bench Three");
    const std::string end = "\"shop\":\"" + catalog.own_shop().id + "\",\"type\":\"zebra\"}";
    const auto refusal = [&](const std::string& fields) {
        return refusal_of(signed_pack(catalog, {"{" + fields + end}));
    };
    const auto many = [](std::size_t count) {
        std::string fields;
        for (std::size_t i = 0; i < count; ++i) fields += "\"k" + std::to_string(100 + i) + "\":1,";
        return fields;
    };
    CHECK(refusal(many(61)).empty());
    CHECK(refusal(many(62)).empty());
    CHECK(refusal(many(63)) == "2:611 more than 64 fields");
    for (const std::size_t bytes : {63U, 64U}) CHECK(refusal("\"" + std::string(bytes, 'k') + "\":1,").empty());
    CHECK(refusal("\"" + std::string(65, 'k') + "\":1,") == "2:2 a field's name is longer than 64 bytes");
    for (const std::size_t bytes : {3999U, 4000U}) CHECK(refusal("\"a\":\"" + std::string(bytes, 'x') + "\",").empty());
    CHECK(refusal("\"a\":\"" + std::string(4001, 'x') + "\",") == "2:7 a text is longer than 4000 bytes");
    for (const char* number : {"9007199254740990", "9007199254740991", "-9007199254740991"})
        CHECK(refusal("\"a\":" + std::string(number) + ",").empty());
    for (const char* number : {"9007199254740992", "-9007199254740992"})
        CHECK(refusal("\"a\":" + std::string(number) + ",").find("beyond 2^53 - 1") != std::string::npos);
}

TEST_CASE("a record never nests: sixteen brackets are as wrong as two") {
    const Places places;
    const Catalog catalog = places.shop("Bench Three");
    for (const std::size_t depth : {2U, 15U, 16U, 17U, 20'000U}) {
        const std::string line = "{\"a\":" + std::string(depth, '[') + std::string(depth, ']') + ",\"shop\":\"" +
                                 catalog.own_shop().id + "\",\"type\":\"zebra\"}";
        CHECK(refusal_of(signed_pack(catalog, {line})) == "2:7 a list where none may be");
    }
}
