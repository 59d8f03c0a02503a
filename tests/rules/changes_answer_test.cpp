// What changed since a day: nothing before it is told, nothing from it on is left out, and the two standings are those
// of the notes before and of all.
#include <catch2/catch.hpp>

#include <rapidcheck.h>

#include <algorithm>

#include "rules/rules.h"

using namespace tapbook;

namespace {

const std::string tap = "orlin/brelk/sedan/2014/base/front-left/radio-plug";

Note note_on(int day, bool white) {
    Note note;
    note.id[0] = static_cast<unsigned char>(day);
    note.path = tap;
    note.shop = std::string(32, static_cast<char>('a' + day % 3));
    note.car = "car" + std::to_string(day);
    note.date = day_text(20000 + day);
    note.method = Method::metered;
    note.positive = wire_colour_from_code(white ? "WH" : "BN");
    note.negative = wire_colour_from_code("BK");
    return note;
}

TapLedger ledger_of(const std::vector<std::pair<int, bool>>& days) {
    TapLedger ledger;
    ledger.path = tap;
    for (const auto& [day, white] : days) ledger.notes.push_back({note_on(day, white), NoteState::live, {}, {}});
    std::sort(ledger.notes.begin(), ledger.notes.end(),
              [](const LedgerNote& a, const LedgerNote& b) { return a.note.date < b.note.date; });
    return ledger;
}

}  // namespace

TEST_CASE("a note on the day itself is news, one of the day before is not") {
    const TapLedger ledger = ledger_of({{10, true}, {11, true}});
    const TapLedger all[] = {ledger};
    const ChangesAnswer answer = changes_since(all, day_text(20011), {});
    REQUIRE(answer.places.size() == 1);
    REQUIRE(answer.places[0].notes.size() == 1);
    CHECK(answer.places[0].notes[0].date == day_text(20011));
    CHECK(answer.places[0].is_moved);  // ONE CAR before, MATCHED now
    CHECK(answer.places[0].before.pair.pair.grade == Grade::one_car);
    CHECK(answer.places[0].after.pair.pair.grade == Grade::matched);
    CHECK(changes_since(all, day_text(20012), {}).places.empty());
}

TEST_CASE("news are exactly the notes from the day on, held against the standing of the others") {
    REQUIRE(rc::check(
        "any notes, any day", [](const std::vector<std::pair<unsigned char, bool>>& typed, unsigned char day) {
            std::vector<std::pair<int, bool>> days;
            for (const auto& [at, white] : typed) {
                const bool is_there =
                    std::any_of(days.begin(), days.end(), [&](const auto& one) { return one.first == at; });
                if (!is_there) days.emplace_back(at, white);
            }
            const TapLedger ledger = ledger_of(days);
            const std::string since = day_text(20000 + day);
            const TapLedger all[] = {ledger};
            const ChangesAnswer answer = changes_since(all, since, {});
            std::vector<Note> earlier;
            std::size_t later = 0;
            for (const auto& [at, white] : days) {
                if (at < day)
                    earlier.push_back(note_on(at, white));
                else
                    ++later;
            }
            RC_ASSERT(answer.places.size() == (later > 0 ? 1u : 0u));
            if (later == 0) return;
            const ChangedPlace& place = answer.places.front();
            RC_ASSERT(place.notes.size() == later);
            RC_ASSERT(place.before.pair.pair.grade == noted_standing(NoteKind::pair, earlier, {}).pair.pair.grade);
            RC_ASSERT(place.after.pair.pair.grade == noted_standing(NoteKind::pair, ledger.live(), {}).pair.pair.grade);
            if (earlier.empty()) RC_ASSERT(place.is_moved);
        }));
}

TEST_CASE("places whose answer moved stand before those where it only grew") {
    TapLedger grown = ledger_of({{1, true}, {2, true}, {3, true}});
    TapLedger moved = ledger_of({{1, true}, {3, false}});
    grown.path = "orlin/brelk/sedan/2014/base/a/plug";
    moved.path = "orlin/brelk/sedan/2014/base/b/plug";
    const TapLedger all[] = {grown, moved};
    const ChangesAnswer answer = changes_since(all, day_text(20003), {});
    REQUIRE(answer.places.size() == 2);
    CHECK(answer.places[0].path == moved.path);
    CHECK(answer.places[0].is_moved);
}
