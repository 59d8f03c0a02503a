// exchange, alias, shops key: the shared folder, two names for one thing, and the key this shop signs with.
#include <fcntl.h>
#include <fmt/format.h>
#include <unistd.h>

#include <cerrno>
#include <cstring>

#include "cli/command.h"

namespace tapbook {
namespace {

// A key lies in a file of its own that only its owner can read. Throws CatalogError.
void write_key(const std::string& file, const std::string& text) {
    const int handle = ::open(file.c_str(), O_CREAT | O_EXCL | O_WRONLY | O_CLOEXEC | O_NOFOLLOW, 0600);
    if (handle < 0 && errno == EEXIST)
        throw CatalogError(CatalogTrouble::already_there, fmt::format("{} is there already", file),
                           "choose another place; nothing was written");
    int reason = handle < 0 ? errno : 0;
    for (std::string_view rest = text; reason == 0 && !rest.empty();) {
        const auto written = ::write(handle, rest.data(), rest.size());
        if (written > 0) rest.remove_prefix(static_cast<std::size_t>(written));
        if (written < 0 && errno != EINTR) reason = errno;
    }
    if (reason == 0 && ::fsync(handle) != 0 && errno != EINVAL) reason = errno;
    if (handle >= 0) ::close(handle);
    if (reason == 0) return;
    if (handle >= 0) ::unlink(file.c_str());
    throw CatalogError(reason == EACCES || reason == EPERM || reason == EROFS ? CatalogTrouble::not_permitted
                                                                              : CatalogTrouble::input_output,
                       fmt::format("cannot write {}: {}", file, std::strerror(reason)), "choose another place");
}

// A path as it is, of a car that is here or of one that only notes of others name.
std::string whole_path(const std::string& typed) {
    const auto parts = path_parts(typed);
    if (parts.size() >= vehicle_depth && parts.size() <= tap_depth && std::ranges::all_of(parts, is_slug)) return typed;
    throw UsageError(fmt::format("\"{}\" is not a whole path", shown(typed)),
                     "write make/model/body/first-year, and system, circuit and tap point where those are meant");
}

}  // namespace

Exit run_exchange(Session& session, const Parsed& parsed) {
    Catalog catalog = Catalog::open(session.database, Access::write);
    const FolderReport report = exchange_folder(catalog, parsed.words.front(), session.today, parsed.flag("--dry-run"));
    session.answer(folder_text(report, session.screen), folder_json(report));
    return report.has_trouble() ? Exit::answer_is_no : Exit::done;
}

Exit run_alias(Session& session, const Parsed& parsed) {
    const std::string one = whole_path(parsed.words[0]), other = whole_path(parsed.words[1]);
    Catalog catalog = Catalog::open(session.database, Access::write);
    const AliasReport report = catalog.add_alias(one, other, session.today, parsed.flag("--dry-run"));
    session.answer(alias_text(report, session.screen), alias_json(report));
    return Exit::done;
}

Exit run_shops_key(Session& session, const Parsed& parsed) {
    const auto out = parsed.text("--out"), from = parsed.text("--from");
    const bool is_new = parsed.flag("--new");
    if ((out ? 1 : 0) + (from ? 1 : 0) + (is_new ? 1 : 0) > 1)
        throw UsageError("--new, --out and --from each stand alone", "one after the other");
    const auto answer = [&](const KeyReport& report, std::string_view done) {
        session.answer(key_text(report, done, session.screen), key_json(report));
        return Exit::done;
    };
    if (from) {
        const KeyReport report = Catalog::restore_key(session.database, read_file(*from), *from);
        return answer(report, "Put back: this catalog can write and sign again.");
    }
    if (is_new) {
        Catalog catalog = Catalog::open(session.database, Access::write);
        const bool dry_run = parsed.flag("--dry-run");
        return answer(catalog.change_key(session.today, system_random(), dry_run),
                      dry_run ? "Dry run: nothing was written, and the key shown is thrown away."
                              : "Saved. Every pack carries the change with it; other shops need to do nothing.");
    }
    session.database = reading_place(session);
    const Catalog catalog = Catalog::open(session.database, Access::read);
    KeyReport report = catalog.own_key();
    if (!out) return answer(report, "");
    if (parsed.flag("--dry-run")) return answer(report, fmt::format("Dry run: {} was not written.", *out));
    write_key(*out, catalog.key_text());
    report.written = true;
    return answer(report, fmt::format("Wrote the secret key to {}, readable by its owner only. Keep it apart.", *out));
}

}  // namespace tapbook
