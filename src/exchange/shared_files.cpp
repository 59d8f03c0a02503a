// See shared_files.h.
#include "exchange/shared_files.h"

#include <fcntl.h>
#include <fmt/format.h>
#include <sys/stat.h>
#include <unistd.h>

#include <algorithm>
#include <cerrno>
#include <cstring>

#include "catalog/catalog.h"
#include "exchange/pack.h"

namespace tapbook {
namespace {

namespace fs = std::filesystem;

class Handle {
  public:
    explicit Handle(int number) : number_(number) {}
    ~Handle() {
        if (number_ >= 0) ::close(number_);
    }
    Handle(const Handle&) = delete;
    Handle& operator=(const Handle&) = delete;
    int number() const { return number_; }

  private:
    int number_;
};

[[noreturn]] void throw_for(const fs::path& place, int reason, std::string_view what) {
    const bool forbidden = reason == EACCES || reason == EPERM || reason == EROFS;
    throw CatalogError(forbidden ? CatalogTrouble::not_permitted : CatalogTrouble::input_output,
                       fmt::format("cannot {} {}: {}", what, place.string(), std::strerror(reason)),
                       "check that the folder is there and that you may write in it; what was taken in stays");
}

// Reads until the end, or until what was read is no pack's beginning, or more than a pack may hold.
ReadFile read_from(int handle, std::size_t size) {
    ReadFile file;
    file.text.reserve(std::min(size, most_pack_bytes) + 1);
    std::string buffer(std::size_t{1} << 18, '\0');
    while (file.text.size() <= most_pack_bytes) {
        const auto got = ::read(handle, buffer.data(), buffer.size());
        if (got < 0 && errno == EINTR) continue;
        if (got < 0) {
            file.trouble = std::strerror(errno);
            return file;
        }
        if (got == 0) break;
        file.text.append(buffer, 0, static_cast<std::size_t>(got));
        file.is_no_pack = !file.text.starts_with(pack_start.substr(0, std::min(file.text.size(), pack_start.size())));
        if (file.is_no_pack) break;
    }
    return file;
}

int write_and_sync(int handle, std::string_view text) {
    while (!text.empty()) {
        const auto written = ::write(handle, text.data(), text.size());
        if (written < 0 && errno != EINTR) return errno;
        if (written > 0) text.remove_prefix(static_cast<std::size_t>(written));
    }
    return ::fsync(handle) == 0 || errno == EINVAL ? 0 : errno;
}

bool holds(const fs::path& file, std::string_view text) {
    const ReadFile there = read_shared(file);
    return there.trouble.empty() && there.text == text;
}

// Gives the finished file its name, where that is free; 0, or the reason why not.
int put_in_place(const fs::path& from, const fs::path& to) {
    if (::link(from.c_str(), to.c_str()) == 0) {
        ::unlink(from.c_str());
        return 0;
    }
    const bool no_links = errno == EPERM || errno == EOPNOTSUPP || errno == ENOSYS || errno == EMLINK;
    if (!no_links) return errno;
    if (fs::exists(fs::symlink_status(to))) return EEXIST;  // a stick or a share without links: two steps
    return ::rename(from.c_str(), to.c_str()) == 0 ? 0 : errno;
}

}  // namespace

std::vector<std::string> names_in(const fs::path& folder) {
    std::error_code trouble;
    if (!fs::exists(folder, trouble))
        throw CatalogError(CatalogTrouble::missing, fmt::format("there is no folder {}", folder.string()),
                           "make it, or name the one that is shared");
    std::vector<std::string> names;
    fs::directory_iterator items(folder, trouble);
    for (; !trouble && items != fs::directory_iterator(); items.increment(trouble)) {
        const std::string name = items->path().filename().string();
        std::error_code ignored;
        if (!name.starts_with('.') && !items->is_directory(ignored)) names.push_back(name);
    }
    if (trouble) throw_for(folder, trouble.value(), "read");
    std::sort(names.begin(), names.end());
    return names;
}

ReadFile read_shared(const fs::path& file) {
    const Handle handle(::open(file.c_str(), O_RDONLY | O_CLOEXEC | O_NONBLOCK | O_NOFOLLOW));
    if (handle.number() < 0 && errno == ELOOP) return {{}, "is a link: not followed", true};
    if (handle.number() < 0) return {{}, std::strerror(errno), errno == ENXIO};
    struct stat about {};
    if (::fstat(handle.number(), &about) != 0) return {{}, std::strerror(errno), false};
    if (!S_ISREG(about.st_mode)) return {{}, "is not a plain file", true};
    return read_from(handle.number(), static_cast<std::size_t>(about.st_size));
}

std::string write_shared(const fs::path& folder, const std::string& stem, std::string_view ending,
                         std::string_view text) {
    const fs::path growing = folder / fmt::format(".{}.{}.part", stem, ::getpid());
    int reason = 0;
    {
        const Handle handle(::open(growing.c_str(), O_CREAT | O_TRUNC | O_WRONLY | O_CLOEXEC | O_NOFOLLOW, 0666));
        if (handle.number() < 0) throw_for(growing, errno, "write");
        reason = write_and_sync(handle.number(), text);
    }
    for (int number = 1; reason == 0; ++number) {
        const std::string name =
            number == 1 ? fmt::format("{}{}", stem, ending) : fmt::format("{}-{}{}", stem, number, ending);
        reason = put_in_place(growing, folder / name);
        if (reason == 0) return name;
        if (reason != EEXIST) break;
        reason = 0;
        if (!holds(folder / name, text)) continue;  // a damaged copy has the name: it is left as it is
        ::unlink(growing.c_str());
        return name;
    }
    ::unlink(growing.c_str());
    throw_for(folder, reason, "write in");
}

}  // namespace tapbook
