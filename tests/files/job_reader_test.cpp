// Items of the list on one line, and jobs in a file.
#include <algorithm>
#include <catch2/catch.hpp>
#include <fstream>
#include <sstream>

#include "files/files.h"

using namespace tapbook;

namespace {

using Lines = std::vector<std::string>;

template <class Action>
Lines refusals(Action action) {
    Lines lines;
    try {
        action();
    } catch (const InputRefused& refused) {
        for (const auto& complaint : refused.complaints())
            lines.push_back(std::to_string(complaint.place.line) + ": " + complaint.message + " | " + complaint.hint);
    }
    return lines;
}

JobChecks read(const Lines& typed) {
    return read_checks(typed, {"job", 0, 0, {}});
}

Lines refused_items(const Lines& typed) {
    return refusals([&] { read(typed); });
}

constexpr std::string_view one_job = R"([[job]]
code = "K7MQ2X"
vehicle = "a/b/c/2010"
started = 2024-05-01
)";

}  // namespace

TEST_CASE("an item is ok, bad with words, or none, and rest is every other one") {
    const JobChecks checks =
        read({"lamps=ok", "camera=bad:dark: no picture", "chime=none", "drain=ok:22 mA", "rest=ok"});
    CHECK(checks.entries == std::vector<CheckEntry>{{CheckItem::lamps, CheckAnswer::ok, ""},
                                                    {CheckItem::camera, CheckAnswer::bad, "dark: no picture"},
                                                    {CheckItem::chime, CheckAnswer::none, ""},
                                                    {CheckItem::drain, CheckAnswer::ok, "22 mA"}});
    CHECK(checks.rest == CheckAnswer::ok);
}

TEST_CASE("an item that is answered twice is refused, and so is the rest") {
    CHECK(refused_items({"lamps=ok", "lamps=bad:airbag lamp on"}) ==
          Lines{"0: lamps is answered twice | answer each item once"});
    CHECK(refused_items({"rest=ok", "rest=none"}) == Lines{"0: rest is answered twice | answer each item once"});
}

TEST_CASE("what is no item or no answer is refused with the way out") {
    CHECK(refused_items({"camrea=ok"}) == Lines{"0: the list has no item \"camrea\" | did you mean camera?"});
    CHECK(refused_items({"lamps"}) == Lines{"0: lamps: \"\" is no answer | write lamps=ok, lamps=bad:WORDS, or "
                                            "lamps=none when this car has no such thing"});
    CHECK(refused_items({"lamps=fine"}).size() == 1);
    CHECK(refused_items({"lamps=bad"}) == Lines{"0: lamps: bad in what way? | write lamps=bad:WORDS"});
    CHECK(refused_items({"rest=bad:all of it"}) == Lines{"0: rest: bad in what way? | name each bad item by itself"});
    CHECK(refused_items({"lamps=ok:\x1b[31m"}) ==
          Lines{"0: lamps: the words hold a hidden character | write it in plain characters"});
    CHECK(refused_items({"=ok", "lamps=", "lamps=OK", "lamps =ok", "zzzzzzz=ok"}).size() == 5);
}

TEST_CASE("a job in a file without a closing day is open, and its system unrecorded unless it is said") {
    const auto jobs = read_past_jobs(one_job, "jobs.toml");
    REQUIRE(jobs.size() == 1);
    CHECK(jobs[0].job.state == JobState::open);
    CHECK(jobs[0].job.system == "unrecorded");
    CHECK(jobs[0].job.started == "2024-05-01");
}

TEST_CASE("a job in a file that cannot be read is refused at its line") {
    CHECK(
        refusals([] {
            read_past_jobs("[[job]]\ncode = \"K7MQ20\"\nvehicle = \"a\"\nstarted = 2024-05-01\n", "jobs.toml");
        }) ==
        Lines{
            "2: \"K7MQ20\" is no job's code | six letters and digits, at least one letter, none of them 0, O, 1 or I"});
    CHECK(refusals([] { read_past_jobs(std::string(one_job) + "came = [\"lampz=ok\"]\n", "jobs.toml"); }) ==
          Lines{"5: the list has no item \"lampz\" | did you mean lamps?"});
    CHECK(refusals([] { read_past_jobs(std::string(one_job) + "outcom = \"fine\"\n", "jobs.toml"); }) ==
          Lines{"5: unknown key \"outcom\" | did you mean \"outcome\"?"});
    CHECK(refusals([] { read_past_jobs("[[jobs]]\ncode = \"K7MQ2X\"\n", "jobs.toml"); }) ==
          Lines{"1: unknown table \"jobs\" | a file of jobs holds [[job]] tables only"});
}

TEST_CASE("the practice shop's jobs are read, closed ones and an open one with a reading") {
    std::ifstream file(std::string(TAPBOOK_SOURCE) + "/data/jobs.toml");
    std::ostringstream text;
    text << file.rdbuf();
    const auto jobs = read_past_jobs(text.str(), "data/jobs.toml");
    CHECK(std::count_if(jobs.begin(), jobs.end(), [](const PastJob& p) { return p.job.state == JobState::closed; }) >=
          3);
    const auto open =
        std::find_if(jobs.begin(), jobs.end(), [](const PastJob& p) { return p.job.state == JobState::open; });
    REQUIRE(open != jobs.end());
    CHECK(open->job.visits.size() == 1);
    for (const auto& past : jobs) CHECK(missing_items(past.job.came).empty());
}
