// Can this record be kept and shown without harm? What it must have, of which type, within which limits. A record that
// was written by a later version passes: fields and words that are not known here are kept as they are.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>

#include "trade/record_kind.h"
#include "trade/record_tokens.h"

namespace tapbook {

// Why a record is not taken, and where in its line, counted from 1; 0 when something is missing.
struct RecordFault {
    std::string reason;
    std::size_t column = 0;
};

// What stands at the head of every record.
struct RecordHead {
    std::string_view type, shop, path;  // path: of an alias its first one; empty where the kind has none
    std::optional<RecordKind> kind;     // absent: a kind, or a kind of note, that this version does not know
};
RecordHead head_of(const RecordTokens& record);

// The first fault; absent when the record can be taken. `practice` says what kind of catalog the pack is from.
std::optional<RecordFault> fault_of(const RecordTokens& record, const RecordHead& head, bool practice);

// True for exactly `digits` small hexadecimal digits.
bool is_hex(std::string_view text, std::size_t digits);

}  // namespace tapbook
