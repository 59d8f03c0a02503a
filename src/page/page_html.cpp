// The frame of every page. Style and script are files of their own (style/); nothing runs that stands in a page.
#include "page/page_html.h"

#include <fmt/format.h>

namespace tapbook {
namespace {

// Two conductors, and the pair that is led off them.
constexpr std::string_view mark =
    "<svg class=\"mark\" width=\"34\" height=\"28\" viewBox=\"0 0 34 28\" aria-hidden=\"true\">"
    "<path d=\"M1 8H33M1 15H33\" fill=\"none\" stroke=\"currentColor\" stroke-width=\"2.6\"/>"
    "<path d=\"M10 8V27M18 15V27\" fill=\"none\" stroke=\"currentColor\" stroke-width=\"2.6\"/>"
    "<circle cx=\"10\" cy=\"8\" r=\"3.6\" fill=\"currentColor\"/>"
    "<circle cx=\"18\" cy=\"15\" r=\"3.6\" fill=\"currentColor\"/></svg>";

void write_way(Html& html, std::string_view address, std::string_view words, bool here) {
    if (here)
        html.element("a", words, {{"href", address}, {"aria-current", "page"}});
    else
        html.element("a", words, {{"href", address}});
}

void write_top(Html& html, const PageRequest& request, bool practice, PagePart part) {
    html.element("a", "To the text", {{"class", "skip"}, {"href", "#text"}}).line();
    html.begin("header", {{"class", "top"}});
    html.begin("a", {{"class", "name"}, {"href", "/"}}).raw(mark).element("span", "tapbook").end();
    html.begin("nav", {{"aria-label", "Main"}});
    write_way(html, "/", "Find", part == PagePart::find);
    write_way(html, "/jobs", "Jobs", part == PagePart::jobs);
    write_way(html, "/shelf", "Shelf", part == PagePart::shelf);
    if (!request.phone) write_way(html, "/pair", "Pair", false);
    html.end().end().line();
    if (practice)
        html.begin("p", {{"class", "practice"}})
            .element("b", "practice")
            .text(" invented cars, parts and notes: not for work on a real car")
            .end()
            .line();
}

}  // namespace

Page::Page(const PageRequest& request, bool practice, std::string_view title, PagePart part) : request_(request) {
    html_.raw("<!DOCTYPE html>\n").begin("html", {{"lang", "en"}}).line().begin("head").line();
    html_.empty("meta", {{"charset", "utf-8"}});
    html_.empty("meta", {{"name", "viewport"}, {"content", "width=device-width, initial-scale=1"}});
    html_.empty("meta", {{"name", "color-scheme"}, {"content", "light dark"}}).line();
    html_.element("title", fmt::format("{} - tapbook{}", title, practice ? " (practice)" : "")).line();
    html_.empty("link", {{"rel", "stylesheet"}, {"href", "/page.css"}});
    html_.empty("link", {{"rel", "icon"}, {"href", "data:,"}});
    html_.begin("script", {{"src", "/page.js"}, {"defer", "defer"}}).end().line().end().line();
    html_.begin("body").line();
    write_top(html_, request, practice, part);
    html_.begin("main", {{"id", "text"}}).line();
}

PageAnswer Page::answer(int status) {
    html_.end().line().begin("footer", {{"class", "foot"}});
    html_.element("p", "The vehicle's own instructions come first.", {{"class", "first"}});
    if (request_.phone) {
        html_.begin("p").text(fmt::format("This phone is paired as {}. ", *request_.phone));
        write_link(html_, "/phones", "Paired phones", "more");
        html_.end();
    }
    html_.end().line().end().line().end().line();
    PageAnswer answer;
    answer.status = status;
    answer.body = html_.take();
    return answer;
}

void write_telling(Html& html, Telling telling, std::string_view title, std::string_view text) {
    const bool done = telling == Telling::done;
    const std::string_view kind = done ? "telling done" : telling == Telling::stop ? "telling stop" : "telling wrong";
    html.begin("div", {{"class", kind}, {"role", done ? "status" : "alert"}});
    html.element("p", title, {{"class", "title"}});
    if (!text.empty()) html.element("p", text);
    html.end().line();
}

void write_grade(Html& html, Grade grade) {
    std::string kind = "grade";
    switch (grade) {
        case Grade::proven:
        case Grade::matched:
            kind += grade == Grade::proven ? " proven" : " matched";
            break;
        case Grade::one_car:
            break;
        case Grade::paper:
        case Grade::blank:
        case Grade::pulled:
            kind += " thin";
            break;
        case Grade::mixed:
        case Grade::year_split:
            kind += " mixed";
            break;
    }
    html.element("b", word_of(grade), {{"class", kind}});
}

void write_verdict(Html& html, Verdict verdict) {
    const std::string_view words = verdict == Verdict::fits ? "FITS" : verdict == Verdict::care ? "CARE" : "NO";
    html.element("b", words, {{"class", fmt::format("verdict {}", word_of(verdict))}});
}

void write_link(Html& html, const std::string& address, std::string_view words, std::string_view kind) {
    if (kind.empty())
        html.element("a", words, {{"href", address}});
    else
        html.element("a", words, {{"href", address}, {"class", kind}});
}

void write_fact(Html& html, std::string_view name, std::string_view value) {
    if (value.empty()) return;
    html.begin("p", {{"class", "fact"}}).element("span", name, {{"class", "of"}}).text(" ");
    html.element("span", value, {{"class", "is"}}).end().line();
}

std::string years_of(int first, int last) {
    return first == last ? std::to_string(first) : fmt::format("{} to {}", first, last);
}

std::string car_title(const Vehicle& car, std::optional<int> year) {
    return fmt::format("{} {} {}, {}", car.make, car.model, car.body,
                       year ? std::to_string(*year) : years_of(car.first_year, car.last_year));
}

std::string upper_first(std::string text) {
    if (!text.empty() && text[0] >= 'a' && text[0] <= 'z') text[0] = static_cast<char>(text[0] - 'a' + 'A');
    return text;
}

}  // namespace tapbook
