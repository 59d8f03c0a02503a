// The rules, one rule explained, and what rules can read, as text and JSON.
#include <fmt/format.h>

#include "report/report.h"

namespace tapbook {

namespace {

std::string origin_mark(const Rule& rule) {
    if (rule.off) return " [off]";
    if (rule.shipped) return "";
    return rule.replaces_shipped ? " [own, replaces the shipped one]" : " [own]";
}

std::string place_words(const SourcePlace& place) {
    return fmt::format("{}:{}", place.file, place.line);
}

std::string origin_words(const Rule& rule) {
    if (rule.shipped) return "shipped with the program";
    return place_words(rule.place) + (rule.replaces_shipped ? ", in the place of the shipped rule" : "");
}

std::size_t count_of_cases(const RuleBook& book) {
    std::size_t cases = 0;
    for (const auto& rule : book.rules()) cases += rule.cases.size();
    return cases;
}

void write_rule(Json& json, const RuleBook& book, std::size_t index) {
    const Rule& rule = book.rules()[index];
    json.begin_object().member("id", rule.id).member("asks", rule.asks).member("when", rule.when);
    json.member("effect", word_of(rule.effect)).member("unknown", word_of(rule.unknown)).member("says", rule.says);
    json.member("basis", rule.basis).member("reads", book.reads(index)).key("shipped").flag(rule.shipped);
    json.key("replaces_shipped").flag(rule.replaces_shipped);
    json.member("off", rule.off ? std::optional(rule.off->because) : std::nullopt).end_object();
}

}  // namespace

std::string rules_text(const RuleBook& book, const Screen& screen) {
    Paper paper(screen);
    for (const auto& rule : book.rules())
        paper.line(0, fmt::format("{:<5} {:<40}", word_of(rule.effect), rule.id), rule.asks + origin_mark(rule));
    return paper.take();
}

std::string rule_text(const RuleBook& book, std::size_t index, const Screen& screen) {
    const Rule& rule = book.rules()[index];
    Paper paper(screen);
    paper.heading(rule.id);
    paper.line(2, "asks    ", rule.asks);
    paper.line(2, "when    ", rule.when);
    for (const auto& name : book.reads(index)) {
        const Column& column = *find_column(name);
        paper.line(2, "reads   ", fmt::format("{} ({}): {}", name, column.unit, column.meaning));
    }
    paper.line(
        2, "effect  ",
        fmt::format("{} when it fires; {} when it cannot be settled", word_of(rule.effect), word_of(rule.unknown)));
    paper.line(2, "says    ", rule.says);
    if (rule.says_unknown) paper.line(2, "unknown ", *rule.says_unknown);
    paper.line(2, "basis   ", rule.basis);
    paper.line(2, "cases   ", fmt::format("{}, run by `tapbook rules check`", rule.cases.size()));
    paper.line(2, "from    ", origin_words(rule));
    if (rule.off) paper.line(2, "off     ", fmt::format("{} ({})", rule.off->because, place_words(rule.off->place)));
    return paper.take();
}

std::string rules_json(const RuleBook& book, std::string_view only) {
    Json json;
    json.begin_object().key("rules").begin_list();
    for (std::size_t i = 0; i < book.rules().size(); ++i)
        if (only.empty() || book.rules()[i].id == only) write_rule(json, book, i);
    json.end_list().end_object();
    return json_answer("rules", json.take());
}

std::string rules_check_text(const RuleBook& book, std::span<const CaseFailure> failures) {
    std::string text;
    for (const auto& failure : failures)
        text += fmt::format("{}: {}, case {}: {}\n", shown(place_words(failure.place)), failure.rule, failure.number,
                            shown(failure.says));
    return text +
           fmt::format("{} rules, {} cases, {} failed\n", book.rules().size(), count_of_cases(book), failures.size());
}

std::string rules_check_json(const RuleBook& book, std::span<const CaseFailure> failures) {
    Json json;
    json.begin_object().key("rules").whole(static_cast<std::int64_t>(book.rules().size()));
    json.key("cases").whole(static_cast<std::int64_t>(count_of_cases(book))).key("failures").begin_list();
    for (const auto& failure : failures) {
        json.begin_object().member("rule", failure.rule).key("case").whole(failure.number);
        json.member("file", failure.place.file).key("line").whole(failure.place.line);
        json.member("says", failure.says).end_object();
    }
    json.end_list().end_object();
    return json_answer("rules.check", json.take());
}

std::string columns_text(const Screen& screen) {
    Paper paper(screen);
    std::string_view relation;
    for (const auto& column : columns()) {
        if (column.relation != relation) {
            if (!relation.empty()) paper.blank();
            paper.heading(column.relation);
        }
        relation = column.relation;
        paper.line(2, fmt::format("{:<24} {:<8} {:<6}", column.name, column.type, column.unit), column.meaning);
    }
    return paper.take();
}

std::string columns_json() {
    Json json;
    json.begin_object().key("columns").begin_list();
    for (const auto& column : columns()) {
        json.begin_object()
            .member("name", fmt::format("{}.{}", column.relation, column.name))
            .member("type", column.type);
        json.member("unit", column.unit).member("meaning", column.meaning).end_object();
    }
    json.end_list().end_object();
    return json_answer("rules.columns", json.take());
}

}  // namespace tapbook
