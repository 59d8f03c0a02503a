// Checks on entry: the whole text of each.
#include "evidence/entry_checks.h"

#include <catch2/catch.hpp>

#include "evidence/notes.h"

using namespace tapbook;
using ledgers::pair_note;

namespace {

Values values_of(std::initializer_list<std::pair<const std::string, Value>> more) {
    Values values = {
        {"kind", std::string("pair")}, {"method", std::string("metered")}, {"date", std::string("2021-03-04")}};
    values.insert(more.begin(), more.end());
    return values;
}

// One line for each complaint: "refused ac_v: text [offer; offer]".
std::string said(const std::vector<EntryComplaint>& complaints) {
    std::string all;
    for (const auto& complaint : complaints) {
        if (!all.empty()) all += "\n";
        all.append(word_of(complaint.severity)).append(" ").append(complaint.field).append(": ").append(complaint.text);
        std::string offers;
        for (const auto& offer : complaint.offers) offers.append(offers.empty() ? "" : "; ").append(offer);
        if (!offers.empty()) all.append(" [").append(offers).append("]");
    }
    return all;
}

// Complete, so that nothing is said of what it lacks.
ToneReading complete(double volts) {
    return {rms_volts(volts), hertz(40), dbfs(0), dc_volts(14.4), true, true, true, true, {}};
}

OutputStage driven(Drive drive) {
    OutputStage output;
    output.drive = drive;
    return output;
}

}  // namespace

TEST_CASE("a plain note has nothing said against it") {
    CHECK(said(check_note(pair_note(1, "WH", "BK"))).empty());
    CHECK(said(check_note(values_of({{"positive", std::string("WH")}, {"negative", std::string("BK")}}))).empty());
}

TEST_CASE("negative a.c. is refused") {
    CHECK(said(check_note(values_of({{"ac_positive_mv", std::int64_t{-2100}}}))) ==
          "refused ac_positive_v: -2.1 V a.c.: an a.c. reading is never negative");
}

TEST_CASE("a reading beyond 100 V is refused, 100 V itself is not, and d.c. may be negative") {
    CHECK(said(check_note(values_of({{"dc_positive_mv", std::int64_t{-100001}}}))) ==
          "refused dc_positive_v: -100.001 V is beyond 100 V, which no reading here can be");
    CHECK(said(check_note(values_of({{"run_mv", std::int64_t{120000}}}))) ==
          "refused run_v: 120 V is beyond 100 V, which no reading here can be");
    CHECK(said(check_note(values_of({{"dc_positive_mv", std::int64_t{-100000}}}))).empty());
}

TEST_CASE("the same cavity twice is refused, however it is spelled") {
    auto note = pair_note(1, "WH", "BK");
    note.positive_cavity = "A 3";
    note.negative_cavity = "a-3";
    CHECK(said(check_note(note)) ==
          "refused negative_cavity: both conductors in cavity A 3: two conductors sit in two cavities");
    note.negative_cavity = "A4";
    CHECK(said(check_note(note)).empty());
    note.positive_cavity = note.negative_cavity = "";
    CHECK(said(check_note(note)).empty());
}

TEST_CASE("two conductors of one colour are refused without a mark that tells them apart") {
    auto note = pair_note(1, "BN/YE", "BN/YE");
    const std::string refusal =
        "refused negative: both conductors are brown, yellow stripe: say what else tells them apart (a ridge, a print, "
        "a ring) as the mark of one of them";
    CHECK(said(check_note(note)) == refusal);
    note.positive_mark = "ring";
    CHECK(said(check_note(note)).empty());
    note.negative_mark = "Ring";
    CHECK(said(check_note(note)) == refusal);
}

TEST_CASE("a.c. above what the drive gives is asked back with three offers") {
    auto note = pair_note(1, "WH", "BK");
    note.reading = complete(14.2);
    const auto bridged = driven(Drive::bridged);
    // (14.4 V - 2 x 0.4 V) / sqrt 2 = 9.6 V
    CHECK(
        said(check_note(note, &bridged)) ==
        "are you sure ac_v: 14.2 V a.c. is more than a bridged output gives: at most 9.6 V as a clean tone [record the "
        "drive as boosted; the reading was clipped; the meter is not true-RMS]");
    note.reading = complete(9.6);
    CHECK(said(check_note(note, &bridged)).empty());
}

TEST_CASE("the drive the note found outranks the one the entry expects") {
    auto note = pair_note(1, "WH", "BK");
    note.reading = complete(14.2);
    note.drive = Drive::boosted_bridged;  // rail not known: no limit
    const auto bridged = driven(Drive::bridged);
    CHECK(said(check_note(note, &bridged)).empty());
    auto boosted = driven(Drive::boosted_bridged);
    boosted.rail = dc_volts(18);
    // (18 V - 2 x 0.4 V) / sqrt 2 = 12.2 V
    CHECK(said(check_note(note, &boosted)).find("at most 12.2 V") != std::string::npos);
}

TEST_CASE("a drive nobody knows has no limit") {
    auto note = pair_note(1, "WH", "BK");
    note.reading = complete(40);
    CHECK(said(check_note(note)).empty());
    note.drive = Drive::unknown;
    CHECK(said(check_note(note)).empty());
}

TEST_CASE("a speaker conductor near the supply is asked back, a power conductor is not") {
    auto values = values_of({{"dc_positive_mv", std::int64_t{13500}}, {"supply_mv", std::int64_t{14400}}});
    CHECK(said(check_note(values)) ==
          "are you sure dc_positive_v: 13.5 V d.c. is about the supply: a speaker conductor does not rest there [it is "
          "a power conductor; record the drive as boosted]");
    values["dc_positive_mv"] = std::int64_t{7200};
    CHECK(said(check_note(values)).empty());
    values["dc_positive_mv"] = std::int64_t{13500};
    values["kind"] = std::string("switched");
    CHECK(said(check_note(values)).empty());
}

TEST_CASE("without a supply reading 11 V on a speaker conductor is asked back") {  // common practice, no source
    CHECK(check_note(values_of({{"dc_negative_mv", std::int64_t{11000}}})).size() == 1);
    CHECK(check_note(values_of({{"dc_negative_mv", std::int64_t{10999}}})).empty());
}

TEST_CASE("an incomplete reading is kept and said to be no limit") {
    auto note = pair_note(1, "WH", "BK");
    note.reading = complete(8);
    note.reading->supply.reset();
    note.reading->music = true;
    CHECK(said(check_note(note)) ==
          "info ac_v: shown, but no limit is drawn from it: supply not read, music instead of a tone");
}

TEST_CASE("a record and the note read from it are judged alike") {
    const auto values = values_of({{"positive", std::string("BN")},
                                   {"negative", std::string("BN")},
                                   {"drive", std::string("bridged")},
                                   {"ac_mv", std::int64_t{14200}},
                                   {"dc_positive_mv", std::int64_t{14000}},
                                   {"positive_cavity", std::string("3")},
                                   {"negative_cavity", std::string("3")}});
    const auto from_values = said(check_note(values));
    CHECK(from_values == said(check_note(note_of(values, {}))));
    CHECK(std::count(from_values.begin(), from_values.end(), '\n') == 4);
}
