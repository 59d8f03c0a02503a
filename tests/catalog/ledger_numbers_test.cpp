// Is the local number of a new car given without looking through the whole ledger?

#include "a_catalog.h"
#include "catalog/ledger_rows.h"

using namespace tapbook;

TEST_CASE("the number of the next car is found by a search and not by a scan") {
    CatalogFolder folder;
    folder.create();
    sqlite::Database database(folder.file(), sqlite::Open::read_only);
    auto plan = database.prepare("EXPLAIN QUERY PLAN " + std::string(next_vehicle_number));
    std::string text;
    while (plan.step()) text += std::string(plan.text(3)) + "\n";
    INFO(text);
    CHECK(text.find("SEARCH") != std::string::npos);
    CHECK(text.find("SCAN") == std::string::npos);
}
