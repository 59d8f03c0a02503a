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

std::filesystem::path data_place() {
    const std::string data = environment("XDG_DATA_HOME");
    if (!data.empty()) return std::filesystem::path(data) / "tapbook" / "catalog.sqlite";
    const std::string home = environment("HOME");
    return std::filesystem::path(home.empty() ? "." : home) / ".local/share/tapbook/catalog.sqlite";
}

std::string today_text() {
    const std::string given = environment("TAPBOOK_TODAY");
    if (day_number(given)) return given;
    if (!given.empty())
        throw UsageError(fmt::format("TAPBOOK_TODAY: \"{}\" is not a day", shown(given)), "write it like 2026-05-02");
    const auto days = std::chrono::floor<std::chrono::days>(std::chrono::system_clock::now());
    return day_text(days.time_since_epoch().count());
}

struct Handle {
    int number;
    ~Handle() {
        if (number > 2) ::close(number);
    }
};

}  // namespace

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
    const Handle handle{name == "-" ? STDIN_FILENO : ::open(name.c_str(), O_RDONLY | O_CLOEXEC)};
    if (handle.number < 0) {
        const int reason = errno;
        if (reason == EACCES)
            throw CatalogError(CatalogTrouble::not_permitted, fmt::format("may not read {}", name),
                               "read it from an account that may");
        if (reason == ENOENT)
            throw InputRefused({Complaint{{name, 0, 0, {}}, "there is no such file", "check the name and the folder"}});
        throw CatalogError(CatalogTrouble::input_output,
                           fmt::format("cannot read {}: {}", name, std::strerror(reason)));
    }
    struct stat about {};
    if (::fstat(handle.number, &about) == 0 && S_ISDIR(about.st_mode))
        throw InputRefused({Complaint{{name, 0, 0, {}}, "is a folder", "name the files in it, one after the other"}});
    std::string text;
    char buffer[65536];
    while (true) {
        const auto got = ::read(handle.number, buffer, sizeof buffer);
        if (got < 0)
            throw CatalogError(CatalogTrouble::input_output,
                               fmt::format("cannot read {}: {}", name, std::strerror(errno)));
        if (got == 0) return text;
        text.append(buffer, static_cast<std::size_t>(got));
        if (text.size() > most_file_bytes)
            throw InputRefused({Complaint{{name, 0, 0, {}}, "is larger than 64 MiB", "split it"}});
    }
}

RuleBook rules_beside(const std::filesystem::path& database) {
    RuleBook book = RuleBook::shipped();
    std::filesystem::path own = database;
    own.replace_extension(".rules.toml");
    if (std::filesystem::exists(own)) book.override_with(read_rules(read_file(own.string()), own.string()));
    return book;
}

}  // namespace tapbook
