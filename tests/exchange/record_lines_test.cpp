// However many threads read the lines of a pack, the records and the first fault are the same.
#include <random>

#include "exchange/record_lines.h"
#include "exchange/shop_fixture.h"

using namespace tapbook;

namespace {

std::string outcome(const std::string& text, std::size_t threads) {
    const std::string file = "pack.jsonl";
    try {
        std::string all;
        for (const auto& record : records_of_lines(text, file, false, threads, 1))
            all += std::to_string(record.number) + ' ' + to_hex(record.id) + ' ' + std::string(record.line) + '\n';
        return all;
    } catch (const PackRefused& refused) {
        const Complaint& first = refused.complaints().front();
        return std::to_string(first.place.line) + ':' + std::to_string(first.place.column) + ' ' + first.message +
               " | " + first.place.line_text;
    }
}

std::vector<std::string> notes(const Catalog& catalog, int count) {
    std::vector<std::string> lines;
    for (int i = 0; i < count; ++i)
        lines.push_back(record_line({{"car", words(to_hex(short_hash(std::to_string(i))))},
                                     {"date", words("2026-03-04")},
                                     {"kind", words("pair")},
                                     {"method", words("metered")},
                                     {"path", words(tap_path)},
                                     {"shop", words(catalog.own_shop().id)},
                                     {"type", words("note")}}));
    return in_order(std::move(lines));
}

}  // namespace

TEST_CASE("a pack read in several threads gives the same records or the same first fault") {
    const Places places;
    const Catalog shop = places.shop("Bench Three");
    std::mt19937 random(7);
    int refused = 0, taken = 0;
    for (int round = 0; round < 300; ++round) {
        auto lines = notes(shop, 1 + static_cast<int>(random() % 25));
        const auto any = [&]() -> std::string& { return lines[random() % lines.size()]; };
        const auto spoil = [&] {
            const auto way = random() % 4;
            if (way == 0) any().insert(5, 1, '\x01');
            if (way == 1) std::swap(any(), any());
            if (way == 2) any() = std::string(any());
            if (way == 3) any().back() = ']';
        };
        for (auto spoilt = random() % 3; spoilt > 0; --spoilt) spoil();
        std::string text;
        for (const auto& line : lines) text += line + '\n';
        const std::string alone = outcome(text, 1);
        alone.find(" | ") == std::string::npos ? ++taken : ++refused;
        for (const std::size_t threads : {2U, 3U, 5U, 40U}) CHECK(outcome(text, threads) == alone);
    }
    CHECK(refused > 100);
    CHECK(taken > 50);
}

TEST_CASE("a fault at the seam of two threads is named as it is by one") {
    const Places places;
    const Catalog shop = places.shop("Bench Three");
    const auto lines = notes(shop, 2);
    const std::string turned = lines[1] + '\n' + lines[0] + '\n', twice = lines[0] + '\n' + lines[0] + '\n';
    CHECK(outcome(turned, 2) == "3:1 stands before the line above it: records go by type, path and id | " + lines[0]);
    CHECK(outcome(twice, 2) == "3:1 is there twice | " + lines[0]);
}
