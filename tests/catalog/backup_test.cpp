// Does a copy hold everything, and nothing that must not leave; is what was there never lost?
#include <fstream>
#include <iterator>

#include "a_job.h"

using namespace tapbook;
namespace fs = std::filesystem;

namespace {

std::string bytes_of(const fs::path& file) {
    std::ifstream in(file, std::ios::binary);
    return {std::istreambuf_iterator<char>(in), {}};
}

std::string secret_of(const fs::path& file, const char* column) {
    sqlite::Database database(file, sqlite::Open::read_only);
    auto rows = database.prepare(std::string("SELECT ") + column + " FROM secret");
    REQUIRE(rows.step());
    return std::string(rows.blob(0));
}

std::size_t files_in(const fs::path& folder) {
    return static_cast<std::size_t>(std::distance(fs::directory_iterator(folder), {}));
}

}  // namespace

TEST_CASE("a backup holds every record, also what still lies in the log of a catalog that is open") {
    const CatalogFolder folder;
    auto catalog = folder.create();
    catalog.add(one_car(), false, today);
    const auto report = backup_catalog(folder.file(), folder / "copy.backup", KeyInCopy::kept);
    CHECK(report.notes == 1);
    CHECK(report.holds_key);
    const Catalog copy = Catalog::open(folder / "copy.backup", Access::read);
    CHECK(copy.note_lines(car) == catalog.note_lines(car));
    CHECK(copy.own_shop().id == catalog.own_shop().id);
}

TEST_CASE("a backup does not overwrite what is there") {
    const CatalogFolder folder;
    folder.create();
    std::ofstream(folder / "copy.backup") << "mine";
    CHECK(trouble_of([&] { backup_catalog(folder.file(), folder / "copy.backup", KeyInCopy::kept); }) ==
          CatalogTrouble::already_there);
    CHECK(bytes_of(folder / "copy.backup") == "mine");
}

TEST_CASE("a backup without the key holds no byte of key, salt or customers, and cannot be written") {
    const CatalogFolder folder;
    catalog_with_job(folder);
    REQUIRE(bytes_of(folder.file()).find("bill 77") != std::string::npos);
    const auto report = backup_catalog(folder.file(), folder / "copy.backup", KeyInCopy::left_out);
    CHECK_FALSE(report.holds_key);
    const std::string bytes = bytes_of(folder / "copy.backup");
    CHECK(bytes.find("bill 77") == std::string::npos);
    CHECK(bytes.find(secret_of(folder.file(), "secret_key")) == std::string::npos);
    CHECK(bytes.find(secret_of(folder.file(), "salt")) == std::string::npos);
    const Catalog copy = Catalog::open(folder / "copy.backup", Access::read);
    CHECK(copy.jobs().size() == 1);
    CHECK(trouble_of([&] { Catalog::open(folder / "copy.backup", Access::write); }) == CatalogTrouble::not_permitted);
}

TEST_CASE("restoring sets aside what was there and brings back what was copied") {
    const CatalogFolder folder;
    {
        auto catalog = folder.create();
        catalog.add(one_car(), false, today);
        backup_catalog(folder.file(), folder / "copy.backup", KeyInCopy::kept);
        Batch more;
        more.notes = {note_at(tap_path, {{"positive", words("BN")}})};
        catalog.add(more, false, today);
    }
    const auto report = restore_catalog(folder / "copy.backup", folder.file(), today);
    CHECK(report.notes == 1);
    CHECK(folder.open().counts().notes == 1);
    CHECK(Catalog::open(report.set_aside, Access::read).counts().notes == 2);
}

TEST_CASE("a backup that is damaged or is none leaves the catalog and the folder as they were") {
    const CatalogFolder folder;
    {
        auto catalog = folder.create();
        catalog.add(one_car(), false, today);
    }
    backup_catalog(folder.file(), folder / "copy.backup", KeyInCopy::kept);
    const std::string whole = bytes_of(folder / "copy.backup");
    std::ofstream(folder / "cut.backup", std::ios::binary) << whole.substr(0, whole.size() / 2);
    std::ofstream(folder / "text.backup") << "no database at all, only a text of some length";
    const std::string before = bytes_of(folder.file());
    const auto files = files_in(folder.path());
    CHECK(trouble_of([&] { restore_catalog(folder / "cut.backup", folder.file(), today); }) == CatalogTrouble::damaged);
    CHECK(trouble_of([&] { restore_catalog(folder / "text.backup", folder.file(), today); }) ==
          CatalogTrouble::not_ours);
    CHECK(trouble_of([&] { restore_catalog(folder / "none.backup", folder.file(), today); }) ==
          CatalogTrouble::missing);
    CHECK(bytes_of(folder.file()) == before);
    CHECK(files_in(folder.path()) == files);
}

TEST_CASE("a catalog that somebody writes into is not replaced") {
    const CatalogFolder folder;
    folder.create();
    backup_catalog(folder.file(), folder / "copy.backup", KeyInCopy::kept);
    sqlite::Database other(folder.file());
    other.execute("BEGIN IMMEDIATE");
    CHECK(trouble_of([&] { restore_catalog(folder / "copy.backup", folder.file(), today); }) == CatalogTrouble::busy);
    other.execute("ROLLBACK");
    CHECK_FALSE(fs::exists(folder / ("shop.before-" + today + ".sqlite")));
}
