// How much bass does a source take away on the way to full volume, by readings at two volume steps? Values worked by
// hand: 20 log10 of the ratios written beside each check.
#include "evidence/bass_cut.h"

#include <rapidcheck.h>
#include <catch2/catch.hpp>

#include "evidence/notes.h"

using namespace tapbook;
using namespace tapbook::ledgers;

namespace {

Written tone(double hz, bool full, double volts) {
    Written note = pair_note(1, "WH", "BK");
    ToneReading reading{rms_volts(volts), {}, {}, {}, {}, {}, {}, {}, {}};
    reading.frequency = hertz(hz);
    reading.level = dbfs(0);
    reading.full_volume = full;
    reading.speaker_connected = true;
    reading.controls_flat = true;
    note.reading = reading;
    return note;
}

std::optional<Gain> cut_of(const std::vector<Note>& notes) {
    std::vector<const Note*> pointers;
    for (const Note& note : notes) pointers.push_back(&note);
    return bass_cut(pointers);
}

}  // namespace

TEST_CASE("with a tone in the middle at both steps the cut is how far bass stays behind it") {
    // 1 kHz rises 8.4 / 6.0 = +2.923 dB, 50 Hz falls 4.2 / 5.6 = -2.499 dB: 5.421 dB behind
    const auto cut = cut_of({tone(50, true, 4.2), tone(50, false, 5.6), tone(1000, true, 8.4), tone(1000, false, 6.0)});
    REQUIRE(cut.has_value());
    CHECK(cut->in(decibels) == Approx(5.421).margin(1e-3));
}

TEST_CASE("without one, bass that falls while the volume rises is cut by at least that") {
    CHECK(cut_of({tone(50, true, 4.2), tone(50, false, 5.6)})->in(decibels) == Approx(2.499).margin(1e-3));
    CHECK_FALSE(cut_of({tone(50, true, 8.4), tone(50, false, 6.0)}).has_value());  // it rose: no telling how much less
}

TEST_CASE("bass that rises with the middle is not cut") {
    const auto cut = cut_of({tone(50, true, 8.4), tone(50, false, 6.0), tone(1000, true, 8.4), tone(1000, false, 6.0)});
    REQUIRE(cut.has_value());
    CHECK(cut->in(decibels) == Approx(0).margin(1e-9));
}

TEST_CASE("the deepest of several cuts counts") {
    // 30 Hz: 2.2 / 5.5 = -7.959 dB, 1 kHz +2.923 dB: 10.881 dB
    const auto cut = cut_of({tone(50, true, 4.2), tone(50, false, 5.6), tone(30, true, 2.2), tone(30, false, 5.5),
                             tone(1000, true, 8.4), tone(1000, false, 6.0)});
    CHECK(cut->in(decibels) == Approx(10.881).margin(1e-3));
}

TEST_CASE("only tones of one visit, one level, with everything else the same, are compared") {
    const std::vector<Note> good = {tone(50, true, 4.2), tone(50, false, 5.6)};
    REQUIRE(cut_of(good).has_value());
    const auto without = [&](auto change) {
        auto notes = good;
        change(notes[1]);
        return cut_of(notes);
    };
    CHECK_FALSE(without([](Note& n) { n.car = "b"; }).has_value());
    CHECK_FALSE(without([](Note& n) { n.car = ""; }).has_value());
    CHECK_FALSE(without([](Note& n) { n.date = "2021-03-05"; }).has_value());
    CHECK_FALSE(without([](Note& n) { n.method = Method::copied; }).has_value());
    CHECK_FALSE(without([](Note& n) { n.reading->frequency = hertz(60); }).has_value());
    CHECK_FALSE(without([](Note& n) { n.reading->frequency.reset(); }).has_value());
    CHECK_FALSE(without([](Note& n) { n.reading->level = dbfs(-6); }).has_value());
    CHECK_FALSE(without([](Note& n) { n.reading->full_volume.reset(); }).has_value());
    CHECK_FALSE(without([](Note& n) { n.reading->full_volume = true; }).has_value());
    CHECK_FALSE(without([](Note& n) { n.reading->speaker_connected = false; }).has_value());
    CHECK_FALSE(without([](Note& n) { n.reading->controls_flat.reset(); }).has_value());
    CHECK_FALSE(without([](Note& n) { n.reading->music = true; }).has_value());
    CHECK_FALSE(without([](Note& n) { n.reading->volts = rms_volts(0); }).has_value());
    CHECK_FALSE(without([](Note& n) { n.reading.reset(); }).has_value());
    CHECK_FALSE(cut_of({}).has_value());
}

TEST_CASE("a louder recording or another order of the notes changes no cut") {
    REQUIRE(rc::check([] {
        const auto volts = [] { return *rc::gen::inRange(1, 2000) / 100.0; };
        std::vector<Note> notes = {tone(40, true, volts()), tone(40, false, volts()), tone(1000, true, volts()),
                                   tone(1000, false, volts())};
        const auto cut = cut_of(notes);
        RC_ASSERT(cut.has_value());
        RC_ASSERT(*cut >= decibels(0));
        for (Note& note : notes) note.reading->volts = note.reading->volts * 2.0;
        std::swap(notes[0], notes[3]);
        RC_ASSERT(std::abs(cut_of(notes)->in(decibels)-cut->in(decibels)) < 1e-9);
    }));
}
