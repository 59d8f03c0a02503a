// Is a connection opened as asked, hardened, and honest about what went wrong?
#include "sqlite/database.h"

#include <catch2/catch.hpp>
#include <fstream>

#include "kinds_of_error.h"
#include "sqlite/sqlite.h"
#include "temporary_folder.h"

using namespace tapbook::sqlite;

namespace {

void write_bytes(const std::filesystem::path& file, const std::string& bytes) {
    std::ofstream(file, std::ios::binary) << bytes;
}

std::string text_of(Database& database, const std::string& sql) {
    Statement statement = database.prepare(sql);
    return statement.step() ? std::string(statement.text(0)) : "no row";
}

void make_table(const std::filesystem::path& file, int rows = 3) {
    Database database(file, Open::create);
    database.execute("CREATE TABLE t (x INTEGER, filler TEXT) STRICT; CREATE INDEX t_filler ON t (filler)");
    Transaction transaction(database);
    Statement insert = database.prepare("INSERT INTO t VALUES (?1, ?2)");
    for (int i = 0; i < rows; ++i) {
        insert.bind_all(i, std::string(100, static_cast<char>('a' + i % 26)) + std::to_string(i));
        insert.run();
    }
    transaction.commit();
}

}  // namespace

TEST_CASE("only create makes a missing file") {
    const TemporaryFolder folder;
    for (const Open mode : {Open::read_write, Open::read_only, Open::immutable}) {
        CHECK(kind_of_error([&] { Database(folder / "missing.db", mode); }) == "cannot open");
    }
    CHECK(kind_of_error([&] { Database(folder / "no-folder/x.db", Open::create); }) == "cannot open");
    CHECK(std::filesystem::is_empty(folder.path()));
    make_table(folder / "made.db");
    CHECK(std::filesystem::exists(folder / "made.db"));
}

TEST_CASE("a name with spaces, percent signs, question marks and umlauts is just a name") {
    const TemporaryFolder folder;
    const std::string name = "a b%41?mode=memory#\xC3\xA4.db";
    make_table(folder / name);
    CHECK(std::filesystem::exists(folder / name));
    for (const Open mode : {Open::read_write, Open::read_only, Open::immutable}) {
        Database database(folder / name, mode);
        CHECK(database.page_count() > 1);
    }
}

TEST_CASE("what is opened for reading cannot be written") {
    const TemporaryFolder folder;
    make_table(folder / "x.db");
    for (const Open mode : {Open::read_only, Open::immutable}) {
        Database database(folder / "x.db", mode);
        CHECK(kind_of_error([&] { database.execute("DELETE FROM t"); }) == "read only");
        CHECK(kind_of_error([&] { database.set_user_version(2); }) == "read only");
        Statement count = database.prepare("SELECT count(*) FROM t");
        REQUIRE(count.step());
        CHECK(count.integer(0) == 3);
    }
}

TEST_CASE("a file that is no database is told by the first question") {
    const TemporaryFolder folder;
    write_bytes(folder / "text.db", "This is a letter to a friend and no database. " + std::string(1000, '.'));
    Database database(folder / "text.db", Open::read_write);
    CHECK(kind_of_error([&] { database.application_id(); }) == "not a database");
    CHECK(kind_of_error([&] { database.quick_check(); }) == "not a database");
}

TEST_CASE("user version and application id are kept in the file") {
    const TemporaryFolder folder;
    {
        Database database(folder / "x.db", Open::create);
        CHECK(database.user_version() == 0);
        database.set_user_version(12);
        database.set_application_id(-2);
    }
    Database database(folder / "x.db", Open::read_only);
    CHECK(database.user_version() == 12);
    CHECK(database.application_id() == -2);
}

TEST_CASE("every connection is hardened") {
    Database database = Database::in_memory();
    database.execute(
        "CREATE TABLE t (x INTEGER) STRICT; CREATE TABLE child (x INTEGER REFERENCES parent (x)) STRICT;"
        "CREATE TABLE parent (x INTEGER PRIMARY KEY) STRICT");
    CHECK_THROWS_WITH(database.prepare("SELECT \"misspelt\" FROM t"), Catch::Contains("no such column: misspelt"));
    CHECK_THROWS_WITH(database.execute("CREATE INDEX i ON t (\"misspelt\")"), Catch::Contains("misspelt"));
    CHECK_THROWS_WITH(database.execute("DELETE FROM sqlite_schema"), Catch::Contains("may not be modified"));
    CHECK(kind_of_error([&] { database.execute("INSERT INTO child VALUES (1)"); }) == "constraint");
    CHECK_THROWS_WITH(database.prepare("SELECT load_extension('x')").run(), Catch::Contains("not authorized"));
    Statement trusted = database.prepare("PRAGMA trusted_schema");
    REQUIRE(trusted.step());
    CHECK(trusted.integer(0) == 0);
    trusted.reset();
    database.execute("PRAGMA writable_schema = ON");
    CHECK_THROWS_WITH(database.execute("DELETE FROM sqlite_schema"), Catch::Contains("may not be modified"));
    std::string deep = "1";
    for (int i = 0; i < 300; ++i) deep += "+1";
    CHECK_THROWS_WITH(database.prepare("SELECT " + deep), Catch::Contains("maximum depth 200"));
    database.execute("VACUUM");  // needs the one attached file that is left to us
}

TEST_CASE("memory mapping is off") {
    const TemporaryFolder folder;
    make_table(folder / "x.db");
    Database database(folder / "x.db", Open::read_only);
    Statement mapped = database.prepare("PRAGMA mmap_size");
    REQUIRE(mapped.step());
    CHECK(mapped.integer(0) == 0);
}

TEST_CASE("an error in a script names its line") {
    Database database = Database::in_memory();
    CHECK_THROWS_WITH(database.execute("CREATE TABLE t (x);\n\nINSERT INTO t\n  VALUES (1, 2);"),
                      Catch::Contains("line 3 of the script"));
    CHECK_THROWS_WITH(database.execute("-- a comment\nSELECT\n  nonsense;"), Catch::Contains("line 3 of the script"));
    CHECK_THROWS_WITH(database.execute("SELECT 1;\nINSERT INTO t VALUES (1);\nSELECT abs(-9223372036854775808);"),
                      Catch::Contains("line 3 of the script") && Catch::Contains("integer overflow"));
    CHECK(text_of(database, "SELECT CAST(count(*) AS TEXT) FROM t") ==
          "1");  // what stood before the failure has happened
    CHECK(kind_of_error([&] { database.execute(std::string_view("SELECT 1;\0DROP TABLE t", 22)); }) == "misuse");
    database.execute("");
    database.execute("  -- nothing but words\n");
}

TEST_CASE("a second writer waits as long as told and then is busy") {
    const TemporaryFolder folder;
    make_table(folder / "x.db");
    Database first(folder / "x.db");
    Database second(folder / "x.db", Open::read_write, std::chrono::milliseconds(120));
    const Transaction held(first);
    const auto start = std::chrono::steady_clock::now();
    CHECK(kind_of_error([&] { Transaction(second, Transaction::Kind::write); }) == "busy");
    const auto waited = std::chrono::steady_clock::now() - start;
    CHECK(waited >= std::chrono::milliseconds(100));
    CHECK(waited < std::chrono::seconds(4));  // not the five seconds of the default
}

TEST_CASE("a backup of a database in use holds what was committed and nothing else") {
    const TemporaryFolder folder;
    make_table(folder / "x.db", 2000);
    Database database(folder / "x.db");
    CHECK(text_of(database, "PRAGMA journal_mode = WAL") == "wal");
    database.execute("INSERT INTO t VALUES (-1, 'committed')");
    Database writer(folder / "x.db");
    const Transaction open(writer);
    writer.execute("DELETE FROM t");
    database.backup_to(folder / "copy.db");

    Database copy(folder / "copy.db", Open::read_write);
    CHECK(text_of(copy, "SELECT CAST(count(*) AS TEXT) FROM t") == "2001");
    CHECK(copy.quick_check().empty());
}

TEST_CASE("a backup writes no companions and takes the permissions of an empty file made for it") {
    const TemporaryFolder folder;
    make_table(folder / "x.db");
    Database database(folder / "x.db");
    const auto copy = folder / "copy.db";
    write_bytes(copy, "");
    std::filesystem::permissions(copy, std::filesystem::perms::owner_read | std::filesystem::perms::owner_write);
    database.backup_to(copy);
    CHECK(std::filesystem::status(copy).permissions() ==
          (std::filesystem::perms::owner_read | std::filesystem::perms::owner_write));
    for (const char* ending : {"-journal", "-wal", "-shm"})
        CHECK_FALSE(std::filesystem::exists(copy.string() + ending));
}

TEST_CASE("a backup never overwrites, and a failed one leaves no file") {
    const TemporaryFolder folder;
    make_table(folder / "x.db");
    Database database(folder / "x.db");
    write_bytes(folder / "letter.txt", "keep me");
    CHECK(kind_of_error([&] { database.backup_to(folder / "letter.txt"); }) == "cannot open");
    CHECK(kind_of_error([&] { database.backup_to(folder.path()); }) == "cannot open");
    CHECK(std::filesystem::file_size(folder / "letter.txt") == 7);

    write_bytes(folder / "text.db", std::string(5000, 'x'));
    Database broken(folder / "text.db");
    CHECK(kind_of_error([&] { broken.backup_to(folder / "copy.db"); }) == "not a database");
    CHECK_FALSE(std::filesystem::exists(folder / "copy.db"));
}

TEST_CASE("quick check is silent on a sound file and speaks of a damaged one") {
    const TemporaryFolder folder;
    make_table(folder / "x.db", 2000);
    {
        Database database(folder / "x.db");
        CHECK(database.quick_check().empty());
    }
    {
        std::fstream file(folder / "x.db", std::ios::in | std::ios::out | std::ios::binary);
        file.seekp(2 * 4096);  // the third page
        file << std::string(4096, '\x7f');
    }
    Database database(folder / "x.db");
    const std::vector<std::string> damage = database.quick_check();
    CHECK_FALSE(damage.empty());
    CHECK(damage.size() <= 100);
}

TEST_CASE("a database can be moved") {
    Database database = Database::in_memory();
    database.execute("CREATE TABLE t (x)");
    Database moved = std::move(database);
    moved.execute("INSERT INTO t VALUES (1)");
    CHECK(moved.changes() == 1);
}
