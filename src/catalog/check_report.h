// What did a look at a whole catalog find? Damage by kind with the number of facts it touches, and what was looked at.
#pragma once

#include <cstdint>
#include <filesystem>
#include <string>
#include <vector>

#include "catalog/progress.h"

namespace tapbook {

enum class CheckDepth {
    quick,  // the file's structure, its schema, its settings
    full    // and every row: ids worked out again, subjects, withdrawals, actions, terms
};

struct Damage {
    std::string what;                   // "notes that are not what was written"
    std::int64_t facts = 0;             // rows touched; 0 when the structure of the file is meant
    std::vector<std::string> examples;  // at most 5
};

struct CheckReport {
    std::filesystem::path file;
    CheckDepth depth = CheckDepth::quick;
    bool practice = false;
    std::int64_t notes = 0, entries = 0, other_rows = 0;  // looked at; 0 when quick
    std::vector<Damage> damages;
    std::vector<std::string> remarks;            // odd, but no damage
    std::vector<std::filesystem::path> backups;  // when damaged: sound copies beside the file, newest first
    bool readable = true;                        // false: not even its first page

    bool sound() const { return damages.empty(); }
    std::int64_t facts_affected() const {
        std::int64_t sum = 0;
        for (const auto& damage : damages) sum += damage.facts;
        return sum;
    }
};

// Looks at the catalog in `file` and changes nothing. Damage of any kind is in the report, also a file that cannot be
// read on. Throws CatalogError: missing, not_ours, newer, not_permitted, busy.
CheckReport check_catalog(const std::filesystem::path& file, CheckDepth depth, const Progress& told = {});

}  // namespace tapbook
