// What an open catalog holds, and how its parts reach the tables. For the files of this folder only.
#pragma once

#include <map>
#include <set>

#include "catalog/catalog.h"
#include "catalog/cell_binding.h"
#include "catalog/cells.h"
#include "sqlite/sqlite.h"

namespace tapbook {

inline constexpr std::int32_t catalog_application_id = 0x54415042;  // "TAPB"
inline constexpr std::int32_t first_version_with_packs = 7;         // of the schema

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

// A condition on the rows of an entry's table: what a blocked shop wrote is kept and does not count.
inline constexpr std::string_view not_by_blocked = "shop NOT IN (SELECT id FROM shop WHERE blocked = 1)";

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

// The exchanged record of an alias; shop in hexadecimal digits.
struct AliasFields {
    std::string first, second, shop, date;
};
Values alias_record(const AliasFields& fields, bool practice);

// Local number of a shop, given on first sight.
std::int64_t shop_number(sqlite::Database& database, std::string_view id_bytes);

// Puts notes into the ledger, one after another; quickest when those of one path follow each other. REQUIRES an open
// transaction for as long as it lives.
class LedgerWriting {
  public:
    explicit LedgerWriting(sqlite::Database& database);

    // False when the note was there already. REQUIRES a record that record_line takes.
    bool insert(const Values& record, const RecordId& id, bool vouched);

    // The same straight from a line, without the record between.
    bool insert(const RecordTokens& record, const RecordId& id, bool vouched);

    // The local number of a shop, by its 32 hexadecimal digits.
    std::int64_t number_of_shop(std::string_view hex);

  private:
    struct Subject {
        std::int64_t vehicle, tap;
    };
    Subject subject_of(std::string_view path);
    Subject new_subject(std::string_view path);
    std::int64_t vehicle_of(std::string_view path);

    sqlite::Database& database_;
    sqlite::Statement known_, insert_, insert_line_, new_subject_;
    CellBinding cells_;  // of insert_line_
    std::string last_path_, last_car_;
    Subject last_{};
    std::int64_t last_vehicle_ = 0;
    std::map<std::string, std::int64_t, std::less<>> shops_;
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
struct KeptNames {
    NameTable table;
    bool has_aliases = false;  // true also where that was not looked up
};
KeptNames kept_names(sqlite::Database& database);
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

// One thing that the store has against a draft of a batch.
enum class DraftOf { entry, note, terms };
struct DraftComplaint {
    DraftOf of;
    std::size_t index;  // in the batch's list
    Complaint complaint;
};

// All of them, in the batch's order. Throws InputRefused for what is wrong with the batch as a whole.
std::vector<DraftComplaint> complaints_on_batch(const Batch& batch, const Catalog& catalog, const Authors& authors);

// Throws InputRefused when the batch does not fit itself or what is stored: duplicate paths, missing parents, foreign
// authors.
void check_batch(const Batch& batch, const Catalog& catalog, const Authors& authors);

}  // namespace tapbook
