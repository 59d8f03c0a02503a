// Opening, hardening and questions about the connection as a whole. Running SQL is in database_statements.cpp.
#include "sqlite/database.h"

#include <sqlite3.h>

#include <utility>

#include "sqlite/error.h"

namespace tapbook::sqlite {
namespace {

struct Limit {
    int id;
    int most;
};

// Generous for our own SQL, far below SQLite's own limits. VACUUM needs to attach one file.
constexpr Limit limits[] = {
    {SQLITE_LIMIT_LENGTH, 64'000'000},
    {SQLITE_LIMIT_SQL_LENGTH, 1'000'000},
    {SQLITE_LIMIT_COLUMN, 500},
    {SQLITE_LIMIT_EXPR_DEPTH, 200},
    {SQLITE_LIMIT_COMPOUND_SELECT, 100},
    {SQLITE_LIMIT_VDBE_OP, 250'000},
    {SQLITE_LIMIT_FUNCTION_ARG, 100},
    {SQLITE_LIMIT_ATTACHED, 2},
    {SQLITE_LIMIT_LIKE_PATTERN_LENGTH, 1'000},
    {SQLITE_LIMIT_VARIABLE_NUMBER, 2'000},
    {SQLITE_LIMIT_TRIGGER_DEPTH, 10},
    {SQLITE_LIMIT_WORKER_THREADS, 0},
};

struct Switch {
    int id;
    int on;
};

constexpr Switch switches[] = {
    {SQLITE_DBCONFIG_DQS_DML, 0},   {SQLITE_DBCONFIG_DQS_DDL, 0},     {SQLITE_DBCONFIG_TRUSTED_SCHEMA, 0},
    {SQLITE_DBCONFIG_DEFENSIVE, 1}, {SQLITE_DBCONFIG_ENABLE_FKEY, 1}, {SQLITE_DBCONFIG_ENABLE_LOAD_EXTENSION, 0},
};

// SQLite's account of its own memory is read by nobody and costs a lock for each allocation. It may be switched off
// only before SQLite starts.
void leave_out_memory_account() {
    static const int done = sqlite3_config(SQLITE_CONFIG_MEMSTATUS, 0);
    static_cast<void>(done);
}

// A path as a file: URI, where every byte that could mean something in a URI is written %XX.
std::string file_uri(const std::filesystem::path& file) {
    static constexpr char digits[] = "0123456789ABCDEF";
    std::string uri = "file:";
    for (const char letter : std::filesystem::absolute(file).string()) {
        const auto byte = static_cast<unsigned char>(letter);
        const bool plain = (byte >= 'a' && byte <= 'z') || (byte >= 'A' && byte <= 'Z') ||
                           (byte >= '0' && byte <= '9') || byte == '/' || byte == '-' || byte == '_' || byte == '.';
        if (plain) {
            uri += letter;
        } else {
            uri += {'%', digits[byte >> 4], digits[byte & 15]};
        }
    }
    return uri;
}

std::string name_of(const std::filesystem::path& file, Open mode) {
    return mode == Open::immutable ? file_uri(file) + "?immutable=1" : file_uri(file);
}

int flags_of(Open mode) {
    switch (mode) {
        case Open::create:
            return SQLITE_OPEN_READWRITE | SQLITE_OPEN_CREATE | SQLITE_OPEN_URI;
        case Open::read_write:
            return SQLITE_OPEN_READWRITE | SQLITE_OPEN_URI;
        case Open::read_only:
        case Open::immutable:
            break;
    }
    return SQLITE_OPEN_READONLY | SQLITE_OPEN_URI;
}

}  // namespace

Database::Database(const std::filesystem::path& file, Open mode, std::chrono::milliseconds busy_timeout)
    : Database(name_of(file, mode), flags_of(mode), busy_timeout, file.string()) {}

Database Database::in_memory() {
    return Database(":memory:", SQLITE_OPEN_READWRITE | SQLITE_OPEN_CREATE | SQLITE_OPEN_MEMORY, {}, "memory");
}

Database::Database(const std::string& name, int flags, std::chrono::milliseconds busy_timeout, const std::string& shown)
    : busy_timeout_(busy_timeout) {
    leave_out_memory_account();
    const int more = SQLITE_OPEN_NOMUTEX | SQLITE_OPEN_EXRESCODE;
    const int result = sqlite3_open_v2(name.c_str(), &database_, flags | more, nullptr);
    if (result != SQLITE_OK) {
        const Error error = last_error(database_, "opening " + shown);
        sqlite3_close_v2(database_);
        throw error;
    }
    sqlite3_busy_timeout(database_, static_cast<int>(busy_timeout.count()));
    harden();
}

Database::~Database() {
    sqlite3_close_v2(database_);
}

Database::Database(Database&& other) noexcept
    : database_(std::exchange(other.database_, nullptr)), busy_timeout_(other.busy_timeout_) {}

Database& Database::operator=(Database&& other) noexcept {
    std::swap(database_, other.database_);
    std::swap(busy_timeout_, other.busy_timeout_);
    return *this;
}

void Database::harden() {
    for (const Switch& one : switches) sqlite3_db_config(database_, one.id, one.on, nullptr);
    for (const Limit& one : limits) sqlite3_limit(database_, one.id, one.most);
}

std::int64_t Database::number(std::string_view pragma) {
    Statement statement = prepare(pragma);
    if (!statement.step()) throw misuse(std::string(pragma) + " gave no row");
    return statement.integer(0);
}

std::int32_t Database::user_version() {
    return static_cast<std::int32_t>(number("PRAGMA user_version"));
}

void Database::set_user_version(std::int32_t version) {
    execute("PRAGMA user_version = " + std::to_string(version));
}

std::int32_t Database::application_id() {
    return static_cast<std::int32_t>(number("PRAGMA application_id"));
}

void Database::set_application_id(std::int32_t id) {
    execute("PRAGMA application_id = " + std::to_string(id));
}

std::int64_t Database::page_count() {
    return number("PRAGMA page_count");
}

std::int64_t Database::last_insert_rowid() const {
    return sqlite3_last_insert_rowid(database_);
}

std::int64_t Database::changes() const {
    return sqlite3_changes64(database_);
}

bool Database::in_transaction() const {
    return sqlite3_get_autocommit(database_) == 0;
}

}  // namespace tapbook::sqlite
