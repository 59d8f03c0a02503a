// What does a pack hold, when is it refused, and what does the refusal say? The format is src/exchange/pack.h.
#include <algorithm>

#include "exchange/shop_fixture.h"

using namespace tapbook;

namespace {

// A shop with one car and two notes, and its pack.
struct OneShop {
    Places places;
    Catalog catalog = places.shop("Bench Three");
    std::string text;
    OneShop() {
        catalog.add(one_car(), false, today);
        add_note(catalog, "WH", "AB 1");
        add_note(catalog, "WH", "AB 2");
        text = pack_of(catalog);
    }
};

std::vector<std::string> lines_of(const std::string& text) {
    std::vector<std::string> lines;
    std::istringstream stream(text);
    for (std::string line; std::getline(stream, line);) lines.push_back(line);
    return lines;
}

// The pack with one line changed and its end made right again.
std::string with_line(const OneShop& shop, std::size_t place, const std::string& line) {
    auto lines = lines_of(shop.text);
    lines.pop_back();
    lines[place] = line;
    const std::string head = lines.front() + "\n";
    lines.erase(lines.begin());
    return signed_pack(shop.catalog, lines, head);
}

std::string without(std::string text, const std::string& part) {
    const auto at = text.find(part);
    REQUIRE(at != std::string::npos);
    return text.erase(at, part.size());
}

}  // namespace

TEST_CASE("a pack holds a head, the records by type, path and id, and an end, and is read back as it was") {
    const OneShop shop;
    const auto lines = lines_of(shop.text);
    REQUIRE(lines.size() == 8);  // head, circuit, two notes, system, tap, vehicle, end
    CHECK(lines.front() == "{\"format\":\"tapbook.pack/1\",\"key\":\"" + digits_of(shop.catalog.own_key().key) +
                               "\",\"shop\":\"" + shop.catalog.own_shop().id + "\",\"type\":\"pack\"}");
    const Incoming pack = read_pack(shop.text, "pack.jsonl");
    CHECK(pack.shop == shop.catalog.own_shop().id);
    CHECK_FALSE(pack.practice);
    std::vector<std::string> types;
    for (const auto& record : pack.records) types.push_back(text_field(read_record_line(record.line), "type"));
    CHECK(types == std::vector<std::string>{"circuit", "note", "note", "system", "tap", "vehicle"});
    for (const auto& record : pack.records) CHECK(record.id == record_id(record.line));
}

TEST_CASE("the same records give the same bytes, whatever order they came in") {
    const Places places;
    Catalog one = places.shop("Bench Three");
    one.add(one_car(), false, today);
    add_note(one, "WH", "AB 1");
    add_note(one, "BN", "AB 2");
    Catalog other = Catalog::create(places / "other.sqlite", "Bench Three", CatalogKind::real, today,
                                    repeatable_random("Bench Three"));
    add_note(other, "BN", "AB 2");
    add_note(other, "WH", "AB 1");
    other.add(one_car(), false, today);
    CHECK(pack_of(one) == pack_of(other));
}

TEST_CASE("every changed byte of a pack is noticed") {
    const OneShop shop;
    REQUIRE(refusal_of(shop.text).empty());
    for (std::size_t at = 0; at < shop.text.size(); ++at) {
        std::string changed = shop.text;
        changed[at] = static_cast<char>(changed[at] ^ (1 << (at % 8)));
        INFO("byte " << at);
        CHECK_FALSE(refusal_of(changed).empty());
    }
}

TEST_CASE("a pack cut off anywhere is not whole") {
    const OneShop shop;
    for (std::size_t size = 0; size < shop.text.size(); ++size) {
        INFO("cut to " << size);
        try {
            read_pack(std::string_view(shop.text).substr(0, size), "pack.jsonl");
            FAIL("taken");
        } catch (const PackRefused& refused) {
            CHECK((refused.trouble() == PackTrouble::not_whole || size < pack_start.size()));
        }
    }
}

TEST_CASE("each refusal names line, column, reason and the way out") {
    const OneShop shop;
    const auto lines = lines_of(shop.text);
    const std::string note = lines[2], vehicle = lines[6];
    const auto spoilt = [&](const std::string& from, const std::string& to) {
        std::string line = note;
        const auto at = line.find(from);
        REQUIRE(at != std::string::npos);
        return with_line(shop, 2, line.replace(at, from.size(), to));
    };
    CHECK(refusal_of("") == "1:0 is empty");
    CHECK(refusal_of("at = \"orrery\"\n") == "1:1 is not a pack");
    CHECK(refusal_of("\xEF\xBB\xBF" + shop.text) == "1:1 begins with a byte order mark: some program has rewritten it");
    CHECK(refusal_of(without(shop.text, lines.back() + "\n")) ==
          "8:0 the end of the pack is missing: half copied, or cut off");
    CHECK(refusal_of(without(shop.text, lines[3] + "\n")) ==
          "7:0 the hash does not fit: something was changed on the way");
    CHECK(refusal_of(spoilt("\"date\":\"2026-03-04\"", "\"date\":\"2026-02-30\"")) ==
          "3:43 \"date\" must be a day like 2026-05-02");
    CHECK(refusal_of(spoilt("\"year\":2014", "\"year\":20140")) == "3:249 \"year\" is 20140, outside 1950 to 2079");
    CHECK(refusal_of(spoilt("\"year\":2014", "\"year\": 2014")) ==
          "3:256 not written in the one accepted form (keys sorted, no spaces, plain numbers, shortest escapes)");
    CHECK(refusal_of(spoilt("\"year\":2014", "\"year\":2014.0")) == "3:260 2014.0 is not a whole number");
    CHECK(refusal_of(spoilt("\"positive\":\"WH\"", "\"positive\":7")) == "3:177 \"positive\" must be a text");
    CHECK(refusal_of(spoilt("\"method\":\"metered\",", "")) == "3:0 the field \"method\" is missing");
    CHECK(refusal_of(spoilt("\"positive\":\"WH\"", "\"positive\":\"W\xE2\x80\xAEH\"")) ==
          "3:177 \"positive\" holds the invisible character U+202E");
    CHECK(refusal_of(spoilt("\"car\":\"", "\"car\":\"x")) == "3:2 \"car\" must be 32 hexadecimal digits");
    CHECK(refusal_of(spoilt("/radio-plug", "")) ==
          "3:112 \"path\" must be a path of small letters, digits and hyphens with 7 parts");
    CHECK(refusal_of(spoilt("\"positive\":\"WH\"", "\"positive\":\"WH\",\"practice\":true")) ==
          "3:193 a practice record in a pack that does not say practice");
    CHECK(refusal_of(with_line(shop, 3, note)) == "4:1 is there twice");
    CHECK(refusal_of(with_line(shop, 2, vehicle)) ==
          "4:1 stands before the line above it: records go by type, path and id");
    std::string head = lines.front();
    head.replace(head.find("pack/1"), 6, "pack/2");
    CHECK(refusal_of(with_line(shop, 0, head)) == "1:1 is a pack of another kind (this program knows tapbook.pack/1)");
}

TEST_CASE("a pack signed with another key than its head names is refused") {
    const OneShop shop;
    const Catalog stranger = shop.places.shop("Stranger");
    const auto lines = lines_of(shop.text);
    const std::string forged = signed_pack(stranger, {lines.begin() + 1, lines.end() - 1}, lines.front() + "\n");
    CHECK(refusal_of(forged) == "8:0 the signature does not fit the key in the head");
}

TEST_CASE("fields and kinds of later versions are taken, and only what is known is judged") {
    const OneShop shop;
    const std::string id = shop.catalog.own_shop().id;
    const std::string later = R"({"colour_of_sky":["blue"],"shop":")" + id + R"(","type":"zebra"})";
    const std::string kind = R"({"kind":"optical","shop":")" + id + R"(","type":"note"})";
    CHECK(refusal_of(signed_pack(shop.catalog, {kind, later})).empty());
    CHECK(refusal_of(signed_pack(shop.catalog, {R"({"shop":")" + id + R"("})"})) ==
          "2:0 the field \"type\" is missing");
    CHECK(refusal_of(signed_pack(shop.catalog, {R"({"shop":"x","type":"zebra"})"})) ==
          "2:2 \"shop\" must be 32 hexadecimal digits");
}

TEST_CASE("packs are split at their limits, and each part is taken by itself") {
    const Places places;
    Catalog catalog = places.shop("Bench Three");
    catalog.change_key(today, repeatable_random("second key"), false);
    catalog.add(one_car(), false, today);
    for (int i = 0; i < 20; ++i) add_note(catalog, "WH", "car " + std::to_string(i));
    const std::string whole = pack_of(catalog);
    REQUIRE(read_pack(whole, "p").records.size() == 25);
    const auto by_lines = write_packs(catalog, {}, {}, {most_pack_bytes, 10});
    CHECK(by_lines.size() > 3);
    std::size_t records = 0;
    for (const auto& pack : by_lines) {
        CHECK(std::count(pack.text.begin(), pack.text.end(), '\n') <= 10);
        records += read_pack(pack.text, "p").records.size();
        Catalog taker = places.shop("taker of " + pack.hash);  // the change of key is in each
        CHECK(take(taker, pack.text).fresh() == pack.records);
    }
    CHECK(records == 24 + by_lines.size());
    const auto by_bytes = write_packs(catalog, {}, {}, {4000, most_pack_lines});
    CHECK(by_bytes.size() > 1);
    for (const auto& pack : by_bytes) CHECK(pack.text.size() <= 4000);
}

TEST_CASE("nothing is written when nothing is asked for") {
    const Places places;
    const Catalog catalog = places.shop("Bench Three");
    CHECK(write_packs(catalog, {}).empty());
}
