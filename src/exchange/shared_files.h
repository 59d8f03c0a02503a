// How are files read from and written to a folder that others write to as well? Links are not followed, pipes are not
// waited for, and a new file appears whole or not at all. For the files of this folder only.
#pragma once

#include <filesystem>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace tapbook {

// Names of what lies in the folder, sorted; hidden ones and folders are left out. Throws CatalogError.
std::vector<std::string> names_in(const std::filesystem::path& folder);

struct ReadFile {
    std::string text;
    std::string trouble;      // why it could not be read; empty when it was
    bool is_no_pack = false;  // known from its kind or its first bytes: not read on
};
ReadFile read_shared(const std::filesystem::path& file);

// Writes the text under this name, or under NAME-2, NAME-3 ... where something else has the name; the name it got.
// Throws CatalogError.
std::string write_shared(const std::filesystem::path& folder, const std::string& stem, std::string_view ending,
                         std::string_view text);

}  // namespace tapbook
