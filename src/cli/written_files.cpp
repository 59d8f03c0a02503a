// How are files written so that nothing is lost? None is touched before all are known to be free, or to be text files
// that may be replaced; what replaces a file is written beside it first and put in place in one step.
#include <fcntl.h>
#include <fmt/format.h>
#include <unistd.h>

#include <cerrno>
#include <cstring>
#include <fstream>

#include "cli/command.h"

namespace tapbook {
namespace {

namespace fs = std::filesystem;

[[noreturn]] void throw_for(const fs::path& place, int reason) {
    if (reason == EEXIST)
        throw CatalogError(CatalogTrouble::already_there, fmt::format("{} is there already", place.string()),
                           "choose another place, or say --replace; nothing was written");
    if (reason == EACCES || reason == EPERM || reason == EROFS)
        throw CatalogError(CatalogTrouble::not_permitted, fmt::format("may not write {}", place.string()),
                           "choose another place");
    throw CatalogError(CatalogTrouble::input_output,
                       fmt::format("cannot write {}: {}", place.string(), std::strerror(reason)),
                       "choose another place");
}

// Every SQLite database begins with these 16 bytes, the last of them zero (SQLite file format, 1.3.1).
constexpr std::string_view database_start{"SQLite format 3\0", 16};

// A text file may be replaced; a catalog, a pipe, a device or a folder never.
void check_may_be_replaced(const fs::path& place) {
    std::error_code ignored;
    const fs::file_status status = fs::status(place, ignored);
    if (!fs::exists(status)) return;
    if (!fs::is_regular_file(status))
        throw CatalogError(CatalogTrouble::already_there, fmt::format("{} is not a file", place.string()),
                           "--replace replaces files only; nothing was written");
    std::string start(database_start.size(), ' ');
    std::ifstream(place, std::ios::binary).read(start.data(), static_cast<std::streamsize>(start.size()));
    if (start == database_start)
        throw CatalogError(CatalogTrouble::already_there,
                           fmt::format("{} is a database, not a text file", place.string()),
                           "choose another place; nothing was written");
}

void write_one(const fs::path& place, std::string_view text, int flags) {
    const int handle = ::open(place.c_str(), O_CREAT | O_WRONLY | O_CLOEXEC | flags, 0666);
    if (handle < 0) throw_for(place, errno);
    int reason = 0;
    while (!text.empty() && reason == 0) {
        const auto written = ::write(handle, text.data(), text.size());
        if (written > 0) text.remove_prefix(static_cast<std::size_t>(written));
        if (written < 0 && errno != EINTR) reason = errno;
    }
    if (reason == 0 && ::fsync(handle) != 0 && errno != EINVAL) reason = errno;  // a pipe cannot be synced
    ::close(handle);
    if (reason == 0) return;
    ::unlink(place.c_str());
    throw_for(place, reason);
}

}  // namespace

void write_files(std::span<const FileToWrite> files, Existing existing) {
    for (const auto& file : files)
        if (existing == Existing::replace)
            check_may_be_replaced(file.place);
        else if (fs::exists(fs::symlink_status(file.place)))
            throw_for(file.place, EEXIST);
    for (const auto& file : files) {
        std::error_code trouble;
        if (file.place.has_parent_path()) fs::create_directories(file.place.parent_path(), trouble);
        if (trouble) throw_for(file.place.parent_path(), trouble.value());
        if (existing == Existing::refuse) {
            write_one(file.place, file.text, O_EXCL);
            continue;
        }
        const fs::path beside = fmt::format("{}.{}.new", file.place.string(), ::getpid());
        write_one(beside, file.text, O_EXCL);
        if (std::rename(beside.c_str(), file.place.c_str()) != 0) {
            const int reason = errno;
            ::unlink(beside.c_str());
            throw_for(file.place, reason);
        }
    }
}

}  // namespace tapbook
