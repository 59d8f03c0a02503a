// The rules, one rule explained, and what rules can read, as text and JSON.
#include <fmt/format.h>

#include "report/report.h"

namespace tapbook {

std::string rules_text(const RuleBook& book, const Screen& screen) {
    Paper paper(screen);
    for (const auto& rule : book.rules())
        paper.line(0, fmt::format("{:<5} {:<40}", word_of(rule.effect), rule.id),
                   fmt::format("{}{}", rule.asks, rule.shipped ? "" : " [own]"));
    return paper.take();
}

std::string rule_text(const Rule& rule, const Screen& screen) {
    Paper paper(screen);
    paper.heading(rule.id);
    paper.line(2, "asks    ", rule.asks);
    paper.line(2, "when    ", rule.when);
    paper.line(
        2, "effect  ",
        fmt::format("{} when it fires; {} when it cannot be settled", word_of(rule.effect), word_of(rule.unknown)));
    paper.line(2, "says    ", rule.says);
    paper.line(2, "basis   ", rule.basis);
    paper.line(2, "cases   ", fmt::format("{}, run by `tapbook rules check`", rule.cases.size()));
    paper.line(2, "from    ",
               rule.shipped ? "shipped with the program" : fmt::format("{}:{}", rule.place.file, rule.place.line));
    return paper.take();
}

std::string rules_json(const RuleBook& book) {
    Json json;
    json.begin_object().key("rules").begin_list();
    for (std::size_t i = 0; i < book.rules().size(); ++i) {
        const Rule& rule = book.rules()[i];
        json.begin_object()
            .member("id", rule.id)
            .member("asks", rule.asks)
            .member("when", rule.when)
            .member("effect", word_of(rule.effect));
        json.member("unknown", word_of(rule.unknown))
            .member("basis", rule.basis)
            .member("reads", book.reads(i))
            .key("shipped")
            .flag(rule.shipped)
            .end_object();
    }
    json.end_list().end_object();
    return json_answer("rules", json.take());
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
