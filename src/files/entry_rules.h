// Which values can no car, circuit, part or note have? Checks over one table's fields, each with the place of the value
// it refuses. For the files of this folder.
#pragma once

#include "files/table_reader.h"

namespace tapbook {

void check_vehicle(const Values& values, const TomlValue& table, Complaints& complaints);
void check_circuit(const Values& values, const TomlValue& table, Complaints& complaints);
void check_part(EntryKind kind, const Values& values, const TomlValue& table, Complaints& complaints);
void check_note_fields(const Values& values, const TomlValue& table, Complaints& complaints);

}  // namespace tapbook
