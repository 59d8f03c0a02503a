// What stands on the line of long work?
#include <catch2/catch.hpp>

#include "report/report.h"

using namespace tapbook;

TEST_CASE("long work says its share and the time left at the pace so far") {
    CHECK(progress_text("checked", 250, 1000, 2000) ==
          "checked 25 %, about 6 s left (Ctrl-C stops and changes nothing)");
    CHECK(progress_text("added", 1, 1000, 2000) == "added 0 %, about 33 min left (Ctrl-C stops and changes nothing)");
    CHECK(progress_text("graded", 999, 1000, 1500) == "graded 99 %, a moment left (Ctrl-C stops and changes nothing)");
    CHECK(progress_text("rebuilt", 1000, 1000, 1500) ==
          "rebuilt 100 %, a moment left (Ctrl-C stops and changes nothing)");
}

TEST_CASE("before the first step nothing is promised") {
    CHECK(progress_text("checked", 0, 1000, 1500) == "checked 0 %");
}
