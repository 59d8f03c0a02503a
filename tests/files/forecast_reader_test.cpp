// Which forecast files are read, and what is said of the others? Each complaint with its place and way out.
#include <catch2/catch.hpp>

#include "files/forecast_reader.h"

using namespace tapbook;

namespace {

std::vector<std::string> complaints_on(const std::string& text) {
    try {
        read_forecast(text, "forecast.toml");
        return {};
    } catch (const InputRefused& refused) {
        std::vector<std::string> lines;
        for (const auto& one : refused.complaints())
            lines.push_back(std::to_string(one.place.line) + ":" + std::to_string(one.place.column) + " " +
                            one.message + (one.hint.empty() ? "" : " | " + one.hint));
        return lines;
    }
}

using List = std::vector<std::string>;

}  // namespace

TEST_CASE("a forecast names cars and sound systems, each with its jobs a year") {
    const auto lines = read_forecast(
        "[[expect]]\nof = \"merrow/tallis/sedan/2014\"\njobs_a_year = 12\n"
        "[[expect]]\nof = \"merrow/tallis/sedan/2014/base\"\njobs_a_year = 0.125\n",
        "forecast.toml");
    REQUIRE(lines.size() == 2);
    CHECK(lines[0].path == "merrow/tallis/sedan/2014");
    CHECK(lines[0].thousandths == 12'000);
    CHECK(lines[1].path == "merrow/tallis/sedan/2014/base");
    CHECK(lines[1].thousandths == 125);
    CHECK(lines[1].place.line == 5);
    CHECK(lines[1].place.column == 6);
}

TEST_CASE("none at all, a year without jobs, may be expected of a car") {
    CHECK(complaints_on("[[expect]]\nof = \"merrow/tallis/sedan/2014\"\njobs_a_year = 0\n").empty());
}

TEST_CASE("a forecast that cannot be read says where, why and what to write") {
    const std::string car = "of = \"merrow/tallis/sedan/2014\"\n";
    CHECK(complaints_on("") ==
          List{"1:1 it expects nothing | write [[expect]], and under it of = \"PATH\" and jobs_a_year = N"});
    CHECK(complaints_on("[[expects]]\n" + car) ==
          List{"1:3 unknown table \"expects\" | a forecast holds [[expect]] tables"});
    CHECK(complaints_on("[expect]\n" + car) ==
          List{"1:2 unknown table \"expect\" | a forecast holds [[expect]] tables"});
    CHECK(complaints_on("[[expect]]\njobs_a_year = 3\n") == List{"1:1 of is missing"});
    CHECK(complaints_on("[[expect]]\n" + car) ==
          List{"1:1 jobs_a_year is missing | jobs_a_year: how many jobs a year are expected"});
    CHECK(complaints_on("[[expect]]\n" + car + "jobs_a_year = \"many\"\n") ==
          List{"3:15 jobs_a_year must be a number"});
    CHECK(complaints_on("[[expect]]\n" + car + "jobs_a_year = -1\n") ==
          List{"3:15 jobs_a_year is -1 | it must be 0 to 100000"});
    CHECK(complaints_on("[[expect]]\n" + car + "jobs_a_year = 0.0001\n") ==
          List{"3:15 jobs_a_year 0.0001 has more than 3 digits after the point"});
    CHECK(complaints_on("[[expect]]\n" + car + "jobs_a_years = 2\njobs_a_year = 2\n") ==
          List{"3:1 unknown key \"jobs_a_years\" | did you mean \"jobs_a_year\"?"});
    CHECK(complaints_on("[[expect]]\nof = \"merrow\"\njobs_a_year = 2\n") ==
          List{"2:6 \"merrow\" is not the path of a car or a sound system | write make/model/body/first-year, or add "
               "/system behind it"});
    CHECK(complaints_on("[[expect]]\n" + car + "jobs_a_year = 1\n[[expect]]\n" + car + "jobs_a_year = 2\n") ==
          List{"5:6 merrow/tallis/sedan/2014 stands twice | the first is on line 2"});
}
