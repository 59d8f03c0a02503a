// One visit in one line: what is filled in, what is asked back, what a dry run promises and what a withdrawal leaves.
#include <rapidcheck.h>

#include <algorithm>

#include "a_catalog.h"

using namespace tapbook;

namespace {

NoteDraft draft(Values values, const std::string& plate = "AB 123") {
    values["kind"] = words("pair");
    values["path"] = tap_path;
    values.try_emplace("method", words("metered"));
    return {std::move(values), "", plate, {"note", 0, 0, {}}};
}

Values colours(const char* positive, const char* negative) {
    return {{"positive", words(positive)}, {"negative", words(negative)}, {"year", std::int64_t{2014}}};
}

NoteReport take(Catalog& catalog, const NoteDraft& note, bool is_sure = false, bool dry_run = false,
                const std::string& day = today) {
    return catalog.take_note(note, {"note", is_sure, dry_run}, day);
}

// The car without its notes.
Batch bare_car() {
    Batch batch = one_car();
    batch.notes.clear();
    return batch;
}

Values stored(const Catalog& catalog, const RecordId& id) {
    for (const auto& line : catalog.note_lines(car))
        if (record_id(line) == id) return read_record_line(line);
    return {};
}

// Everything a standing says, in one text, but for PULLED, which remembers that there was a note.
std::string said(const Catalog& catalog) {
    const TapLedger ledger = catalog.ledger_at(tap_path);
    const NotedStanding standing = noted_standing(NoteKind::pair, ledger.live(), ledger.witnesses);
    std::string text;
    for (const Question question : questions_of(NoteKind::pair)) {
        const Standing& one = standing_on(standing, question);
        const Grade grade = one.grade == Grade::pulled ? Grade::blank : one.grade;
        text += std::string(word_of(grade)) + " " + one.value.value_or("-");
        for (const auto& claim : one.claims) text += " " + claim.value + std::to_string(claim.points);
        text += "\n";
    }
    return text;
}

}  // namespace

TEST_CASE("day, initials used last and the tap's side are filled in") {
    CatalogFolder folder;
    auto catalog = folder.create();
    Batch batch = bare_car();
    batch.entries[3].values["side"] = words("body");
    catalog.add(batch, false, today);
    Values first = colours("WH", "BK");
    first["initials"] = words("mk");
    const auto with_initials = take(catalog, draft(first));
    CHECK(with_initials.written);
    const Values one = stored(catalog, with_initials.id);
    CHECK(text_field(one, "date") == today);
    CHECK(text_field(one, "side") == "body");
    CHECK_FALSE(one.contains("turn"));
    const auto second = take(catalog, draft(colours("WH", "BK"), "CD 456"));
    CHECK(text_field(stored(catalog, second.id), "initials") == "mk");
}

TEST_CASE("notes on one car and day get turns, so that the later one counts as the newer") {
    CatalogFolder folder;
    auto catalog = folder.create();
    catalog.add(bare_car(), false, today);
    const auto first = take(catalog, draft(colours("WH", "BK")));
    const auto second = take(catalog, draft(colours("TN", "BK")), true);
    const auto other_car = take(catalog, draft(colours("TN", "BK"), "CD 456"), true);
    CHECK(whole_field(stored(catalog, second.id), "turn") == 1);
    CHECK_FALSE(stored(catalog, other_car.id).contains("turn"));
    const TapLedger ledger = catalog.ledger_at(tap_path);
    const auto standing = noted_standing(NoteKind::pair, ledger.live(), ledger.witnesses);
    REQUIRE(standing.pair.pair.struck.size() == 1);
    CHECK(standing.pair.pair.struck[0].note == first.id);
}

TEST_CASE("the very same note of one day is not added twice, but again after it was withdrawn") {
    CatalogFolder folder;
    auto catalog = folder.create();
    catalog.add(bare_car(), false, today);
    const auto first = take(catalog, draft(colours("WH", "BK")));
    const auto again = take(catalog, draft(colours("WH", "BK")));
    CHECK(again.already_here);
    CHECK_FALSE(again.written);
    CHECK(again.id == first.id);
    CHECK(catalog.counts().notes == 1);
    catalog.withdraw(first.id, WithdrawalReason::typo, today);
    const auto anew = take(catalog, draft(colours("WH", "BK")));
    CHECK(anew.written);
    CHECK(anew.id != first.id);
    CHECK(anew.after.pair.pair.grade == Grade::one_car);
}

TEST_CASE("no plate is stored, only a token that is the same for the same plate") {
    CatalogFolder folder;
    auto catalog = folder.create();
    catalog.add(bare_car(), false, today);
    const auto first = take(catalog, draft(colours("WH", "BK"), "ZQ 9876 X"));
    const auto second = take(catalog, draft(colours("WH", "BK"), "zq-9876-x"), false, false, "2024-05-03");
    const Values one = stored(catalog, first.id), two = stored(catalog, second.id);
    CHECK(text_field(one, "car") == text_field(two, "car"));
    CHECK(second.after.pair.pair.claims.at(0).cars == 1);
    for (const auto& line : catalog.note_lines(car)) CHECK(line.find("9876") == std::string::npos);
}

TEST_CASE("a question of a check holds the note back until somebody is sure, and nothing was written meanwhile") {
    CatalogFolder folder;
    auto catalog = folder.create();
    catalog.add(bare_car(), false, today);
    Values loud = colours("WH", "BK");
    loud["dc_positive_mv"] = std::int64_t{13900};
    loud["initials"] = words("zz");
    const auto held = take(catalog, draft(loud));
    CHECK(held.is_refused);
    CHECK_FALSE(held.written);
    CHECK(catalog.counts().notes == 0);
    CHECK(rows_of(folder.file(), "action") == 1);  // that of the car's file
    const auto saved = take(catalog, draft(loud), true);
    CHECK(saved.written);
    CHECK_FALSE(saved.is_refused);
}

TEST_CASE("what no car can show is refused, however sure somebody is") {
    CatalogFolder folder;
    auto catalog = folder.create();
    catalog.add(bare_car(), false, today);
    const auto both_alike = take(catalog, draft(colours("WH", "WH")), true);
    CHECK(both_alike.is_refused);
    Values later = colours("WH", "BK");
    later["date"] = words("2031-01-01");
    const auto future = take(catalog, draft(later), true);
    REQUIRE(future.is_refused);
    CHECK(future.complaints.front().text == "2031-01-01 is after today (2024-05-02)");
    CHECK(catalog.counts().notes == 0);
}

TEST_CASE("a tap without an entry is refused with the path's nearest") {
    CatalogFolder folder;
    auto catalog = folder.create();
    catalog.add(bare_car(), false, today);
    NoteDraft stray = draft(colours("WH", "BK"));
    stray.values["path"] = car + "/base/front-left/nowhere";
    CHECK_THROWS_AS(take(catalog, stray), InputRefused);
    stray.values["path"] = car + "/unrecorded/front-left/radio-plug";
    CHECK(take(catalog, stray).written);
}

TEST_CASE("a sister trim with another pair asks back") {
    CatalogFolder folder;
    auto catalog = folder.create();
    Batch batch = one_car();
    batch.entries.push_back(entry(EntryKind::system, car + "/premium", {{"name", words("with amplifier")}}));
    batch.entries.push_back(entry(EntryKind::circuit, car + "/premium/front-left", {{"role", words("speaker")}}));
    batch.entries.push_back(entry(EntryKind::tap, car + "/premium/front-left/radio-plug", {{"place", words("radio")}}));
    catalog.add(batch, false, today);
    NoteDraft note = draft(colours("BN", "BN/YE"));
    note.values["path"] = car + "/premium/front-left/radio-plug";
    const auto held = take(catalog, note);
    REQUIRE(held.is_refused);
    CHECK(held.complaints.front().text ==
          "brown and brown, yellow stripe is unlike every sister trim of this tap: white and white, black stripe in " +
              tap_path);
    note.values["positive"] = words("WH");
    note.values["negative"] = words("WH/BK");
    CHECK(take(catalog, note).written);
}

TEST_CASE("a dry run says what the real run says, and writes nothing") {
    REQUIRE(rc::check([] {
        CatalogFolder folder;
        auto catalog = folder.create();
        catalog.add(bare_car(), false, today);
        const std::vector<const char*> known = {"WH", "BK", "TN", "WH/BK"};
        for (int i = *rc::gen::inRange(1, 5); i > 0; --i) {
            Values values =
                colours(known[*rc::gen::inRange<std::size_t>(0, 4)], known[*rc::gen::inRange<std::size_t>(0, 4)]);
            if (*rc::gen::arbitrary<bool>()) values["ac_mv"] = std::int64_t{*rc::gen::inRange(0, 20000)};
            values["method"] = words(*rc::gen::arbitrary<bool>() ? "metered" : "copied");
            const NoteDraft note = draft(values, *rc::gen::arbitrary<bool>() ? "AB 1" : "CD 2");
            const bool is_sure = *rc::gen::arbitrary<bool>();
            const auto lines = catalog.note_lines(car);
            const auto promised = take(catalog, note, is_sure, true);
            RC_ASSERT(catalog.note_lines(car) == lines);
            const auto done = take(catalog, note, is_sure, false);
            RC_ASSERT(promised.is_refused == done.is_refused);
            RC_ASSERT(promised.already_here == done.already_here);
            RC_ASSERT(promised.id == done.id);
            RC_ASSERT(promised.next == done.next);
            RC_ASSERT(promised.after.pair.pair.grade == done.after.pair.pair.grade);
            RC_ASSERT(promised.complaints.size() == done.complaints.size());
            RC_ASSERT(done.written == !(done.is_refused || done.already_here));
        }
    }));
}

TEST_CASE("a note that is withdrawn leaves the standing as it was before") {
    REQUIRE(rc::check([] {
        CatalogFolder folder;
        auto catalog = folder.create();
        catalog.add(bare_car(), false, today);
        const std::vector<const char*> known = {"WH", "BK", "TN"};
        const auto any_note = [&](const std::string& day) {
            Values values = colours(known[*rc::gen::inRange<std::size_t>(0, 3)], "BN");
            values["year"] = std::int64_t{*rc::gen::inRange(2012, 2017)};
            return take(catalog, draft(values, *rc::gen::arbitrary<bool>() ? "AB 1" : "CD 2"), true, false, day);
        };
        for (int i = *rc::gen::inRange(0, 4); i > 0; --i) any_note("2024-05-0" + std::to_string(i));
        const std::string before = said(catalog);
        const auto noted = any_note("2024-05-09");
        const auto report = catalog.withdraw(noted.id, WithdrawalReason::wrong_car, "2024-05-09");
        RC_ASSERT(report.written);
        RC_ASSERT(said(catalog) == before);
    }));
}
