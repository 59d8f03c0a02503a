// Closing a job: readings become notes, all or nothing; again after reopening only what changed.
#include <algorithm>

#include "a_job.h"

using namespace tapbook;

namespace {

using Lines = std::vector<std::string>;

JobReading full_reading(const std::string& path = tap_path) {
    JobReading reading = colours_at(path, "WH", "WH/BK");
    reading.values.insert({{"ac_mv", std::int64_t{8400}},
                           {"tone_mhz", std::int64_t{50000}},
                           {"tone_mdb", std::int64_t{0}},
                           {"supply_mv", std::int64_t{14100}},
                           {"full_volume", true},
                           {"speaker_connected", true},
                           {"controls_flat", true},
                           {"polarity_method", words("phase")}});
    return reading;
}

Note only_live_note(const Catalog& catalog, const std::string& path = tap_path) {
    const auto live = catalog.ledger_at(path).live();
    REQUIRE(live.size() == 1);
    return live.front();
}

}  // namespace

TEST_CASE(
    "a job with an open action and an unfilled list is held back with everything that is missing, and stays open") {
    CatalogFolder folder;
    auto catalog = catalog_with_job(folder);
    catalog.read_at_job(1, full_reading(), today);
    catalog.start_action(1, "pulled fuse 31", today);
    JobClosing closing;
    closing.left.entries = {{CheckItem::lamps, CheckAnswer::ok, ""}};
    CHECK(refusals_of([&] { catalog.close_job(1, closing, today); }) ==
          Lines{"job 1: temporary action 1 is open: pulled fuse 31 | put it back, then `tapbook job action 1 --done 1`",
                "job 1: nobody has looked at: speakers,radio,call,chime,camera,damage,earlier-work,other-radio,drain | "
                "look and write `tapbook job left 1 ITEM=ok ...`, or leave them out knowingly: --sure rest"});
    CHECK(catalog.jobs().at(0).state == JobState::open);
    CHECK(catalog.jobs().at(0).left.empty());
    CHECK(catalog.counts().notes == 0);
}

TEST_CASE("items may be left out knowingly, each by name or all at once, and a word that names nothing is asked back") {
    CatalogFolder folder;
    auto catalog = catalog_with_job(folder);
    JobClosing closing;
    closing.left.entries = {{CheckItem::lamps, CheckAnswer::ok, ""}};
    closing.sure = {"rest", "camrea"};
    CHECK(
        refusals_of([&] { catalog.close_job(1, closing, today, true); }) ==
        Lines{
            "job 1: --sure: \"camrea\" is neither an item of the list nor a place of this job | did you mean camera?"});
    closing.sure = {"speakers", "radio", "call", "chime", "camera", "damage", "earlier-work", "other-radio"};
    CHECK(refusals_of([&] { catalog.close_job(1, closing, today, true); }).size() == 1);
    closing.sure.insert("drain");
    CHECK(catalog.close_job(1, closing, today, true).job.state == JobState::closed);
    closing.sure = {"rest"};
    CHECK(catalog.close_job(1, closing, today).written);
}

TEST_CASE(
    "each place becomes one note with the job's year, initials and car, metered when volts were read, else seen") {
    CatalogFolder folder;
    auto catalog = catalog_with_job(folder);
    catalog.read_at_job(1, full_reading(), "2024-04-30");
    catalog.read_at_job(1, colours_at(second_tap, "GY", "GY/BK"), today);
    const auto report = catalog.close_job(1, fine_closing(), today);
    REQUIRE(report.visits.size() == 2);
    CHECK(report.visits[0].end == VisitEnd::noted);
    CHECK(report.visits[0].note.before.pair.pair.grade == Grade::blank);
    CHECK(report.visits[0].note.after.pair.pair.grade == Grade::one_car);
    const Note metered = only_live_note(catalog);
    CHECK(metered.method == Method::metered);
    CHECK(metered.has_proof);
    CHECK(metered.date == "2024-04-30");
    CHECK(metered.year == 2014);
    CHECK(metered.initials == "mk");
    CHECK(metered.polarity == PolarityMethod::phase);
    CHECK_FALSE(metered.car.empty());
    CHECK_FALSE(metered.altered);
    CHECK(only_live_note(catalog, second_tap).method == Method::seen);
    CHECK(catalog.jobs().at(0).visits.at(0).note == report.visits[0].note.id);
    CHECK(catalog.jobs().at(0).outcome == JobOutcome::fine);
    CHECK(catalog.jobs().at(0).closed == today);
}

TEST_CASE("the method that somebody said is kept") {
    CatalogFolder folder;
    auto catalog = catalog_with_job(folder);
    JobReading reading = full_reading();
    reading.values["method"] = words("scoped");
    catalog.read_at_job(1, reading, today);
    catalog.close_job(1, fine_closing(), today);
    CHECK(only_live_note(catalog).method == Method::scoped);
}

TEST_CASE("earlier work found on the car as it came marks its notes as of an altered car") {
    CatalogFolder folder;
    auto catalog = catalog_with_job(folder);
    catalog.check_job(1, CheckList::came, {{{CheckItem::earlier_work, CheckAnswer::bad, "piercing clips"}}, {}, {}});
    catalog.read_at_job(1, full_reading(), today);
    catalog.close_job(1, fine_closing(), today);
    CHECK(only_live_note(catalog).altered);
}

TEST_CASE("closing again after reopening writes nothing when nothing changed") {
    CatalogFolder folder;
    auto catalog = catalog_with_job(folder);
    catalog.read_at_job(1, full_reading(), today);
    catalog.close_job(1, fine_closing(), today);
    const auto lines = catalog.note_lines(car);
    for (const auto* day : {"2024-05-02", "2024-06-01"}) {
        catalog.reopen_job(1);
        catalog.read_at_job(1, full_reading(), day);
        const auto again = catalog.close_job(1, fine_closing(), day);
        CHECK(again.visits.at(0).end == VisitEnd::unchanged);
    }
    CHECK(catalog.note_lines(car) == lines);
    CHECK(catalog.withdrawal_lines().empty());
    CHECK(rows_of(folder.file(), "action") == 2);  // the car's file and the first closing
}

TEST_CASE("a corrected reading withdraws the note it replaces and leaves the other places alone") {
    CatalogFolder folder;
    auto catalog = catalog_with_job(folder);
    catalog.read_at_job(1, full_reading(), today);
    catalog.read_at_job(1, colours_at(second_tap, "GY", "GY/BK"), today);
    const auto first = catalog.close_job(1, fine_closing(), today);
    catalog.reopen_job(1);
    catalog.read_at_job(1, colours_at(second_tap, "VT", "VT/BK"), today);
    const auto second = catalog.close_job(1, fine_closing(), today);
    CHECK(second.visits.at(0).end == VisitEnd::unchanged);
    CHECK(second.visits.at(1).end == VisitEnd::replaced);
    CHECK(second.visits.at(1).note.after.pair.pair.grade == Grade::one_car);
    CHECK(only_live_note(catalog, second_tap).positive == wire_colour_from_code("VT"));
    const auto ledger = catalog.ledger_at(second_tap);
    REQUIRE(ledger.notes.size() == 2);
    for (const auto& entry : ledger.notes)
        CHECK((entry.note.id == first.visits[1].note.id) == (entry.state == NoteState::withdrawn));
    CHECK(catalog.withdrawal_lines().size() == 1);
    CHECK(catalog.withdrawal_lines().at(0).find("metered-again") != std::string::npos);
}

TEST_CASE("a reading corrected there and back on one day is a new note, not the withdrawn one") {
    CatalogFolder folder;
    auto catalog = catalog_with_job(folder);
    std::vector<RecordId> ids;
    for (const char* colour : {"GY", "VT", "GY", "VT"}) {
        if (catalog.jobs().at(0).state == JobState::closed) catalog.reopen_job(1);
        catalog.read_at_job(1, colours_at(tap_path, colour, "BK"), today);
        ids.push_back(catalog.close_job(1, fine_closing(), today).visits.at(0).note.id);
        CHECK(only_live_note(catalog).positive == wire_colour_from_code(colour));
    }
    std::sort(ids.begin(), ids.end());
    CHECK(std::adjacent_find(ids.begin(), ids.end()) == ids.end());
    CHECK(catalog.withdrawal_lines().size() == 3);
}

TEST_CASE("forgetting a place after reopening withdraws its note, and the job keeps no trace of it") {
    CatalogFolder folder;
    auto catalog = catalog_with_job(folder);
    catalog.read_at_job(1, full_reading(), today);
    catalog.close_job(1, fine_closing(), today);
    catalog.reopen_job(1);
    JobReading forget;
    forget.path = tap_path;
    forget.forget = true;
    catalog.read_at_job(1, forget, today);
    const auto report = catalog.close_job(1, fine_closing(), today);
    CHECK(report.visits.at(0).end == VisitEnd::withdrawn);
    CHECK(report.visits.at(0).note.after.pair.pair.grade == Grade::pulled);
    CHECK(catalog.ledger_at(tap_path).live().empty());
    CHECK(catalog.jobs().at(0).visits.empty());
}

TEST_CASE("closing is all or nothing: when the second note cannot be written, there is no first and the job is open") {
    CatalogFolder folder;
    auto catalog = catalog_with_job(folder);
    catalog.read_at_job(1, full_reading(), today);
    JobReading endless = colours_at(second_tap, "GY", "GY/BK");
    endless.values["remarks"] = std::string(most_text_bytes + 1, 'x');
    catalog.read_at_job(1, endless, today);
    CHECK(refusals_of([&] { catalog.close_job(1, fine_closing(), today); }).size() == 1);
    CHECK(catalog.counts().notes == 0);
    const auto job = catalog.jobs().at(0);
    CHECK(job.state == JobState::open);
    CHECK(job.left.empty());
    for (const auto& visit : job.visits) CHECK_FALSE(visit.note.has_value());
}

TEST_CASE("a closed job takes no change until it is opened again") {
    CatalogFolder folder;
    auto catalog = catalog_with_job(folder);
    catalog.close_job(1, fine_closing(), today);
    const Lines closed = {"job 1: was closed on 2024-05-02 | `tapbook job open 1` opens it again"};
    CHECK(refusals_of([&] { catalog.read_at_job(1, full_reading(), today); }) == closed);
    CHECK(refusals_of([&] { catalog.close_job(1, fine_closing(), today); }) == closed);
    CHECK(refusals_of([&] { catalog.start_action(1, "x", today); }) == closed);
    CHECK(refusals_of([&] { catalog.check_job(1, CheckList::came, {{}, CheckAnswer::ok, {}}); }) == closed);
    CHECK(refusals_of([&] { catalog.plan_job(1, {}, "base"); }) == closed);
    catalog.reopen_job(1);
    CHECK(catalog.read_at_job(1, full_reading(), today).written);
}

TEST_CASE(
    "a reading that no car can show holds the closing back, and one that is odd until somebody is sure of its place") {
    CatalogFolder folder;
    auto catalog = catalog_with_job(folder);
    JobReading twice = full_reading();
    twice.values["positive_cavity"] = words("7");
    twice.values["negative_cavity"] = words("7");
    catalog.read_at_job(1, twice, today);
    const auto refused = refusals_of([&] { catalog.close_job(1, fine_closing(), today); });
    CHECK(refused ==
          Lines{"job 1: front-left/radio-plug: both conductors in cavity 7: two conductors sit in two cavities | "
                "read it again with `tapbook job reading`"});
    JobReading near_supply = full_reading();
    near_supply.values["negative_cavity"] = words("8");
    near_supply.values["dc_positive_mv"] = std::int64_t{14000};
    catalog.read_at_job(1, near_supply, today);
    JobClosing closing = fine_closing();
    CHECK(refusals_of([&] { catalog.close_job(1, closing, today); }) ==
          Lines{"job 1: are you sure? front-left/radio-plug: 14 V d.c. is about the supply: a speaker conductor does "
                "not rest "
                "there | read it again, or say that it is so: --sure front-left/radio-plug"});
    closing.sure = {"front-left/radio-plug"};
    CHECK(catalog.close_job(1, closing, today).written);
}

TEST_CASE("conditions alone are nothing to note") {
    CatalogFolder folder;
    auto catalog = catalog_with_job(folder);
    JobReading conditions;
    conditions.path = tap_path;
    conditions.values = {{"supply_mv", std::int64_t{14100}}, {"true_rms", true}};
    catalog.read_at_job(1, conditions, today);
    CHECK(catalog.close_job(1, fine_closing(), today).visits.at(0).end == VisitEnd::nothing_to_note);
    CHECK(catalog.counts().notes == 0);
}

TEST_CASE("a dry run of closing says what would move and writes nothing") {
    CatalogFolder folder;
    auto catalog = catalog_with_job(folder);
    catalog.read_at_job(1, full_reading(), today);
    const auto dry = catalog.close_job(1, fine_closing(), today, true);
    CHECK_FALSE(dry.written);
    CHECK(dry.visits.at(0).note.after.pair.pair.grade == Grade::one_car);
    CHECK(catalog.counts().notes == 0);
    CHECK(catalog.jobs().at(0).state == JobState::open);
}

TEST_CASE("undo takes back the notes of a closing, and closing the job again writes them anew") {
    CatalogFolder folder;
    auto catalog = catalog_with_job(folder);
    catalog.read_at_job(1, full_reading(), today);
    const auto first = catalog.close_job(1, fine_closing(), today);
    CHECK(catalog.undo(today).words == "close job 1");
    CHECK(catalog.ledger_at(tap_path).live().empty());
    catalog.reopen_job(1);
    const auto second = catalog.close_job(1, fine_closing(), today);
    CHECK(second.visits.at(0).end == VisitEnd::noted);
    CHECK(second.visits.at(0).note.id != first.visits.at(0).note.id);
    CHECK(only_live_note(catalog).id == second.visits.at(0).note.id);
}

TEST_CASE("a note that says the same of the same car and day is taken up, not written twice") {
    CatalogFolder folder;
    auto catalog = catalog_with_job(folder);
    NoteDraft draft{full_reading().values, "", "AB 123", {"note", 0, 0, {}}};
    draft.values["kind"] = words("pair");
    draft.values["path"] = tap_path;
    draft.values["method"] = words("metered");
    draft.values["year"] = std::int64_t{2014};
    draft.values["initials"] = words("mk");
    const auto noted = catalog.take_note(draft, {"note", true, false}, today);
    catalog.read_at_job(1, full_reading(), today);
    const auto report = catalog.close_job(1, fine_closing(), today);
    CHECK(report.visits.at(0).end == VisitEnd::unchanged);
    CHECK(report.visits.at(0).note.id == noted.id);
    CHECK(catalog.counts().notes == 1);
}
