// What did one visit to one tap point on one car find? The typed form of a note. A note is immutable; a wrong one is
// withdrawn by its own shop, with a reason, by another record.
#pragma once

#include <optional>
#include <string>

#include "trade/field.h"
#include "trade/record.h"
#include "trade/wire_colour.h"

namespace tapbook {

struct Note {
    RecordId id{};
    NoteKind kind = NoteKind::pair;
    std::string path;  // tap point, or system for a note of kind system
    std::string shop;  // shop id, 32 hexadecimal digits
    std::string car;   // salted token; "" when the car was not told apart
    std::string date;  // YYYY-MM-DD
    std::string initials, source, tell, remarks;
    int turn = 0;
    std::optional<int> year;  // the car's model year
    Method method = Method::copied;
    std::optional<PolarityMethod> polarity;
    bool knew_first = false;
    bool has_proof = false;  // a reading or a photo hangs on it
    bool altered = false;    // earlier work by others was found
    std::optional<WireColour> positive, negative, wire;
    std::string positive_mark, negative_mark, connector, positive_cavity, negative_cavity;
    std::optional<ConnectorSide> side;
    std::optional<Drive> drive;
    std::optional<bool> premium;
    std::optional<ToneReading> reading;  // present when a.c. across the pair was read
    std::optional<DcVolts> dc_positive, dc_negative;
    std::optional<DcVolts> key_off, accessory, run, crank;
    std::optional<Seconds> retained;  // how long it stayed live after key off
    bool vouched = true;              // came signed by its own shop, or was written here

    friend bool operator==(const Note&, const Note&) = default;
};

// The note in a record's fields. REQUIRES: the fields passed the checks on entry (files, exchange).
Note note_of(const Values& values, const RecordId& id);

// The class of a power circuit from its volts; absent when off, accessory and run were not all read.
// Live: 6 V or more. constant = live with the key off; accessory = live from accessory; ignition = live in run only,
// dead while cranking or crank unread; with_crank = ignition that stays live while cranking; other = none of these.
// (Practice.)
std::optional<SwitchedClass> switched_class(const Note& note);

}  // namespace tapbook
