// What the notes of one tap say together: the pair apart from its polarity.
#include "evidence/pair_standing.h"

#include <catch2/catch.hpp>

#include "evidence/notes.h"

using namespace tapbook;
using ledgers::code_or_dash;
using ledgers::pair_note;
using ledgers::pair_of;
using ledgers::printed;

namespace {

const auto phase = PolarityMethod::phase;

}  // namespace

TEST_CASE("two notes with the conductors the other way round agree on the pair and disagree on the polarity") {
    const auto standing = pair_of({pair_note(1, "WH", "BK").how(Method::metered, phase),
                                   pair_note(2, "BK", "WH").by("S2").how(Method::metered, phase)});
    CHECK(standing.pair.grade == Grade::proven);
    CHECK(standing.pair.value == "BK|WH");
    CHECK(standing.polarity.grade == Grade::mixed);
    CHECK(printed(standing) == "+- --");
    REQUIRE(standing.conductors.size() == 2);
    CHECK(code(standing.conductors[0]) == "BK");
    CHECK(code(standing.conductors[1]) == "WH");
}

TEST_CASE("a tested polarity leads over one that is only assumed") {
    const auto standing = pair_of({pair_note(1, "WH", "BK"), pair_note(2, "BK", "WH").by("S2").how(Method::seen, phase),
                                   pair_note(3, "WH", "BK").by("S3")});
    CHECK(printed(standing) == "+BK -WH");
    CHECK(standing.polarity.grade == Grade::one_car);
    CHECK(standing.pair.grade == Grade::proven);
}

TEST_CASE("metered pairs without a polarity method are PROVEN with PAPER polarity") {
    const auto standing = pair_of({pair_note(1, "WH", "BK"), pair_note(2, "WH", "BK").by("S2")});
    CHECK(standing.pair.grade == Grade::proven);
    CHECK(standing.polarity.grade == Grade::paper);
    CHECK(printed(standing) == "+WH -BK");
}

TEST_CASE("a disputed pair prints no colour but shows what each conductor was called") {
    const auto standing = pair_of({pair_note(1, "WH", "BK").in(2013), pair_note(2, "WH", "BK").by("S1", "b").in(2014),
                                   pair_note(3, "BN", "BK").by("S2").in(2017)});
    CHECK(standing.pair.grade == Grade::mixed);
    CHECK(printed(standing) == "+- --");
    CHECK(standing.conductors.empty());
    REQUIRE(standing.positive_claims.size() == 2);
    CHECK(code(standing.positive_claims[0].colour) == "WH");
    CHECK(standing.positive_claims[0].grade == Grade::matched);
    CHECK(standing.positive_claims[0].first_year == 2013);
    CHECK(standing.positive_claims[0].last_year == 2014);
    CHECK(standing.positive_claims[0].notes == 2);
    CHECK(code(standing.positive_claims[1].colour) == "BN");
    CHECK(standing.positive_claims[1].grade == Grade::one_car);
    REQUIRE(standing.negative_claims.size() == 1);
    CHECK(standing.negative_claims[0].notes == 3);
}

TEST_CASE("once the pair is settled only its own notes have a say on the polarity") {
    const auto standing = pair_of({pair_note(1, "WH", "BK"), pair_note(2, "WH", "BK").by("S2"),
                                   pair_note(3, "TN", "BK").by("S3").how(Method::seen, PolarityMethod::scoped)});
    CHECK(standing.pair.value == "BK|WH");
    CHECK(standing.polarity.value == "WH");
}

TEST_CASE("a note with one colour supports the one pair that holds it") {
    const auto standing = pair_of({pair_note(1, "WH", "BK"), pair_note(2, "", "BK").by("S2")});
    CHECK(standing.pair.grade == Grade::proven);
    CHECK(standing.polarity.claims.size() == 1);
    CHECK(standing.polarity.claims[0].notes == 2);  // the other conductor is the positive one
}

TEST_CASE("a note with one colour stands by itself where two pairs hold it, or none does") {
    const auto two =
        pair_of({pair_note(1, "WH", "BK"), pair_note(2, "TN", "BK").by("S2"), pair_note(3, "", "BK").by("S3")});
    CHECK(two.pair.claims.size() == 3);
    const auto none = pair_of({pair_note(1, "", "BN"), pair_note(2, "", "BN").by("S2")});
    CHECK(none.pair.grade == Grade::proven);
    CHECK(none.pair.value == "BN");
    CHECK(printed(none) == "+- -BN");
    CHECK(none.conductors.size() == 1);
    const auto turned = pair_of({pair_note(1, "", "BN"), pair_note(2, "BN", "").by("S2")});
    CHECK(turned.pair.grade == Grade::proven);
    CHECK(turned.polarity.grade == Grade::mixed);
}

TEST_CASE("conductors of one colour are told apart by their marks") {
    auto first = pair_note(1, "BN", "BN"), second = pair_note(2, "BN", "BN").by("S2");
    first.positive_mark = "Ring";
    second.positive_mark = "ring";
    const auto agreed = pair_of({first, second});
    CHECK(agreed.same_colours);
    CHECK(agreed.pair.value == "BN|BN ring");
    CHECK(agreed.pair.grade == Grade::proven);
    CHECK(printed(agreed) == "+BN -BN");
    CHECK(agreed.positive_mark == "ring");
    CHECK(agreed.negative_mark.empty());
    std::swap(second.positive_mark, second.negative_mark);
    const auto turned = pair_of({first, second});
    CHECK(turned.pair.grade == Grade::proven);
    CHECK(turned.polarity.grade == Grade::mixed);
}

TEST_CASE("a mark beside a colour that already tells the conductor does not make another pair") {
    auto first = pair_note(1, "WH", "BK");
    first.negative_mark = "print";
    const auto standing = pair_of({first, pair_note(2, "WH", "BK").by("S2")});
    CHECK(standing.pair.grade == Grade::proven);
    CHECK(standing.negative_mark == "print");
    CHECK_FALSE(standing.same_colours);
}

TEST_CASE("a note from the other side of the connector has a say on the drive and its reading, not on the colours") {
    auto other = pair_note(1, "GN", "GN/BK").at(ConnectorSide::body);
    other.drive = Drive::bridged;
    other.positive_cavity = "9";
    other.connector = "C9";
    other.reading = ToneReading{rms_volts(8.6), {}, {}, {}, {}, {}, {}, {}, {}};
    const std::vector<Note> notes = {other, pair_note(2, "WH", "BK").by("S2").at(ConnectorSide::radio)};
    const auto standing = pair_of(notes, ConnectorSide::radio);
    CHECK(printed(standing) == "+WH -BK");
    CHECK(standing.pair.claims.size() == 1);
    CHECK(standing.notes == 2);
    CHECK(standing.other_side_notes == 1);
    CHECK(standing.positive_cavity.grade == Grade::blank);
    CHECK(standing.connector.grade == Grade::blank);
    CHECK(standing.drive.value == "bridged");
    CHECK(standing.readings.size() == 1);
    CHECK(pair_of(notes).pair.grade == Grade::mixed);  // a tap without a side hears both
}

TEST_CASE("a shop's older note on the same car is struck from the pair") {
    auto older = pair_note(1, "TN", "BK"), newer = pair_note(2, "WH", "BK");
    older.date = "2020-01-01";
    const auto standing = pair_of({older, newer});
    CHECK(standing.pair.value == "BK|WH");
    REQUIRE(standing.pair.struck.size() == 1);
    CHECK(standing.pair.struck[0].value == "BK|TN");
    REQUIRE(standing.relied_on.size() == 1);
    CHECK(standing.relied_on[0].id == newer.id);
}

TEST_CASE("cavities go with their conductors when a note has them the other way round") {
    auto first = pair_note(1, "WH", "BK").how(Method::metered, phase), turned = pair_note(2, "BK", "WH").by("S2");
    first.positive_cavity = "3";
    first.negative_cavity = "4";
    turned.positive_cavity = "4";
    turned.negative_cavity = "3";
    const auto standing = pair_of({first, turned});
    CHECK(standing.positive_cavity.value == "3");
    CHECK(standing.negative_cavity.value == "4");
    CHECK(standing.positive_cavity.grade == Grade::proven);
}

TEST_CASE("spellings of one connector agree, and the newest spelling is printed") {
    auto first = pair_note(1, "WH", "BK"), second = pair_note(2, "WH", "BK").by("S2");
    first.connector = "c 12";
    second.connector = "C-12";
    const auto standing = pair_of({first, second});
    CHECK(standing.connector.grade == Grade::proven);
    CHECK(standing.connector.value == "C-12");
}

TEST_CASE("readings, d.c. difference and earlier work come from notes that looked at a car") {
    auto looked = pair_note(1, "WH", "BK"), smaller = pair_note(2, "WH", "BK").by("S2"),
         copied = pair_note(3, "WH", "BK").by("S3").how(Method::copied);
    looked.dc_positive = dc_volts(7.0);
    looked.dc_negative = dc_volts(7.05);
    smaller.dc_positive = dc_volts(7.02);
    smaller.dc_negative = dc_volts(7.0);
    copied.dc_positive = dc_volts(9);
    copied.dc_negative = dc_volts(1);
    copied.altered = true;
    copied.reading = ToneReading{rms_volts(8), {}, {}, {}, {}, {}, {}, {}, {}};
    const auto standing = pair_of({looked, smaller, copied});
    REQUIRE(standing.dc_difference);
    CHECK(standing.dc_difference->in(dc_millivolts) == Approx(50));
    CHECK(standing.readings.empty());
    CHECK_FALSE(standing.altered);
    looked.altered = true;
    CHECK(pair_of({looked}).altered);
}

TEST_CASE("an unknown drive has no vote") {
    auto unknown = pair_note(1, "WH", "BK"), bridged = pair_note(2, "WH", "BK").by("S2");
    unknown.drive = Drive::unknown;
    bridged.drive = Drive::bridged;
    const auto standing = pair_of({unknown, bridged});
    CHECK(standing.drive.value == "bridged");
    CHECK(standing.drive.grade == Grade::one_car);
}

TEST_CASE("the notes relied on stand strongest first and leave out those for another pair") {
    const auto standing = pair_of({pair_note(1, "WH", "BK").how(Method::seen),
                                   pair_note(2, "WH", "BK").by("S2").how(Method::scoped, phase),
                                   pair_note(3, "TN", "BK").by("S3").how(Method::seen)});
    REQUIRE(standing.relied_on.size() == 2);
    CHECK(standing.relied_on[0].method == "scoped, polarity phase-checked");
    CHECK(standing.relied_on[0].shop == "S2");
    CHECK(standing.relied_on[1].method == "seen");
}

TEST_CASE("a struck note is not relied on, even where other notes still support its pair") {
    auto struck = pair_note(1, "WH", "BK"), newest = pair_note(2, "TN", "BK").how(Method::seen);
    struck.date = "2020-01-01";
    const auto standing =
        pair_of({struck, newest, pair_note(3, "WH", "BK").by("S2"), pair_note(4, "WH", "BK").by("S3")});
    CHECK(standing.pair.value == "BK|WH");
    REQUIRE(standing.relied_on.size() == 2);
    for (const auto& reference : standing.relied_on) CHECK(reference.id != struck.id);
}

TEST_CASE("withdrawn notes leave the pair PULLED, notes of another kind leave it BLANK") {
    CHECK(pair_of({}, {}, {}, 1).pair.grade == Grade::pulled);
    CHECK(pair_of({}, {}, {}, 1).drive.grade == Grade::blank);
    auto system = pair_note(1, "WH", "BK");
    system.kind = NoteKind::system;
    CHECK(pair_of({system}).pair.grade == Grade::blank);
    CHECK(pair_of({system}).notes == 0);
}

TEST_CASE("a printed positive is one conductor of the settled pair and the negative the other") {
    ledgers::Dice dice(31);
    int printed_pairs = 0;
    for (int round = 0; round < 5000; ++round) {
        const auto standing = pair_of(ledgers::any_pair_notes(dice, 6), ConnectorSide::radio);
        INFO("round " << round);
        REQUIRE(standing.pair.value.has_value() == !standing.conductors.empty());
        if (!standing.positive || !standing.negative) continue;
        ++printed_pairs;
        REQUIRE(standing.polarity.grade != Grade::mixed);
        const std::pair<std::string, std::string> codes =
            std::minmax({code(*standing.positive), code(*standing.negative)});
        REQUIRE(codes.first == code(standing.conductors[0]));
        REQUIRE(codes.second == code(standing.conductors[1]));
    }
    CHECK(printed_pairs > 500);
}
