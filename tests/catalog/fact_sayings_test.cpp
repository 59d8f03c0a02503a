// Which questions does the report on the shops' errors hear? Those that two shops or more have looked at; copied notes,
// withdrawn ones and those of blocked shops have no say.
#include <unistd.h>

#include <catch2/catch.hpp>
#include <filesystem>

#include "catalog/catalog.h"

using namespace tapbook;

namespace {

const std::string car = "orvane/tarn/sedan/2015";
const std::string today = "2024-05-02";

class PracticeShop {
  public:
    PracticeShop()
        : folder_(std::filesystem::temp_directory_path() / ("fact-sayings-" + std::to_string(::getpid()))),
          catalog(
              (std::filesystem::create_directories(folder_),
               Catalog::create(folder_ / "p.sqlite", "Home", CatalogKind::practice, today, repeatable_random("s")))) {
        Batch batch;
        batch.file = "car.toml";
        batch.shops = {{"home", "Home", {}}, {"north", "North", {}}, {"south", "South", {}}};
        batch.entries = {{EntryKind::vehicle,
                          {{"path", car},
                           {"make", std::string("Orvane")},
                           {"model", std::string("Tarn")},
                           {"body", std::string("sedan")},
                           {"first_year", std::int64_t{2015}},
                           {"last_year", std::int64_t{2018}}},
                          {}},
                         {EntryKind::system, {{"path", car + "/base"}, {"name", std::string("plain")}}, {}}};
        catalog.add(batch, false, today);
    }
    ~PracticeShop() { std::filesystem::remove_all(folder_); }

    // Says at a tap point of the unrecorded system.
    void says(const std::string& shop, const std::string& tap, const std::string& positive, const std::string& negative,
              const std::string& method = "metered") {
        Batch batch;
        batch.file = "notes.toml";
        NoteDraft note;
        note.values = {{"path", car + "/unrecorded/front-left/" + tap},
                       {"kind", std::string("pair")},
                       {"date", today},
                       {"method", method},
                       {"positive", positive},
                       {"negative", negative}};
        note.shop_code = shop;
        batch.notes = {note};
        catalog.add(batch, false, today);
    }

  private:
    std::filesystem::path folder_;

  public:
    Catalog catalog;
};

}  // namespace

TEST_CASE("only questions that two shops have looked at are heard, and all that is said on them") {
    PracticeShop shop;
    shop.says("home", "alone", "WH", "WH/BK");
    shop.says("home", "shared", "WH", "WH/BK");
    shop.says("north", "shared", "TN", "WH/BK");
    shop.says("south", "shared", "WH", "WH/BK", "seen");
    shop.says("home", "copied", "WH", "WH/BK");
    shop.says("north", "copied", "WH", "WH/BK", "copied");
    const auto facts = shop.catalog.shared_sayings();
    REQUIRE(facts.size() == 1);
    CHECK(facts.front().path == car + "/unrecorded/front-left/shared");
    CHECK(facts.front().question == Question::pair);
    REQUIRE(facts.front().sayings.size() == 3);
    int white = 0;
    for (const auto& saying : facts.front().sayings) white += saying.value == "WH|WH/BK" ? 1 : 0;
    CHECK(white == 2);
}

TEST_CASE("blocked shops and withdrawn notes have no say on the errors of shops") {
    PracticeShop shop;
    shop.says("home", "shared", "WH", "WH/BK");
    shop.says("north", "shared", "TN", "WH/BK");
    REQUIRE(shop.catalog.shared_sayings().size() == 1);
    std::string north;
    for (const auto& row : shop.catalog.shops())
        if (row.name == "North") north = row.id;
    shop.catalog.change_shop(north, ShopChange::block, {});
    CHECK(shop.catalog.shared_sayings().empty());
    shop.catalog.change_shop(north, ShopChange::unblock, {});
    CHECK(shop.catalog.shared_sayings().size() == 1);
    RecordId own{};
    for (const auto& line : shop.catalog.note_lines(car))
        if (line.find("\"TN\"") == std::string::npos) own = record_id(line);
    shop.catalog.withdraw(own, WithdrawalReason::typo, today);
    CHECK(shop.catalog.shared_sayings().empty());
}
