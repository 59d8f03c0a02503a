// What does the environment say about screen, place and day?
#include <fcntl.h>
#include <fmt/format.h>
#include <sys/ioctl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <algorithm>
#include <cerrno>
#include <chrono>
#include <cstdlib>
#include <cstring>

#include "cli/command.h"

namespace tapbook {
namespace {

constexpr std::size_t most_file_bytes = 64 * 1024 * 1024;

std::string environment(const char* name) {
    const char* value = std::getenv(name);
    return value == nullptr ? std::string() : std::string(value);
}

Screen screen_of_terminal() {
    Screen screen;
    const bool terminal = ::isatty(STDOUT_FILENO) == 1;
    winsize size{};
    if (terminal && ::ioctl(STDOUT_FILENO, TIOCGWINSZ, &size) == 0 && size.ws_col > 0) screen.width = size.ws_col;
    const auto columns = scaled(environment("COLUMNS"), 0);
    if (const auto* wide = std::get_if<std::int64_t>(&columns); wide != nullptr && *wide > 0)
        screen.width = static_cast<int>(std::min<std::int64_t>(*wide, 1000));
    screen.width = std::clamp(screen.width, 40, 100);
    if (terminal && environment("NO_COLOR").empty() && environment("TERM") != "dumb" && !environment("TERM").empty()) {
        const std::string depth = environment("COLORTERM");
        screen.colours = depth == "truecolor" || depth == "24bit" ? Colours::full : Colours::palette_256;
    }
    return screen;
}

// XDG Base Directory Specification: a relative XDG_DATA_HOME is invalid and ignored.
std::filesystem::path data_place() {
    const std::string data = environment("XDG_DATA_HOME");
    if (data.starts_with('/')) return std::filesystem::path(data) / "tapbook" / "catalog.sqlite";
    const std::string home = environment("HOME");
    return std::filesystem::path(home.empty() ? "." : home) / ".local/share/tapbook/catalog.sqlite";
}

struct Handle {
    int number;
    ~Handle() {
        if (number > 2) ::close(number);
    }
};

[[noreturn]] void refuse_file(const std::string& name, const std::string& what, const std::string& way_out) {
    throw InputRefused({Complaint{{name, 0, 0, {}}, what, way_out}});
}

// A pipe without a writer reads as empty instead of waiting for one.
int open_to_read(const std::string& name) {
    const int handle = ::open(name.c_str(), O_RDONLY | O_CLOEXEC | O_NONBLOCK);
    if (handle >= 0) {
        ::fcntl(handle, F_SETFL, 0);
        return handle;
    }
    const int reason = errno;
    if (reason == EACCES)
        throw CatalogError(CatalogTrouble::not_permitted, fmt::format("may not read {}", name),
                           "read it from an account that may");
    if (reason == ENOENT || reason == ENOTDIR)
        refuse_file(name, "there is no such file", "check the name and the folder");
    if (reason == ELOOP || reason == ENAMETOOLONG || reason == ENXIO)
        refuse_file(name, fmt::format("cannot be opened: {}", std::strerror(reason)), "name a text file");
    throw CatalogError(CatalogTrouble::input_output, fmt::format("cannot read {}: {}", name, std::strerror(reason)));
}

}  // namespace

std::string today_text() {
    const std::string given = environment("TAPBOOK_TODAY");
    if (day_number(given)) return given;
    if (!given.empty())
        throw UsageError(fmt::format("TAPBOOK_TODAY: \"{}\" is not a day", shown(given)), "write it like 2026-05-02");
    const auto days = std::chrono::floor<std::chrono::days>(std::chrono::system_clock::now());
    return day_text(days.time_since_epoch().count());
}

Session session_from_environment() {
    Session session;
    session.screen = screen_of_terminal();
    const std::string place = environment("TAPBOOK_DB");
    session.database_given = !place.empty();
    session.database = place.empty() ? data_place() : std::filesystem::path(place);
    session.today = today_text();
    return session;
}

std::filesystem::path reading_place(const Session& session) {
    std::filesystem::path practice = session.database;
    practice.replace_filename("practice.sqlite");
    const bool falls_back =
        !session.database_given && !std::filesystem::exists(session.database) && std::filesystem::exists(practice);
    return falls_back ? practice : session.database;
}

std::string read_file(const std::string& name) {
    const Handle handle{name == "-" ? STDIN_FILENO : open_to_read(name)};
    struct stat about {};
    if (::fstat(handle.number, &about) == 0 && S_ISDIR(about.st_mode))
        refuse_file(name, "is a folder", "name the files in it, one after the other");
    std::string text;
    if (S_ISREG(about.st_mode)) text.reserve(std::min(static_cast<std::size_t>(about.st_size), most_file_bytes + 1));
    char buffer[65536];
    while (true) {
        const auto got = ::read(handle.number, buffer, sizeof buffer);
        if (got < 0 && errno == EINTR) continue;
        if (got < 0)
            throw CatalogError(CatalogTrouble::input_output,
                               fmt::format("cannot read {}: {}", name, std::strerror(errno)));
        if (got == 0) break;
        text.append(buffer, static_cast<std::size_t>(got));
        if (text.size() > most_file_bytes) refuse_file(name, "is larger than 64 MiB", "split it");
    }
    if (text.empty() && S_ISFIFO(about.st_mode) && name != "-")
        refuse_file(name, "is a pipe into which nobody writes", "start its writer first, or pipe into `tapbook add -`");
    return text;
}

RuleBook rules_beside(const std::filesystem::path& database, RuleCases cases_of_shipped) {
    RuleBook book = RuleBook::shipped(cases_of_shipped);
    std::filesystem::path own = database;
    own.replace_extension(".rules.toml");
    // a link that leads nowhere is refused, not passed over
    if (std::filesystem::exists(std::filesystem::symlink_status(own)))
        book.override_with(read_rules(read_file(own.string()), own.string()));
    return book;
}

}  // namespace tapbook
