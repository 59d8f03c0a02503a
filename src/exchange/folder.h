// How do shops exchange through a folder that is carried between them: a checkout, a synced folder, a share, a stick?
// Every shop adds files and takes in the others'. A file's name comes from its contents and it is never changed;
// nothing is deleted, whatever lies there. Names are not trusted: what a file is, its bytes say.
#pragma once

#include <filesystem>
#include <string>
#include <vector>

#include "catalog/catalog.h"

namespace tapbook {

// What became of one file.
enum class FileFate {
    taken,       // new, and taken in
    here,        // taken in before
    same,        // the same pack as another file of this folder
    waiting,     // whole, but its shop's key is not known yet
    not_whole,   // a pack whose end is missing
    refused,     // changed, damaged, beyond a limit, or of the other kind of catalog
    no_pack,     // something else: passed over
    unreadable,  // could not be read
};
template <>
struct NamedValues<FileFate> {
    static constexpr Named<FileFate> all[] = {{FileFate::taken, "taken"},         {FileFate::here, "here"},
                                              {FileFate::same, "same"},           {FileFate::waiting, "waiting"},
                                              {FileFate::not_whole, "not-whole"}, {FileFate::refused, "refused"},
                                              {FileFate::no_pack, "no-pack"},     {FileFate::unreadable, "unreadable"}};
};
static_assert(table_is_sound<FileFate>());

struct FolderFile {
    std::string name;
    FileFate fate = FileFate::no_pack;
    std::string why;  // of what was not taken: place and reason, in one line
};

struct FolderReport {
    std::filesystem::path folder;
    std::vector<FolderFile> files;     // by name
    std::vector<TakeInReport> taken;   // in the order they were taken in
    std::vector<std::string> written;  // names of this shop's new packs
    int records_written = 0;
    bool dry_run = false;

    // Did anything hold a file back that somebody should look at?
    bool has_trouble() const;
};

// Takes in every pack of the folder that is new here, then writes what this shop wrote and the folder does not hold
// yet. Without `dry_run` each pack is its own transaction; what is refused holds up nothing else. Throws CatalogError:
// the folder is missing, may not be read or written; and for trouble of the store.
FolderReport exchange_folder(Catalog& catalog, const std::filesystem::path& folder, const std::string& today,
                             bool dry_run);

}  // namespace tapbook
