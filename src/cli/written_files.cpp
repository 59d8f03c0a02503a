// How are files written so that nothing is lost? None is touched before all are known to be free; a file that is
// replaced is written beside first and put in place in one step.
#include <fcntl.h>
#include <fmt/format.h>
#include <unistd.h>

#include <cerrno>
#include <cstring>

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
    if (existing == Existing::refuse)
        for (const auto& file : files)
            if (fs::exists(fs::symlink_status(file.place))) throw_for(file.place, EEXIST);
    for (const auto& file : files) {
        std::error_code trouble;
        if (file.place.has_parent_path()) fs::create_directories(file.place.parent_path(), trouble);
        if (trouble) throw_for(file.place.parent_path(), trouble.value());
        if (existing == Existing::refuse) {
            write_one(file.place, file.text, O_EXCL);
            continue;
        }
        const fs::path beside = file.place.string() + ".new";
        write_one(beside, file.text, O_TRUNC);
        if (std::rename(beside.c_str(), file.place.c_str()) != 0) {
            const int reason = errno;
            ::unlink(beside.c_str());
            throw_for(file.place, reason);
        }
    }
}

}  // namespace tapbook
