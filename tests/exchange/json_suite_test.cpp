// Does the reader refuse what every JSON reader must refuse? Run by tests/outside/json_suite.py, which names the folder
// with the cases of a public suite in TAPBOOK_JSON_SUITE: one file each, as it is.
#include <cstdlib>

#include "exchange/shop_fixture.h"

using namespace tapbook;

namespace {

bool is_taken(const std::string& line) {
    RecordTokens tokens;
    if (tokens.read(line)) return true;
    try {
        read_record_line(line);
        return true;
    } catch (const RecordRefused&) {
        return false;
    }
}

}  // namespace

TEST_CASE("what a public suite says must be refused is refused, alone and as a field of a record", "[.json-suite]") {
    const char* folder = std::getenv("TAPBOOK_JSON_SUITE");
    REQUIRE(folder != nullptr);
    int cases = 0;
    for (const auto& item : std::filesystem::directory_iterator(folder)) {
        std::ifstream file(item.path(), std::ios::binary);
        const std::string text{std::istreambuf_iterator<char>(file), {}};
        INFO(item.path().filename().string());
        CHECK_FALSE(is_taken(text));
        CHECK_FALSE(is_taken("{\"a\":" + text + "}"));
        ++cases;
    }
    CHECK(cases >= 150);
}
