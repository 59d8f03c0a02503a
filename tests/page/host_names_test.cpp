// By which names may this server be called, and did a page of its own send the form?
#include <catch2/catch.hpp>

#include "hosts.h"
#include "page/own_addresses.h"
#include "page/own_names.h"

namespace tapbook {

TEST_CASE("of 40 Host headers exactly those with a name of this server and its port are taken") {
    const OwnNames names({"127.0.0.1", "192.168.1.20", "fe80::1"}, {"bench.local"}, the_port);
    REQUIRE(std::size(host_values) == 40);
    for (const auto& [host, is_ours] : host_values) {
        INFO(host);
        CHECK(names.accepts(host) == is_ours);
    }
    CHECK(names.spellings().size() == 5);
}

TEST_CASE("on port 80 a browser leaves the port out, and both spellings are taken") {
    const OwnNames names({"10.0.0.7"}, {}, 80);
    for (const auto* host : {"10.0.0.7", "10.0.0.7:80", "localhost", "localhost:80"}) CHECK(names.accepts(host));
    for (const auto* host : {"10.0.0.7:8080", "localhost:", "10.0.0.70"}) CHECK_FALSE(names.accepts(host));
}

TEST_CASE("an origin is our own when it is the very Host over plain http") {
    CHECK(is_own_origin("http://localhost:8080", "localhost:8080"));
    CHECK(is_own_origin("http://bench.local:8080", "BENCH.local:8080"));
    for (const auto* origin :
         {"", "null", "https://localhost:8080", "http://localhost", "http://localhost:8081", "http://localhost:8080/",
          "http://evil.example", "http://localhost:8080.evil.example", "localhost:8080", "http://127.0.0.1:8080",
          "http://localhost:8080 http://localhost:8080"})
        CHECK_FALSE(is_own_origin(origin, "localhost:8080"));
}

TEST_CASE("a name of a machine is letters, digits, - and points, and no address") {
    for (const auto* name : {"bench", "bench.local", "Bench-2.shop.example", "a", "1a", "x1.2y"}) {
        INFO(name);
        CHECK(is_host_name(name));
    }
    for (const auto& name :
         {std::string(""), std::string("."), std::string("bench."), std::string(".bench"), std::string("a..b"),
          std::string("-a"), std::string("a-"), std::string("a b"), std::string("a:8080"), std::string("a/b"),
          std::string("192.168.1.20"), std::string("12"), std::string("[::1]"), std::string("bench_2"),
          std::string("b\u00e9nch"), std::string(64, 'a'), std::string(127, 'a') + "." + std::string(127, 'a')}) {
        INFO(name);
        CHECK_FALSE(is_host_name(name));
    }
}

TEST_CASE("private addresses are those of RFC 1918 and RFC 3927, and nothing beside them") {
    struct Row {
        unsigned char address[4];
        bool is_private;
    };
    const Row rows[] = {{{10, 0, 0, 0}, true},        {{10, 255, 255, 255}, true},   {{9, 255, 255, 255}, false},
                        {{11, 0, 0, 0}, false},       {{172, 15, 255, 255}, false},  {{172, 16, 0, 0}, true},
                        {{172, 31, 255, 255}, true},  {{172, 32, 0, 0}, false},      {{192, 168, 0, 0}, true},
                        {{192, 168, 255, 255}, true}, {{192, 167, 255, 255}, false}, {{192, 169, 0, 0}, false},
                        {{169, 254, 0, 0}, true},     {{169, 253, 255, 255}, false}, {{169, 255, 0, 0}, false},
                        {{127, 0, 0, 1}, false},      {{8, 8, 8, 8}, false},         {{100, 64, 0, 1}, false}};
    for (const auto& row : rows) {
        INFO(static_cast<int>(row.address[0]) << "." << static_cast<int>(row.address[1]));
        CHECK(is_private(row.address) == row.is_private);
    }
}

TEST_CASE("an address in digits is one of either kind, whole") {
    for (const auto* text : {"192.168.1.20", "127.0.0.1", "::1", "fe80::1", "0.0.0.0"}) CHECK(is_address(text));
    for (const auto* text :
         {"", "192.168.1", "192.168.1.20 ", "192.168.1.256", "0x7f.1", "[::1]", "bench", "1.2.3.4/24"})
        CHECK_FALSE(is_address(text));
}

}  // namespace tapbook
