// The kinds of SQLite's result codes that callers tell apart.
#include "sqlite/error.h"

#include <sqlite3.h>

namespace tapbook::sqlite {

Error::Error(int extended_code, const std::string& message)
    : std::runtime_error(message), extended_code_(extended_code) {}

bool Error::is_busy() const {
    return code() == SQLITE_BUSY || code() == SQLITE_LOCKED;
}
bool Error::is_full_or_io() const {
    return code() == SQLITE_FULL || code() == SQLITE_IOERR;
}
bool Error::is_corrupt() const {
    return code() == SQLITE_CORRUPT;
}
bool Error::is_not_a_database() const {
    return code() == SQLITE_NOTADB;
}
bool Error::is_read_only() const {
    return code() == SQLITE_READONLY;
}
bool Error::is_cannot_open() const {
    return code() == SQLITE_CANTOPEN;
}
bool Error::is_constraint() const {
    return code() == SQLITE_CONSTRAINT;
}
bool Error::is_refused_statement() const {
    return code() == SQLITE_ERROR;
}
bool Error::is_interrupted() const {
    return code() == SQLITE_INTERRUPT;
}
bool Error::is_misuse() const {
    return code() == SQLITE_MISUSE;
}

Error last_error(sqlite3* database, const std::string& doing) {
    if (database == nullptr) return Error(SQLITE_NOMEM, doing + ": out of memory");
    return Error(sqlite3_extended_errcode(database), doing + ": " + sqlite3_errmsg(database));
}

Error misuse(const std::string& message) {
    return Error(SQLITE_MISUSE, message);
}

}  // namespace tapbook::sqlite
