// Random batches that a file may say: every field of every table within its limits, texts with quotes, backslashes,
// control and direction-changing characters, and the few rules between fields kept.
#pragma once

#include <rapidcheck.h>

#include <functional>
#include <string>
#include <vector>

#include "catalog/catalog.h"

namespace random_batch {

using namespace tapbook;

inline std::string some_text(bool one_line) {
    static const std::vector<std::string> plain = {"a", "B",  " ", "'",    "\"", "\\", "#", "=", "[[x]]", "\"\"\"",
                                                   "é", "中", "😀", "$(x)", "%",  "1",  ".", ",", "{",     "\\u0041"};
    static const std::vector<std::string> odd = {"\n",   "\t",     "\r",     "\x01",  "\x1b",
                                                 "\x7f", "\u202e", "\u200b", "\ufeff"};
    std::string text = *rc::gen::element<std::string>("x", "\"", "\\", "ö");  // never empty
    for (int i = *rc::gen::inRange(0, 25); i > 0; --i)
        text += one_line || *rc::gen::inRange(0, 3) > 0 ? *rc::gen::elementOf(plain) : *rc::gen::elementOf(odd);
    return nfc(text);
}

inline std::string some_colour() {
    std::vector<Hue> list;
    for (int i = *rc::gen::inRange(1, 4); i > 0; --i) {
        const auto base = (*rc::gen::elementOf(std::vector<Named<BaseColour>>(words_of<BaseColour>().begin(),
                                                                              words_of<BaseColour>().end())))
                              .value;
        list.push_back({base, has_shades(base) ? static_cast<Shade>(*rc::gen::inRange(0, 3)) : Shade::plain});
    }
    const auto colour = wire_colour_of(list);
    return colour ? code(*colour) : "WH/BK";
}

inline TextList some_list(int most, const std::function<std::string()>& item) {
    TextList list;
    for (int i = *rc::gen::inRange(0, most + 1); i > 0; --i) list.push_back(item());
    return list;
}

inline std::int64_t within(std::int64_t least, std::int64_t most) {
    return *rc::gen::inRange<std::int64_t>(least, most + 1);
}

inline Value some_value(const Field& field) {
    const auto word = [&] {
        const auto words = field.words();
        return std::string(words[*rc::gen::inRange<std::size_t>(0, words.size())]);
    };
    switch (field.kind) {
        case FieldKind::name:
            return some_text(true);
        case FieldKind::text:
            return some_text(false);
        case FieldKind::slug:
            return std::string("some-slug");
        case FieldKind::word:
            return word();
        case FieldKind::colour:
            return some_colour();
        case FieldKind::whole:
        case FieldKind::decimal:
            return within(field.least, field.most);
        case FieldKind::flag:
            return *rc::gen::arbitrary<bool>();
        case FieldKind::names:
            return some_list(5, [] { return some_text(true); });
        case FieldKind::word_list:
            return some_list(3, word);
        case FieldKind::loads:
            return some_list(
                3, [] { return std::to_string(within(100, 1000000)) + ":" + std::to_string(within(1, 20000000)); });
        case FieldKind::day:
            return day_text(within(0, 30000));
    }
    return std::string();
}

inline Values some_fields(std::span<const Field> fields) {
    Values values;
    for (const auto& field : fields)
        if (field.required || *rc::gen::inRange(0, 3) == 0) values[std::string(field.stored)] = some_value(field);
    return values;
}

// Swaps the two numbers when they are there in the wrong order.
inline void in_order(Values& values, const std::string& low, const std::string& high) {
    const auto* least = find_value<std::int64_t>(values, low);
    const auto* most = find_value<std::int64_t>(values, high);
    if (least != nullptr && most != nullptr && *least > *most) std::swap(values[low], values[high]);
}

inline void keep_rules_of_vehicle(Values& values) {
    in_order(values, "first_year", "last_year");
    if (values.contains("vin_patterns")) values["vin_patterns"] = TextList{"00DBLM???????????"};
    if (values.contains("airbag_wait_s")) values["airbag_wait_source"] = std::string("the car's own book");
    for (const char* key : {"make", "model", "body"}) values[key] = "Q" + std::get<std::string>(values[key]);
}

inline void keep_rules_of_circuit(Values& values) {
    in_order(values, "band_low_mhz", "band_high_mhz");
    if (!values.contains("watts_mw")) return;
    values["watts_mw"] = within(1, 900);  // possible on every output
    values["rating"] = std::string("continuous");
    values["rating_mohm"] = std::int64_t{4000};
}

inline void keep_rules_of_part(Values& values) {
    for (const auto& [low, high] :
         {std::pair("input_min_mv", "input_max_mv"), std::pair("gain_min_milli", "gain_max_milli"),
          std::pair("sensitivity_high_gain_mv", "sensitivity_low_gain_mv"),
          std::pair("speaker_input_min_mv", "speaker_input_max_mv")})
        in_order(values, low, high);
    values.erase("survives_mv");
    if (text_field(values, "topology") == "direct") values["topology"] = std::string("transformer");
}

inline EntryDraft entry_of(EntryKind kind, const std::string& path) {
    EntryDraft draft{kind, some_fields(fields_of(kind)), {}};
    if (kind == EntryKind::vehicle) keep_rules_of_vehicle(draft.values);
    if (kind == EntryKind::circuit) keep_rules_of_circuit(draft.values);
    if (kind == EntryKind::converter || kind == EntryKind::amplifier) keep_rules_of_part(draft.values);
    draft.values["path"] = path;
    return draft;
}

inline NoteDraft note_of_kind(NoteKind kind, const std::string& path) {
    std::vector<Field> fields;
    for (const auto& note_field : note_fields())
        if (applies_to(note_field, kind)) fields.push_back(note_field.field);
    NoteDraft note{some_fields(fields), {}, {}, {}};
    if (note.values.contains("negative_cavity")) note.values["negative_cavity"] = std::string("0");
    note.values.erase("negative");
    if (*rc::gen::arbitrary<bool>()) note.car_words = some_text(true);
    note.values["kind"] = std::string(word_of(kind));
    note.values["path"] = path;
    return note;
}

// A car with two systems, speaker and power circuits, and notes on all of them and on a car of unrecorded system.
inline Batch car_batch() {
    Batch batch;
    batch.file = "car.toml";
    EntryDraft car = entry_of(EntryKind::vehicle, "");
    const std::string path = *rc::gen::inRange(0, 4) == 0
                                 ? std::string("orvane/old-name/van/1999")  // its make was respelt since
                                 : slug_from(text_field(car.values, "make")) + "/" +
                                       slug_from(text_field(car.values, "model")) + "/" +
                                       slug_from(text_field(car.values, "body")) + "/" +
                                       std::to_string(whole_field(car.values, "first_year").value_or(0));
    car.values["path"] = path;
    batch.entries.push_back(std::move(car));
    for (const std::string system : {"base", "premium"}) {
        batch.entries.push_back(entry_of(EntryKind::system, path + "/" + system));
        batch.notes.push_back(note_of_kind(NoteKind::system, path + "/" + system));
    }
    for (const std::string circuit : {"/base/accessory", "/base/front-left", "/premium/front-left"}) {
        EntryDraft draft = entry_of(EntryKind::circuit, path + circuit);
        batch.entries.push_back(std::move(draft));
    }
    for (const std::string circuit : {"/base/accessory", "/base/front-left", "/premium/front-left"}) {
        batch.entries.push_back(entry_of(EntryKind::tap, path + circuit + "/radio-plug"));
        for (int i = *rc::gen::inRange(0, 3); i > 0; --i)
            batch.notes.push_back(note_of_kind(*rc::gen::arbitrary<bool>() ? NoteKind::pair : NoteKind::switched,
                                               path + circuit + "/radio-plug"));
    }
    batch.notes.push_back(note_of_kind(NoteKind::switched, path + "/unrecorded/rear/plug"));
    batch.notes.push_back(note_of_kind(NoteKind::pair, path + "/unrecorded/front/plug"));
    return batch;
}

inline Batch parts_batch() {
    Batch batch;
    batch.file = "parts.toml";
    for (const std::string code : {"part-one", "part-two"}) {
        batch.entries.push_back(entry_of(EntryKind::converter, code));
        batch.terms.push_back({code, {within(0, 100000000), static_cast<int>(within(0, 3650)), {}, 3, {}}, {}});
    }
    batch.entries.push_back(entry_of(EntryKind::amplifier, "loud-one"));
    return batch;
}

}  // namespace random_batch
