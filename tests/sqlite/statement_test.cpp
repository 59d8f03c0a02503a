// Does a statement refuse what SQLite would let pass in silence, and give back what was put in?
#include <catch2/catch.hpp>
#include <limits>

#include "kinds_of_error.h"
#include "sqlite/sqlite.h"

using namespace tapbook::sqlite;

TEST_CASE("text after the first statement is refused, blanks and comments are not") {
    Database database = Database::in_memory();
    for (const char* good :
         {"SELECT 1", "SELECT 1;", "SELECT 1 ; \n\t", "SELECT 1; -- why", "SELECT 1; /* why */ ;; -- so"}) {
        INFO(good);
        CHECK(database.prepare(good).step());
    }
    const std::string zero_byte("SELECT 1;\0SELECT 2", 18);
    for (const std::string& bad : {std::string("SELECT 1; SELECT 2"), std::string("SELECT 1;;DROP TABLE t"),
                                   std::string("SELECT 1; nonsense"), std::string("SELECT 1; 'open"), zero_byte}) {
        INFO(bad);
        CHECK(kind_of_error([&] { database.prepare(bad); }) == "misuse");
    }
    for (const char* empty : {"", "  ", "-- nothing", ";"}) {
        INFO(empty);
        CHECK(kind_of_error([&] { database.prepare(empty); }) == "misuse");
    }
}

TEST_CASE("a statement with an unbound parameter does not step, and says which") {
    Database database = Database::in_memory();
    Statement statement = database.prepare("SELECT ?1, ?2");
    CHECK(statement.parameter_count() == 2);
    statement.bind(1, 7);
    CHECK_THROWS_WITH(statement.step(), Catch::Contains("parameter 2 was never bound"));
    statement.bind(2, std::nullopt);
    CHECK(statement.step());
    CHECK(kind_of_error([&] { database.execute("SELECT ?1"); }) == "misuse");
}

TEST_CASE("bindings stay over a reset") {
    Database database = Database::in_memory();
    Statement statement = database.prepare("SELECT ?1");
    statement.bind(1, 7);
    REQUIRE(statement.step());
    statement.reset();
    REQUIRE(statement.step());
    CHECK(statement.integer(0) == 7);
}

TEST_CASE("bind_all wants exactly one value for each parameter") {
    Database database = Database::in_memory();
    Statement statement = database.prepare("SELECT ?1, ?2");
    CHECK(kind_of_error([&] { statement.bind_all(1); }) == "misuse");
    CHECK(kind_of_error([&] { statement.bind_all(1, 2, 3); }) == "misuse");
    statement.bind_all(1, 2);
    REQUIRE(statement.step());
    statement.bind_all(3, 4);  // resets the running statement
    REQUIRE(statement.step());
    CHECK(statement.integer(1) == 4);
    CHECK(kind_of_error([&] { statement.bind(3, 1); }) != "none");
    CHECK(kind_of_error([&] { statement.bind(0, 1); }) != "none");
}

TEST_CASE("every kind of value comes back as it went in") {
    Database database = Database::in_memory();
    const std::string with_zero("a\0b", 3);
    const Value values[] = {
        std::monostate(), std::numeric_limits<std::int64_t>::min(), 0.1, std::string(), with_zero, Blob{},
        Blob{with_zero}};
    Statement statement = database.prepare("SELECT ?1");
    for (const Value& value : values) {
        statement.bind_all(value);
        REQUIRE(statement.step());
        CHECK(statement.value(0) == value);
    }
}

TEST_CASE("each type binds as its storage class") {
    Database database = Database::in_memory();
    Statement statement = database.prepare("SELECT typeof(?1)");
    const auto type = [&](const auto& value) {
        statement.bind_all(value);
        statement.step();
        return std::string(statement.text(0));
    };
    CHECK(type(true) == "integer");
    CHECK(type(static_cast<unsigned char>(3)) == "integer");
    CHECK(type(std::size_t{3}) == "integer");
    CHECK(type(1.5F) == "real");
    CHECK(type("literal") == "text");
    CHECK(type(std::string_view()) == "text");  // a null pointer inside, still an empty text
    CHECK(type(BlobView{}) == "blob");
    CHECK(type(std::optional<std::string>()) == "null");
    CHECK(type(std::optional<std::string>("x")) == "text");
    CHECK(type(std::numeric_limits<double>::quiet_NaN()) == "null");
    CHECK(kind_of_error([&] { statement.bind(1, std::numeric_limits<std::uint64_t>::max()); }) == "misuse");
}

TEST_CASE("a cell is read only as what it is") {
    Database database = Database::in_memory();
    Statement row = database.prepare("SELECT 7, 0.5, 'text', x'00ff', NULL AS blank");
    CHECK(kind_of_error([&] { row.integer(0); }) == "misuse");  // no row yet
    REQUIRE(row.step());
    CHECK(row.integer(0) == 7);
    CHECK(row.real(0) == 7.0);
    CHECK(row.real(1) == 0.5);
    CHECK(row.text(2) == "text");
    CHECK(row.blob(3) == std::string_view("\x00\xff", 2));
    CHECK(row.is_null(4));
    CHECK(row.column_count() == 5);
    CHECK(row.column_name(4) == "blank");
    for (const int column : {1, 2, 3, 4, 5, -1}) {
        INFO(column);
        CHECK(kind_of_error([&] { row.integer(column); }) == "misuse");
    }
    CHECK(kind_of_error([&] { row.text(0); }) == "misuse");
    CHECK(kind_of_error([&] { row.blob(2); }) == "misuse");
    CHECK(kind_of_error([&] { row.real(2); }) == "misuse");
    CHECK(kind_of_error([&] { row.column_name(5); }) == "misuse");
}

TEST_CASE("an optional cell is absent for NULL only") {
    Database database = Database::in_memory();
    Statement row = database.prepare("SELECT NULL, 7, 0.5, 'text', x'41'");
    REQUIRE(row.step());
    CHECK_FALSE(row.optional_integer(0).has_value());
    CHECK_FALSE(row.optional_real(0).has_value());
    CHECK_FALSE(row.optional_text(0).has_value());
    CHECK_FALSE(row.optional_blob(0).has_value());
    CHECK(row.optional_integer(1) == 7);
    CHECK(row.optional_real(2) == 0.5);
    CHECK(row.optional_text(3) == "text");
    CHECK(row.optional_blob(4) == "A");
    CHECK(kind_of_error([&] { row.optional_integer(3); }) == "misuse");
}

TEST_CASE("a loop ends after the last row and may be run again") {
    Database database = Database::in_memory();
    Statement rows = database.prepare("VALUES (1), (2), (3)");
    for (int round = 0; round < 2; ++round) {
        std::int64_t sum = 0;
        while (rows.step()) sum += rows.integer(0);
        CHECK(sum == 6);
    }
}

TEST_CASE("a broken constraint is told apart and leaves the statement usable") {
    Database database = Database::in_memory();
    database.execute("CREATE TABLE t (x INTEGER PRIMARY KEY, y TEXT) STRICT");
    Statement insert = database.prepare("INSERT INTO t VALUES (?1, ?2)");
    insert.bind_all(1, "a");
    insert.run();
    CHECK(kind_of_error([&] { insert.run(); }) == "constraint");
    insert.bind_all(2, BlobView{"not a text"});
    CHECK(kind_of_error([&] { insert.run(); }) == "constraint");
    insert.bind_all(2, "b");
    insert.run();
    CHECK(database.last_insert_rowid() == 2);
    CHECK(database.changes() == 1);
}

TEST_CASE("a statement may outlive its database and be moved") {
    std::optional<Statement> statement;
    {
        Database database = Database::in_memory();
        statement = database.prepare("SELECT 5");
    }
    Statement moved = std::move(*statement);
    REQUIRE(moved.step());
    CHECK(moved.integer(0) == 5);
}
