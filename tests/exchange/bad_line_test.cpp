// A bad line anywhere refuses the whole pack, is named with line, column and reason, and leaves no trace in the
// catalog. And the laws of merging, on catalog files, through packs: order, grouping and repetition do not matter.
// TAPBOOK_MERGES says how many triples; 2,000 without it, tools/long runs 100,000.
#include <algorithm>
#include <cstdlib>
#include <random>

#include "exchange/shop_fixture.h"

using namespace tapbook;

namespace {

std::vector<std::string> many_notes(const Catalog& catalog, int count) {
    std::vector<std::string> lines;
    for (int i = 0; i < count; ++i)
        lines.push_back(record_line({{"car", words(to_hex(short_hash(std::to_string(i))))},
                                     {"date", words("2026-03-04")},
                                     {"kind", words("pair")},
                                     {"method", words("metered")},
                                     {"path", words(tap_path)},
                                     {"positive", words("WH")},
                                     {"shop", words(catalog.own_shop().id)},
                                     {"type", words("note")}}));
    return in_order(std::move(lines));
}

std::string bytes_of(const std::filesystem::path& file) {
    std::ifstream stream(file, std::ios::binary);
    return {std::istreambuf_iterator<char>(stream), {}};
}

int merges() {
    const char* told = std::getenv("TAPBOOK_MERGES");
    return told == nullptr ? 2000 : std::atoi(told);
}

}  // namespace

TEST_CASE("a bad line at each of 1,000 places refuses the pack, leaves no trace and is named") {
    const Places places;
    const Catalog signer = places.shop("Bench Three");
    Catalog taker = places.shop("Quill Audio");
    const auto lines = many_notes(signer, 1000);
    const std::string before = bytes_of(taker.file()), log = bytes_of(taker.file().string() + "-wal");
    const std::string wanted = "\"date\":\"2026-03-04\"";
    for (std::size_t place = 0; place < lines.size(); ++place) {
        auto spoilt = lines;
        const auto at = spoilt[place].find(wanted);
        spoilt[place].replace(at, wanted.size(), "\"date\":20260304");
        const std::string text = signed_pack(signer, spoilt);
        INFO("place " << place);
        CHECK(refusal_of(text) ==
              std::to_string(place + 2) + ":" + std::to_string(at + 1) + " \"date\" must be a day like 2026-05-02");
        CHECK_THROWS_AS(take(taker, text), InputRefused);
    }
    CHECK(bytes_of(taker.file()) == before);
    CHECK(bytes_of(taker.file().string() + "-wal") == log);
    CHECK(take(taker, signed_pack(signer, lines)).fresh() == 1000);
}

TEST_CASE("merging is commutative, associative and idempotent on catalog files", "[merging]") {
    const Places places;
    std::vector<Catalog> shops;
    for (const char* name : {"one", "two", "three"}) shops.push_back(places.shop(name));
    std::mt19937_64 random(20260502);
    std::vector<std::vector<std::string>> pools;
    for (const auto& shop : shops) pools.push_back(many_notes(shop, 8));
    for (int triple = 0; triple < merges(); ++triple) {
        std::vector<std::string> packs;
        for (std::size_t i = 0; i < shops.size(); ++i) {
            std::vector<std::string> some;
            for (const auto& pool : pools)  // notes of others among them: relayed
                for (const auto& line : pool)
                    if (random() % 3 == 0) some.push_back(line);
            packs.push_back(signed_pack(shops[i], in_order(some)));
        }
        const Places here;
        const auto merged = [&](const std::string& name, const std::vector<int>& order) {
            Catalog catalog = here.copied_shop("taker", name);
            for (const int i : order) take(catalog, packs[static_cast<std::size_t>(i)]);
            return records_of(catalog);
        };
        INFO("triple " << triple);
        const auto wanted = merged("a", {0, 1, 2});
        CHECK(merged("b", {2, 1, 0}) == wanted);
        CHECK(merged("c", {1, 1, 0, 2, 0, 1}) == wanted);
        Catalog middle = here.copied_shop("middle", "middle");  // (1 + 2), handed on as one
        take(middle, packs[1]);
        take(middle, packs[2]);
        Catalog last = here.copied_shop("taker", "last");
        take(last, packs[0]);
        if (const auto handed_on = pack_of(middle); !handed_on.empty()) take(last, handed_on);
        CHECK(records_of(last) == wanted);
    }
}
