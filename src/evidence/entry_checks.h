// Can this note be right? Checks at once, on one note alone: what no car can show is refused; what is likely a slip is
// asked back, never thrown away, since the reading that disproves the catalog is the most valuable one.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "trade/trade.h"

namespace tapbook {

enum class EntrySeverity { refused, sure, info };
template <>
struct NamedValues<EntrySeverity> {
    static constexpr Named<EntrySeverity> all[] = {
        {EntrySeverity::refused, "refused"}, {EntrySeverity::sure, "are you sure"}, {EntrySeverity::info, "info"}};
};
static_assert(table_is_sound<EntrySeverity>());

struct EntryComplaint {
    EntrySeverity severity = EntrySeverity::info;
    std::string_view field;  // as people write it: "ac_v"
    std::string text;
    std::vector<std::string> offers;  // what the person may mean instead
};

// What is wrong with one note, refusals first, then in the order of the checks; empty when nothing is.
// Refused: negative a.c.; a reading beyond 100 V; the same cavity twice; both conductors of one colour without marks
// that tell them apart. Are you sure: a.c. above the largest sine the drive gives (the note's drive, else `expected`;
// a drive that is not known and a boosted one without a rail have no limit); a speaker conductor near the supply.
// Info: what a reading lacks for being a limit.
std::vector<EntryComplaint> check_note(const Values& values, const OutputStage* expected = nullptr);
std::vector<EntryComplaint> check_note(const Note& note, const OutputStage* expected = nullptr);

}  // namespace tapbook
