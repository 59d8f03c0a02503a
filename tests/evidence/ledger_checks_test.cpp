// Is a note that contradicts what is known asked back, and one that agrees left alone?
#include "evidence/ledger_checks.h"

#include <catch2/catch.hpp>

#include "evidence/notes.h"

using namespace tapbook;
using ledgers::known;
using ledgers::pair_note;

namespace {

const auto phase = PolarityMethod::phase;

// Each complaint as "severity field: text | offers"; those about missing year, plate and source only when wanted.
std::vector<std::string> said(const Note& note, const std::vector<Note>& before,
                              const std::vector<SisterTap>& sisters = {}, bool with_marks = false) {
    Witnesses witnesses;
    witnesses.known = known();
    std::vector<std::string> lines;
    for (const auto& complaint : check_against_ledger(note, before, witnesses, sisters)) {
        if (!with_marks && (complaint.field == "year" || complaint.field == "car" || complaint.field == "source"))
            continue;
        std::string line =
            std::string(word_of(complaint.severity)) + " " + std::string(complaint.field) + ": " + complaint.text;
        for (const auto& offer : complaint.offers) line += " | " + offer;
        lines.push_back(line);
    }
    return lines;
}

std::vector<Note> proven_pair() {
    return {pair_note(1, "WH", "BK").in(2014).how(Method::metered, phase),
            pair_note(2, "WH", "BK").by("S2", "b").in(2016).how(Method::metered, phase)};
}

using Lines = std::vector<std::string>;

}  // namespace

TEST_CASE("a pair unlike the PROVEN one is asked back with what it may be") {
    CHECK(said(pair_note(9, "TN", "BK").by("S3", "c").in(2015), proven_pair()) ==
          Lines{"are you sure positive: black and tan differs from what is PROVEN here: black and white (2 cars, 2 "
                "shops) | another body, sound system or side of the connector | earlier work by others | a colour "
                "that looks different in this light"});
}

TEST_CASE("a polarity against the PROVEN one is asked back") {
    CHECK(said(pair_note(9, "BK", "WH").by("S3", "c").in(2015).how(Method::metered, phase), proven_pair()) ==
          Lines{"are you sure polarity: black positive differs from what is PROVEN here: white positive (2 cars, 2 "
                "shops) | another body, sound system or side of the connector | earlier work by others | a colour "
                "that looks different in this light"});
}

TEST_CASE("an agreeing note, one colour of the pair alone, and a year outside the years seen pass") {
    CHECK(said(pair_note(9, "WH", "BK").by("S3", "c").in(2015), proven_pair()).empty());
    CHECK(said(pair_note(9, "WH", "").by("S3", "c").in(2015), proven_pair()).empty());
    CHECK(said(pair_note(9, "TN", "BK").by("S3", "c").in(2020), proven_pair()).empty());  // MATCHED there, not PROVEN
}

TEST_CASE("a pair unlike every sister trim is asked back, but not when this tap has it already") {
    const std::vector<SisterTap> sisters = {{"orlin/brelk/van/2014/base/rear-left/door", "BN|BN/YE"}};
    CHECK(said(pair_note(9, "WH", "BK"), {}, sisters) ==
          Lines{"are you sure positive: black and white is unlike every sister trim of this tap: brown and brown, "
                "yellow stripe in orlin/brelk/van/2014/base/rear-left/door | another tap point | another side of the "
                "connector"});
    CHECK(said(pair_note(9, "BN", "BN/YE"), {}, sisters).empty());
    CHECK(said(pair_note(9, "WH", "BK").by("S2", "b"), {pair_note(1, "WH", "BK")}, sisters).empty());
    CHECK(said(pair_note(9, "", ""), {}, sisters).empty());
}

TEST_CASE("a shop that contradicts its own older note on the car is told which one is struck") {
    auto newer = pair_note(9, "TN", "BK").in(2014);
    newer.date = "2022-01-01";
    CHECK(said(newer, {pair_note(1, "WH", "BK").in(2014)}) ==
          Lines{"info positive: this shop noted black and white on this car on 2021-03-04; the newer note counts, the "
                "older is shown struck"});
}

TEST_CASE("what a note lacks for being counted well is said, and refuses nothing") {
    auto bare = pair_note(9, "WH", "BK").by("S1", "");
    CHECK(said(bare, {}, {}, true) ==
          Lines{"info year: no model year: the note counts, but cannot show a change between years",
                "info car: no plate or VIN: without one, two cars of this shop cannot be told apart and count as one"});
    bare.method = Method::copied;
    bare.year = 2014;
    CHECK(said(bare, {}, {}, true) ==
          Lines{"info source: no source: all copied notes without one count as copies of one sheet"});
}

TEST_CASE("nothing that only contradicts the ledger is ever refused outright") {
    ledgers::Dice dice(5);
    Witnesses witnesses;
    witnesses.known = known();
    for (int round = 0; round < 800; ++round) {
        const auto before = ledgers::any_pair_notes(dice, 6);
        const Note note = ledgers::any_pair_note(dice, 99);
        for (const auto& complaint : check_against_ledger(note, before, witnesses, {}))
            CHECK(complaint.severity != EntrySeverity::refused);
    }
}
