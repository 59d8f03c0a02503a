// The online backup API makes the copy; quick_check with cell sizes and a count of every table's rows judge it; a
// rename in the same folder puts it in place.
#include "catalog/backup.h"

#include <fcntl.h>
#include <fmt/format.h>
#include <unistd.h>

#include <cerrno>
#include <cstring>
#include <map>

#include "catalog/state.h"

namespace tapbook {
namespace {

namespace fs = std::filesystem;
using RowCounts = std::map<std::string, std::int64_t>;

RowCounts row_counts(sqlite::Database& database) {
    std::vector<std::string> names;
    auto tables = database.prepare("SELECT name FROM sqlite_schema WHERE type = 'table' ORDER BY name");
    while (tables.step()) names.emplace_back(tables.text(0));
    RowCounts counts;
    for (const auto& name : names) {
        auto rows = database.prepare(fmt::format("SELECT count(*) FROM \"{}\"", name));
        rows.step();
        counts[name] = rows.integer(0);
    }
    return counts;
}

void remove_with_companions(const fs::path& file) {
    std::error_code ignored;
    for (const char* ending : {"", "-journal", "-wal", "-shm"}) fs::remove(file.string() + ending, ignored);
}

// A copy that is not finished goes away again.
class Unfinished {
  public:
    explicit Unfinished(fs::path file) : file_(std::move(file)) {}
    ~Unfinished() {
        if (!file_.empty()) remove_with_companions(file_);
    }
    Unfinished(const Unfinished&) = delete;
    Unfinished& operator=(const Unfinished&) = delete;
    void keep() { file_.clear(); }

  private:
    fs::path file_;
};

[[noreturn]] void throw_file_trouble(const fs::path& file, int reason) {
    if (reason == EEXIST)
        throw CatalogError(CatalogTrouble::already_there, fmt::format("{} is there already", file.string()),
                           "name another file; nothing was overwritten");
    if (reason == EACCES || reason == EPERM || reason == EROFS)
        throw CatalogError(CatalogTrouble::not_permitted, fmt::format("may not write {}", file.string()),
                           "name a file in a folder that you own");
    throw CatalogError(CatalogTrouble::input_output,
                       fmt::format("cannot write {}: {}", file.string(), std::strerror(reason)),
                       "name another place; nothing was changed");
}

// `shown` is the name people know it by.
void make_private_file(const fs::path& file, const fs::path& shown) {
    const int handle = ::open(file.c_str(), O_CREAT | O_EXCL | O_WRONLY | O_CLOEXEC, 0600);
    if (handle < 0) throw_file_trouble(shown, errno);
    ::close(handle);
}

void sync_to_disk(const fs::path& place) {
    const int handle = ::open(place.c_str(), O_RDONLY | O_CLOEXEC);
    if (handle < 0) throw_file_trouble(place, errno);
    const int result = ::fsync(handle);
    const int reason = errno;
    ::close(handle);
    if (result != 0) throw_file_trouble(place, reason);
}

fs::path folder_of(const fs::path& file) {
    return file.has_parent_path() ? file.parent_path() : fs::path(".");
}

void put_in_place(const fs::path& from, const fs::path& to) {
    std::error_code trouble;
    fs::rename(from, to, trouble);
    if (trouble) throw_file_trouble(to, trouble.value());
}

// The bytes of the key and of customers' references must not stay behind in free pages: the copy is written anew
// without them. A catalog of an earlier schema has no jobs yet.
void wipe_key(sqlite::Database& copy, bool has_jobs) {
    copy.execute("PRAGMA secure_delete = ON; DELETE FROM secret");
    if (has_jobs) copy.execute("UPDATE job SET customer = NULL, agreed = NULL");
    copy.execute("VACUUM");
}

// Opens the copy as any catalog and looks for damage. Throws damaged with what was found.
CopyReport checked(const fs::path& copy, const RowCounts& wanted) {
    sqlite::Database database(copy, sqlite::Open::read_write);
    const auto damage = database.quick_check();
    if (!damage.empty())
        throw CatalogError(CatalogTrouble::damaged, fmt::format("the copy is damaged: {}", damage.front()),
                           "run `tapbook check` on the catalog; the copy was thrown away");
    const auto counted = row_counts(database);
    CopyReport report;
    for (const auto& [table, rows] : counted) report.rows += rows;
    report.holds_key = counted.at("secret") > 0;
    report.notes = counted.at("note");
    for (const auto& [table, rows] : wanted)
        if (const auto found = counted.find(table); found == counted.end() || found->second != rows)
            throw CatalogError(CatalogTrouble::damaged, fmt::format("the copy lacks rows of {}", table),
                               "run `tapbook check` on the catalog; the copy was thrown away");
    return report;
}

// Copies `from` into the new file `to`, on its way to `place`, and checks it there.
CopyReport copy_checked(const fs::path& from, const fs::path& to, const fs::path& place, KeyInCopy key) {
    { const Catalog is_ours = Catalog::open(from, Access::read); }
    make_private_file(to, place);
    Unfinished unfinished(to);
    try {
        RowCounts counts;
        {
            sqlite::Database source(
                from, ::access(from.c_str(), W_OK) == 0 ? sqlite::Open::read_write : sqlite::Open::immutable);
            source.backup_to(to);
        }
        {
            sqlite::Database copy(to, sqlite::Open::read_write);
            copy.execute("PRAGMA journal_mode = DELETE");  // one file, without companions
            counts = row_counts(copy);
            if (key == KeyInCopy::left_out) {
                wipe_key(copy, counts.contains("job"));
                counts["secret"] = 0;
            }
        }
        CopyReport report = checked(to, counts);
        sync_to_disk(to);
        report.file = to;
        report.bytes = static_cast<std::int64_t>(fs::file_size(to));
        unfinished.keep();
        return report;
    } catch (const sqlite::Error& error) {
        throw_catalog_error(error, from);
    }
}

fs::path free_name(const fs::path& catalog, const std::string& middle, const std::string& ending) {
    fs::path base = catalog;
    base.replace_extension();
    for (int number = 1;; ++number) {
        const std::string more = number == 1 ? "" : fmt::format("-{}", number);
        fs::path name = fmt::format("{}.{}{}{}", base.string(), middle, more, ending);
        if (!fs::exists(name)) return name;
    }
}

// The copy grows under a name of its own.
fs::path growing_name(const fs::path& place) {
    fs::path name = fmt::format("{}.{}.new", place.string(), ::getpid());
    remove_with_companions(name);
    return name;
}

// Nobody writes into the old catalog while it is moved aside. Throws CatalogError busy. What cannot be opened as a
// database is moved without asking.
std::optional<sqlite::Database> held_still(const fs::path& catalog) {
    try {
        sqlite::Database database(catalog, sqlite::Open::read_write);
        database.execute("BEGIN EXCLUSIVE");
        return database;
    } catch (const sqlite::Error& error) {
        if (error.is_busy()) throw_catalog_error(error, catalog);
        return std::nullopt;
    }
}

}  // namespace

fs::path free_backup_name(const fs::path& catalog, const std::string& today) {
    return free_name(catalog, today, ".backup");
}

CopyReport backup_catalog(const fs::path& catalog, const fs::path& copy, KeyInCopy key) {
    if (fs::exists(copy)) throw_file_trouble(copy, EEXIST);
    const fs::path growing = growing_name(copy);
    CopyReport report = copy_checked(catalog, growing, copy, key);
    put_in_place(growing, copy);
    sync_to_disk(folder_of(copy));
    report.file = copy;
    return report;
}

CopyReport restore_catalog(const fs::path& backup, const fs::path& catalog, const std::string& today) {
    if (!fs::exists(backup))
        throw CatalogError(CatalogTrouble::missing, fmt::format("there is no backup at {}", backup.string()),
                           "name one that `tapbook backup` made");
    const fs::path growing = growing_name(catalog);
    CopyReport report = [&] {
        try {
            return copy_checked(backup, growing, catalog, KeyInCopy::kept);
        } catch (const CatalogError& error) {
            const bool of_backup =
                error.trouble() == CatalogTrouble::not_ours || error.trouble() == CatalogTrouble::damaged;
            if (!of_backup) throw;
            throw CatalogError(error.trouble(), error.what(), "name another backup; the catalog is as it was");
        }
    }();
    {
        sqlite::Database copy(growing, sqlite::Open::read_write);
        copy.execute("PRAGMA journal_mode = WAL");
    }
    if (fs::exists(catalog)) {
        const auto held = held_still(catalog);
        report.set_aside = free_name(catalog, "before-" + today, ".sqlite");
        // A log that lies beside the old catalog belongs to it: it moves with it, or it would be taken for the new
        // one's.
        for (const char* ending : {"-wal", "-shm"})
            if (fs::exists(catalog.string() + ending))
                put_in_place(catalog.string() + ending, report.set_aside.string() + ending);
        put_in_place(catalog, report.set_aside);
    }
    put_in_place(growing, catalog);
    sync_to_disk(folder_of(catalog));
    report.file = catalog;
    return report;
}

}  // namespace tapbook
