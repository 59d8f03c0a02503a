// See page_gate.h. A refusal is thrown as PageRefused and becomes a page in answer().
#include "page/page_gate.h"

#include <fmt/format.h>

#include <algorithm>

#include "page/answer_headers.h"
#include "page/form.h"
#include "page/page_html.h"
#include "page/refusal_page.h"
#include "report/report.h"

namespace tapbook {
namespace {

bool same_name(std::string_view a, std::string_view b) {
    const auto lower = [](char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; };
    return std::equal(a.begin(), a.end(), b.begin(), b.end(),
                      [&](char left, char right) { return lower(left) == lower(right); });
}

bool is_form(std::string_view type) {
    const std::string_view plain = type.substr(0, std::min(type.find_first_of("; "), type.size()));
    return same_name(plain, "application/x-www-form-urlencoded");
}

std::optional<PageMethod> method_of(std::string_view name) {
    if (name == "GET" || name == "HEAD") return PageMethod::get;
    if (name == "POST") return PageMethod::post;
    return std::nullopt;
}

constexpr std::string_view how_to_pair =
    "Pair it: scan the code on the shop's screen, or type its six digits under /pair.";

[[noreturn]] void refuse_phone() {
    throw PageRefused(403, "This phone is not paired, so it may change nothing.", std::string(how_to_pair));
}

[[noreturn]] void refuse_reader() {
    throw PageRefused(403, "This phone is not paired, so the catalog stays shut.", std::string(how_to_pair));
}

// A browser on the machine that runs the server: whoever sits there has the file itself.
bool is_own_machine(std::string_view from) {
    return from == "::1" || from.starts_with("127.") || from.starts_with("::ffff:127.");
}

[[noreturn]] void refuse_forged() {
    throw PageRefused(403, "This did not come from a page of this server, so nothing was changed.",
                      "Go back, load the page again and send it once more.");
}

// The methods that are answered there, as an Allow header has them; "" for none.
std::string methods_of(std::span<const std::string> segments) {
    const bool get = find_route(PageMethod::get, segments).route != nullptr;
    const bool post = find_route(PageMethod::post, segments).route != nullptr;
    return get ? (post ? "GET, HEAD, POST" : "GET, HEAD") : (post ? "POST" : "");
}

// The route of the request; what its pattern caught goes into `page`.
const Route* route_of(const RawRequest& request, const Address& address, PageRequest& page) {
    const auto method = method_of(request.method);
    RouteFound found;
    if (method) found = find_route(*method, address.segments);
    if (found.route == nullptr && methods_of(address.segments).empty())
        throw PageRefused(404, "There is no such page.", "Start again from the first page.");
    if (found.route == nullptr)
        throw PageRefused(405, "This page cannot be asked for in this way.", "Start again from the first page.");
    page.method = *method;
    for (const auto& segment : address.segments) page.path += "/" + segment;
    if (page.path.empty()) page.path = "/";
    page.caught = std::move(found.caught);
    return found.route;
}

FormFields fields_of(std::string_view sent) {
    auto fields = read_form(sent);
    if (const auto* trouble = std::get_if<FormTrouble>(&fields))
        throw PageRefused(400, fmt::format("What was sent cannot be read: {}.", trouble->message),
                          "Go back and send it again; nothing was changed.");
    return std::get<FormFields>(std::move(fields));
}

// A page that is only read: as it was finished before, while nothing has changed since. What changes while it is being
// made is seen by the next who asks.
PageAnswer read_page(PageDesk& desk, const Route& route, const PageRequest& page) {
    FinishedPages& finished = desk.finished();
    const std::string question = question_of(page);
    if (const PageAnswer* before = finished.find(question)) return *before;
    PageAnswer answer = route.run(desk, page);
    if (may_be_sent_again(page, answer)) finished.keep(question, answer);
    return answer;
}

// The page's own answer, or the page that says why there is none.
PageAnswer run_page(PageDesk& desk, const Route& route, const PageRequest& page) {
    try {
        desk.begin(page.method == PageMethod::post && route.whom == RouteFor::paired_phone);
        if (page.method != PageMethod::get || route.whom != RouteFor::reader) return route.run(desk, page);
        return read_page(desk, route, page);
    } catch (const PageRefused& refused) {
        return refusal_page(refused.status(), refused.what(), refused.hint());
    } catch (const CatalogError& error) {
        return refusal_page(status_of(error.trouble()), upper_first(error.what()), error.hint());
    } catch (const InputRefused& refused) {
        return refusal_page(422, complaints_text(refused.complaints()), "Nothing was changed.");
    }
}

bool is_local(std::string_view address) {
    return address.starts_with('/') && !address.starts_with("//") &&
           std::all_of(address.begin(), address.end(), [](char c) { return c > ' ' && c < '\x7f' && c != '\\'; });
}

// Pages are asked for anew each time; what is the same for everybody (style, script) is sent again only when it
// changed.
void add_freshness(const RawRequest& request, const PageAnswer& answer, SentAnswer& sent) {
    const bool is_page = answer.type.starts_with("text/html");
    sent.headers.emplace_back("Cache-Control", is_page ? "private, no-cache" : "no-cache");
    if (is_page || answer.status != 200) return;
    const std::string tag = fmt::format("\"{}\"", to_hex(short_hash(answer.body)));
    sent.headers.emplace_back("ETag", tag);
    if (request.value("If-None-Match") != tag) return;
    sent.status = 304;
    sent.body.clear();
}

SentAnswer sent_page(const PageAnswer& answer) {
    if (!answer.location.empty() && !is_local(answer.location))
        throw std::logic_error("a page leads to what is no address of this server");
    SentAnswer sent{answer.status, answer_headers(answer), answer.body};
    if (!answer.location.empty()) sent.headers.emplace_back("Location", answer.location);
    return sent;
}

// A method that is not answered there is told which are (RFC 9110).
SentAnswer refused_page(const RawRequest& request, const PageRefused& refused) {
    SentAnswer sent = PageGate::refusal(refused.status(), refused.what(), refused.hint());
    if (refused.status() == 405)
        sent.headers.emplace_back("Allow", methods_of(read_address(request.target).value_or(Address{}).segments));
    return sent;
}

}  // namespace

// Who asks for which route, with what.
struct PageGate::LetIn {
    const Route* route = nullptr;
    PageRequest page;
    std::string cookie;  // of the paired phone, else of the visitor
    bool is_new_visitor = false;
};

std::vector<std::string_view> RawRequest::values(std::string_view name) const {
    std::vector<std::string_view> list;
    for (const auto& [key, value] : headers)
        if (same_name(key, name)) list.emplace_back(value);
    return list;
}

std::string_view RawRequest::value(std::string_view name) const {
    const auto all = values(name);
    return all.size() == 1 ? all.front() : std::string_view();
}

PageGate::PageGate(const ShopPlace& place, OwnNames names, PageClock clock, std::function<void(std::string_view)> log)
    : place_(place), names_(std::move(names)), clock_(std::move(clock)), log_(std::move(log)), tokens_(place.random) {}

void PageGate::check_forgery(const RawRequest& request) const {
    if (!is_own_origin(request.value("Origin"), request.value("Host"))) refuse_forged();
    if (!is_form(request.value("Content-Type")))
        throw PageRefused(415, "What was sent is no form of this server.", "Go back and send the form itself.");
}

PageGate::LetIn PageGate::let_in(const RawRequest& request) const {
    if (!names_.accepts(request.value("Host")))
        throw PageRefused(421, "This server is not called by that name.",
                          "Use an address that `tapbook serve` printed; a name is added with --name.");
    const auto address = read_address(request.target);
    if (!address) throw PageRefused(400, "This is no address of this server.", "Start again from the first page.");
    LetIn guest;
    guest.route = route_of(request, *address, guest.page);
    if (guest.page.method == PageMethod::post) check_forgery(request);
    guest.page.query = fields_of(address->query);
    guest.cookie = cookie_value(request.value("Cookie"), phone_cookie);
    if (const auto phone = place_.sessions->use(guest.cookie)) {
        guest.page.phone = phone->name;
        guest.page.kept = phone->kept;
    } else {
        guest.cookie = cookie_value(request.value("Cookie"), visitor_cookie);
        switch (guest.route->whom) {
            case RouteFor::anybody:
                break;
            case RouteFor::reader:
                if (!is_own_machine(request.from)) refuse_reader();
                break;
            case RouteFor::paired_phone:
                refuse_phone();
        }
    }
    return guest;
}

void PageGate::check_form(const RawRequest& request, LetIn& guest) const {
    if (guest.page.method == PageMethod::post) {
        guest.page.form = fields_of(request.body);
        const auto tokens = guest.page.form.texts(form_token_field);
        if (guest.cookie.empty() || tokens.size() != 1 || !tokens_.fits(tokens.front(), guest.cookie)) refuse_forged();
    } else if (guest.cookie.empty()) {
        guest.cookie = random_name(place_.random);
        guest.is_new_visitor = true;
    }
    guest.page.form_token = tokens_.of(guest.cookie);
    guest.page.today = place_.today();
}

SentAnswer PageGate::sent(PageDesk& desk, const RawRequest& request, LetIn& guest) const {
    const PageAnswer answer = run_page(desk, *guest.route, guest.page);
    SentAnswer result = sent_page(answer);
    if (answer.begins_visit && guest.is_new_visitor)
        result.headers.emplace_back("Set-Cookie", cookie_header(visitor_cookie, guest.cookie));
    if (answer.pairs_phone) {
        result.headers.emplace_back("Set-Cookie",
                                    cookie_header(phone_cookie, place_.sessions->pair(*answer.pairs_phone)));
        result.headers.emplace_back("Set-Cookie", cookie_header(visitor_cookie, ""));
    }
    if (guest.page.phone)
        for (const auto& [name, text] : answer.keep) place_.sessions->keep(guest.cookie, name, text);
    add_freshness(request, answer, result);
    if (guest.page.method == PageMethod::post) write_log(request, guest, result.status);
    return result;
}

std::optional<SentAnswer> PageGate::refuse_early(const RawRequest& request) const {
    try {
        static_cast<void>(let_in(request));
        return std::nullopt;
    } catch (const PageRefused& refused) {
        return refused_page(request, refused);
    }
}

SentAnswer PageGate::answer(PageDesk& desk, const RawRequest& request) const {
    try {
        LetIn guest = let_in(request);
        check_form(request, guest);
        return sent(desk, request, guest);
    } catch (const PageRefused& refused) {
        return refused_page(request, refused);
    } catch (const std::exception& error) {
        log_(fmt::format("{} {} failed: {}", request.method, shown(request.target), shown(error.what())));
        return refusal(500, "Something went wrong here; what was not saved yet is undone.",
                       "Try again; the shop's screen says more.");
    }
}

SentAnswer PageGate::refusal(int status, std::string_view message, std::string_view hint) {
    return sent_page(refusal_page(status, message, hint));
}

void PageGate::write_log(const RawRequest& request, const LetIn& guest, int status) const {
    const std::string day = day_text(std::chrono::floor<std::chrono::days>(clock_()).time_since_epoch().count());
    const std::chrono::hh_mm_ss time(clock_() - std::chrono::floor<std::chrono::days>(clock_()));
    log_(fmt::format("{} {:02}:{:02}:{:02} UTC  {}  {}  {} {}  {}", day, time.hours().count(), time.minutes().count(),
                     time.seconds().count(), request.from, shown(guest.page.phone.value_or("not paired")),
                     request.method, shown(guest.page.path), status));
}

}  // namespace tapbook
