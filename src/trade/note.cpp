// See note.h.
#include "trade/note.h"

#include "trade/fields_read.h"

namespace tapbook {
namespace {

std::optional<ToneReading> reading_of(const Values& v) {
    const auto volts = quantity_field(v, "ac_mv", rms_millivolts);
    if (!volts) return std::nullopt;
    ToneReading reading{*volts, {}, {}, {}, {}, {}, {}, {}, {}};
    reading.frequency = quantity_field(v, "tone_mhz", millihertz);
    reading.level = quantity_field(v, "tone_mdb", thousandths_dbfs);
    reading.supply = quantity_field(v, "supply_mv", dc_millivolts);
    reading.full_volume = flag_field(v, "full_volume");
    reading.speaker_connected = flag_field(v, "speaker_connected");
    reading.controls_flat = flag_field(v, "controls_flat");
    reading.true_rms = flag_field(v, "true_rms");
    reading.music = flag_field(v, "music");
    return reading;
}

std::optional<WireColour> colour_field(const Values& v, std::string_view key) {
    return wire_colour_from_code(text_field(v, key));
}

bool is_live(DcVolts volts) {
    return volts >= dc_volts(6);
}

}  // namespace

Note note_of(const Values& v, const RecordId& id) {
    Note note;
    note.id = id;
    note.kind = word_field<NoteKind>(v, "kind").value_or(NoteKind::pair);
    note.path = text_field(v, "path");
    note.shop = text_field(v, "shop");
    note.car = text_field(v, "car");
    note.date = text_field(v, "date");
    note.initials = text_field(v, "initials");
    note.source = text_field(v, "source");
    note.tell = text_field(v, "tell");
    note.remarks = text_field(v, "remarks");
    note.turn = whole_field(v, "turn").value_or(0);
    note.year = whole_field(v, "year");
    note.method = word_field<Method>(v, "method").value_or(Method::copied);
    note.polarity = word_field<PolarityMethod>(v, "polarity_method");
    note.knew_first = flag_field(v, "knew_first").value_or(false);
    note.altered = flag_field(v, "altered").value_or(false);
    note.positive = colour_field(v, "positive");
    note.negative = colour_field(v, "negative");
    note.wire = colour_field(v, "wire");
    note.positive_mark = text_field(v, "positive_mark");
    note.negative_mark = text_field(v, "negative_mark");
    note.connector = text_field(v, "connector");
    note.positive_cavity = text_field(v, "positive_cavity");
    note.negative_cavity = text_field(v, "negative_cavity");
    note.side = word_field<ConnectorSide>(v, "side");
    note.drive = word_field<Drive>(v, "drive");
    note.premium = flag_field(v, "premium");
    note.reading = reading_of(v);
    note.dc_positive = quantity_field(v, "dc_positive_mv", dc_millivolts);
    note.dc_negative = quantity_field(v, "dc_negative_mv", dc_millivolts);
    note.key_off = quantity_field(v, "key_off_mv", dc_millivolts);
    note.accessory = quantity_field(v, "accessory_mv", dc_millivolts);
    note.run = quantity_field(v, "run_mv", dc_millivolts);
    note.crank = quantity_field(v, "crank_mv", dc_millivolts);
    const bool has_volts = note.reading || note.dc_positive || note.dc_negative || note.key_off || note.accessory ||
                           note.run || note.crank;
    note.has_proof = has_volts || !text_field(v, "photo").empty();
    return note;
}

std::optional<SwitchedClass> switched_class(const Note& note) {
    if (!note.key_off || !note.accessory || !note.run) return std::nullopt;
    const bool off = is_live(*note.key_off), accessory = is_live(*note.accessory), run = is_live(*note.run);
    if (off) return accessory && run ? SwitchedClass::constant : SwitchedClass::other;
    if (accessory) return run ? SwitchedClass::accessory : SwitchedClass::other;
    if (!run) return SwitchedClass::other;
    return note.crank && is_live(*note.crank) ? SwitchedClass::with_crank : SwitchedClass::ignition;
}

}  // namespace tapbook
