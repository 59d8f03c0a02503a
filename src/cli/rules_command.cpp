// rules: list them, explain one, print what they can read, run their cases.
#include <fmt/format.h>

#include <algorithm>

#include "cli/command.h"

namespace tapbook {
namespace {

Exit show_rule(Session& session, const RuleBook& book, const std::string& id) {
    std::vector<std::string_view> ids;
    for (std::size_t i = 0; i < book.rules().size(); ++i) {
        ids.push_back(book.rules()[i].id);
        if (book.rules()[i].id != id) continue;
        session.answer(rule_text(book, i, session.screen), rules_json(book, id));
        return Exit::done;
    }
    const auto near = nearest(id, ids);
    throw NoAnswer(fmt::format("there is no rule \"{}\"", shown(id)),
                   near ? fmt::format("did you mean {}?", *near) : "tapbook rules lists them");
}

Exit check_rules(Session& session, RuleBook& book) {
    const auto failures = book.run_cases();
    session.answer(rules_check_text(book, failures), rules_check_json(book, failures));
    return failures.empty() ? Exit::done : Exit::answer_is_no;
}

}  // namespace

Exit run_rules(Session& session, const Parsed& parsed) {
    const std::string what = parsed.words.empty() ? "list" : parsed.words[0];
    if (parsed.words.size() > 1 && (what == "list" || what == "columns" || what == "check"))
        throw UsageError(fmt::format("\"{}\" is one word too many for rules {}", shown(parsed.words[1]), what),
                         fmt::format("tapbook rules {}", what));
    if (what == "columns") {
        session.answer(columns_text(session.screen), columns_json());
        return Exit::done;
    }
    RuleBook book = rules_beside(session.database);
    if (what == "list") {
        session.answer(rules_text(book, session.screen), rules_json(book));
        return Exit::done;
    }
    if (what == "check") return check_rules(session, book);
    if (what == "show" && parsed.words.size() == 2) return show_rule(session, book, parsed.words[1]);
    if (what == "show") throw UsageError("rules show needs the rule's id", "tapbook rules lists them");
    constexpr std::string_view known[] = {"list", "show", "columns", "check"};
    const auto near = nearest(what, known);
    throw UsageError(fmt::format("rules does not know \"{}\"", shown(what)),
                     near ? fmt::format("did you mean `tapbook rules {}`?", *near) : "list, show ID, columns or check");
}

}  // namespace tapbook
