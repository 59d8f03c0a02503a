// Do a note's fields reach its typed form, and when is a power circuit which class? The classes are checked against
// every combination of live and dead, by the sentence of design decision 8 written out again here.
#include "trade/note.h"

#include <catch2/catch.hpp>
#include <optional>
#include <string>

using namespace tapbook;

namespace {

Note switched(std::optional<int> off, std::optional<int> accessory, std::optional<int> run, std::optional<int> crank) {
    Note note;
    const auto put = [](std::optional<DcVolts>& target, std::optional<int> mv) {
        if (mv) target = dc_millivolts(*mv);
    };
    put(note.key_off, off);
    put(note.accessory, accessory);
    put(note.run, run);
    put(note.crank, crank);
    return note;
}

}  // namespace

TEST_CASE("all fields of a pair note reach its typed form") {
    RecordId id{};
    id[0] = 7;
    const Note note = note_of({{"kind", std::string("pair")},
                               {"path", std::string("a/b/c/2012/base/front-left/plug")},
                               {"shop", std::string("00ff17a4c3b2e5d6908172635445362a")},
                               {"date", std::string("2021-06-03")},
                               {"turn", std::int64_t{2}},
                               {"year", std::int64_t{2014}},
                               {"method", std::string("metered")},
                               {"polarity_method", std::string("cell")},
                               {"positive", std::string("WH/BK")},
                               {"negative", std::string("LBU")},
                               {"positive_mark", std::string("ridge")},
                               {"side", std::string("body")},
                               {"drive", std::string("bridged")},
                               {"dc_positive_mv", std::int64_t{6890}},
                               {"dc_negative_mv", std::int64_t{-15}},
                               {"ac_mv", std::int64_t{9120}},
                               {"tone_mhz", std::int64_t{50000}},
                               {"tone_mdb", std::int64_t{-3000}},
                               {"supply_mv", std::int64_t{13800}},
                               {"full_volume", true},
                               {"true_rms", false},
                               {"altered", true}},
                              id);
    CHECK(note.id == id);
    CHECK(note.kind == NoteKind::pair);
    CHECK(note.turn == 2);
    CHECK(note.year == 2014);
    CHECK(note.method == Method::metered);
    CHECK(note.polarity == PolarityMethod::cell);
    REQUIRE((note.positive && note.negative));
    CHECK(code(*note.positive) == "WH/BK");
    CHECK(code(*note.negative) == "LBU");
    CHECK(note.positive_mark == "ridge");
    CHECK(note.side == ConnectorSide::body);
    CHECK(note.drive == Drive::bridged);
    CHECK(note.dc_positive->in(dc_volts) == Approx(6.89));
    CHECK(note.dc_negative->in(dc_volts) == Approx(-0.015));
    REQUIRE(note.reading.has_value());
    CHECK(note.reading->supply->in(dc_volts) == Approx(13.8));
    CHECK(note.reading->full_volume == true);
    CHECK(note.reading->true_rms == false);
    CHECK(note.reading->music == std::nullopt);
    CHECK(note.altered);
    CHECK(note.has_proof);
}

TEST_CASE("absent fields stay absent, and a field of another type counts as absent") {
    const Note empty = note_of({}, {});
    CHECK(empty.year == std::nullopt);
    CHECK(empty.positive == std::nullopt);
    CHECK(empty.reading == std::nullopt);
    CHECK(empty.premium == std::nullopt);
    CHECK_FALSE(empty.has_proof);
    const Note wrong =
        note_of({{"year", std::string("2014")}, {"premium", std::int64_t{1}}, {"positive", std::string("wht")}}, {});
    CHECK(wrong.year == std::nullopt);
    CHECK(wrong.premium == std::nullopt);
    CHECK(wrong.positive == std::nullopt);  // only the code is stored
}

TEST_CASE("a reading or a photo is a proof, a colour and a remark are not") {
    for (const char* key :
         {"ac_mv", "dc_positive_mv", "dc_negative_mv", "key_off_mv", "accessory_mv", "run_mv", "crank_mv"})
        CHECK(note_of({{key, std::int64_t{12000}}}, {}).has_proof);
    CHECK(note_of({{"photo", std::string("f00d")}}, {}).has_proof);
    CHECK_FALSE(note_of({{"positive", std::string("WH")}, {"remarks", std::string("metered")}}, {}).has_proof);
}

TEST_CASE("the class of a power circuit follows from where it is live, in every combination") {
    using C = SwitchedClass;
    struct Row {
        bool off, accessory, run;
        C without_crank, crank_dead, crank_live;
    };
    const Row rows[] = {{false, false, false, C::other, C::other, C::other},
                        {false, false, true, C::ignition, C::ignition, C::with_crank},
                        {false, true, false, C::other, C::other, C::other},
                        {false, true, true, C::accessory, C::accessory, C::accessory},
                        {true, false, false, C::other, C::other, C::other},
                        {true, false, true, C::other, C::other, C::other},
                        {true, true, false, C::other, C::other, C::other},
                        {true, true, true, C::constant, C::constant, C::constant}};
    const auto volts = [](bool live) { return live ? 12600 : 0; };
    for (const auto& row : rows) {
        INFO(row.off << row.accessory << row.run);
        CHECK(switched_class(switched(volts(row.off), volts(row.accessory), volts(row.run), {})) == row.without_crank);
        CHECK(switched_class(switched(volts(row.off), volts(row.accessory), volts(row.run), 0)) == row.crank_dead);
        CHECK(switched_class(switched(volts(row.off), volts(row.accessory), volts(row.run), 9500)) == row.crank_live);
    }
}

TEST_CASE("a conductor is live from 6 V on") {
    CHECK(switched_class(switched(0, 0, 5999, {})) == SwitchedClass::other);
    CHECK(switched_class(switched(0, 0, 6000, {})) == SwitchedClass::ignition);
    CHECK(switched_class(switched(0, 0, 6001, 5999)) == SwitchedClass::ignition);
    CHECK(switched_class(switched(0, 0, 6001, 6000)) == SwitchedClass::with_crank);
}

TEST_CASE("no class without all three volts") {
    CHECK(switched_class(switched({}, 12000, 12000, {})) == std::nullopt);
    CHECK(switched_class(switched(0, {}, 12000, {})) == std::nullopt);
    CHECK(switched_class(switched(0, 12000, {}, 9000)) == std::nullopt);
    CHECK(switched_class(Note{}) == std::nullopt);
}
