// How is a SQLite file opened so that it cannot surprise us, and what is asked of the connection as a whole?
// Every connection is hardened at opening: text in double quotes is never a string, the schema is not trusted,
// DEFENSIVE and foreign keys are on, and lengths, depths and attached files are limited
// (https://www.sqlite.org/security.html).
#pragma once

#include <chrono>
#include <cstdint>
#include <filesystem>
#include <string>
#include <string_view>
#include <vector>

#include "sqlite/statement.h"

struct sqlite3;

namespace tapbook::sqlite {

enum class Open {
    create,      // read and write; made when missing
    read_write,  // the file must be there
    read_only,   // the file must be there; in WAL mode its folder must be writable or its -shm file there
    immutable,   // read only, no locks, no -wal looked at. REQUIRES: nobody writes the file meanwhile
};

class Database {
  public:
    // Waits up to `busy_timeout` for locks of other connections, then throws Error with is_busy(). The file is first
    // read by the first statement: what is no database is told then. Throws Error (is_cannot_open()). For one thread at
    // a time.
    explicit Database(const std::filesystem::path& file, Open mode = Open::read_write,
                      std::chrono::milliseconds busy_timeout = std::chrono::seconds(5));

    // An empty database without a file.
    static Database in_memory();

    // Statements that are still alive keep the connection open until they go.
    ~Database();
    Database(Database&& other) noexcept;
    Database& operator=(Database&& other) noexcept;

    // Runs every statement of `script` in order, passing over rows. Throws Error naming the line on which the failing
    // statement starts, or the very line of a mistake in its text; the statements before it have taken effect, and stay
    // unless a transaction around them is given up. A parameter is refused.
    void execute(std::string_view script);

    // Throws Error when `sql` is not one statement followed by nothing but blanks and comments.
    Statement prepare(std::string_view sql);

    // The two numbers in the file's header; a number that does not fit is refused by the type.
    std::int32_t user_version();
    void set_user_version(std::int32_t version);
    std::int32_t application_id();
    void set_application_id(std::int32_t id);
    std::int64_t page_count();

    std::int64_t last_insert_rowid() const;
    std::int64_t changes() const;  // rows changed by the last INSERT, UPDATE or DELETE
    bool in_transaction() const;

    // Copies this database as it is now with the online backup API. `file` must be missing or empty (so that its owner
    // may set its permissions first). Throws Error, and then leaves no file.
    void backup_to(const std::filesystem::path& file);

    // At most 100 sentences about damage; empty when none is found. Sizes of cells are checked as well.
    std::vector<std::string> quick_check();

    sqlite3* raw() const { return database_; }  // for the files of this folder

  private:
    Database(const std::string& name, int flags, std::chrono::milliseconds busy_timeout, const std::string& shown);
    void harden();
    std::int64_t number(std::string_view pragma);

    sqlite3* database_ = nullptr;
    std::chrono::milliseconds busy_timeout_;
};

}  // namespace tapbook::sqlite
