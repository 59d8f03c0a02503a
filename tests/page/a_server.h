// What do the tests of the server start from? A practice catalog in a temporary folder, a clock that the test turns, a
// gate for port 8080 of three addresses and one name, and requests as a browser of this shop sends them.
#pragma once

#include <stdlib.h>

#include <filesystem>
#include <stdexcept>
#include <string>
#include <vector>

#include "page/answer_headers.h"
#include "page/form.h"
#include "page/page.h"

namespace tapbook {

inline const std::string own_host = "bench.local:8080", own_origin = "http://bench.local:8080";

inline std::filesystem::path temporary_folder() {
    std::string name = (std::filesystem::temp_directory_path() / "tapbook-page-XXXXXX").string();
    if (mkdtemp(name.data()) == nullptr) throw std::runtime_error("no temporary folder");
    return name;
}

struct AServer {
    AServer() {
        Catalog::create(place.catalog, "Tarrow Car Sound", CatalogKind::practice, "2026-05-04",
                        repeatable_random("page tests"));
    }
    ~AServer() {
        std::error_code ignored;
        std::filesystem::remove_all(folder, ignored);
    }
    AServer(const AServer&) = delete;
    AServer& operator=(const AServer&) = delete;

    SentAnswer ask(const RawRequest& request) { return gate.answer(desk, request); }

    // A phone that was paired now, as its cookie.
    std::string paired(const std::string& name = "bay phone") { return phones.pair(name); }

    ShopPlace made_place() {
        ShopPlace made;
        made.catalog = folder / "shop.sqlite";
        made.own_rules = folder / "shop.rules.toml";
        made.read_rules = [] { return RuleBook::shipped(RuleCases::left_out); };
        made.today = [] { return "2026-05-04"; };
        made.random = system_random();
        made.sessions = &phones;
        made.codes = &codes;
        made.base_address = own_origin;
        return made;
    }

    std::filesystem::path folder = temporary_folder();
    PageTime now{std::chrono::sys_days{std::chrono::year{2026} / 5 / 4}};
    PageClock clock = [this] { return now; };
    SessionList phones{clock, system_random()};
    PairingCodes codes{clock, system_random()};
    ShopPlace place = made_place();
    std::vector<std::string> log;
    PageGate gate{place, OwnNames({"127.0.0.1", "192.168.1.20", "fe80::1"}, {"bench.local"}, 8080), clock,
                  [this](std::string_view line) { log.emplace_back(line); }};
    PageDesk desk{place};
};

// "/car/{}/x" with a word in each hole.
inline std::string address_of(std::string_view pattern) {
    std::string address(pattern);
    for (const std::string_view hole : {"{...}", "{}"})
        for (auto at = address.find(hole); at != std::string::npos; at = address.find(hole))
            address.replace(at, hole.size(), "1");
    return address;
}

inline RawRequest get(const std::string& target, const std::string& cookie = {}) {
    RawRequest request{"GET", target, {{"Host", own_host}}, "", "192.168.1.31"};
    if (!cookie.empty()) request.headers.emplace_back("Cookie", std::string(phone_cookie) + "=" + cookie);
    return request;
}

// From a browser on the machine that runs the server.
inline RawRequest get_here(const std::string& target) {
    RawRequest request = get(target);
    request.from = "127.0.0.1";
    return request;
}

// A form as one of our pages sends it; the token is that of a page which the cookie's phone has loaded.
inline RawRequest post(AServer& server, const std::string& target, const std::string& cookie,
                       std::vector<std::pair<std::string, std::string>> fields = {}) {
    const std::string body = server.ask(get("/pair", cookie)).body;
    const std::string before = "name=\"form_token\" value=\"";
    const auto at = body.find(before);
    if (at == std::string::npos) throw std::runtime_error("the page has no form token");
    fields.emplace_back(form_token_field, body.substr(at + before.size(), 32));
    RawRequest request{"POST", target, {{"Host", own_host}, {"Origin", own_origin}}, "", "192.168.1.31"};
    request.headers.emplace_back("Content-Type", "application/x-www-form-urlencoded");
    request.headers.emplace_back("Cookie", std::string(phone_cookie) + "=" + cookie);
    request.body = form_text(FormFields(std::move(fields)));
    return request;
}

// The value of a header of an answer; "" without it.
inline std::string header_of(const SentAnswer& answer, std::string_view name) {
    for (const auto& [key, value] : answer.headers)
        if (key == name) return value;
    return {};
}

}  // namespace tapbook
