// What does a power circuit read in each position of the key? The newest reading of the notes that support the settled
// class, each position by itself, whatever the order in which the notes come.
#include <algorithm>
#include <catch2/catch.hpp>

#include "evidence/notes.h"

using namespace tapbook;
using ledgers::known;
using ledgers::pair_note;

namespace {

Note power_note(int number, std::string shop, std::string date, double accessory, std::optional<double> crank) {
    Note note = pair_note(number, "", "").by(std::move(shop));
    note.kind = NoteKind::switched;
    note.date = std::move(date);
    note.key_off = dc_volts(0);
    note.accessory = dc_volts(accessory);
    note.run = dc_volts(accessory + 1);
    if (crank) note.crank = dc_volts(*crank);
    return note;
}

}  // namespace

TEST_CASE("the newest note that supports the class gives the volts, and an older one what it did not read") {
    std::vector notes = {power_note(1, "S1", "2019-01-01", 12.1, 0.2), power_note(2, "S2", "2022-01-01", 12.6, {}),
                         power_note(3, "S3", "2020-01-01", 12.3, 0.4)};
    std::sort(notes.begin(), notes.end(), [](const Note& a, const Note& b) { return a.id < b.id; });
    do {
        const auto standing = switched_standing(notes, known());
        CHECK(standing.live == SwitchedClass::accessory);
        CHECK(standing.volts.accessory == dc_volts(12.6));
        CHECK(standing.volts.run == dc_volts(13.6));
        CHECK(standing.volts.off == dc_volts(0));
        CHECK(standing.volts.crank == dc_volts(0.4));
    } while (
        std::next_permutation(notes.begin(), notes.end(), [](const Note& a, const Note& b) { return a.id < b.id; }));
}

TEST_CASE("a newer note of a class that lost does not give the volts") {
    Note copied = power_note(4, "S4", "2024-01-01", 0, 11.0);
    copied.method = Method::copied;
    const std::vector notes = {power_note(1, "S1", "2019-01-01", 12.1, {}), power_note(2, "S2", "2020-01-01", 12.2, {}),
                               power_note(3, "S3", "2021-01-01", 12.3, {}), copied};
    const auto standing = switched_standing(notes, known());
    CHECK(standing.live == SwitchedClass::accessory);
    CHECK(standing.volts.accessory == dc_volts(12.3));
    CHECK_FALSE(standing.volts.crank.has_value());
}

TEST_CASE("while the class is disputed, or nobody has looked, there are no volts to show") {
    const std::vector notes = {power_note(1, "S1", "2019-01-01", 12.1, {}), power_note(2, "S2", "2020-01-01", 0, {})};
    for (const auto& standing : {switched_standing(notes, known()), switched_standing({}, known())}) {
        CHECK_FALSE(standing.live.has_value());
        CHECK_FALSE(standing.volts.off.has_value());
        CHECK_FALSE(standing.volts.run.has_value());
    }
}
