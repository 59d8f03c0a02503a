// Does the server hold its ground on a real socket? Sizes, forms of a request with two readings, slow and stalled
// clients, too many of them. All on this machine, with time-outs of a fraction of a second.
#include <catch2/catch.hpp>
#include <vector>

#include "a_client.h"
#include "page/connection_places.h"

namespace tapbook {

TEST_CASE("one connection carries several requests, also sent at once, answered in their order") {
    RunningServer running;
    Client client = running.client();
    REQUIRE(client.send(running.get("/pair")));
    const std::string first = client.answer();
    CHECK(status_of(first) == 200);
    CHECK(first.find("Pair this phone") != std::string::npos);
    REQUIRE(client.send(running.get("/page.css") + running.get("/nowhere") + running.get("/page.js")));
    CHECK(client.answer().find("Content-Type: text/css") != std::string::npos);
    CHECK(status_of(client.answer()) == 404);
    CHECK(client.answer().find("Content-Type: text/javascript") != std::string::npos);
}

TEST_CASE("HEAD is answered like GET, without the body") {
    RunningServer running;
    Client client = running.client();
    REQUIRE(client.send("HEAD /page.css HTTP/1.1\r\n" + running.host() + "Connection: close\r\n\r\n"));
    const std::string answer = client.rest();
    CHECK(status_of(answer) == 200);
    CHECK(answer.find("Content-Length: 0\r\n") == std::string::npos);
    CHECK(answer.ends_with("\r\n\r\n"));
    CHECK(answer.find("--ink") == std::string::npos);
}

TEST_CASE("a body is taken up to its limit and refused one byte above it, before it is sent") {
    RunningServer running;
    for (const std::size_t size : {8191U, 8192U}) {
        Client client = running.client();
        const std::string length = "Content-Length: " + std::to_string(size) + "\r\n";
        REQUIRE(client.send(running.post("/pair", length, std::string(size, 'a'))));
        CHECK(status_of(client.answer()) != 413);
    }
    for (const auto* length : {"8193", "48000000", "18446744073709551615"}) {
        Client client = running.client();
        REQUIRE(client.send(running.post("/pair", std::string("Content-Length: ") + length + "\r\n", "")));
        const std::string answer = client.rest();
        INFO(length);
        CHECK(status_of(answer) == 413);
        CHECK(client.closed());
    }
}

TEST_CASE("a head over its limit is refused, whichever part is long and however much follows") {
    RunningServer running;
    const std::string target = "/" + std::string(8000, 'a');
    for (const std::string& request :
         {running.get(target), running.get("/pair", "X: " + std::string(8000, 'a') + "\r\n"),
          running.get("/pair", "Cookie: a=" + std::string(8000, 'b') + "\r\n"), "GET " + std::string(100'000, 'a'),
          "GET /pair HTTP/1.1\r\nX: " + std::string(100'000, 'a')}) {
        Client client = running.client();
        client.send(request);
        const std::string answer = client.rest();
        INFO(request.substr(0, 60));
        CHECK(status_of(answer) == 431);
        CHECK(answers_in(answer) == 1);
    }
    std::string many = "GET /pair HTTP/1.1\r\n" + running.host();
    for (int number = 0; number < 2000; ++number) many += "X" + std::to_string(number) + ": y\r\n";
    Client client = running.client();
    client.send(many + "\r\n");
    CHECK(status_of(client.rest()) == 431);
}

TEST_CASE("a request with two readings is refused and what is hidden behind it is never answered") {
    RunningServer running;
    const std::string hidden = running.get("/page.css"), host = running.host();
    const auto post = [&](const std::string& headers, const std::string& body) {
        return running.post("/pair", headers, body + hidden);
    };
    const std::vector<std::string> requests = {
        post("Content-Length: 4\r\nTransfer-Encoding: chunked\r\n", "0\r\n\r\n"),
        post("Transfer-Encoding: chunked\r\nContent-Length: 4\r\n", "0\r\n\r\n"),
        post("Content-Length: 0\r\nContent-Length: 5\r\n", "abcde"),
        post("Content-Length: 5\r\nContent-Length: 0\r\n", "abcde"),
        post("Content-Length: 5, 0\r\n", "abcde"),
        post("Content-Length: +5\r\n", "abcde"),
        post("Content-Length: -1\r\n", ""),
        post("Content-Length: 0x5\r\n", "abcde"),
        post("Content-Length: 5 5\r\n", "abcde"),
        post("Content-Length:\r\n", ""),
        post("Content-Length: 99999999999999999999999\r\n", ""),
        post("Transfer-Encoding: chunked\r\n", "0\r\n\r\n"),
        post("Transfer-Encoding: identity\r\nContent-Length: 0\r\n", ""),
        post("Transfer-Encoding: xchunked\r\nContent-Length: 0\r\n", ""),
        post("Transfer-Encoding: gzip, chunked\r\n", "0\r\n\r\n"),
        post("Transfer-Encoding: chunked\r\nTransfer-Encoding: identity\r\n", "0\r\n\r\n"),
        post("Transfer-Encoding : chunked\r\nContent-Length: 0\r\n", ""),
        post("Content-Length : 0\r\n", ""),
        post("Expect: 100-continue\r\nContent-Length: 0\r\n", ""),
        running.get("/pair", "Content-Length: 5\r\n") + "abcde" + hidden,
        "GET /pair HTTP/1.1\n" + host + "\r\n" + hidden,
        "GET  /pair HTTP/1.1\r\n" + host + "\r\n" + hidden,
        "GET /pair HTTP/1.1 \r\n" + host + "\r\n" + hidden,
        "GET /pair\r\n" + host + "\r\n" + hidden,
        "GET /pair HTTP/1.1\r\n" + host + "X\x01: y\r\n\r\n" + hidden,
        "GET /pair HTTP/1.1\r\n" + host + "X: a" + std::string(1, '\0') + "b\r\n\r\n" + hidden,
        "GET /pair HTTP/2.0\r\n" + host + "\r\n" + hidden,
        "GET /pair HTTP/1.1\r\n X: y\r\n" + host + "\r\n" + hidden,
        "PRI * HTTP/2.0\r\n\r\nSM\r\n\r\n" + hidden,
        "\x16\x03\x01\x02\x01\x01\xfc\x03\x03" + hidden,
    };
    for (const auto& request : requests) {
        Client client = running.client();
        client.send(request);
        const std::string answer = client.rest();
        INFO(request.substr(0, request.size() - hidden.size()));
        CHECK(client.closed());
        CHECK(answers_in(answer) <= 1);
        CHECK(answer.find("Content-Type: text/css") == std::string::npos);
        if (!answer.empty()) CHECK((status_of(answer) >= 400 && status_of(answer) < 500));
    }
    REQUIRE(requests.size() == 30);
}

TEST_CASE("paths that lead out of the pages, and addresses of other servers, are refused") {
    RunningServer running;
    for (const auto* target : {"/../../etc/passwd", "/%2e%2e/%2e%2e/etc/passwd", "/..%2f..%2fetc/passwd",
                               "//etc/passwd", "/page.css/", "/./page.css", "/page.css%00", "/page.css%2f",
                               "/\\page.css", "http://127.0.0.1/page.css", "*", "/page.css#x"}) {
        Client client = running.client();
        client.send(running.get(target, "Connection: close\r\n"));
        const std::string answer = client.rest();
        INFO(target);
        CHECK(status_of(answer) == 400);
        CHECK(answer.find("Content-Type: text/css") == std::string::npos);
    }
}

TEST_CASE("a head that trickles, a body that stalls and a connection that idles are cut") {
    RunningServer running(hasty_limits());
    Client idle = running.client();
    Client stalled = running.client();
    Client used = running.client();
    Client trickling = running.client();
    REQUIRE(stalled.send(running.post("/pair", "Content-Length: 100\r\n", "abc")));
    REQUIRE(used.send(running.get("/pair")));
    CHECK(status_of(used.answer()) == 200);
    const std::string head = running.get("/pair", "X: " + std::string(200, 'y') + "\r\n");
    bool cut = false;
    for (std::size_t at = 0; at < head.size() && !cut; ++at) {
        cut = !trickling.send(head.substr(at, 1));
        std::this_thread::sleep_for(std::chrono::milliseconds(20));
    }
    CHECK(cut);
    for (Client* one : {&idle, &stalled, &used}) {
        CHECK(one->rest().empty());
        CHECK(one->closed());
    }
}

TEST_CASE("clients that hold all they may keep nobody of another place out, and room comes back") {
    ServerLimits limits = hasty_limits();
    limits.connections_of_one_address = 4;
    RunningServer running(limits);
    std::vector<Client> held;
    for (int number = 0; number < 4; ++number) {
        held.push_back(running.client());
        REQUIRE(held.back().send("GET /pa"));
        std::this_thread::sleep_for(std::chrono::milliseconds(10));
    }
    Client refused = running.client();
    CHECK(status_of(refused.rest()) == 503);
    CHECK(refused.closed());
    for (auto& one : held) CHECK(one.rest().empty());  // cut by the time-out
    Client welcome = running.client();
    REQUIRE(welcome.send(running.get("/pair")));
    CHECK(status_of(welcome.answer()) == 200);
}

TEST_CASE("stalled clients do not keep an honest one waiting") {
    ServerLimits limits = short_limits();
    limits.header_time = limits.body_time = std::chrono::seconds(20);
    RunningServer running(limits);
    std::vector<Client> held;
    for (int number = 0; number < 7; ++number) {
        held.push_back(running.client());
        const bool in_body = number % 2 == 0;
        REQUIRE(held.back().send(in_body ? running.post("/pair", "Content-Length: 9\r\n", "abc") : "GET /pa"));
    }
    Client honest = running.client();  // which waits five seconds at most
    REQUIRE(honest.send(running.get("/pair")));
    CHECK(status_of(honest.answer()) == 200);
}

TEST_CASE("all places together have a limit, and each address its own") {
    ConnectionPlaces places(5, 3);
    std::vector<std::shared_ptr<void>> taken;
    for (int number = 0; number < 3; ++number) taken.push_back(places.take("10.0.0.1"));
    CHECK(places.take("10.0.0.1") == nullptr);
    taken.push_back(places.take("10.0.0.2"));
    taken.push_back(places.take("10.0.0.3"));
    CHECK(places.taken() == 5);
    CHECK(places.take("10.0.0.4") == nullptr);
    taken.erase(taken.begin());
    CHECK(places.take("10.0.0.4") != nullptr);
    taken.clear();
    CHECK(places.taken() == 0);
}

TEST_CASE("the server ends with clients still connected, lets them go, and its port is free again") {
    auto running = std::make_unique<RunningServer>();
    const int port = running->port();
    Client idle = running->client(), stalled = running->client();
    REQUIRE(stalled.send("GET /pa"));
    REQUIRE(idle.send(running->get("/pair")));
    CHECK(status_of(idle.answer()) == 200);
    running.reset();
    for (Client* one : {&idle, &stalled}) {
        CHECK(one->rest().empty());
        CHECK(one->closed());
    }
    HttpServer next(short_limits(), [](std::string_view) {});
    CHECK(next.listen("127.0.0.1", port) == port);
}

TEST_CASE("a port that cannot be opened is refused with the reason") {
    HttpServer first(short_limits(), [](std::string_view) {}), second(short_limits(), [](std::string_view) {});
    const int port = first.listen("127.0.0.1", 0);
    const auto trouble = [&](const std::string& address, int at) {
        try {
            second.listen(address, at);
        } catch (const ListenRefused& refused) {
            CHECK_FALSE(std::string(refused.what()).empty());
            return refused.trouble();
        }
        return ListenTrouble::other;
    };
    CHECK(trouble("127.0.0.1", port) == ListenTrouble::port_in_use);
    CHECK(trouble("203.0.113.77", 0) == ListenTrouble::no_such_address);  // RFC 5737: nobody's
    CHECK(trouble("localhost", 0) == ListenTrouble::no_such_address);
}

}  // namespace tapbook
