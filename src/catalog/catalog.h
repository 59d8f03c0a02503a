// The door of this folder: one SQLite file with everything a shop knows, and the only place that speaks to the store.
#pragma once

#include <chrono>
#include <filesystem>
#include <functional>
#include <memory>

#include "catalog/batch.h"
#include "catalog/job_facts.h"
#include "catalog/search.h"

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

class Catalog {
  public:
    // Makes a new file (mode 0600) with the shop's key and salt. Throws CatalogError: already_there, not_permitted,
    // input_output.
    static Catalog create(const std::filesystem::path& file, const std::string& shop_name, CatalogKind kind,
                          const std::string& today, const RandomSource& random);

    // Opens an existing catalog, applying newer schema files first (after a backup beside it). Where file or folder is
    // not writable it is opened read-only; Access::write then throws not_permitted. Throws CatalogError: missing,
    // not_ours, newer, damaged, busy, not_permitted.
    static Catalog open(const std::filesystem::path& file, Access access,
                        std::chrono::milliseconds busy_timeout = std::chrono::seconds(5));

    ~Catalog();
    Catalog(Catalog&&) noexcept;
    Catalog& operator=(Catalog&&) noexcept;

    bool is_practice() const;
    bool is_read_only() const;
    OwnShop own_shop() const;
    CatalogCounts counts() const;
    const std::filesystem::path& file() const;

    // Puts a batch in, all or nothing, in one transaction; with `dry_run` the same report and nothing written. Adding
    // the same batch again adds nothing. Throws InputRefused (checks that need the store) and CatalogError.
    AddReport add(const Batch& batch, bool dry_run, const std::string& today);

    // Every car's name, in path order.
    std::vector<VehicleName> vehicle_names() const;

    // All that is known of one car. `path` is a whole vehicle path. Throws CatalogError not_found.
    CarFacts car(std::string_view path, std::optional<int> year) const;

    std::vector<ShelfConverter> converters() const;
    std::vector<Amplifier> amplifiers() const;

    // Does an entry of this kind exist under this path and is not retired?
    bool has_entry(EntryKind kind, std::string_view path) const;

    // The record lines of all notes of a vehicle in id order: what would be exchanged.
    std::vector<std::string> note_lines(std::string_view vehicle_path) const;

    struct State;

  private:
    explicit Catalog(std::unique_ptr<State> state);
    std::unique_ptr<State> state_;
};

}  // namespace tapbook
