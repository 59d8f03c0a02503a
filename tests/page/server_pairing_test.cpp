// How is a phone paired through the pages, and who cannot be?
#include <catch2/catch.hpp>

#include "a_server.h"

namespace tapbook {
namespace {

// A visitor who has loaded the pairing page: the cookie it was given, and a form with the page's token.
struct Visitor {
    explicit Visitor(AServer& the_server, const std::string& page = "/pair") : server(the_server) {
        const SentAnswer answer = server.ask(get(page));
        const std::string set = header_of(answer, "Set-Cookie");
        cookie = set.substr(0, set.find(';'));
        const std::string before = "name=\"form_token\" value=\"";
        const auto at = answer.body.find(before);
        if (at != std::string::npos) token = answer.body.substr(at + before.size(), 32);
    }

    SentAnswer pair(std::vector<std::pair<std::string, std::string>> fields) const {
        fields.emplace_back(form_token_field, token);
        RawRequest request{"POST", "/pair", {{"Host", own_host}, {"Origin", own_origin}}, "", "192.168.1.31"};
        request.headers.emplace_back("Content-Type", "application/x-www-form-urlencoded");
        request.headers.emplace_back("Cookie", cookie);
        request.body = form_text(FormFields(std::move(fields)));
        return server.ask(request);
    }

    AServer& server;
    std::string cookie, token;
};

}  // namespace

TEST_CASE("the six digits pair a phone, under a new cookie that scripts cannot read and other sites do not bring") {
    AServer server;
    const Visitor visitor(server);
    REQUIRE(visitor.cookie.starts_with("tapbook_visitor="));
    const SentAnswer answer = visitor.pair({{"pin", server.codes.shown().pin}, {"name", "bay phone"}});
    CHECK(answer.status == 303);
    CHECK(header_of(answer, "Location") == "/");
    const std::string set = header_of(answer, "Set-Cookie");
    REQUIRE(set.starts_with("tapbook_phone="));
    CHECK(set.substr(14 + 32) == "; Path=/; HttpOnly; SameSite=Strict");
    REQUIRE(server.phones.phones().size() == 1);
    CHECK(server.phones.phones().front().name == "bay phone");
    CHECK(server.ask(get("/phones", set.substr(14, 32))).status == 200);
}

TEST_CASE("the symbol pairs one phone, by its button and not by being looked at") {
    AServer server;
    const std::string token = server.codes.shown().token;
    const Visitor first(server, "/P/" + token), second(server, "/P/" + token);
    CHECK(server.phones.phones().empty());
    CHECK(first.pair({{"token", token}}).status == 303);
    const SentAnswer late = second.pair({{"token", token}});
    CHECK(late.status == 410);
    CHECK(late.body.find("This code was used already or is older than ten minutes.") != std::string::npos);
    CHECK(header_of(late, "Set-Cookie").empty());
    CHECK(server.phones.phones().size() == 1);
    CHECK(server.ask(get("/P/" + token)).status == 410);
}

TEST_CASE("10,000 guesses through the page compare five codes, and the right one comes too late") {
    AServer server;
    const Visitor visitor(server);
    const std::string pin = server.codes.shown().pin;
    int refused = 0;
    for (int guess = 0; guess < 10'000; ++guess) {
        const std::string digits = std::to_string(1'000'000 + guess).substr(1);
        if (digits != pin) refused += visitor.pair({{"pin", digits}}).status == 403;
    }
    CHECK(refused >= 9'999);
    CHECK(server.codes.compared() == most_wrong_tries);
    const SentAnswer late = visitor.pair({{"pin", pin}});
    CHECK(late.status == 403);
    CHECK(late.body.find("The digits are dead: 5 were wrong.") != std::string::npos);
    CHECK(server.phones.phones().empty());
}

TEST_CASE("what is typed wrongly is said beside the box, and the name typed stays") {
    AServer server;
    const Visitor visitor(server);
    const SentAnswer answer = visitor.pair({{"pin", "12"}, {"name", "<b>bay"}});
    CHECK(answer.status == 422);
    CHECK(answer.body.find("Six digits are wanted, as on the shop&#39;s screen.") != std::string::npos);
    CHECK(answer.body.find("&lt;b&gt;bay") != std::string::npos);
    CHECK(server.codes.compared() == 0);
}

TEST_CASE("a paired phone ends another's pairing, and its own") {
    AServer server;
    const std::string first = server.paired("first"), second = server.paired("second");
    CHECK(server.ask(post(server, "/phones/2/end", first)).status == 303);
    CHECK(server.ask(get("/phones", second)).status == 403);
    CHECK(server.ask(post(server, "/phones/2/end", first)).status == 404);
    CHECK(server.ask(post(server, "/phones/x/end", first)).status == 404);
    CHECK(server.ask(post(server, "/phones/1/end", first)).status == 303);
    CHECK(server.phones.phones().empty());
}

TEST_CASE("a paired phone makes a new code, which is shown to paired phones alone") {
    AServer server;
    const std::string cookie = server.paired();
    const auto old = server.codes.shown();
    CHECK(server.ask(post(server, "/phones/code", cookie)).status == 303);
    CHECK(server.codes.shown().token != old.token);
    const std::string page = server.ask(get("/phones", cookie)).body;
    CHECK(page.find(server.codes.shown().pin) != std::string::npos);
    CHECK(page.find("QR code that pairs a phone") != std::string::npos);
    for (const auto& route : routes()) {
        if (route.method == PageMethod::post || route.whom == RouteFor::paired_phone) continue;
        const std::string seen = server.ask(get_here(address_of(route.pattern))).body;
        INFO(route.pattern);
        CHECK(seen.find(server.codes.shown().token) == std::string::npos);
        CHECK(seen.find(server.codes.shown().pin) == std::string::npos);
    }
}

}  // namespace tapbook
