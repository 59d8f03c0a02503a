// Which kinds of statement do shops exchange? The word is what a record's field "type" says.
#pragma once

#include <optional>
#include <string_view>

#include "trade/field.h"

namespace tapbook {

enum class RecordKind { alias, amplifier, circuit, converter, key, note, system, tap, vehicle, withdrawal };
template <>
struct NamedValues<RecordKind> {
    static constexpr Named<RecordKind> all[] = {
        {RecordKind::alias, "alias"},     {RecordKind::amplifier, "amplifier"},
        {RecordKind::circuit, "circuit"}, {RecordKind::converter, "converter"},
        {RecordKind::key, "key"},         {RecordKind::note, "note"},
        {RecordKind::system, "system"},   {RecordKind::tap, "tap"},
        {RecordKind::vehicle, "vehicle"}, {RecordKind::withdrawal, "withdrawal"}};
};
static_assert(table_is_sound<RecordKind>());

// The kind of entry that a record of this kind is; absent for one that is no entry.
std::optional<EntryKind> entry_kind_of(RecordKind kind);

// How many parts the path of such an entry has: four for a vehicle, one for a part.
std::size_t depth_of(EntryKind kind);

}  // namespace tapbook
