// How often each shop errs, as text and JSON, with the plain word that no grade knows of it.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "report/json.h"
#include "report/spreadsheet_report.h"

namespace tapbook {
namespace {

// "1 in 12"; "less than 1 in 200" for what is too seldom to be told from never.
std::string share_words(double share) {
    constexpr double seldom = 0.005;
    if (share < seldom) return "less than 1 in 200";
    if (share > 0.5) return fmt::format("{:.0f} in 10", share * 10);
    return fmt::format("1 in {:.0f}", std::round(1 / share));
}

std::string error_words(const ShopErrorsAnswer::Row& row) {
    const ShopErrors& errors = row.errors;
    const std::string notes = fmt::format("{} {}", row.shop.notes, row.shop.notes == 1 ? "note" : "notes");
    if (errors.answers == 0) return fmt::format("{}; nothing that another shop has looked at too", notes);
    const std::string shared = fmt::format("{}; of {} shared {}, {} agreed", notes, errors.answers,
                                           errors.answers == 1 ? "answer" : "answers", errors.agreed);
    if (!errors.is_enough) return fmt::format("{}: too few to say how often it errs", shared);
    return fmt::format("{}: probably {} wrong, between {} and {}", shared, share_words(errors.wrong),
                       share_words(errors.between.low), share_words(errors.between.high));
}

std::string name_words(const ShopRow& shop) {
    return fmt::format("{}{}", shop.name.empty() ? "(no name yet)" : shop.name, shop.is_own ? ", this shop" : "");
}

}  // namespace

std::string shop_errors_text(const ShopErrorsAnswer& answer, const Screen& screen) {
    Paper paper(screen);
    paper.heading(fmt::format("How often each shop errs, told from {} {} that two shops or more have looked at",
                              answer.questions, answer.questions == 1 ? "question" : "questions"));
    int widest = 0;
    for (const auto& row : answer.shops) widest = std::max(widest, shown_width(shown(name_words(row.shop))));
    for (const auto& row : answer.shops) {
        const std::string name = shown(name_words(row.shop));
        const int gap = std::max(0, std::min(widest, 40) - shown_width(name));
        paper.line(2, fmt::format("{}  {}{:{}}", row.shop.id.substr(0, 8), name, "", gap), error_words(row));
    }
    paper.line(0, "",
               "Nobody knows the truth here: an answer counts as wrong as far as the other shops speak against it; "
               "the true share lies between the two bounds with 95 %.");
    paper.line(0, "", "For the shops, to look at meters and habits. It is never used for a grade.");
    return paper.take();
}

std::string shop_errors_json(const ShopErrorsAnswer& answer) {
    Json json;
    json.begin_object().key("questions").whole(static_cast<std::int64_t>(answer.questions));
    json.key("least_answers").whole(least_answers).key("used_for_grades").flag(false).key("shops").begin_list();
    for (const auto& row : answer.shops) {
        const auto number = [&](double value) { return row.errors.is_enough ? std::optional(value) : std::nullopt; };
        json.begin_object().member("id", row.shop.id);
        json.member("name", row.shop.name.empty() ? std::nullopt : std::optional(row.shop.name));
        json.key("own").flag(row.shop.is_own).key("notes").whole(row.shop.notes);
        json.key("shared_answers").whole(row.errors.answers).key("agreed").whole(row.errors.agreed);
        json.member_number("wrong_share", number(row.errors.wrong))
            .member_number("wrong_share_low", number(row.errors.between.low))
            .member_number("wrong_share_high", number(row.errors.between.high))
            .end_object();
    }
    json.end_list().end_object();
    return json_answer("shops.errors", json.take());
}

}  // namespace tapbook
