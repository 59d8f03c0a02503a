// See serve_report.h.
#include "report/serve_report.h"

#include <fmt/format.h>

#include "report/json.h"
#include "report/qr_symbol.h"

namespace tapbook {
namespace {

std::string in_capitals(std::string text) {
    for (char& letter : text)
        if (letter >= 'a' && letter <= 'z') letter = static_cast<char>(letter - 'a' + 'A');
    return text;
}

void write_pairing(Paper& paper, const OpenedPage& page) {
    paper.blank();
    paper.heading("Pair a phone, so that it may read and write");
    const bool coloured = paper.screen().colours != Colours::none;
    if (page.lan)
        if (const auto lines = qr_symbol_lines(pairing_link(page), coloured ? QrInk::black_on_white : QrInk::screen)) {
            paper.line(2, "", "Scan this: good once, for ten minutes.");
            paper.raw(*lines);
        }
    paper.line(
        2, "",
        fmt::format("{} open {}/pair and type {} {}: dead after five wrong tries in all.", page.lan ? "Or" : "Here,",
                    page.addresses.front(), page.pin.substr(0, 3), page.pin.substr(3)));
}

}  // namespace

std::string pairing_link(const OpenedPage& page) {
    return in_capitals(fmt::format("{}/P/{}", page.addresses.front(), page.token));
}

std::string pairing_text(const OpenedPage& page, const Screen& screen) {
    Paper paper(screen);
    write_pairing(paper, page);
    return paper.take();
}

std::string opened_text(const OpenedPage& page, const Screen& screen) {
    Paper paper(screen);
    paper.heading(fmt::format("The phone page of {} is open", page.shop));
    if (page.practice) paper.line(2, "", "practice catalog: invented cars, parts and notes");
    paper.line(2, "catalog ", page.catalog);
    for (const auto& address : page.addresses) paper.line(2, "address ", address + "/");
    if (page.lan) {
        paper.line(2, "", "A phone has to be paired before it may read or write.");
        paper.caution(2, "Plain http over Wi-Fi can be overheard",
                      "who listens reads along and can write as a paired phone; let customers use another network");
    } else {
        paper.line(2, "", "Open to this machine alone; --lan lets phones in.");
    }
    write_pairing(paper, page);
    paper.blank();
    paper.line(0, "", "Enter makes a new code. Ctrl-C closes the page and ends every pairing.");
    return paper.take();
}

std::string opened_json(const OpenedPage& page) {
    Json json;
    json.begin_object().member("shop", page.shop).member("catalog", page.catalog);
    json.key("practice").flag(page.practice);
    json.key("lan").flag(page.lan);
    json.member("addresses", page.addresses);
    json.member("pairing_link", pairing_link(page)).member("pairing_digits", page.pin).end_object();
    return json_answer("serve", json.take());
}

}  // namespace tapbook
