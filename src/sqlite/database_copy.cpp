// Copying a live database and looking for damage in it (https://www.sqlite.org/backup.html, PRAGMA quick_check).
#include <sqlite3.h>

#include <algorithm>
#include <thread>

#include "sqlite/database.h"
#include "sqlite/error.h"

namespace tapbook::sqlite {
namespace {

constexpr auto pause = std::chrono::milliseconds(20);

void copy_all_pages(sqlite3* from, sqlite3* to, std::chrono::milliseconds patience) {
    sqlite3_backup* backup = sqlite3_backup_init(to, "main", from, "main");
    if (backup == nullptr) throw last_error(to, "backing up");
    int result = sqlite3_backup_step(backup, -1);
    for (auto waited = pause; (result == SQLITE_BUSY || result == SQLITE_LOCKED) && waited <= patience;
         waited += pause) {
        std::this_thread::sleep_for(pause);
        result = sqlite3_backup_step(backup, -1);
    }
    const int finished = sqlite3_backup_finish(backup);
    if (finished != SQLITE_OK) throw Error(finished, std::string("backing up: ") + sqlite3_errstr(finished));
    if (result != SQLITE_DONE) throw Error(result, std::string("backing up: ") + sqlite3_errstr(result));
}

void remove_with_companions(const std::filesystem::path& file) {
    for (const char* ending : {"", "-journal", "-wal", "-shm"}) {
        std::error_code ignored;
        std::filesystem::remove(file.string() + ending, ignored);
    }
}

}  // namespace

void Database::backup_to(const std::filesystem::path& file) {
    std::error_code none;
    if (std::filesystem::exists(file, none) && std::filesystem::file_size(file, none) > 0) {
        throw Error(SQLITE_CANTOPEN, "backing up: " + file.string() + " is there already");
    }
    try {
        Database copy(file, Open::create, busy_timeout_);
        copy_all_pages(database_, copy.database_, busy_timeout_);
    } catch (const Error&) {
        remove_with_companions(file);
        throw;
    }
}

std::vector<std::string> Database::quick_check() {
    std::vector<std::string> damage;
    try {
        execute("PRAGMA cell_size_check = ON");
        for (Statement check = prepare("PRAGMA quick_check(100)"); check.step();) damage.emplace_back(check.text(0));
    } catch (const Error& error) {
        if (!error.is_corrupt()) throw;
        damage.emplace_back(error.what());
    }
    if (damage.size() == 1 && damage.front() == "ok") damage.clear();
    return damage;
}

}  // namespace tapbook::sqlite
