// How does a note get its typed form from wherever its fields lie (a record, a row of the ledger)? The fields are named
// here once; the source says how each kind of field is read, and knows the name when the program is compiled.
#pragma once

#include <algorithm>
#include <string_view>

#include "trade/note.h"

namespace tapbook {

// The stored name of a field as a template argument.
template <std::size_t size>
struct FieldName {
    constexpr FieldName(const char (&text)[size]) { std::copy_n(text, size, letters); }  // implicit: "ac_mv" is a name
    constexpr std::string_view view() const { return {letters, size - 1}; }
    char letters[size];
};

template <class Fields>
std::optional<ToneReading> reading_from(const Fields& fields) {
    const auto volts = fields.template quantity<"ac_mv">(rms_millivolts);
    if (!volts) return std::nullopt;
    ToneReading reading{*volts, {}, {}, {}, {}, {}, {}, {}, {}};
    reading.frequency = fields.template quantity<"tone_mhz">(millihertz);
    reading.level = fields.template quantity<"tone_mdb">(thousandths_dbfs);
    reading.supply = fields.template quantity<"supply_mv">(dc_millivolts);
    reading.full_volume = fields.template flag<"full_volume">();
    reading.speaker_connected = fields.template flag<"speaker_connected">();
    reading.controls_flat = fields.template flag<"controls_flat">();
    reading.true_rms = fields.template flag<"true_rms">();
    reading.music = fields.template flag<"music">();
    return reading;
}

// Everything but what every note has: id, kind, path, shop, car. `Fields` answers text, whole, flag, word, colour,
// quantity and day for a field by its stored name; absent stays absent.
template <class Fields>
Note note_from(const Fields& fields) {
    Note note;
    note.date = fields.template day<"date">();
    note.initials = fields.template text<"initials">();
    note.source = fields.template text<"source">();
    note.tell = fields.template text<"tell">();
    note.remarks = fields.template text<"remarks">();
    note.turn = fields.template whole<"turn">().value_or(0);
    note.year = fields.template whole<"year">();
    note.method = fields.template word<"method", Method>().value_or(Method::copied);
    note.polarity = fields.template word<"polarity_method", PolarityMethod>();
    note.knew_first = fields.template flag<"knew_first">().value_or(false);
    note.altered = fields.template flag<"altered">().value_or(false);
    note.positive = fields.template colour<"positive">();
    note.negative = fields.template colour<"negative">();
    note.wire = fields.template colour<"wire">();
    note.positive_mark = fields.template text<"positive_mark">();
    note.negative_mark = fields.template text<"negative_mark">();
    note.connector = fields.template text<"connector">();
    note.positive_cavity = fields.template text<"positive_cavity">();
    note.negative_cavity = fields.template text<"negative_cavity">();
    note.side = fields.template word<"side", ConnectorSide>();
    note.drive = fields.template word<"drive", Drive>();
    note.premium = fields.template flag<"premium">();
    note.reading = reading_from(fields);
    note.dc_positive = fields.template quantity<"dc_positive_mv">(dc_millivolts);
    note.dc_negative = fields.template quantity<"dc_negative_mv">(dc_millivolts);
    note.key_off = fields.template quantity<"key_off_mv">(dc_millivolts);
    note.accessory = fields.template quantity<"accessory_mv">(dc_millivolts);
    note.run = fields.template quantity<"run_mv">(dc_millivolts);
    note.crank = fields.template quantity<"crank_mv">(dc_millivolts);
    note.retained = fields.template quantity<"retained_s">(seconds);
    const bool has_volts = note.reading || note.dc_positive || note.dc_negative || note.key_off || note.accessory ||
                           note.run || note.crank;
    note.has_proof = has_volts || !fields.template text<"photo">().empty();
    return note;
}

}  // namespace tapbook
