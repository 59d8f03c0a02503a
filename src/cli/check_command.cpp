// check and where: is the file sound, and where is everything?
#include "cli/command.h"
#include "cli/progress_line.h"

namespace tapbook {
namespace {

namespace fs = std::filesystem;

// The folder that the running program was installed under: PREFIX of PREFIX/bin/tapbook.
fs::path install_prefix() {
    std::error_code trouble;
    const fs::path program = fs::read_symlink("/proc/self/exe", trouble);
    return trouble ? fs::path("/usr") : program.parent_path().parent_path();
}

}  // namespace

Exit run_check(Session& session, const Parsed& parsed) {
    ProgressLine line("checked");
    const CheckReport report = check_catalog(
        reading_place(session), parsed.flag("--full") ? CheckDepth::full : CheckDepth::quick, line.listener());
    session.answer(check_text(report, session.screen), check_json(report));
    return report.sound() ? Exit::done : Exit::damaged;
}

Exit run_where(Session& session, const Parsed&) {
    ProgramPlaces places;
    places.catalog = places.practice = places.rules = session.database;
    places.practice.replace_filename("practice.sqlite");
    places.rules.replace_extension(".rules.toml");
    const fs::path share = install_prefix() / "share";
    const auto add = [&](const char* what, const fs::path& path) {
        std::error_code ignored;
        places.all.push_back({what, path, fs::exists(path, ignored)});
    };
    add("catalog", places.catalog);
    add("practice", places.practice);
    add("own rules", places.rules);
    add("data folder", fs::absolute(places.catalog).parent_path());
    add("manual", share / "man/man1/tapbook.1.gz");
    add("for bash", share / "bash-completion/completions/tapbook");
    add("for zsh", share / "zsh/site-functions/_tapbook");
    add("for fish", share / "fish/vendor_completions.d/tapbook.fish");
    add("JSON schemas", share / "tapbook/schema");
    session.answer(where_text(places, session.screen), where_json(places));
    return Exit::done;
}

}  // namespace tapbook
