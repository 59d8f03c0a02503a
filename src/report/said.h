// Which words does every screen use for the same thing? Of taps, of converters, of readings, of what a note changed:
// said once here, printed by the terminal and by the pages.
#pragma once

#include <string>
#include <string_view>

#include "report/screen.h"
#include "rules/rules.h"

namespace tapbook {

// Of a car's sound systems and tap points.
std::string premium_words(const SystemFacts& system);     // its grade line; "separate amplifier: nobody has looked"
std::string drive_words(const TapFacts& facts);           // "bridged (PROVEN)", "single ended (expected)"
std::string connector_words(const TapFacts& facts);       // "B block, body side"; "" when it is not recorded
std::string other_side_words(const PairStanding& pair);   // "" when no note is from another side
std::string_view conductors_remark(const PairStanding&);  // "which is + is not settled"; may be empty

std::string also_words(const TextList& also);  // "also known as ...": the other paths of a car or a place

// Of an advice.
std::string volts_words(const std::optional<RmsVolts>& volts);               // "9.6 V", "not known"
std::string part_words(const JudgedCandidate& part);                         // code, maker, name and what it is
std::string chain_words(const Advice& advice, const JudgedCandidate& part);  // limit, headroom, drive, output, watts
std::string amplifier_words(const Advice& advice);                           // "for Maker Name (2 channels wanted)"
std::string_view effect_words(Effect effect);                                // "STOP", "care", "good", "info"
// Does the finding belong to the tap, with which it is said once for all parts?
bool is_said_with_tap(const Advice& advice, const Finding& finding);
inline constexpr std::string_view before_you_cut =
    "Meter the pair yourself and compare with the volts above. Never join conductors of two outputs. The vehicle's own "
    "instructions, local codes and licensed practice come first.";

// Of a reading.
std::string against_words(const ComparedReading& compared);
std::string_view severity_words(EntrySeverity severity);       // "cannot be", "are you sure?", "info"
std::string complaint_words(const EntryComplaint& complaint);  // with what may be meant instead

// Of what a note changed.
std::string change_words(const NotedStanding& before, const NotedStanding& after, Question question);
std::string end_words(const ClosedVisit& visit);
bool is_change(VisitEnd end);

}  // namespace tapbook
