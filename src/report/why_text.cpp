// The sum behind each grade as a person adds it up: value by value, shop by shop, then what the rules ask for.
#include <fmt/format.h>

#include "report/notes_report.h"
#include "report/said.h"

namespace tapbook {
namespace {

std::string counted(int number, std::string_view noun) {
    return fmt::format("{} {}{}", number, noun, number == 1 ? "" : "s");
}

std::string shop_words(const WhyAnswer& answer, const std::string& shop) {
    const auto name = answer.shop_names.find(shop);
    const std::string words =
        name == answer.shop_names.end() ? fmt::format("shop {}", shop.substr(0, 8)) : name->second;
    return shop == answer.own_shop ? fmt::format("{} (this shop)", words) : words;
}

std::string share_words(const ShopShare& share) {
    std::string text = fmt::format("{} {}", share.best_method, share.best);
    if (share.cars > 1) text += fmt::format(", {} +{}", counted(share.cars - 1, "further car"), share.cars - 1);
    if (share.cars > 1 || share.capped) text += fmt::format(" = {}", share.points);
    return share.capped ? text + " (a shop never gives more than 5)" : text;
}

void print_value(Paper& paper, const WhyAnswer& answer, Question question, const ValueSum& value) {
    paper.line(2, "", fmt::format("{}: {}", value_words(question, value.value), counted(value.points, "point")));
    for (const auto& share : value.shops) {
        const std::string who = share.shop.empty()
                                    ? share.shops == 1
                                          ? std::string("1 shop not on your list")
                                          : fmt::format("{} shops not on your list, counted as one", share.shops)
                                    : shop_words(answer, share.shop);
        paper.line(6, "", fmt::format("{}: {}", who, share_words(share)));
    }
    if (value.paper_sources > 0)
        paper.line(6, "",
                   fmt::format("paper from {}: {}{}", counted(value.paper_sources, "source"), value.paper_points,
                               value.paper_capped ? " (never more than 2)" : ""));
}

void print_demands(Paper& paper, const Reckoning& sum) {
    const Claim& leading = sum.standing.claims.front();
    paper.line(2, "lead   ", fmt::format("{} over the next value (6 proves)", counted(sum.lead, "point")));
    paper.line(2, "share  ",
               fmt::format("{} of {} (4/5 proves: {})", leading.points, counted(sum.all_points, "point"),
                           sum.has_share ? "yes" : "no"));
    paper.line(
        2, "behind ",
        fmt::format("{} at {}, {} (2, 2 and 2 prove)", counted(leading.cars, "car"),
                    counted(leading.known_shops, "known shop"), counted(leading.measured_cars, "car") + " measured"));
    if (leading.first_year)
        paper.line(2, "years  ",
                   fmt::format("{} seen; another year counts one grade lower",
                               words(ModelYears{*leading.first_year, *leading.last_year})));
}

void print_year_test(Paper& paper, Question question, const YearTestSum& test) {
    paper.line(2, "change ",
               fmt::format("\"{} until {}, {} from {}\" explains {} more than one value; {:.2f} + 3 are needed: {}",
                           value_words(question, test.best.old_value), test.best.last_old_year,
                           value_words(question, test.best.new_value), test.best.first_new_year,
                           counted(test.best.gain, "point"), test.penalty, test.splits ? "split by year" : "no split"));
}

void print_question(Paper& paper, const WhyAnswer& answer, const WhyQuestion& why) {
    paper.blank();
    const auto& standing = why.sum.standing;
    paper.line(0, fmt::format("{:<9}", word_of(why.question)),
               why.line.empty() ? std::string(word_of(standing.grade)) : why.line, Weight::strong);
    if (why.asked_year)
        paper.line(2, fmt::format("in {}", *answer.year),
                   why.asked_year_line.empty() ? std::string(word_of(why.asked_year->grade)) : why.asked_year_line);
    for (const auto& value : why.sum.values) print_value(paper, answer, why.question, value);
    if (standing.claims.empty()) return;
    print_demands(paper, why.sum);
    if (why.sum.year_test) print_year_test(paper, why.question, *why.sum.year_test);
}

void print_note(Paper& paper, const WhyAnswer& answer, const WhyNote& note) {
    std::string text;
    if (note.fate != NoteFate::counts)
        text = fmt::format("{}{}{}: ", word_of(note.fate), note.fate_words.empty() ? "" : " - ", note.fate_words);
    text += fmt::format("{}; {}; {}{}{}{}", note.says, note.method, shop_words(answer, note.shop),
                        note.initials.empty() ? "" : ", " + note.initials,
                        note.year ? fmt::format("; model year {}", *note.year) : "; model year not noted",
                        note.is_told_apart ? "" : "; car not told apart");
    paper.line(2, fmt::format("{} {}", short_id(note.id), note.date), text);
}

}  // namespace

std::string why_text(const WhyAnswer& answer, const Screen& screen) {
    Paper paper(screen);
    paper.heading(fmt::format("{}{}", answer.path, answer.practice ? "   [practice: invented car]" : ""));
    if (!answer.also.empty()) paper.line(0, "", also_words(answer.also));
    for (const auto& why : answer.questions) print_question(paper, answer, why);
    paper.blank();
    paper.heading(answer.notes.empty() ? "No notes" : "Notes, oldest first");
    for (const auto& note : answer.notes) print_note(paper, answer, note);
    paper.blank();
    paper.line(0, "Next:", answer.next);
    paper.line(0, "Cars:",
               "one car at one shop counts once, with its best note. Plates never leave a shop, so the same car seen "
               "at two shops counts as two.");
    return paper.take();
}

}  // namespace tapbook
