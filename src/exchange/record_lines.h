// Are these the records of a pack: every line in the accepted form, none that cannot be kept, all in their order? Asked
// of a long pack in several threads at once, with the same answer.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "catalog/catalog.h"
#include "exchange/pack_reader.h"

namespace tapbook {

// Refuses the pack at that line; line and column from 1, 0: not known.
struct LinePlace {
    const std::string& file;
    int line = 0;
    std::size_t column = 0;
    std::string_view text = {};
};
inline constexpr std::string_view ask_again = "nothing was taken from it: ask the shop for it again";
[[noreturn]] void refuse_pack(PackTrouble trouble, const LinePlace& place, std::string why,
                              std::string_view way_out = ask_again);

// Reads a line into `tokens`, or refuses the pack where it is wrong.
void read_pack_line(RecordTokens& tokens, std::string_view line, const std::string& file, int number);

// The records of `lines`, which begin with the pack's second line and end with a line feed each. The result points into
// them. In up to `threads` threads, each with at least `least_bytes`. Throws PackRefused at the first line that is
// wrong.
std::vector<PackedRecord> records_of_lines(std::string_view lines, const std::string& file, bool practice,
                                           std::size_t threads, std::size_t least_bytes = 1 << 20);

}  // namespace tapbook
