// Running and reading a statement over SQLite's C interface; filling it is in statement_bind.cpp.
#include "sqlite/statement.h"

#include <sqlite3.h>

#include <utility>

#include "sqlite/error.h"

namespace tapbook::sqlite {
namespace {

const char* type_words(int type) {
    switch (type) {
        case SQLITE_INTEGER:
            return "an integer";
        case SQLITE_FLOAT:
            return "a real";
        case SQLITE_TEXT:
            return "a text";
        case SQLITE_BLOB:
            return "a blob";
        default:  // not our enum
            return "NULL";
    }
}

Error failed(sqlite3_stmt* statement) {
    return last_error(sqlite3_db_handle(statement), std::string("running ") + sqlite3_sql(statement));
}

std::string_view bytes_of(const void* bytes, int size) {
    return bytes == nullptr ? std::string_view() : std::string_view(static_cast<const char*>(bytes), size);
}

}  // namespace

Statement::Statement(sqlite3_stmt* owned)
    : statement_(owned),
      bound_(sqlite3_bind_parameter_count(owned), false),
      unbound_(static_cast<int>(bound_.size())) {}

Statement::~Statement() {
    sqlite3_finalize(statement_);
}

Statement::Statement(Statement&& other) noexcept
    : statement_(std::exchange(other.statement_, nullptr)),
      bound_(std::move(other.bound_)),
      unbound_(other.unbound_),
      has_row_(std::exchange(other.has_row_, false)) {}

Statement& Statement::operator=(Statement&& other) noexcept {
    std::swap(statement_, other.statement_);
    std::swap(bound_, other.bound_);
    std::swap(unbound_, other.unbound_);
    std::swap(has_row_, other.has_row_);
    return *this;
}

bool Statement::step() {
    if (unbound_ > 0) refuse_unbound();
    const int result = sqlite3_step(statement_);
    has_row_ = result == SQLITE_ROW;
    if (has_row_) return true;
    if (result != SQLITE_DONE) {
        const Error error = failed(statement_);
        sqlite3_reset(statement_);
        throw error;
    }
    // What a commit has to say is said by the last step; the reset after it repeats no error.
    sqlite3_reset(statement_);
    return false;
}

void Statement::run() {
    while (step()) {
    }
}

void Statement::reset() {
    has_row_ = false;
    sqlite3_reset(statement_);  // repeats the error of the last step, which was thrown there
}

int Statement::column_count() const {
    return sqlite3_column_count(statement_);
}

std::string Statement::column_name(int column) const {
    const char* name = sqlite3_column_name(statement_, column);
    if (name == nullptr) throw misuse("no column " + std::to_string(column) + " in " + sqlite3_sql(statement_));
    return name;
}

std::int64_t Statement::integer(int column) const {
    expect_type(column, SQLITE_INTEGER, "an integer");
    return sqlite3_column_int64(statement_, column);
}

double Statement::real(int column) const {
    if (type_of(column) != SQLITE_INTEGER) expect_type(column, SQLITE_FLOAT, "a real");
    return sqlite3_column_double(statement_, column);
}

std::string_view Statement::text(int column) const {
    expect_type(column, SQLITE_TEXT, "a text");
    const unsigned char* bytes = sqlite3_column_text(statement_, column);
    return bytes_of(bytes, sqlite3_column_bytes(statement_, column));
}

std::string_view Statement::blob(int column) const {
    expect_type(column, SQLITE_BLOB, "a blob");
    const void* bytes = sqlite3_column_blob(statement_, column);
    return bytes_of(bytes, sqlite3_column_bytes(statement_, column));
}

// The type is asked for once where the cell is what nearly every cell is: a note has fifty, most of them NULL.
std::optional<std::int64_t> Statement::optional_integer(int column) const {
    const int type = type_of(column);
    if (type == SQLITE_NULL) return std::nullopt;
    if (type == SQLITE_INTEGER) return sqlite3_column_int64(statement_, column);
    return integer(column);
}

std::optional<double> Statement::optional_real(int column) const {
    return is_null(column) ? std::nullopt : std::optional(real(column));
}

std::optional<std::string_view> Statement::optional_text(int column) const {
    return is_null(column) ? std::nullopt : std::optional(text(column));
}

std::optional<std::string_view> Statement::optional_blob(int column) const {
    return is_null(column) ? std::nullopt : std::optional(blob(column));
}

bool Statement::is_null(int column) const {
    return type_of(column) == SQLITE_NULL;
}

Value Statement::value(int column) const {
    switch (type_of(column)) {
        case SQLITE_INTEGER:
            return integer(column);
        case SQLITE_FLOAT:
            return real(column);
        case SQLITE_TEXT:
            return std::string(text(column));
        case SQLITE_BLOB:
            return Blob{std::string(blob(column))};
        default:  // not our enum
            return std::monostate();
    }
}

int Statement::type_of(int column) const {
    if (!has_row_) throw misuse(std::string("no row to read in ") + sqlite3_sql(statement_));
    if (column < 0 || column >= sqlite3_data_count(statement_)) {
        throw misuse("no column " + std::to_string(column) + " in " + sqlite3_sql(statement_));
    }
    return sqlite3_column_type(statement_, column);
}

void Statement::expect_type(int column, int wanted, const char* words) const {
    const int type = type_of(column);
    if (type == wanted) return;
    throw misuse("column " + column_name(column) + " is " + type_words(type) + ", not " + words + ", in " +
                 sqlite3_sql(statement_));
}

}  // namespace tapbook::sqlite
