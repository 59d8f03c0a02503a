// Lines in full, and their length over random ledgers.
#include "evidence/line.h"

#include <catch2/catch.hpp>

#include "evidence/notes.h"

using namespace tapbook;
using ledgers::known;
using ledgers::pair_note;
using ledgers::pair_of;

namespace {

const auto phase = PolarityMethod::phase;

std::vector<Note> four_cars() {
    return {pair_note(1, "WH", "BK").in(2013).how(Method::metered, phase), pair_note(2, "WH", "BK").by("S2").in(2014),
            pair_note(3, "WH", "BK").by("S3").in(2015), pair_note(4, "WH", "BK").by("S3", "b").in(2015)};
}

}  // namespace

TEST_CASE("one car is said with its shop and year") {
    const auto standing = pair_of({pair_note(1, "BN", "BN/YE").in(2021)});
    CHECK(standing_line(standing) ==
          "ONE CAR - brown/brown, yellow stripe: metered at 1 shop, 2021. Meter before you cut.");
    CHECK(polarity_line(standing) ==
          "PAPER - brown positive: only copied or assumed (1 note). Check it with a tone first.");
}

TEST_CASE("agreement is said with cars, shops, years and who is against") {
    auto notes = four_cars();
    CHECK(standing_line(pair_of(notes)) ==
          "PROVEN - white/black: metered on 4 cars at 3 shops, 2013-2015, nobody against. Meter before you cut.");
    CHECK(polarity_line(pair_of(notes)) ==
          "ONE CAR - white positive: phase-checked at 1 shop, 2013. Check it with a tone first.");
    notes[3].method = Method::seen;
    notes.push_back(pair_note(5, "TN", "BK").by("S4").how(Method::seen));
    CHECK(standing_line(pair_of(notes)) ==
          "PROVEN - white/black: metered on 3 of 4 cars at 3 shops, 2013-2015, 1 note against. Meter before you cut.");
}

TEST_CASE("a year that nobody has seen is named") {
    CHECK(standing_line(pair_of(four_cars(), {}, 2016)) ==
          "MATCHED - white/black: metered on 4 cars at 3 shops, 2013-2015; nobody has seen a 2016. Meter before you "
          "cut.");
}

TEST_CASE("a disputed pair names what is disputed and says do not cut") {
    const auto standing =
        pair_of({pair_note(1, "WH", "BK"), pair_note(2, "WH", "BK").by("S2"), pair_note(3, "TN", "BK").by("S3")});
    CHECK(
        standing_line(standing) ==
        "MIXED - white (2 shops metered) or tan (1 shop metered). Do not cut on this; meter, then save your reading.");
}

TEST_CASE("a disputed polarity joins the two colours by and") {
    const auto standing = pair_of({pair_note(1, "WH", "BK").how(Method::metered, phase),
                                   pair_note(2, "BK", "WH").by("S2").how(Method::metered, phase)});
    CHECK(standing_line(standing) ==
          "PROVEN - black and white: metered on 2 cars at 2 shops, year not noted, nobody against. Meter before you "
          "cut.");
    CHECK(polarity_line(standing) ==
          "MIXED - positive is BK (1 shop phase-checked) or WH (1 shop phase-checked). Trust neither; check with a "
          "tone.");
}

TEST_CASE("copied, missing and withdrawn notes are said as such") {
    CHECK(standing_line(pair_of({pair_note(1, "WH", "BK").how(Method::copied)})) ==
          "PAPER - white/black: only copied (1 note). Meter before you cut.");
    CHECK(standing_line(pair_of({})) == "BLANK - nobody has noted this pair. Meter it, then save your reading.");
    CHECK(polarity_line(pair_of({})) == "BLANK - nobody has noted the polarity. Check it with a tone, then save it.");
    CHECK(standing_line(pair_of({}, {}, {}, 2)) ==
          "PULLED - every note on this pair was withdrawn. Meter it, then save your reading.");
}

TEST_CASE("a change with the model year is said with its interval and the grade of either side") {
    const std::vector<Note> notes = {
        pair_note(1, "WH", "BK").by("S1", "old").in(2013),
        pair_note(2, "WH", "BK").by("S2", "old").in(2014),
        pair_note(3, "WH", "BK").by("S3", "old").in(2015),
        pair_note(4, "BN", "BK").by("S1", "new").how(Method::scoped, phase).in(2017),
        pair_note(5, "BN", "BK").by("S2", "new").how(Method::scoped, phase).in(2018),
    };
    CHECK(standing_line(pair_of(notes)) ==
          "YEAR SPLIT - white until 2015 (PROVEN), brown from 2017 (PROVEN). Say the year; meter before you cut.");
    CHECK(standing_line(pair_of(notes, {}, 2016)) ==
          "YEAR SPLIT - white until 2015 (PROVEN), brown from 2017 (PROVEN); nobody has seen a 2016: meter.");
    CHECK(standing_line(pair_of(notes, {}, 2014)) ==
          "PROVEN - white/black: metered on 3 cars at 3 shops, 2013-2015, nobody against. Meter before you cut.");
    CHECK(ledgers::printed(pair_of(notes, {}, 2018)) == "+BN -BK");
    CHECK(ledgers::printed(pair_of(notes)) == "+- --");
    const auto claims = pair_of(notes).positive_claims;
    REQUIRE(claims.size() == 2);
    for (const auto& claim : claims) CHECK(claim.grade == Grade::proven);
}

TEST_CASE("a pair that is proven both ways in other sound systems asks for the system, not for the year") {
    std::vector<Note> notes;
    for (int i = 0; i < 4; ++i)
        notes.push_back(pair_note(i, i < 2 ? "WH" : "BN", "BK")
                            .by("S" + std::to_string(i % 2 + 1), i < 2 ? "a" : "b")
                            .in(2013 + i));
    const auto standing = pair_standing(notes, {}, known(), {}, 0, {"BK|WH", "BK|BN"});
    CHECK(standing_line(standing) ==
          "MIXED - brown or white: find out which sound system this is. Each is proven in another.");
    const auto only_one = pair_standing(notes, {}, known(), {}, 0, {"BK|WH"});
    CHECK_FALSE(only_one.pair.find_system);
}

TEST_CASE("two conductors of one colour are said with their mark") {
    auto note = pair_note(1, "BN", "BN").in(2021);
    note.positive_mark = "ring";
    CHECK(standing_line(pair_of({note})) ==
          "ONE CAR - brown and brown with ring: metered at 1 shop, 2021. Meter before you cut.");
}

TEST_CASE("the separate amplifier has a line of its own") {
    Note note = pair_note(1, "", "").how(Method::seen).in(2021);
    note.kind = NoteKind::system;
    note.premium = true;
    Note other = note;
    other.id = ledgers::id_of(2);
    other.shop = "S2";
    const auto line = [](const std::vector<Note>& notes) { return premium_line(premium_standing(notes, known())); };
    CHECK(line({note}) == "ONE CAR - separate amplifier: seen at 1 shop, 2021. Look for it before you choose a part.");
    other.premium = false;
    CHECK(line({note, other}) == "MIXED - no (1 shop seen) or yes (1 shop seen). Do not choose on this; look for it.");
    CHECK(line({}) == "BLANK - nobody has noted whether there is a separate amplifier. Look for it, then save it.");
}

TEST_CASE("a power circuit's line says when it is live and in which colour") {
    Note note = pair_note(1, "", "").in(2019);
    note.kind = NoteKind::switched;
    note.key_off = dc_volts(0);
    note.accessory = dc_volts(0);
    note.run = note.crank = dc_volts(12);
    note.wire = wire_colour_from_code("YE");
    CHECK(switched_line(switched_standing(std::vector{note}, known())) ==
          "ONE CAR - with crank, yellow: metered at 1 shop, 2019. Meter before you tap.");
}

TEST_CASE("lines on amplifiers and power circuits are no longer than 110 characters either") {
    ledgers::Dice dice(42);
    for (int round = 0; round < 3000; ++round) {
        auto notes = ledgers::any_pair_notes(dice, dice.one_in(20) ? 300 : 6);
        const std::optional<int> year = dice.one_in(2) ? std::optional(2005 + dice.below(20)) : std::nullopt;
        for (Note& note : notes) {
            note.kind = dice.one_in(2) ? NoteKind::system : NoteKind::switched;
            note.premium = dice.one_in(2);
            note.wire = note.positive;
            note.key_off = note.accessory = dc_volts(0);
            note.run = note.crank = dc_volts(dice.one_in(3) ? 0 : 12);
        }
        const auto premium = premium_line(premium_standing(notes, known(), year, dice.below(2)));
        const auto power = switched_line(switched_standing(notes, known(), year, dice.below(2)));
        INFO("round " << round << "\n" << premium << "\n" << power);
        REQUIRE(premium.size() <= 110);
        REQUIRE(power.size() <= 110);
    }
}

TEST_CASE("no line is longer than 110 characters, and each begins with its grade") {
    ledgers::Dice dice(41);
    for (int round = 0; round < 5000; ++round) {
        const auto notes = ledgers::any_pair_notes(dice, dice.one_in(20) ? 300 : 6);
        const std::optional<int> year = dice.one_in(2) ? std::optional(2005 + dice.below(20)) : std::nullopt;
        const auto standing = pair_of(notes, ConnectorSide::radio, year, dice.below(2));
        const auto pair = standing_line(standing), polarity = polarity_line(standing);
        INFO("round " << round << "\n" << pair << "\n" << polarity);
        REQUIRE(pair.size() <= 110);
        REQUIRE(polarity.size() <= 110);
        REQUIRE(pair.starts_with(word_of(standing.pair.grade)));
        REQUIRE(polarity.starts_with(word_of(standing.polarity.grade)));
        if (standing.pair.grade == Grade::mixed) REQUIRE(pair.find("Do not cut on this") != std::string::npos);
    }
}
