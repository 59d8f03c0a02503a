// How is a catalog put away and brought back? Each copy is opened and compared before it is called done; nothing that
// is there is overwritten.
#pragma once

#include <cstdint>
#include <filesystem>
#include <string>

namespace tapbook {

enum class KeyInCopy { kept, left_out };

struct CopyReport {
    std::filesystem::path file;       // the copy
    std::filesystem::path set_aside;  // restore: where the catalog that was there lies now; empty when there was none
    std::int64_t rows = 0;            // rows of all tables, counted on both sides
    std::int64_t notes = 0;
    std::int64_t bytes = 0;
    bool holds_key = true;  // the copy can speak for this shop
};

// A name for a backup made on `today` that is still free: "catalog.2026-05-02.backup", then "...-2.backup".
std::filesystem::path free_backup_name(const std::filesystem::path& catalog, const std::string& today);

// Copies a catalog as it is now (also while others write), checks the copy and counts its rows. Without the key, key,
// salt and customers' references are wiped from the copy, which then can be read and restored but speaks for no shop.
// Mode 0600. Throws CatalogError: as open(); already_there; input_output; damaged when the catalog itself is. Leaves no
// half copy.
CopyReport backup_catalog(const std::filesystem::path& catalog, const std::filesystem::path& copy, KeyInCopy key);

// Puts a backup in the place of a catalog. The backup is copied beside it, checked and counted there first; a catalog
// that is in the place is set aside beside it under a free name. Throws CatalogError as open() for the backup; damaged;
// input_output; not_permitted. Whatever fails, the catalog in the place stays as it was.
CopyReport restore_catalog(const std::filesystem::path& backup, const std::filesystem::path& catalog,
                           const std::string& today);

}  // namespace tapbook
