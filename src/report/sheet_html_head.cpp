// Head and foot: which car, which job, how to find it again; what the sheet was made from.
#include <fmt/format.h>

#include "report/drawing_words.h"
#include "report/qr_symbol.h"
#include "report/sheet_html.h"

namespace tapbook {
namespace {

constexpr double symbol_mm = 25.5;

// Letters without an accent in capitals; whatever else stays.
std::string in_capitals(std::string text) {
    for (char& letter : text)
        if (letter >= 'a' && letter <= 'z') letter = static_cast<char>(letter - 'a' + 'A');
    return text;
}

std::string address_of(const Sheet& sheet) {
    std::string address = clean_words(sheet.address);
    while (address.ends_with('/')) address.pop_back();
    return fmt::format("{}/J/{}", in_capitals(address), sheet.plan.job.code);
}

std::string job_words(const Sheet& sheet) {
    const ShopJob& job = sheet.plan.job;
    std::string text = fmt::format("{}, job {}, started {}", system_words(sheet), job.number, job.started);
    if (!job.customer.empty()) text += fmt::format(", customer {}", job.customer);
    if (!job.initials.empty()) text += fmt::format(", by {}", job.initials);
    return text;
}

void write_code(const Sheet& sheet, Html& page) {
    const std::string link = sheet_link(sheet);
    page.begin("div", {{"class", "find"}}).begin("div");
    page.element("p", sheet.plan.job.code, {{"class", "code"}});
    if (link != sheet.plan.job.code) page.element("p", link, {{"class", "link"}});
    page.end();
    if (const auto symbol = qr_symbol_svg(link, symbol_mm)) page.raw(*symbol);
    page.end().line();
}

}  // namespace

std::string sheet_link(const Sheet& sheet) {
    const std::string& code = sheet.plan.job.code;
    if (code.empty() || sheet.address.empty()) return code;
    const std::string address = address_of(sheet);
    return qr_symbol_svg(address, symbol_mm) ? address : code;
}

void write_head(const Sheet& sheet, Html& page) {
    page.begin("header").line();
    if (!sheet.plan.job.code.empty()) write_code(sheet, page);
    page.begin("div", {{"class", "who"}});
    page.element("p", sheet.shop.empty() ? std::string("install sheet") : "install sheet, " + sheet.shop,
                 {{"class", "kind"}});
    page.element("h1", car_words(sheet)).line();
    if (sheet.plan.job.number == 0) {
        page.element("p", system_words(sheet), {{"class", "job"}});
        page.begin("p", {{"class", "job"}}).text("No job yet: start one with ");
        page.element("code", fmt::format("tapbook job start {}", sheet.plan.vehicle.path));
        page.text(" and what you read here is kept.").end();
    } else {
        page.element("p", job_words(sheet), {{"class", "job"}});
    }
    if (sheet.plan.practice) page.element("p", practice_words, {{"class", "practice"}});
    page.end().line().end().line();
}

void write_foot(const Sheet& sheet, Html& page) {
    page.begin("footer");
    page.element("p", vehicle_first, {{"class", "first"}});
    page.element("p", made_words(sheet));
    page.end().line();
}

}  // namespace tapbook
