// Does a transaction that was not committed leave no trace?
#include "sqlite/transaction.h"

#include <catch2/catch.hpp>

#include "kinds_of_error.h"
#include "sqlite/sqlite.h"
#include "temporary_folder.h"

using namespace tapbook::sqlite;

namespace {

Database with_table() {
    Database database = Database::in_memory();
    database.execute("CREATE TABLE t (x INTEGER) STRICT");
    return database;
}

std::int64_t rows(Database& database) {
    Statement count = database.prepare("SELECT count(*) FROM t");
    count.step();
    return count.integer(0);
}

}  // namespace

TEST_CASE("a transaction gives up by default") {
    Database database = with_table();
    {
        const Transaction transaction(database);
        database.execute("INSERT INTO t VALUES (1)");
        CHECK(database.in_transaction());
    }
    CHECK_FALSE(database.in_transaction());
    CHECK(rows(database) == 0);
}

TEST_CASE("a transaction gives up when an exception passes") {
    Database database = with_table();
    const auto fail = [&] {
        const Transaction transaction(database);
        database.execute("INSERT INTO t VALUES (1)");
        database.execute("INSERT INTO t VALUES ('no number')");
    };
    CHECK(kind_of_error(fail) == "constraint");
    CHECK_FALSE(database.in_transaction());
    CHECK(rows(database) == 0);
}

TEST_CASE("a committed transaction stays") {
    Database database = with_table();
    {
        Transaction transaction(database);
        database.execute("INSERT INTO t VALUES (1)");
        transaction.commit();
        CHECK_FALSE(database.in_transaction());
        CHECK(kind_of_error([&] { transaction.commit(); }) == "misuse");
    }
    CHECK(rows(database) == 1);
}

TEST_CASE("there is no transaction inside a transaction") {
    Database database = with_table();
    Transaction outer(database);
    database.execute("INSERT INTO t VALUES (1)");
    CHECK(kind_of_error([&] { Transaction(database, Transaction::Kind::write); }) != "none");
    CHECK(database.in_transaction());  // the outer one was not ended by the failure
    outer.commit();
    CHECK(rows(database) == 1);
}

TEST_CASE("committing what SQLite has given up by itself fails") {
    Database database = with_table();
    Transaction transaction(database);
    database.execute("INSERT INTO t VALUES (1); ROLLBACK");  // stands for the roll-back after a full disk
    CHECK(kind_of_error([&] { transaction.commit(); }) != "none");
    CHECK(rows(database) == 0);
}

TEST_CASE("a disk that is full is told apart and nothing is kept") {
    Database database = with_table();
    database.execute("PRAGMA max_page_count = 10");
    const auto fill = [&] {
        Transaction transaction(database);
        Statement insert = database.prepare("INSERT INTO t VALUES (?1)");
        for (int i = 0; i < 100'000; ++i) {
            insert.bind_all(i);
            insert.run();
        }
        transaction.commit();
    };
    CHECK(kind_of_error(fill) == "full or io");
    CHECK(rows(database) == 0);
}

TEST_CASE("a reading transaction sees one state of the file") {
    const TemporaryFolder folder;
    Database writer(folder / "x.db", Open::create);
    writer.execute("PRAGMA journal_mode = WAL; CREATE TABLE t (x INTEGER) STRICT");
    Database reader(folder / "x.db", Open::read_only);
    {
        const Transaction snapshot(reader, Transaction::Kind::read);
        CHECK(rows(reader) == 0);
        writer.execute("INSERT INTO t VALUES (1)");
        CHECK(rows(reader) == 0);
    }
    CHECK(rows(reader) == 1);
}
