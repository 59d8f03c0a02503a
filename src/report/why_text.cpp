// The sum behind each grade on the screen: question by question, then the notes.
#include <fmt/format.h>

#include "report/notes_report.h"
#include "report/said.h"
#include "report/why_words.h"

namespace tapbook {
namespace {

void print_question(Paper& paper, const WhyAnswer& answer, const WhyQuestion& why) {
    paper.blank();
    paper.line(0, fmt::format("{:<9}", word_of(why.question)), why_standing_words(why), Weight::strong);
    if (why.asked_year) paper.line(2, fmt::format("in {}", *answer.year), why_year_words(why));
    for (const auto& value : why.sum.values) {
        paper.line(2, "", why_value_words(why.question, value));
        for (const auto& share : why_shares(answer, value)) paper.line(6, "", share);
    }
    for (const auto& demand : why_demands(why)) paper.line(2, fmt::format("{:<7}", demand.name), demand.words);
}

}  // namespace

std::string why_text(const WhyAnswer& answer, const Screen& screen) {
    Paper paper(screen);
    paper.heading(fmt::format("{}{}", answer.path, answer.practice ? "   [practice: invented car]" : ""));
    if (!answer.also.empty()) paper.line(0, "", also_words(answer.also));
    for (const auto& why : answer.questions) print_question(paper, answer, why);
    paper.blank();
    paper.heading(answer.notes.empty() ? "No notes" : "Notes, oldest first");
    for (const auto& note : answer.notes)
        paper.line(2, fmt::format("{} {}", short_id(note.id), note.date), why_note_words(answer, note));
    paper.blank();
    paper.line(0, "Next:", answer.next);
    paper.line(0, "Cars:", why_cars_words);
    return paper.take();
}

}  // namespace tapbook
