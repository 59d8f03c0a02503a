// What an open catalog holds, and how its parts reach the tables. For the files of this folder only.
#pragma once

#include <map>
#include <set>

#include "catalog/catalog.h"
#include "catalog/cells.h"
#include "sqlite/sqlite.h"

namespace tapbook {

inline constexpr std::int32_t catalog_application_id = 0x54415042;  // "TAPB"

struct Catalog::State {
    mutable sqlite::Database database;
    std::filesystem::path file;
    bool read_only = false;
    bool practice = false;
    OwnShop own;
    Progress progress;  // of long work
};

// One revision of an entry as it lies in its table.
struct StoredEntry {
    Values values;  // "path" and the fields by their stored names
    std::int64_t revision = 0;
    std::string shop;  // 16 bytes
};

// The winning revision of each live entry of `kind` whose path lies in ["first", "end"), in path order; hazards are the
// union of what each shop last said. `concurrent` counts other rows of the winning revision.
struct CurrentEntry {
    StoredEntry entry;
    int concurrent = 0;
};
std::vector<CurrentEntry> current_entries(sqlite::Database& database, EntryKind kind, std::string_view first,
                                          std::string_view end);

// The same with the retired ones.
std::vector<CurrentEntry> winning_entries(sqlite::Database& database, EntryKind kind, std::string_view first,
                                          std::string_view end);

// The columns of an entry's own fields, each behind a comma, to be read from a file that may be older than some of
// them: there such a column holds nothing.
std::string readable_columns(sqlite::Database& database, EntryKind kind);

// The highest (revision, shop, id) of a path below `revision`, as it was written; absent when there is none.
std::optional<StoredEntry> entry_before(sqlite::Database& database, EntryKind kind, std::string_view path,
                                        std::int64_t revision);

// The range of all paths below `path`.
std::string below_first(std::string_view path);
std::string below_end(std::string_view path);

// Inserts a revision. REQUIRES an open transaction.
void insert_entry(sqlite::Database& database, EntryKind kind, const StoredEntry& entry, const RecordId& id,
                  const std::string& date);

// The exchanged record of an entry or a note of this catalog.
Values entry_record(EntryKind kind, const StoredEntry& entry, const std::string& date, bool practice);
Values note_record(const Values& fields, const std::string& shop_hex, bool practice);

// The exchanged record of a withdrawal; target and shop in hexadecimal digits.
struct WithdrawalFields {
    std::string target, path, reason, shop, date;
};
Values withdrawal_record(const WithdrawalFields& fields, bool practice);

// Local number of a shop, given on first sight.
std::int64_t shop_number(sqlite::Database& database, std::string_view id_bytes);

// Puts notes into the ledger, one after another; quickest when those of one path follow each other. REQUIRES an open
// transaction for as long as it lives.
class LedgerWriting {
  public:
    explicit LedgerWriting(sqlite::Database& database);

    // False when the note was there already. REQUIRES a record that record_line takes.
    bool insert(const Values& record, const RecordId& id, bool vouched);

  private:
    struct Subject {
        std::int64_t vehicle, tap;
    };
    Subject subject_of(const std::string& path);
    Subject new_subject(const std::string& path);
    std::int64_t number_of_shop(const std::string& hex);

    sqlite::Database& database_;
    sqlite::Statement known_, insert_;
    std::string last_path_;
    Subject last_{};
    std::map<std::string, std::int64_t> shops_;
};

// All notes of one vehicle by path; withdrawn ones are only counted, those of blocked shops left out.
struct LedgerNotes {
    std::map<std::string, std::vector<Note>, std::less<>> live;
    std::map<std::string, int, std::less<>> withdrawn;
    std::map<std::string, TextList, std::less<>> hazards;  // words of hazards met on the way, by path
};
LedgerNotes notes_of_vehicle(sqlite::Database& database, std::string_view vehicle_path);

// The same of a few paths of one vehicle only.
LedgerNotes notes_at(sqlite::Database& database, const std::set<std::string>& paths);
std::vector<std::pair<RecordId, Values>> note_records(sqlite::Database& database, std::string_view vehicle_path,
                                                      bool practice);

// The names of all cars as packed values (schema 0002): written again from the entries; are they there; do they say
// what the entries say (a missing one says nothing wrong)? Writing REQUIRES an open transaction.
void keep_names(sqlite::Database& database);
bool has_kept_names(sqlite::Database& database);
bool names_are_current(sqlite::Database& database);

// Shops that count for themselves: this one and those on its list.
KnownShops known_shops(sqlite::Database& database);

// The id's bytes where they lie, as a statement binds them: the id must outlive the view.
inline std::string_view as_bytes(const RecordId& id) {
    return {reinterpret_cast<const char*>(id.data()), id.size()};
}

// "hex" of 16 bytes and back.
std::string hex_of(std::string_view bytes);
std::string bytes_of_hex(std::string_view hex);

// Turns an error of the store into one a person can act on.
[[noreturn]] void throw_catalog_error(const sqlite::Error& error, const std::filesystem::path& file);

// Shops that a file may name as authors: none in a real catalog.
struct Authors {
    bool practice = false;
    std::set<std::string, std::less<>> codes;
};

// A practice catalog's name for a shop: its id from the code that files use, and the code back. The code is "" when it
// was never kept and the shop's name does not give it.
std::string practice_shop_bytes(std::string_view code);
std::string practice_shop_code(sqlite::Database& database, std::string_view id_bytes, std::string_view name);
void keep_practice_shop_code(sqlite::Database& database, std::string_view code);

// What each part costs this shop, by part.
std::map<std::string, Terms, std::less<>> all_terms(sqlite::Database& database);

// Keeps what a part costs and books what that changes on the shelf; says what was kept before. `here`: it was so
// already. REQUIRES an open transaction.
enum class TermsPut { added, changed, here };
struct TermsChange {
    TermsPut put = TermsPut::here;
    std::optional<Terms> before;
};
TermsChange put_terms(sqlite::Database& database, const TermsDraft& draft, const std::string& today);

// Throws InputRefused when the batch does not fit itself or what is stored: duplicate paths, missing parents, foreign
// authors.
void check_batch(const Batch& batch, const Catalog& catalog, const Authors& authors);

}  // namespace tapbook
