// backup, restore, rebuild, audit: looking after the catalog.
#include <fmt/format.h>

#include "cli/command.h"
#include "cli/progress_line.h"

namespace tapbook {
namespace {

constexpr std::int64_t usual_audit = 20, largest_audit = 10'000;

std::string day_option(const Parsed& parsed, std::string_view name, const std::string& usual) {
    const auto typed = parsed.text(name);
    if (!typed) return usual;
    if (!day_number(*typed))
        throw UsageError(fmt::format("{}: \"{}\" is not a day", name, shown(*typed)), "write it like 2026-05-02");
    return *typed;
}

}  // namespace

Exit run_backup(Session& session, const Parsed& parsed) {
    const auto copy = parsed.words.empty() ? free_backup_name(session.database, session.today)
                                           : std::filesystem::path(parsed.words.front());
    const auto key = parsed.flag("--without-key") ? KeyInCopy::left_out : KeyInCopy::kept;
    const CopyReport report = backup_catalog(session.database, copy, key);
    session.answer(backup_text(report, session.screen), backup_json(report));
    return Exit::done;
}

Exit run_restore(Session& session, const Parsed& parsed) {
    const CopyReport report = restore_catalog(parsed.words.front(), session.database, session.today);
    session.answer(restore_text(report, session.screen), restore_json(report));
    return Exit::done;
}

Exit run_rebuild(Session& session, const Parsed& parsed) {
    Catalog catalog = Catalog::open(session.database, Access::write);
    ProgressLine line("rebuilt");
    catalog.tell_progress(line.listener());
    const RebuildReport report = catalog.rebuild(parsed.flag("--dry-run"));
    session.answer(rebuild_text(report, session.screen), rebuild_json(report));
    return Exit::done;
}

Exit run_audit(Session& session, const Parsed& parsed) {
    AuditAnswer answer;
    answer.seed = static_cast<std::uint64_t>(parsed.number("--seed", 0, 0, 1'000'000'000).value_or(1));
    const auto count = parsed.number("--count", 0, 1, largest_audit).value_or(usual_audit);
    answer.since = day_option(parsed, "--since", session.today);
    session.database = reading_place(session);
    Catalog catalog = Catalog::open(session.database, Access::read);
    ProgressLine line("graded");
    catalog.tell_progress(line.listener());
    const auto facts = catalog.proven_facts(answer.since);
    answer.proven = facts.size();
    for (const auto place : seeded_sample(facts.size(), static_cast<std::size_t>(count), answer.seed)) {
        answer.sample.push_back(facts[place]);
        switch (facts[place].verdict) {
            case AuditVerdict::open:
                ++answer.open;
                break;
            case AuditVerdict::right:
                ++answer.right;
                break;
            case AuditVerdict::wrong:
                ++answer.wrong;
                break;
        }
    }
    answer.share = share_interval(answer.right, answer.wrong);
    if (facts.empty())
        throw NoAnswer("nothing in this catalog is PROVEN yet", "tapbook taps shows what each fact lacks");
    session.answer(audit_text(answer, session.screen), audit_json(answer));
    return Exit::done;
}

}  // namespace tapbook
