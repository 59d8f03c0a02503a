// Who is let in where? Every route of the router's own table against 40 Host headers, and every one that is not a GET
// against eight forgeries, so that a new route is tested by being there.
#include <catch2/catch.hpp>
#include <set>

#include "a_server.h"
#include "hosts.h"

namespace tapbook {
namespace {

void set_header(RawRequest& request, std::string_view name, const std::string& value) {
    for (auto& [key, text] : request.headers)
        if (key == name) text = value;
}

void drop_header(RawRequest& request, std::string_view name) {
    std::erase_if(request.headers, [&](const auto& one) { return one.first == name; });
}

std::string with_other_token(const std::string& body) {
    std::string other = body;
    char& last = other.back();
    last = last == '0' ? '1' : '0';
    return other;
}

struct Forgery {
    const char* what;
    int status;
    void (*forge)(AServer&, RawRequest&);
};

const Forgery forgeries[] = {
    {"no origin", 403, [](AServer&, RawRequest& request) { drop_header(request, "Origin"); }},
    {"the origin of a sandboxed frame", 403,
     [](AServer&, RawRequest& request) { set_header(request, "Origin", "null"); }},
    {"a page elsewhere", 403,
     [](AServer&, RawRequest& request) { set_header(request, "Origin", "http://evil.example"); }},
    {"another name of this server", 403,
     [](AServer&, RawRequest& request) { set_header(request, "Origin", "http://127.0.0.1:8080"); }},
    {"no hidden token", 403, [](AServer&, RawRequest& request) { request.body.clear(); }},
    {"another hidden token", 403, [](AServer&, RawRequest& request) { request.body = with_other_token(request.body); }},
    {"the token of another phone's page", 403,
     [](AServer& server, RawRequest& request) { request.body = post(server, "/pair", server.paired("other")).body; }},
    {"a type that a page elsewhere may send without asking", 415,
     [](AServer&, RawRequest& request) { set_header(request, "Content-Type", "text/plain"); }},
};

}  // namespace

TEST_CASE("no route answers under a name that is not this server's") {
    AServer server;
    const std::string cookie = server.paired();
    REQUIRE(routes().size() >= 10);
    REQUIRE(std::size(host_values) == 40);
    for (const auto& route : routes())
        for (const auto& [host, is_ours] : host_values) {
            RawRequest request = get(address_of(route.pattern), cookie);
            if (route.method == PageMethod::post) {
                request = post(server, address_of(route.pattern), cookie);
                set_header(request, "Origin", "http://" + host);
            }
            set_header(request, "Host", host);
            INFO(route.pattern << " as " << host);
            const auto refused = server.gate.refuse_early(request);
            if (is_ours) {
                CHECK_FALSE(refused.has_value());
            } else {
                REQUIRE(refused.has_value());
                CHECK(refused->status == 421);
                CHECK(refused->body.find("This server is not called by that name.") != std::string::npos);
            }
        }
}

TEST_CASE("no Host header, and two of them, are refused as a wrong name") {
    AServer server;
    RawRequest request = get("/pair");
    request.headers.emplace_back("Host", own_host);
    CHECK(server.ask(request).status == 421);
    request.headers.clear();
    CHECK(server.ask(request).status == 421);
}

TEST_CASE("no form is taken that a page of this server did not send for this phone") {
    int posts = 0;
    for (const auto& route : routes()) {
        if (route.method == PageMethod::get) continue;
        ++posts;
        AServer server;
        const RawRequest honest = post(server, address_of(route.pattern), server.paired());
        INFO(route.pattern);
        for (const auto& [what, status, forge] : forgeries) {
            RawRequest forged = honest;
            forge(server, forged);
            INFO(what);
            const SentAnswer answer = server.ask(forged);
            CHECK(answer.status == status);
            CHECK(header_of(answer, "Set-Cookie").empty());
            CHECK(answer.body.find(status == 415
                                       ? "What was sent is no form of this server."
                                       : "This did not come from a page of this server") != std::string::npos);
        }
        CHECK(server.log.empty());  // none reached its page
        const SentAnswer answer = server.ask(honest);
        CHECK(answer.body.find("This did not come from a page") == std::string::npos);
        CHECK(answer.status != 415);
        CHECK(server.log.size() == 1);  // and this one did
    }
    CHECK(posts >= 3);
    CHECK(std::size(forgeries) == 8);
}

TEST_CASE("a form changes nothing without a paired phone, but for the pairing itself") {
    AServer server;
    for (const auto& route : routes()) {
        INFO(route.pattern);
        if (route.method == PageMethod::post && route.pattern != "/pair") CHECK(route.whom == RouteFor::paired_phone);
        if (route.whom == RouteFor::anybody) continue;
        RawRequest request = route.method == PageMethod::post ? post(server, address_of(route.pattern), server.paired())
                                                              : get(address_of(route.pattern), server.paired());
        for (const std::string& cookie : {std::string("tapbook_phone=") + std::string(32, 'a'), std::string(),
                                          std::string("tapbook_visitor=") + std::string(32, 'a')}) {
            set_header(request, "Cookie", cookie);
            const SentAnswer answer = server.ask(request);
            CHECK(answer.status == 403);
            CHECK(answer.body.find("This phone is not paired") != std::string::npos);
        }
    }
    CHECK(server.log.empty());
}

TEST_CASE("what the catalog holds is read by paired phones and on this machine, by nobody else on the network") {
    AServer server;
    const std::string cookie = server.paired();
    int readers = 0;
    for (const auto& route : routes()) {
        if (route.whom != RouteFor::reader) continue;
        INFO(route.pattern);
        REQUIRE(route.method == PageMethod::get);
        ++readers;
        const std::string address = address_of(route.pattern);
        for (const std::string from : {"192.168.1.31", "fe80::9", "10.0.0.7", "", "12.7.0.1"}) {
            RawRequest request = get(address);
            request.from = from;
            CHECK(server.ask(request).status == 403);
        }
        for (const std::string from : {"127.0.0.1", "127.8.8.8", "::1", "::ffff:127.0.0.1"}) {
            RawRequest request = get(address);
            request.from = from;
            CHECK(server.ask(request).status != 403);
        }
        CHECK(server.ask(get(address, cookie)).status != 403);
    }
    CHECK(readers >= 10);
    for (const auto& route : routes())  // the rest is what pairing needs
        if (route.whom == RouteFor::anybody)
            CHECK((route.pattern.starts_with("/page.") || route.pattern == "/pair" || route.pattern == "/P/{}"));
}

TEST_CASE("a session ends on every route at once: when it was idle, and when it was ended") {
    for (const bool by_idling : {true, false}) {
        AServer server;
        const std::string cookie = server.paired();
        std::vector<RawRequest> requests;
        for (const auto& route : routes())
            if (route.whom == RouteFor::paired_phone && route.method == PageMethod::post)
                requests.push_back(post(server, address_of(route.pattern), cookie));
        REQUIRE(!requests.empty());
        server.now += session_idle - std::chrono::seconds(1);
        CHECK(server.ask(get("/phones", cookie)).status == 200);
        if (by_idling)
            server.now += session_idle;
        else
            server.phones.end(1);
        for (const auto& request : requests) CHECK(server.ask(request).status == 403);
    }
}

TEST_CASE("no page that is only looked at can open the catalog for writing") {
    AServer server;
    server.desk.begin(false);
    CHECK_THROWS_AS(server.desk.catalog_to_write(), std::logic_error);
    server.desk.begin(true);
    CHECK_NOTHROW(server.desk.catalog_to_write());
    server.ask(get("/pair"));
    CHECK_THROWS_AS(server.desk.catalog_to_write(), std::logic_error);
}

TEST_CASE("looking at every page, paired or not, adds no note, no job, no phone and uses no code up") {
    AServer server;
    const auto notes = [&] { return server.desk.catalog().counts().notes; };
    const auto jobs = [&] { return server.desk.catalog().jobs().size(); };
    const auto phones_before = server.phones.phones().size();
    const auto codes = server.codes.shown();
    for (const auto& route : routes()) {
        if (route.method == PageMethod::post) continue;
        for (const auto* method : {"GET", "HEAD"}) {
            RawRequest request = get_here(address_of(route.pattern));
            request.method = method;
            const SentAnswer answer = server.ask(request);
            INFO(route.pattern);
            CHECK(answer.status < 500);
        }
    }
    CHECK(notes() == 0);
    CHECK(jobs() == 0);
    CHECK(server.phones.phones().size() == phones_before);
    CHECK(server.codes.shown().token == codes.token);
    CHECK(server.codes.shown().pin == codes.pin);
    CHECK(server.codes.compared() == 0);
}

TEST_CASE("every answer of every route carries the headers that keep a browser in bounds") {
    AServer server;
    for (const auto& route : routes()) {
        const RawRequest request = route.method == PageMethod::post
                                       ? post(server, address_of(route.pattern), server.paired())
                                       : get(address_of(route.pattern), server.paired());
        const SentAnswer answer = server.ask(request);
        INFO(route.pattern);
        const std::string policy = header_of(answer, "Content-Security-Policy");
        CHECK(policy.find("default-src 'none'; script-src 'self'") == 0);
        CHECK(policy.find("unsafe") == std::string::npos);
        for (const auto* part : {"style-src 'self'", "img-src 'self' data:", "connect-src 'self'", "form-action 'self'",
                                 "base-uri 'none'", "frame-ancestors 'none'"})
            CHECK(policy.find(part) != std::string::npos);
        CHECK(header_of(answer, "X-Content-Type-Options") == "nosniff");
        CHECK(header_of(answer, "Referrer-Policy") == "same-origin");
        CHECK_FALSE(header_of(answer, "Content-Type").empty());
    }
    const SentAnswer refused = PageGate::refusal(413, "a", "b");
    CHECK_FALSE(header_of(refused, "Content-Security-Policy").empty());
}

TEST_CASE("every POST is written into the log with phone, route and status, and nothing of the form") {
    AServer server;
    server.ask(post(server, "/phones/code", server.paired("bay\x1b phone"), {{"secret", "words"}}));
    REQUIRE(server.log.size() == 1);
    CHECK(server.log.front() == "2026-05-04 00:00:00 UTC  192.168.1.31  bay<U+001B> phone  POST /phones/code  303");
}

TEST_CASE("a method that is not answered there is told which is, and a path that is none is not there") {
    AServer server;
    RawRequest request = get("/phones/code");
    CHECK(server.ask(request).status == 405);
    CHECK(header_of(server.ask(request), "Allow") == "POST");
    for (const auto* method : {"PUT", "DELETE", "OPTIONS", "TRACE", "PATCH", "get", "BREW"}) {
        request = get("/pair");
        request.method = method;
        CHECK(server.ask(request).status == 405);
        CHECK(header_of(server.ask(request), "Allow") == "GET, HEAD, POST");
        request.target = "/nowhere";
        CHECK(server.ask(request).status == 404);
    }
    CHECK(server.ask(get("/phones/..%2f")).status == 400);
}

TEST_CASE("no two routes mean the same address, and every pattern is found under its own address") {
    std::set<std::pair<PageMethod, std::string>> seen;
    for (const auto& route : routes()) {
        INFO(route.pattern);
        REQUIRE(route.pattern.starts_with('/'));
        CHECK(seen.emplace(route.method, std::string(route.pattern)).second);
        const auto address = read_address(address_of(route.pattern)).value();
        const auto found = find_route(route.method, address.segments);
        REQUIRE(found.route != nullptr);
        CHECK(found.route->pattern == route.pattern);
    }
}

TEST_CASE("style and script are sent again only when they changed") {
    AServer server;
    for (const auto* target : {"/page.css", "/page.js"}) {
        const SentAnswer first = server.ask(get(target));
        CHECK(first.status == 200);
        RawRequest again = get(target);
        again.headers.emplace_back("If-None-Match", header_of(first, "ETag"));
        CHECK(server.ask(again).status == 304);
        CHECK(server.ask(again).body.empty());
        set_header(again, "If-None-Match", "\"other\"");
        CHECK(server.ask(again).status == 200);
    }
}

}  // namespace tapbook
