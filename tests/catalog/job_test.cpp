// A job while the car is in the bay: its number and code, its lists, its readings, its temporary actions.
#include <rapidcheck.h>

#include <fstream>
#include <sstream>

#include "a_job.h"

using namespace tapbook;

namespace {

// Every byte of a catalog's files: the database and its log.
std::string all_bytes(const CatalogFolder& folder) {
    std::string bytes;
    for (const auto& file : std::filesystem::directory_iterator(folder.path())) {
        std::ifstream in(file.path(), std::ios::binary);
        std::ostringstream text;
        text << in.rdbuf();
        bytes += text.str();
    }
    return bytes;
}

}  // namespace

TEST_CASE("jobs are numbered from 1 and have codes of six characters that are found again after reopening the file") {
    CatalogFolder folder;
    std::string code;
    {
        auto catalog = catalog_with_job(folder);
        const auto second = catalog.start_job(job_start("CD 456"), today, repeatable_random("more"));
        CHECK(second.written);
        CHECK(second.job.number == 2);
        code = second.job.code;
    }
    const auto jobs = folder.open(Access::read).jobs();
    REQUIRE(jobs.size() == 2);
    CHECK(jobs[0].number == 1);
    CHECK(jobs[1].code == code);
    CHECK(parse_job_code(code) == code);
    CHECK(jobs[1].customer == "bill 77");
    CHECK(jobs[1].year == 2014);
    CHECK(jobs[1].state == JobState::open);
}

TEST_CASE("a code that is taken is drawn again") {
    CatalogFolder folder;
    auto catalog = folder.create();
    catalog.add(bare_car(), false, today);
    const auto first = catalog.start_job(job_start(), today, repeatable_random("same"));
    const auto second = catalog.start_job(job_start(), today, repeatable_random("same"));
    CHECK(first.job.code != second.job.code);
}

TEST_CASE("a dry run of a start gives the same number and writes nothing") {
    CatalogFolder folder;
    auto catalog = folder.create();
    catalog.add(bare_car(), false, today);
    const auto dry = catalog.start_job(job_start(), today, repeatable_random("jobs"), true);
    CHECK_FALSE(dry.written);
    CHECK(catalog.jobs().empty());
    CHECK(catalog.start_job(job_start(), today, repeatable_random("jobs")).job.code == dry.job.code);
}

TEST_CASE("no byte of the file holds the plate, and the same plate has the same token as a note's") {
    CatalogFolder folder;
    {
        auto catalog = folder.create();
        catalog.add(bare_car(), false, today);
        catalog.start_job(job_start("ZQX 9876 W"), today, repeatable_random("jobs"));
        catalog.read_at_job(1, colours_at(tap_path, "WH", "BK"), today);
        catalog.close_job(1, fine_closing(), today);
        const NoteDraft note{{{"kind", words("pair")},
                              {"path", tap_path},
                              {"method", words("seen")},
                              {"positive", words("WH")},
                              {"date", words("2024-05-01")}},
                             "",
                             "zqx-9876-w",
                             {"note", 0, 0, {}}};
        catalog.take_note(note, {"note", true, false}, today);
        CHECK(catalog.ledger_at(tap_path).notes.at(0).note.car == catalog.ledger_at(tap_path).notes.at(1).note.car);
        CHECK(catalog.jobs().at(0).car == catalog.ledger_at(tap_path).notes.at(0).note.car);
    }
    const std::string bytes = all_bytes(folder);
    CHECK(bytes.find("bill 77") != std::string::npos);  // the search looks into the right bytes
    for (const std::string_view plate : {"ZQX", "9876", "zqx9876w", "zqx 9876 w"})
        CHECK(bytes.find(plate) == std::string::npos);
}

TEST_CASE("the customer's reference and the label code are in no record that is exchanged") {
    CatalogFolder folder;
    auto catalog = catalog_with_job(folder);
    catalog.check_job(1, CheckList::came, {{}, CheckAnswer::ok, "hb"});
    catalog.read_at_job(1, colours_at(tap_path, "WH", "BK"), today);
    catalog.close_job(1, fine_closing(), today);
    REQUIRE(catalog.note_lines(car).size() == 1);
    const std::string line = catalog.note_lines(car).at(0);
    for (const std::string& secret : {std::string("bill 77"), catalog.jobs().at(0).code, std::string("\"hb\"")})
        CHECK(line.find(secret) == std::string::npos);
}

TEST_CASE("an item of the list is filled once, a later answer replaces it, and rest fills what is left") {
    CatalogFolder folder;
    auto catalog = catalog_with_job(folder);
    catalog.check_job(1, CheckList::came, {{{CheckItem::camera, CheckAnswer::bad, "dark"}}, {}, {}});
    catalog.check_job(1, CheckList::came, {{{CheckItem::camera, CheckAnswer::none, ""}}, {}, {}});
    auto job = catalog.check_job(1, CheckList::came, {{}, CheckAnswer::ok, {}}).job;
    CHECK(job.came.size() == words_of<CheckItem>().size());
    CHECK(missing_items(job.came).empty());
    for (const auto& entry : job.came)
        CHECK(entry.answer == (entry.item == CheckItem::camera ? CheckAnswer::none : CheckAnswer::ok));
    job = catalog.check_job(1, CheckList::left, {{{CheckItem::chime, CheckAnswer::bad, "silent"}}, CheckAnswer::ok, {}})
              .job;
    const auto different = differences(job);
    REQUIRE(different.size() == 1);  // the camera that is not there stays none
    CHECK(different[0].item == CheckItem::chime);
    CHECK(different[0].left->words == "silent");
}

TEST_CASE("a later reading replaces the earlier one of its field and keeps the others") {
    CatalogFolder folder;
    auto catalog = catalog_with_job(folder);
    catalog.read_at_job(1, colours_at(tap_path, "WH", "BK"), today);
    JobReading later;
    later.path = tap_path;
    later.values = {{"negative", words("WH/BK")}, {"ac_mv", std::int64_t{8400}}};
    const auto job = catalog.read_at_job(1, later, "2024-05-03").job;
    REQUIRE(job.visits.size() == 1);
    CHECK(job.visits[0].readings ==
          Values{{"positive", words("WH")}, {"negative", words("WH/BK")}, {"ac_mv", std::int64_t{8400}}});
    CHECK(job.visits[0].date == "2024-05-03");
    CHECK(catalog.read_at_job(1, later, "2024-05-09").job.visits[0].date == "2024-05-03");  // nothing was changed
    CHECK(catalog.counts().notes == 0);
}

TEST_CASE("whatever is read in whatever order, the last value of each field and place stands") {
    CatalogFolder folder;
    auto catalog = catalog_with_job(folder);
    std::map<std::string, Values> twin;
    rc::check([&] {
        const auto path = *rc::gen::element(tap_path, second_tap);
        const auto field = *rc::gen::element<std::string>("ac_mv", "dc_positive_mv", "dc_negative_mv", "supply_mv");
        const auto value = *rc::gen::inRange<std::int64_t>(0, 15000);
        JobReading reading;
        reading.path = path;
        reading.values = {{field, value}};
        twin[path][field] = value;
        const auto job = catalog.read_at_job(1, reading, today).job;
        RC_ASSERT(job.visits.size() == twin.size());
        for (const auto& visit : job.visits) RC_ASSERT(visit.readings == twin[visit.path]);
    });
}

TEST_CASE("every kind of field comes back as it was read") {
    CatalogFolder folder;
    auto catalog = catalog_with_job(folder);
    JobReading reading = colours_at(tap_path, "LBU/RD", "BN");
    reading.values["full_volume"] = false;
    reading.values["hazards"] = TextList{"drilling", "sharp_edges"};
    reading.values["tone_mdb"] = std::int64_t{-10000};
    reading.values["remarks"] = words("two lines\nof text");
    reading.values["drive"] = words("bridged");
    catalog.read_at_job(1, reading, today);
    CHECK(catalog.jobs().at(0).visits.at(0).readings == reading.values);
}

TEST_CASE("the conditions of the place read before are taken over when asked, what was said here stays") {
    CatalogFolder folder;
    auto catalog = catalog_with_job(folder);
    JobReading same = colours_at(second_tap, "GY", "BK");
    same.same_conditions = true;
    CHECK(refusals_of([&] { catalog.read_at_job(1, same, today); }) ==
          std::vector<std::string>{
              "job 1: no other place was read yet, so there are no conditions to take over | say them "
              "here: --supply, --tone-hz, --tone-db, --full-volume, ..."});
    JobReading first = colours_at(tap_path, "WH", "BK");
    first.values["supply_mv"] = std::int64_t{14100};
    first.values["true_rms"] = true;
    first.values["ac_mv"] = std::int64_t{8400};
    catalog.read_at_job(1, first, today);
    same.values["true_rms"] = false;
    const auto job = catalog.read_at_job(1, same, today).job;
    REQUIRE(job.visits.size() == 2);
    CHECK(job.visits[1].path == second_tap);
    CHECK(job.visits[1].readings == Values{{"positive", words("GY")},
                                           {"negative", words("BK")},
                                           {"supply_mv", std::int64_t{14100}},
                                           {"true_rms", false}});
}

TEST_CASE("what was read at the wrong place is forgotten whole") {
    CatalogFolder folder;
    auto catalog = catalog_with_job(folder);
    catalog.read_at_job(1, colours_at(tap_path, "WH", "BK"), today);
    JobReading forget;
    forget.path = tap_path;
    forget.forget = true;
    CHECK(catalog.read_at_job(1, forget, today).job.visits.empty());
    CHECK(catalog.jobs().at(0).visits.empty());
}

TEST_CASE("temporary actions are numbered within their job and closed once") {
    CatalogFolder folder;
    auto catalog = catalog_with_job(folder);
    catalog.start_action(1, "pulled fuse 31", today);
    catalog.start_action(1, "unplugged the door module", today);
    const auto job = catalog.end_action(1, 1, "2024-05-03").job;
    CHECK(job.actions.at(0).closed == "2024-05-03");
    CHECK(job.actions.at(1).closed.empty());
    CHECK(catalog.end_action(1, 1, "2024-05-09").job.actions.at(0).closed == "2024-05-03");
    CHECK(refusals_of([&] { catalog.end_action(1, 7, today); }) ==
          std::vector<std::string>{"job 1: has no temporary action 7 | `tapbook job show 1` lists them"});
}

TEST_CASE("a number that is no job is not found") {
    CatalogFolder folder;
    auto catalog = catalog_with_job(folder);
    CHECK(trouble_of([&] { catalog.reopen_job(2); }) == CatalogTrouble::not_found);
}

TEST_CASE("a dry run of every change leaves the job as it was") {
    CatalogFolder folder;
    auto catalog = catalog_with_job(folder);
    catalog.check_job(1, CheckList::came, {{}, CheckAnswer::ok, "hb"}, true);
    JobPlan plan;
    plan.tap = tap_path;
    plan.converter = "direct";
    plan.minutes = 15;
    catalog.plan_job(1, plan, "base", true);
    catalog.read_at_job(1, colours_at(tap_path, "WH", "BK"), today, true);
    catalog.start_action(1, "pulled fuse 31", today, true);
    const auto job = catalog.jobs().at(0);
    CHECK(
        (job.came.empty() && job.agreed.empty() && job.plan.tap.empty() && job.visits.empty() && job.actions.empty()));
}
