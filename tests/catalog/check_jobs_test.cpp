// Is damage to jobs found, and are whole jobs sound?
#include "a_job.h"

using namespace tapbook;

namespace {

// A job that was read and closed, with lists and an action.
void make_jobs(const CatalogFolder& folder) {
    auto catalog = catalog_with_job(folder);
    JobChecks came;
    came.rest = CheckAnswer::ok;
    catalog.check_job(1, CheckList::came, came);
    catalog.start_action(1, "pulled fuse 31", today);
    catalog.end_action(1, 1, today);
    catalog.read_at_job(1, colours_at(tap_path, "WH", "WH/BK"), today);
    catalog.close_job(1, fine_closing(), today);
}

// What check --full finds after `sql` was done to the catalog, "kind: facts".
std::vector<std::string> damages_after(const std::string& sql) {
    const CatalogFolder folder;
    make_jobs(folder);
    {
        sqlite::Database database(folder.file());
        database.execute(sql);
    }
    std::vector<std::string> lines;
    for (const auto& damage : check_catalog(folder.file(), CheckDepth::full).damages)
        lines.push_back(damage.what + ": " + std::to_string(damage.facts));
    return lines;
}

using Lines = std::vector<std::string>;

}  // namespace

TEST_CASE("jobs that were worked off are sound") {
    CHECK(damages_after("") == Lines{});
}

TEST_CASE("each kind of damage to a job is named") {
    CHECK(damages_after("UPDATE job SET state = 'half'") == Lines{"jobs that make no sense: 1"});
    CHECK(damages_after("UPDATE job SET outcome = 'good'") == Lines{"jobs that make no sense: 1"});
    CHECK(damages_after("UPDATE job_check SET answer = 'perhaps' WHERE list = 'came' AND item = 'lamps'") ==
          Lines{"items of a list that make no sense: 1"});
    CHECK(damages_after("DELETE FROM job_visit") == Lines{"readings that make no sense: 2"});
    CHECK(damages_after("UPDATE job_visit SET note = x'00112233445566778899aabbccddeeff'") ==
          Lines{"notes of a job that are gone: 1"});
    CHECK(damages_after("UPDATE job_action SET closed = '2001-01-01'") ==
          Lines{"temporary actions that make no sense: 1"});
    CHECK(damages_after("DELETE FROM job WHERE number = 1; DELETE FROM job_check; DELETE FROM job_visit; "
                        "DELETE FROM job_reading") == Lines{"temporary actions of a job that is gone: 1"});
}
