// What is said on the sheet, whoever renders it? The facts of the plan in the order they are needed, each with the line
// that says what it rests on; the boxes to fill; the recommendations. Text and HTML print these lists as they are.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "report/sheet.h"

namespace tapbook {

// One conductor: colour, or what stands in its place ("MIXED", "not recorded").
struct SheetConductor {
    std::string sign;  // "+", "-" or "" where it is not settled
    std::optional<WireColour> colour = std::nullopt;
    std::string instead = {};
    std::string cavity = {};  // "" for not recorded
    std::string mark = {};    // second mark that tells equal colours apart
};

// "WH/BK  white, black stripe, cavity 4, with ring"
std::string conductor_text(const SheetConductor& conductor);

struct SheetFact {
    std::string label;  // one word
    std::string value;
    std::vector<SheetConductor> conductors = {};
    std::vector<std::string> rests_on = {};  // grade lines, numbers compared
    std::optional<Verdict> verdict = std::nullopt;
};

// Tap, pair, signal, converter, amplifier, load, turn-on, feed, gain, standing: those that are known of.
std::vector<SheetFact> sheet_facts(const Sheet& sheet);

// The two conductors of a pair as far as the notes settle them. MIXED names neither.
std::vector<SheetConductor> conductors_of(const PairStanding& pair);
std::vector<SheetConductor> conductor_of(const SwitchedStanding& standing);

// A box to write a reading into.
struct ReadingBox {
    std::string_view field;  // as people write it: "ac_v"
    std::string label;       // short: "a.c. pair"
    std::string unit;        // "V"
    FieldKind kind = FieldKind::decimal;
};

// The boxes of a further circuit by its role; none where nothing is to be read (a ground, a data pair), nor where a
// step of the plan has them.
std::vector<ReadingBox> boxes_of(const Sheet& sheet, const TapFacts& facts);
// The box of a predicted reading.
ReadingBox box_of(const PredictedReading& reading);

// Whole path of the tap point it is taken at: the turn-on's for volts by key position, else the planned one.
std::string read_at(const Sheet& sheet, const PredictedReading& reading);

// Colours found at the tap itself, to be written down beside the predicted readings.
std::vector<ReadingBox> colour_boxes();

// What the job has read there, as people write it; "" for nothing.
std::string read_before(const Sheet& sheet, std::string_view path, const ReadingBox& box);

// "front left, speaker".
std::string circuit_words(const TapFacts& facts);
// "B block, body side, 20 min".
std::string place_words(const TapFacts& facts);
// What stands over the further circuits.
std::string_view circuits_heading(const Sheet& sheet);
// Grade lines of a circuit.
std::vector<std::string> grade_lines(const TapFacts& facts);

std::string range_words(const MillivoltRange& range);  // "4.1 to 9.2 V", "not predicted"

// Findings to be told to the customer or kept in mind, gravest first, none twice. Those that stand beside a step as its
// caution are left out.
struct Recommendation {
    Effect effect = Effect::info;
    std::string about;  // "tap", "converter", "turn-on", "feed", "load", "plan"
    std::string rule;
    std::string says;
};
std::vector<Recommendation> recommendations(const Sheet& sheet);

std::string car_words(const Sheet& sheet);     // "Orlin Brelk sedan 2016"
std::string system_words(const Sheet& sheet);  // "sound system base"
std::vector<std::string> time_lines(const Sheet& sheet);
std::string ledger_words(const Sheet& sheet);
std::string made_words(const Sheet& sheet);          // "Made 2026-05-02 from 17 notes ..."
std::string checked_words(const CheckEntry& entry);  // "ok", "bad: left rear silent"

inline constexpr std::string_view vehicle_first =
    "The vehicle's own instructions come first; this sheet never replaces them.";
inline constexpr std::string_view practice_words =
    "PRACTICE: invented car, parts and notes. Not for work on a real car.";

}  // namespace tapbook
