// Running SQL text: one statement with nothing behind it, or a script whose errors name their line.
#include <sqlite3.h>

#include <algorithm>

#include "sqlite/database.h"
#include "sqlite/error.h"

namespace tapbook::sqlite {
namespace {

struct Prepared {
    int result;
    sqlite3_stmt* statement;  // null for blanks and comments, and when `result` is an error
    std::string_view rest;    // what follows the first statement
};

Prepared prepare_first(sqlite3* database, std::string_view sql) {
    sqlite3_stmt* statement = nullptr;
    const char* tail = nullptr;
    // A size beyond int would be cut silently; the limit is far below it.
    const std::size_t most = static_cast<std::size_t>(sqlite3_limit(database, SQLITE_LIMIT_SQL_LENGTH, -1));
    if (sql.size() > most) throw Error(SQLITE_TOOBIG, "SQL text longer than " + std::to_string(most) + " bytes");
    const int result = sqlite3_prepare_v2(database, sql.data(), static_cast<int>(sql.size()), &statement, &tail);
    return {result, statement, sql.substr(tail - sql.data())};
}

std::string_view without_leading_blanks(std::string_view sql) {
    const std::size_t first = sql.find_first_not_of(" \t\r\n\f");
    return first == std::string_view::npos ? std::string_view() : sql.substr(first);
}

bool is_blank_or_comment(sqlite3* database, std::string_view sql) {
    sql = without_leading_blanks(sql);
    while (!sql.empty()) {
        const Prepared next = prepare_first(database, sql);
        sqlite3_finalize(next.statement);
        const bool stands_still = next.rest.size() == sql.size();  // at a zero byte
        if (next.result != SQLITE_OK || next.statement != nullptr || stands_still) return false;
        sql = without_leading_blanks(next.rest);
    }
    return true;
}

// "line 3 of the script" for the byte `offset` of it.
std::string line_words(std::string_view script, std::size_t offset) {
    const std::string_view before = script.substr(0, offset);
    return "line " + std::to_string(1 + std::count(before.begin(), before.end(), '\n')) + " of the script";
}

}  // namespace

Statement Database::prepare(std::string_view sql) {
    const Prepared prepared = prepare_first(database_, sql);
    if (prepared.result != SQLITE_OK) throw last_error(database_, "preparing " + std::string(sql));
    if (prepared.statement == nullptr) throw misuse("no statement in \"" + std::string(sql) + "\"");
    Statement statement(prepared.statement);
    if (!is_blank_or_comment(database_, prepared.rest)) {
        throw misuse("text after the first statement: " + std::string(without_leading_blanks(prepared.rest)));
    }
    return statement;
}

void Database::execute(std::string_view script) {
    std::string_view rest = without_leading_blanks(script);
    while (!rest.empty()) {
        const std::size_t start = script.size() - rest.size();
        const Prepared prepared = prepare_first(database_, rest);
        if (prepared.result != SQLITE_OK) {
            const int within = std::max(0, sqlite3_error_offset(database_));
            throw last_error(database_, line_words(script, start + static_cast<std::size_t>(within)));
        }
        if (prepared.rest.size() == rest.size()) throw misuse(line_words(script, start) + ": a zero byte");
        if (prepared.statement != nullptr) {
            Statement statement(prepared.statement);
            try {
                statement.run();
            } catch (const Error& error) {
                throw Error(error.extended_code(), line_words(script, start) + ": " + error.what());
            }
        }
        rest = without_leading_blanks(prepared.rest);
    }
}

}  // namespace tapbook::sqlite
