// What holds for every page: nothing that others typed becomes an element or an address, no style and no script stands
// in it, it is at most 60 KB, and every pattern of the table is read here.
#include <catch2/catch.hpp>

#include <rapidcheck.h>

#include <set>

#include "page/page_html.h"
#include "report/xml_reader.h"
#include "shop_pages.h"

using namespace tapbook;

namespace {

// Elements that the pages use. Another one came from a text.
const std::set<std::string> our_elements = {
    "html",     "head",   "meta",    "title",    "link",     "script", "body",    "header",  "nav",
    "a",        "main",   "footer",  "section",  "h1",       "h2",     "h3",      "p",       "span",
    "b",        "small",  "code",    "ul",       "ol",       "li",     "div",     "form",    "label",
    "input",    "select", "option",  "button",   "fieldset", "legend", "details", "summary", "article",
    "svg",      "rect",   "path",    "circle",   "g",        "text",   "tspan",   "line",    "defs",
    "clipPath", "use",    "pattern", "polyline", "polygon",  "marker"};

const std::vector<std::string> hostile = {"<script>alert(1)</script>", "\"><img src=x onerror=alert(1)>",
                                          "'><svg/onload=alert(1)>",   "</title></head><body onload=alert(1)>",
                                          "javascript:alert(1)",       "<!-- <b>",
                                          "]]><a href=\"x\">",         "&lt;i&gt;&#60;u&#62;",
                                          "a=b&c=d?e#f/../g",          "\u0130stanbul \u00e9 \u4e2d"};

// Elements between "<" and the next blank, slash or bracket, in whatever markup it is.
std::string unknown_element(const std::string& html) {
    for (auto at = html.find('<'); at != std::string::npos; at = html.find('<', at + 1)) {
        auto from = at + 1;
        if (html.compare(at, 2, "<!") == 0 && html.compare(at, 15, "<!DOCTYPE html>") == 0) continue;
        if (from < html.size() && html[from] == '/') ++from;
        const auto end = html.find_first_of(" />", from);
        const std::string name = html.substr(from, end - from);
        if (!our_elements.contains(name)) return name;
    }
    return {};
}

std::string without_doctype(std::string html) {
    const std::string doctype = "<!DOCTYPE html>\n";
    if (html.starts_with(doctype)) html.erase(0, doctype.size());
    return html;
}

// "" for a page that keeps to the law.
std::string wrong_with(const std::string& html) {
    if (const std::string unknown = unknown_element(html); !unknown.empty()) return "element " + unknown;
    const xml::Read read = xml::read_xml(without_doctype(html));
    if (!read.wrong.empty()) return read.wrong;
    for (const auto& attribute : read.attributes) {
        if (attribute == "style" || attribute.starts_with("on")) return "attribute " + attribute;
    }
    if (html.find("href=\"javascript:") != std::string::npos) return "an address that is a script";
    if (html.find("</script>") != std::string::npos && html.find(" defer=\"defer\"></script>") == std::string::npos)
        return "a script in the page";
    return {};
}

}  // namespace

TEST_CASE("every page answers, is well-formed, holds no style and no script, and fits 60 KB") {
    shop::Shop shop;
    const std::string phone = shop.server.paired();
    for (const auto& address : shop.addresses()) {
        for (const auto& cookie : {std::string(), phone}) {
            const SentAnswer answer = shop.server.ask(cookie.empty() ? get_here(address) : get(address, cookie));
            INFO(address);
            CHECK(answer.status == 200);
            CHECK(answer.body.size() <= most_page_bytes);
            if (!address.starts_with("/found")) CHECK(wrong_with(answer.body) == "");
        }
    }
}

TEST_CASE("whatever others typed into any field stays text on every page") {
    for (std::size_t first = 0; first < hostile.size(); ++first) {
        std::size_t next = first;
        shop::Shop shop([&](const std::string&) { return hostile[next++ % hostile.size()]; });
        for (const auto& address : shop.addresses()) {
            const SentAnswer answer = shop.server.ask(get(address, shop.server.paired()));
            INFO(address << ", from text " << first);
            CHECK(answer.status == 200);
            if (!address.starts_with("/found")) CHECK(wrong_with(answer.body) == "");
        }
    }
}

TEST_CASE("whatever is typed into an address or a form stays text in the answer") {
    shop::Shop shop;
    const std::string phone = shop.server.paired(), job = "/job/" + shop.code;
    for (const auto& text : hostile) {
        const std::string typed = encoded(text);
        for (const auto& address :
             {"/?words=" + typed, "/car/" + shop.car + "?system=" + typed, "/car/" + shop.car + "?year=" + typed,
              "/advice/" + shop.car + "?amp=" + typed, "/advice/" + shop.car + "?lowest=" + typed,
              "/changes/" + shop.car + "?since=" + typed, "/job/" + typed, job + "/read?at=" + typed,
              "/note/" + shop.car + "?tap=" + typed, "/why/" + shop.car + "?tap=" + typed, "/shelf?models=" + typed,
              "/shelf/count/" + typed,
              "/shelf/count/part-0?booking=" + typed + "&pieces=" + typed + "&booked=" + typed}) {
            INFO(address);
            CHECK(wrong_with(shop.server.ask(get(address, phone)).body) == "");
        }
        for (const auto& [address, field] :
             std::vector<std::pair<std::string, std::string>>{{job + "/read", "positive"},
                                                              {job + "/read", "ac_v"},
                                                              {job + "/plan", "metres"},
                                                              {job + "/plan", "load"},
                                                              {job + "/plan", "system"},
                                                              {job + "/close", "minutes"},
                                                              {job + "/action", "words"},
                                                              {job + "/came", "agreed"},
                                                              {"/jobs/new/" + shop.car, "year"},
                                                              {"/note/" + shop.car, "initials"},
                                                              {"/shelf/count/part-0", "booking"},
                                                              {"/shelf/count/part-0", "pieces"},
                                                              {"/shelf/count/part-0", "words"},
                                                              {"/shelf/count/part-0", "job"},
                                                              {"/shelf/undo", "part"}}) {
            const SentAnswer answer = shop.server.ask(post(shop.server, address, phone,
                                                           {{"at", "front-left/radio-plug"},
                                                            {"tap", shop::tap},
                                                            {"system", "base"},
                                                            {"method", "seen"},
                                                            {field, text}}));
            INFO(address << " with " << field << " = " << text);
            CHECK(answer.status != 500);
            CHECK(wrong_with(answer.body) == "");
        }
    }
}

TEST_CASE("a page is at most 60 KB however large the car and the shelf are") {
    for (const int many : {40, 150}) {
        shop::Shop shop(shop::plain, many, many);
        for (const auto& address :
             {"/car/" + shop.car, "/advice/" + shop.car + "?amp=mono", "/changes/" + shop.car, "/job/" + shop.code,
              std::string("/shelf"), std::string("/shelf/count"), std::string("/shelf/count/part-0")}) {
            const SentAnswer answer = shop.server.ask(get_here(address));
            INFO(address << ", " << many);
            CHECK(answer.status == 200);
            CHECK(answer.body.size() <= most_page_bytes);
        }
    }
}

TEST_CASE("with hundreds of open jobs the first page shows the newest and leads to the others") {
    shop::Shop shop;
    Catalog catalog = Catalog::open(shop.server.place.catalog, Access::write);
    const RandomSource dice = repeatable_random("many jobs");
    for (int i = 0; i < 200; ++i) {
        JobStart start;
        start.vehicle = shop.car;
        start.system = "base";
        start.customer = "customer " + std::to_string(i) + std::string(100, 'x');
        catalog.start_job(start, "2026-05-04", dice);
    }
    const std::string page = shop.server.ask(get_here("/")).body;
    CHECK(page.size() <= most_page_bytes);
    CHECK(page.find("customer 199x") != std::string::npos);
    CHECK(page.find("customer 170x") != std::string::npos);
    CHECK(page.find("customer 169x") == std::string::npos);
    CHECK(page.find("<a href=\"/jobs\" class=\"more\">171 older ones</a>") != std::string::npos);
    CHECK(shop.server.ask(get_here("/jobs")).body.size() <= most_page_bytes);
}

TEST_CASE("a car of many places is read page by page, and no tap is left out or shown twice") {
    const int many = 60;
    shop::Shop shop(shop::plain, many, 1);
    std::string address = "/car/" + shop.car;
    std::map<std::string, int> seen;
    int pages = 0;
    for (; !address.empty() && pages < 30; ++pages) {
        const std::string body = shop.server.ask(get_here(address)).body;
        for (auto at = body.find("<article class=\"tap\" id=\""); at != std::string::npos;
             at = body.find("<article class=\"tap\" id=\"", at + 1)) {
            const auto from = at + std::string("<article class=\"tap\" id=\"").size();
            ++seen[body.substr(from, body.find('"', from) - from)];
        }
        address.clear();
        const auto more = body.find("from=");
        if (more == std::string::npos) continue;
        const auto begin = body.rfind("href=\"", more) + 6;
        address = body.substr(begin, body.find('"', begin) - begin);
        for (auto amp = address.find("&amp;"); amp != std::string::npos; amp = address.find("&amp;"))
            address.replace(amp, 5, "&");
    }
    CHECK(pages > 1);
    CHECK(seen.size() == many);
    for (const auto& [tap, times] : seen) CHECK(times == 1);
}

TEST_CASE("every pattern that is read has an address among those tried here") {
    shop::Shop shop;
    std::set<std::string_view> tried;
    auto addresses = shop.addresses();
    addresses.push_back("/j/" + shop.code);
    addresses.push_back("/J/" + shop.code);
    addresses.push_back("/job/" + shop.code + "/sheet");
    for (const auto& address : addresses) {
        std::vector<std::string> segments;
        const std::string path = address.substr(0, address.find('?'));
        for (const auto part : path_parts(std::string_view(path).substr(1))) segments.emplace_back(part);
        if (const Route* route = find_route(PageMethod::get, segments).route) tried.insert(route->pattern);
    }
    for (const auto part :
         {find_routes(), car_routes(), advice_routes(), changes_routes(), job_routes(), job_start_routes(),
          job_plan_routes(), reading_routes(), job_list_routes(), job_close_routes(), note_routes(), sheet_routes(),
          shelf_routes(), shelf_count_routes(), why_routes()})
        for (const auto& route : part)
            if (route.method == PageMethod::get) {
                INFO(route.pattern);
                CHECK(tried.contains(route.pattern));
            }
}

TEST_CASE("an address leads back to what it was written from") {
    REQUIRE(rc::check("any text in a query", [](const std::string& text) {
        std::string plain;
        for (const char c : text)
            if (c != '\0') plain += c;
        const std::string written = encoded(plain);
        std::string read;
        for (std::size_t at = 0; at < written.size(); ++at) {
            if (written[at] != '%') {
                read += written[at];
                continue;
            }
            read += static_cast<char>(std::stoi(written.substr(at + 1, 2), nullptr, 16));
            at += 2;
        }
        RC_ASSERT(read == plain);
        RC_ASSERT(written.find_first_of("&=?#\"'<>/ ") == std::string::npos);
    }));
}
