// Are names paths of slugs, taken apart and put together without loss? Tables and laws.
#include "trade/path.h"

#include <rapidcheck.h>

#include <catch2/catch.hpp>
#include <string>

using namespace tapbook;

namespace {

using Parts = std::vector<std::string_view>;
const std::string tap = "orrery/vel-ostrel/sedan/2012/base/front-left/radio-plug";

rc::Gen<std::string> some_path() {
    const auto slug = rc::gen::nonEmpty(rc::gen::container<std::string>(rc::gen::element('a', 'z', '0', '9', '-')));
    return rc::gen::map(rc::gen::nonEmpty(rc::gen::container<std::vector<std::string>>(slug)),
                        [](const std::vector<std::string>& parts) {
                            std::string path = parts.front();
                            for (std::size_t i = 1; i < parts.size(); ++i) path = path_join(path, parts[i]);
                            return path;
                        });
}

}  // namespace

TEST_CASE("a slug is one to forty small letters, digits and hyphens") {
    for (const std::string good :
         {"a", "9", "-", "radio-plug", "2012", "a--b", "0123456789012345678901234567890123456789"})
        CHECK(is_slug(good));
    for (const std::string bad : {"", "A", "Radio", "radio plug", "radio_plug", "radio/plug", "a.b", "é", "a\n", "..",
                                  " a", "01234567890123456789012345678901234567890"}) {
        INFO(bad);
        CHECK_FALSE(is_slug(bad));
        CHECK(slug_complaint(bad).has_value());
    }
    CHECK_FALSE(slug_complaint("radio-plug").has_value());
}

TEST_CASE("what is no slug is answered by the slug it could be") {
    CHECK(slug_complaint("Radio Plug") == "must be small letters, digits and hyphens: write \"radio-plug\"");
    CHECK(slug_complaint("???") == "must be small letters, digits and hyphens");
    CHECK(slug_complaint(std::string(41, 'a')) == "is longer than 40 characters");
    CHECK(slug_complaint("") == "must be small letters, digits and hyphens");
}

TEST_CASE("a slug is made from what people read") {
    CHECK(slug_from("Vel Ostrel") == "vel-ostrel");
    CHECK(slug_from("  Vel   Ostrel  ") == "vel-ostrel");
    CHECK(slug_from("Vel-Ostrel / 2") == "vel-ostrel-2");
    CHECK(slug_from("Ångström") == "angstrom");
    CHECK(slug_from("Größe") == "grosse");
    CHECK(slug_from("1.6 l") == "1-6-l");
    CHECK(slug_from("日本") == "");
    CHECK(slug_from("") == "");
    CHECK(slug_from("!!!") == "");
    CHECK(slug_from(std::string(39, 'a') + " b") == std::string(39, 'a'));  // no hyphen at the cut
}

TEST_CASE("what slug_from makes is a slug or nothing, and stays as it is") {
    REQUIRE(rc::check([](const std::string& text) {
        const std::string slug = slug_from(text);
        RC_ASSERT(slug.empty() || is_slug(slug));
        RC_ASSERT(slug_from(slug) == slug);
    }));
}

TEST_CASE("a path is taken apart at every slash, also where nothing stands between two") {
    CHECK(path_parts("a/b/c") == Parts{"a", "b", "c"});
    CHECK(path_parts("a") == Parts{"a"});
    CHECK(path_parts("").empty());
    CHECK(path_parts("/a") == Parts{"", "a"});
    CHECK(path_parts("a//b") == Parts{"a", "", "b"});
    CHECK(path_parts("a/") == Parts{"a", ""});  // else "base/" would pass for "base"
    CHECK(path_parts("/") == Parts{"", ""});
}

TEST_CASE("head and tail of a path are what the depths say") {
    CHECK(path_head(tap, vehicle_depth) == "orrery/vel-ostrel/sedan/2012");
    CHECK(path_head(tap, system_depth) == "orrery/vel-ostrel/sedan/2012/base");
    CHECK(path_head(tap, circuit_depth) == "orrery/vel-ostrel/sedan/2012/base/front-left");
    CHECK(path_head(tap, tap_depth) == tap);
    CHECK(path_head(tap, 99) == tap);
    CHECK(path_head(tap, 0) == "");
    CHECK(path_tail(tap, vehicle_depth) == "base/front-left/radio-plug");
    CHECK(path_tail(tap, tap_depth) == "");
    CHECK(path_tail(tap, 0) == tap);
    CHECK(path_tail("", 1) == "");
}

TEST_CASE("head and tail joined are the path again, at every depth") {
    REQUIRE(rc::check([] {
        const std::string path = *some_path();
        const auto parts = path_parts(path);
        for (std::size_t depth = 1; depth < parts.size(); ++depth) {
            RC_ASSERT(path_join(path_head(path, depth), path_tail(path, depth)) == path);
            RC_ASSERT(path_parts(path_head(path, depth)).size() == depth);
        }
        RC_ASSERT(path_head(path, parts.size()) == path);
    }));
}

TEST_CASE("a tail run is an exact run of parts at the end") {
    for (const char* good : {"radio-plug", "front-left/radio-plug", "front-left radio-plug",
                             "base front-left/radio-plug", "2012/base/front-left/radio-plug"})
        CHECK(is_tail_run(tap, good));
    CHECK(is_tail_run(tap, tap));
    for (const char* bad : {"", "plug", "adio-plug", "left/radio-plug", "front-left", "base", "radio-plug/",
                            "/radio-plug", " radio-plug", "radio-plug ", "Radio-plug", "front-left//radio-plug",
                            "x/orrery/vel-ostrel/sedan/2012/base/front-left/radio-plug"}) {
        INFO(bad);
        CHECK_FALSE(is_tail_run(tap, bad));
    }
}
