// How does a phone become one that may read and write, and how does it stop being one? A GET only shows a form; the
// POST pairs.
#include <fmt/format.h>

#include <algorithm>

#include "page/page_html.h"
#include "page/pairing.h"
#include "page/route.h"

namespace tapbook {
namespace {

constexpr std::string_view new_code_hint = "Press Enter in the window of `tapbook serve` for a new code.";

void write_name_box(Html& html, const PageRequest& request) {
    FormBox box;
    box.name = "name";
    box.label = "Name of this phone";
    box.value = request.form.text("name").value_or("");
    box.remark = "so that others see whose it is; may stay empty";
    write_form_box(html, box);
}

void write_pair_button(Html& html) {
    html.begin("p", {{"class", "actions"}});
    html.element("button", "Pair this phone", {{"type", "submit"}, {"class", "main"}}).end().line();
}

PageAnswer code_page(PageDesk& desk, const PageRequest& request, int status = 200, const std::string& complaint = {}) {
    Page page(request, desk.catalog().is_practice(), "Pair this phone");
    Html& html = page.html();
    html.element("h1", "Pair this phone");
    html.element(
        "p",
        "A paired phone reads the catalog and writes readings, ticks and notes. The shop's screen shows six digits.");
    begin_form(html, request, "/pair");
    FormBox box;
    box.name = "pin";
    box.label = "Six digits";
    box.is_number = true;
    box.complaint = complaint;
    write_form_box(html, box);
    write_name_box(html, request);
    write_pair_button(html);
    html.end().line();
    PageAnswer answer = page.answer(status);
    answer.begins_visit = true;
    return answer;
}

PageAnswer show_code_form(PageDesk& desk, const PageRequest& request) {
    return code_page(desk, request);
}

// Where the symbol leads. It uses nothing up: the button does.
PageAnswer show_token_form(PageDesk& desk, const PageRequest& request) {
    if (!desk.codes().is_open(request.caught.front()))
        throw PageRefused(410, "This code was used already or is older than ten minutes.", std::string(new_code_hint));
    Page page(request, desk.catalog().is_practice(), "Pair this phone");
    Html& html = page.html();
    html.element("h1", "Pair this phone");
    html.element("p", "A paired phone reads the catalog and writes readings, ticks and notes.");
    begin_form(html, request, "/pair");
    write_hidden(html, "token", request.caught.front());
    write_name_box(html, request);
    write_pair_button(html);
    html.end().line();
    PageAnswer answer = page.answer();
    answer.begins_visit = true;
    return answer;
}

PageAnswer paired(const PageRequest& request) {
    PageAnswer answer = see_other("/");
    answer.pairs_phone = shown(nfc(request.form.text("name").value_or("")));
    return answer;
}

PageAnswer pair_by_token(PageDesk& desk, const PageRequest& request, const std::string& token) {
    if (desk.codes().try_token(token) == PairingTry::right) return paired(request);
    throw PageRefused(410, "This code was used already or is older than ten minutes.", std::string(new_code_hint));
}

PageAnswer pair_phone(PageDesk& desk, const PageRequest& request) {
    if (const auto token = request.form.text("token")) return pair_by_token(desk, request, *token);
    switch (desk.codes().try_pin(request.form.text("pin").value_or(""))) {
        case PairingTry::right:
            return paired(request);
        case PairingTry::wrong:
            return code_page(desk, request, 403, "These are not the digits on the shop's screen.");
        case PairingTry::not_six_digits:
            return code_page(desk, request, 422, "Six digits are wanted, as on the shop's screen.");
        case PairingTry::spent:
            break;
    }
    throw PageRefused(403, fmt::format("The digits are dead: {} were wrong.", most_wrong_tries),
                      std::string(new_code_hint));
}

void write_phones(Html& html, const PageRequest& request, const std::vector<PairedPhone>& phones) {
    html.begin("ul", {{"class", "plain"}}).line();
    for (const auto& phone : phones) {
        html.begin("li").element("b", phone.name).line();
        begin_form(html, request, fmt::format("/phones/{}/end", phone.number));
        html.element("button", fmt::format("End the pairing of {}", phone.name), {{"type", "submit"}});
        html.end().end().line();
    }
    html.end().line();
}

void write_codes(Html& html, const PageRequest& request, PageDesk& desk) {
    const auto shown = desk.codes().shown();
    html.element("h2", "Pair another phone");
    const std::string link = fmt::format("{}/P/{}", desk.base_address(), shown.token);
    if (!shown.token.empty()) {
        html.element("p", "Let it scan this, once, within ten minutes:");
        if (const auto symbol = qr_symbol_svg(link, 40, "QR code that pairs a phone"))
            html.begin("p").raw(*symbol).end().line();
    }
    if (!shown.pin.empty()) write_fact(html, "Six digits, typed under Pair", shown.pin);
    begin_form(html, request, "/phones/code");
    html.element("button", "Make a new code", {{"type", "submit"}}).end().line();
}

PageAnswer show_phones(PageDesk& desk, const PageRequest& request) {
    Page page(request, desk.catalog().is_practice(), "Paired phones");
    page.html().element("h1", "Paired phones");
    page.html().element("p",
                        "Each may read and write until it was not used for twelve hours, or until tapbook serve ends.");
    write_phones(page.html(), request, desk.sessions().phones());
    write_codes(page.html(), request, desk);
    return page.answer();
}

PageAnswer end_pairing(PageDesk& desk, const PageRequest& request) {
    const std::string& typed = request.caught.front();
    const auto number = scaled(typed, 0);
    const auto* whole = std::get_if<std::int64_t>(&number);
    const auto phones = desk.sessions().phones();
    const bool is_there = whole != nullptr && std::any_of(phones.begin(), phones.end(),
                                                          [&](const auto& one) { return one.number == *whole; });
    if (!is_there) throw PageRefused(404, "This phone is not paired any more.", "Nothing had to be ended.");
    desk.sessions().end(static_cast<int>(*whole));
    return see_other("/phones");
}

PageAnswer make_code(PageDesk& desk, const PageRequest&) {
    desk.codes().renew();
    return see_other("/phones");
}

constexpr Route list[] = {{PageMethod::get, "/pair", RouteFor::anybody, show_code_form},
                          {PageMethod::get, "/P/{}", RouteFor::anybody, show_token_form},
                          {PageMethod::post, "/pair", RouteFor::anybody, pair_phone},
                          {PageMethod::get, "/phones", RouteFor::paired_phone, show_phones},
                          {PageMethod::post, "/phones/code", RouteFor::paired_phone, make_code},
                          {PageMethod::post, "/phones/{}/end", RouteFor::paired_phone, end_pairing}};

}  // namespace

std::span<const Route> pairing_routes() {
    return list;
}

}  // namespace tapbook
