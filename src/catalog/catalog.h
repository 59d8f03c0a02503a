// The door of this folder: one SQLite file with everything a shop knows, and the only place that speaks to the store.
#pragma once

#include <chrono>
#include <filesystem>
#include <functional>
#include <memory>
#include <span>

#include "catalog/backup.h"
#include "catalog/batch.h"
#include "catalog/check_report.h"
#include "catalog/exchanged.h"
#include "catalog/extract.h"
#include "catalog/job_facts.h"
#include "catalog/jobs.h"
#include "catalog/name_table.h"
#include "catalog/own_notes.h"
#include "catalog/progress.h"
#include "catalog/proven_fact.h"
#include "catalog/rebuilt.h"
#include "catalog/row_fates.h"
#include "catalog/search.h"
#include "catalog/stock.h"
#include "catalog/vin_search.h"

namespace tapbook {

// Why a catalog cannot be used.
enum class CatalogTrouble {
    missing,
    already_there,
    not_ours,
    newer,
    wrong_kind,
    not_permitted,
    input_output,
    damaged,
    busy,
    not_found
};

class CatalogError : public std::runtime_error {
  public:
    CatalogError(CatalogTrouble trouble, const std::string& message, std::string hint = {})
        : std::runtime_error(message), trouble_(trouble), hint_(std::move(hint)) {}
    CatalogTrouble trouble() const { return trouble_; }
    const std::string& hint() const { return hint_; }

  private:
    CatalogTrouble trouble_;
    std::string hint_;
};

// Fills its argument with random bytes; tests and practice catalogs pass a repeatable source.
using RandomSource = std::function<void(unsigned char* bytes, std::size_t count)>;
RandomSource system_random();
RandomSource repeatable_random(std::string_view seed);

// Gives one batch after another; nothing at the end.
using BatchSource = std::function<std::optional<Batch>()>;

enum class CatalogKind { real, practice };
enum class Access { read, write };

struct OwnShop {
    std::string id;  // 32 hexadecimal digits
    std::string name;
};

struct CatalogCounts {
    std::int64_t vehicles = 0, systems = 0, circuits = 0, taps = 0, notes = 0, converters = 0, amplifiers = 0,
                 shops = 0;
};

// What words find: by VIN where they are one that some car's pattern fits, else by name.
struct FoundVehicles {
    std::vector<VehicleHit> hits;
    std::optional<Vin> vin;            // the hits are by this VIN; without hits: no pattern fits it
    std::optional<VinRefusal> no_vin;  // the words look like a VIN, are none, and name no car either
};

class Catalog {
  public:
    // Makes a new file (mode 0600) with the shop's key and salt, and lets `fill` write into it before it appears in its
    // place: whole or not at all. Throws CatalogError: already_there, not_permitted, input_output; and what `fill`
    // throws.
    static Catalog create(const std::filesystem::path& file, const std::string& shop_name, CatalogKind kind,
                          const std::string& today, const RandomSource& random,
                          const std::function<void(Catalog&)>& fill = {});

    // Opens an existing catalog, applying newer schema files first (after a backup beside it). Where file or folder is
    // not writable it is opened read-only; Access::write then throws not_permitted. Throws CatalogError: missing,
    // not_ours, newer, damaged, busy, not_permitted.
    static Catalog open(const std::filesystem::path& file, Access access,
                        std::chrono::milliseconds busy_timeout = std::chrono::seconds(5));

    ~Catalog();
    Catalog(Catalog&&) noexcept;
    Catalog& operator=(Catalog&&) noexcept;

    // Who is told how far add, rebuild, check and proven_facts are.
    void tell_progress(Progress told);

    bool is_practice() const;
    bool is_read_only() const;
    OwnShop own_shop() const;
    CatalogCounts counts() const;
    const std::filesystem::path& file() const;

    // Another number than before once anybody else has committed to the file since; the same one: nothing was. What
    // this object wrote itself does not count. Numbers of two open catalogs mean nothing to each other. Throws
    // CatalogError.
    std::int64_t changes_seen() const;

    // Puts a batch in, all or nothing, in one transaction; with `dry_run` the same report and nothing written. Adding
    // the same batch again adds nothing. Throws InputRefused (checks that need the store) and CatalogError.
    AddReport add(const Batch& batch, bool dry_run, const std::string& today);

    // The same with the fate of each draft. A draft that the store refuses is named instead of thrown; nothing is
    // written then, unless `refused` says that the others go in without it. Throws InputRefused for what is wrong with
    // the batch as a whole (it is of practice and this catalog is not), and CatalogError.
    RowFates add_rows(const Batch& batch, RefusedRows refused, bool dry_run, const std::string& today);

    // One visit in one line; own_notes.h says how. Throws InputRefused and CatalogError as add() does.
    NoteReport take_note(const NoteDraft& draft, const NoteTaking& taking, const std::string& today);

    // Everything noted at one tap point or of one sound system. `path` need not have an entry.
    TapLedger ledger_at(std::string_view path) const;

    // Notes whose id begins with these hexadecimal digits (upper or lower case), at most 10.
    std::vector<FoundNote> notes_by_id(std::string_view hex) const;

    // Takes back a note of this shop, for good. One that was withdrawn before stays as it is and nothing is added.
    // Throws CatalogError not_found (no such note of this shop).
    WithdrawReport withdraw(const RecordId& note, WithdrawalReason reason, const std::string& today,
                            bool dry_run = false);

    // Reverses this shop's last action that was not undone yet, by adding: its notes are withdrawn, its entries get the
    // values they had before (or are retired), its terms are restored. Throws CatalogError not_found: there is nothing
    // to undo, or the last action was a withdrawal, which is final.
    UndoReport undo(const std::string& today, bool dry_run = false);

    // Shops seen here or named, this one first, then by name and id.
    std::vector<ShopRow> shops() const;

    // Changes this shop's own list; never exchanged. `id` has 32 hexadecimal digits; a shop not seen yet may be known
    // or blocked. Throws CatalogError not_found: no such shop, or it is this one.
    ShopReport change_shop(const std::string& id, ShopChange change, const std::optional<std::string>& name,
                           bool dry_run = false);

    // Jobs; jobs.h says what they hold. Every change is one transaction; with `dry_run` the same answer and nothing
    // written. Each throws CatalogError not_found for a number that is none, and InputRefused when the job is closed.
    std::vector<ShopJob> jobs() const;  // by number
    JobReport start_job(const JobStart& start, const std::string& today, const RandomSource& random,
                        bool dry_run = false);
    JobReport check_job(int number, CheckList list, const JobChecks& checks, bool dry_run = false);
    JobReport plan_job(int number, const JobPlan& plan, const std::string& system, bool dry_run = false);
    JobReport read_at_job(int number, const JobReading& reading, const std::string& today, bool dry_run = false);
    // The same for several places, in one step.
    JobReport read_all_at_job(int number, std::span<const JobReading> readings, const std::string& today,
                              bool dry_run = false);
    JobReport start_action(int number, const std::string& words, const std::string& today, bool dry_run = false);
    JobReport end_action(int number, int action, const std::string& today, bool dry_run = false);
    JobReport reopen_job(int number, bool dry_run = false);

    // Turns the readings into notes and closes the job, all or nothing. Closing again after reopen_job() writes only
    // what changed and withdraws what it replaces. Throws InputRefused with everything that holds it back.
    JobCloseReport close_job(int number, const JobClosing& closing, const std::string& today, bool dry_run = false);

    // Puts jobs of a file in; a code that is here already is passed over. A past job with a car takes up the notes that
    // this shop wrote on that car that day. How many are new. Throws InputRefused.
    int add_past_jobs(std::span<const PastJob> jobs);

    // Puts many batches in, `together` of them in one transaction: quickest when they come in path order. The same
    // checks and records as add(); but the report only counts, and the list of actions that can be undone says nothing.
    // Throws as add(); what earlier transactions put in stays.
    AddReport add_many(const BatchSource& next, std::size_t together, const std::string& today);

    // Every car's name, for the search and (in path order) as a list.
    NameTable names() const;
    std::vector<VehicleName> vehicle_names() const;

    FoundVehicles find(std::string_view words) const;

    // Cars that words name exactly, as vehicles_named() says. Here and in find() a car is found by each of its names
    // and handed out once, under the smallest; named() gives the smallest that has an entry, or the one that was typed.
    std::vector<NamedVehicle> named(std::string_view words) const;

    // Cars with a VIN pattern that fits, those of its model year first.
    std::vector<VehicleHit> vehicles_of_vin(const Vin& vin) const;

    // All that is known of one car. `path` is a whole vehicle path. Throws CatalogError not_found.
    CarFacts car(std::string_view path, std::optional<int> year) const;

    // The same without what notes say: systems, circuits and tap points as the entries have them, every grade BLANK.
    CarFacts car_layout(std::string_view path) const;

    std::vector<ShelfConverter> converters() const;
    std::vector<Amplifier> amplifiers() const;

    // Does an entry of this kind exist under this path? A retired one counts when asked for: what lies on the shelf of
    // a part that is bought no more still lies there.
    enum class Retired { left_out, included };
    bool has_entry(EntryKind kind, std::string_view path, Retired retired = Retired::left_out) const;

    // Every car as car_layout() gives it, in path order, one after another.
    void each_layout(const std::function<void(const CarFacts&)>& take) const;

    // What lies on the shelf: every part that has terms, and every converter, by path; retired ones only while some lie
    // there or are ordered. With its movements.
    std::vector<StockRow> stock() const;

    // Books one movement by hand and keeps the terms in step, in one transaction; undo reverses it. Throws CatalogError
    // not_found (no such part, no such job) and InputRefused: fewer than that lie there, or are ordered.
    StockReport book_stock(const StockChange& change, const std::string& today, bool dry_run = false);

    // How many notes speak of a vehicle, withdrawn ones included, and the day of the newest; "" without any.
    LedgerState ledger_state(std::string_view vehicle_path) const;

    // The record lines of all notes of a vehicle in id order: what would be exchanged.
    std::vector<std::string> note_lines(std::string_view vehicle_path) const;

    // The record lines of all withdrawals in id order: what would be exchanged.
    std::vector<std::string> withdrawal_lines() const;

    // Every PROVEN answer of the notes dated before `day` (of all notes for ""), in path order, and what the notes from
    // that day on say of it.
    std::vector<ProvenFact> proven_facts(const std::string& day) const;

    // Every question that two shops or more have looked at, in path order; blocked shops, withdrawn and copied notes
    // left out.
    std::vector<FactSayings> shared_sayings() const;

    // Works everything derived out again from the notes, in one transaction; a second time changes nothing. Throws
    // CatalogError.
    RebuildReport rebuild(bool dry_run);
    // What can be written down as a vehicle, a parts or a stock file: adding it here again adds nothing. Notes that a
    // file must not add (other shops', withdrawn ones) stand beside it. Throws CatalogError not_found: no such vehicle.
    Extract extract_vehicle(std::string_view path) const;
    Extract extract_parts() const;
    Extract extract_stock() const;

    // Takes in what another shop's pack holds: all of it or nothing, in one transaction. What is here already is left
    // as it is; a record becomes vouched for when its own shop signed the pack. Throws InputRefused: a practice pack
    // for a real catalog or the other way round, a key that is not the signing shop's; and CatalogError.
    TakeInReport take_in(const Incoming& pack, const std::string& today, bool dry_run = false);

    // Was this pack taken in?
    bool has_taken_in(const RecordId& pack) const;

    // Every record that may leave this shop, in the order of a pack: by type, path and id. Never terms, jobs,
    // customers' references, salts or the list of shops. This shop's key changes are always among them.
    void outgoing(const OutgoingChoice& choice, const EachOutgoing& each) const;

    // Says that two paths are the same thing; class and order follow from all that was said. Throws InputRefused:
    // the same path twice, or not the same number of parts.
    AliasReport add_alias(const std::string& one, const std::string& other, const std::string& today, bool dry_run);

    // This shop's signing key. sign() throws CatalogError not_permitted in a copy without the key.
    KeyReport own_key() const;
    KeySignature sign(std::string_view message) const;
    // A new key, signed by the old one: packs carry the change with them.
    KeyReport change_key(const std::string& today, const RandomSource& random, bool dry_run);
    // Key and salt as a text to be kept apart from the catalog, and put back into one that lost its key. Throws
    // InputRefused: no such text, or another shop's.
    std::string key_text() const;
    static KeyReport restore_key(const std::filesystem::path& catalog, const std::string& text,
                                 const std::string& file);

    // As check_catalog(), of the open catalog.
    CheckReport check(CheckDepth depth) const;

    struct State;

  private:
    explicit Catalog(std::unique_ptr<State> state);
    std::unique_ptr<State> state_;
};

}  // namespace tapbook
