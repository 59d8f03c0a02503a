// Is the pack that DEVELOPERS.md shows what this program reads and writes? Its hash comes from Python's hashlib, its
// key and signature from OpenSSL (`openssl pkeyutl -sign -rawin`), so that the format is checked from outside.
#include <numeric>

#include "exchange/shop_fixture.h"

using namespace tapbook;

namespace {

const std::string head =
    R"({"format":"tapbook.pack/1","key":"03a107bff3ce10be1d70dd18e74bc09967e4d6309ba50d5f1ddc8664125531b8","shop":"56475aa75463474c0285df5dbf2bcab7","type":"pack"})";
const std::string note =
    R"({"date":"2026-03-04","kind":"pair","method":"metered","negative":"BK","path":"orrery/vel-ostrel/sedan/2012/base/front-left/radio-plug","positive":"WH/BN","shop":"56475aa75463474c0285df5dbf2bcab7","type":"note","year":2014})";
const std::string end =
    R"({"hash":"cf9cc6ab6f9a55e10477c47942ad85dc69595d0d6567c455e673a925b6d5e08a","signature":"12c91e00cdcc6b5176c1c9ff8109daab96aed2d6b12825be65a8eca2610fbd315d07eeeb2a48f17efa7c278b79e16ee841e2cc340d63ae8ca5af2d648c046808","type":"end"})";
const std::string pack = head + "\n" + note + "\n" + end + "\n";

// 00 01 02 ... for the seed of the key, and on for the salt.
RandomSource counting() {
    return
        [](unsigned char* bytes, std::size_t count) { std::iota(bytes, bytes + count, static_cast<unsigned char>(0)); };
}

std::string without_breaks(const std::string& text) {
    std::string joined;
    std::istringstream lines(text);
    for (std::string line; std::getline(lines, line);) joined += line.starts_with("    ") ? line.substr(4) : line;
    return joined;
}

}  // namespace

TEST_CASE("the worked example is a pack, and the same records give the same bytes here") {
    const Incoming read = read_pack(pack, "example.jsonl");
    REQUIRE(read.records.size() == 1);
    CHECK(to_hex(read.records[0].id) == "3f45147ebe01bf2fc08871d868a10f2e");
    const Places places;
    Catalog shop = Catalog::create(places / "shop.sqlite", "Example", CatalogKind::real, today, counting());
    CHECK(take(shop, pack).is_own_shop);
    CHECK(pack_of(shop) == pack);
}

TEST_CASE("the documents show the worked example as it is") {
    std::ifstream file(std::string(TAPBOOK_SOURCE) + "/DEVELOPERS.md");
    const std::string text = without_breaks({std::istreambuf_iterator<char>(file), {}});
    for (const auto& line : {head, note, end}) CHECK(text.find(line) != std::string::npos);
}
