// The one table of what a note may say: field, the kinds of note it belongs to, whether it is voted on.
#include <algorithm>

#include "trade/field.h"
#include "trade/hazard.h"

namespace tapbook {
namespace {

using K = FieldKind;
constexpr bool yes = true, no = false;
constexpr bool required = true;

// Bounds of readings: 100 V is the refusal limit for any hand-held reading here.
constexpr NoteField fields[] = {
    {{"date", "date", K::day, 0, "", 0, 0, nullptr, required, "day of the visit"}, yes, yes, yes, no},
    {{"turn", "turn", K::whole, 0, "", 0, 1000, nullptr, false, "order of notes on one day"}, yes, yes, yes, no},
    {{"year", "year", K::whole, 0, "model year", 1950, 2079, nullptr, false, "this car's model year"},
     yes,
     yes,
     yes,
     no},
    {{"initials", "initials", K::name, 0, "", 0, 0, nullptr, false, "who"}, yes, yes, yes, no},
    {{"method", "method", K::word, 0, "", 0, 0, spellings<Method>, required, "how it was found"}, yes, yes, yes, no},
    {{"polarity", "polarity_method", K::word, 0, "", 0, 0, spellings<PolarityMethod>, false,
      "how the positive conductor was found"},
     yes,
     no,
     no,
     no},
    {{"knew_first", "knew_first", K::flag, 0, "", 0, 0, nullptr, false, "the answer was known before looking"},
     yes,
     yes,
     yes,
     no},
    {{"source", "source", K::name, 0, "", 0, 0, nullptr, false, "copied from where"}, yes, yes, yes, no},
    {{"positive", "positive", K::colour, 0, "", 0, 0, nullptr, false, "colour of the positive conductor"},
     yes,
     no,
     no,
     yes},
    {{"negative", "negative", K::colour, 0, "", 0, 0, nullptr, false, "colour of the negative conductor"},
     yes,
     no,
     no,
     yes},
    {{"positive_mark", "positive_mark", K::name, 0, "", 0, 0, nullptr, false, "second mark: ridge, print, ring"},
     yes,
     no,
     no,
     yes},
    {{"negative_mark", "negative_mark", K::name, 0, "", 0, 0, nullptr, false, "second mark: ridge, print, ring"},
     yes,
     no,
     no,
     yes},
    {{"wire", "wire", K::colour, 0, "", 0, 0, nullptr, false, "colour of the power conductor"}, no, yes, no, yes},
    {{"side", "side", K::word, 0, "", 0, 0, spellings<ConnectorSide>, false,
      "half of the connector that was looked at"},
     yes,
     yes,
     no,
     no},
    {{"connector", "connector", K::name, 0, "", 0, 0, nullptr, false, "connector found"}, yes, yes, no, yes},
    {{"positive_cavity", "positive_cavity", K::name, 0, "", 0, 0, nullptr, false, "cavity of the positive conductor"},
     yes,
     no,
     no,
     yes},
    {{"negative_cavity", "negative_cavity", K::name, 0, "", 0, 0, nullptr, false, "cavity of the negative conductor"},
     yes,
     no,
     no,
     yes},
    {{"drive", "drive", K::word, 0, "", 0, 0, spellings<Drive>, false, "how the output drives the pair"},
     yes,
     no,
     no,
     yes},
    {{"dc_positive_v", "dc_positive_mv", K::decimal, 3, "V", -100000, 100000, nullptr, false,
      "d.c. of the positive conductor to chassis"},
     yes,
     no,
     no,
     no},
    {{"dc_negative_v", "dc_negative_mv", K::decimal, 3, "V", -100000, 100000, nullptr, false,
      "d.c. of the negative conductor to chassis"},
     yes,
     no,
     no,
     no},
    {{"ac_v", "ac_mv", K::decimal, 3, "V RMS", 0, 100000, nullptr, false, "a.c. across the pair"}, yes, no, no, no},
    {{"ac_positive_v", "ac_positive_mv", K::decimal, 3, "V RMS", 0, 100000, nullptr, false,
      "a.c. of the positive conductor to chassis"},
     yes,
     no,
     no,
     no},
    {{"ac_negative_v", "ac_negative_mv", K::decimal, 3, "V RMS", 0, 100000, nullptr, false,
      "a.c. of the negative conductor to chassis"},
     yes,
     no,
     no,
     no},
    {{"supply_v", "supply_mv", K::decimal, 3, "V", 0, 100000, nullptr, false, "supply during the reading"},
     yes,
     yes,
     no,
     no},
    {{"tone_hz", "tone_mhz", K::decimal, 3, "Hz", 1000, 20000000, nullptr, false, "frequency of the tone"},
     yes,
     no,
     no,
     no},
    {{"tone_db", "tone_mdb", K::decimal, 3, "dBFS", -60000, 0, nullptr, false, "level of the tone"}, yes, no, no, no},
    {{"full_volume", "full_volume", K::flag, 0, "", 0, 0, nullptr, false, "read at the highest clean volume step"},
     yes,
     no,
     no,
     no},
    {{"speaker_connected", "speaker_connected", K::flag, 0, "", 0, 0, nullptr, false, "the speaker was connected"},
     yes,
     no,
     no,
     no},
    {{"controls_flat", "controls_flat", K::flag, 0, "", 0, 0, nullptr, false,
      "tone controls flat, balance and fader centred"},
     yes,
     no,
     no,
     no},
    {{"true_rms", "true_rms", K::flag, 0, "", 0, 0, nullptr, false, "the meter reads true RMS"}, yes, no, no, no},
    {{"music", "music", K::flag, 0, "", 0, 0, nullptr, false, "read with music instead of a tone"}, yes, no, no, no},
    {{"key_off_v", "key_off_mv", K::decimal, 3, "V", 0, 100000, nullptr, false, "volts with the key off"},
     no,
     yes,
     no,
     no},
    {{"accessory_v", "accessory_mv", K::decimal, 3, "V", 0, 100000, nullptr, false, "volts in accessory"},
     no,
     yes,
     no,
     no},
    {{"run_v", "run_mv", K::decimal, 3, "V", 0, 100000, nullptr, false, "volts in run"}, no, yes, no, no},
    {{"crank_v", "crank_mv", K::decimal, 3, "V", 0, 100000, nullptr, false, "volts while cranking"}, no, yes, no, no},
    {{"retained_s", "retained_s", K::whole, 0, "s", 0, 86400, nullptr, false, "how long it stays live after key off"},
     no,
     yes,
     no,
     no},
    {{"premium", "premium", K::flag, 0, "", 0, 0, nullptr, false, "a separate amplifier is there"}, no, no, yes, yes},
    {{"tell", "tell", K::name, 0, "", 0, 0, nullptr, false, "what showed it"}, no, no, yes, no},
    {{"altered", "altered", K::flag, 0, "", 0, 0, nullptr, false, "earlier work by others was found"},
     yes,
     yes,
     yes,
     no},
    {{"hazards", "hazards", K::word_list, 0, "", 0, 0, spellings<Hazard>, false, "hazards met on the way"},
     yes,
     yes,
     yes,
     no},
    {{"photo", "photo", K::name, 0, "", 0, 0, nullptr, false, "hash of a photo"}, yes, yes, yes, no},
    {{"remarks", "remarks", K::text, 0, "", 0, 0, nullptr, false, "anything else"}, yes, yes, yes, no},
};

}  // namespace

std::span<const NoteField> note_fields() {
    return fields;
}

const NoteField* find_note_field(std::string_view name) {
    const auto found =
        std::find_if(std::begin(fields), std::end(fields), [&](const NoteField& f) { return f.field.name == name; });
    return found == std::end(fields) ? nullptr : found;
}

bool applies_to(const NoteField& field, NoteKind kind) {
    switch (kind) {
        case NoteKind::pair:
            return field.pair;
        case NoteKind::switched:
            return field.switched;
        case NoteKind::system:
            return field.system;
    }
    return false;
}

}  // namespace tapbook
