// See note_form.h.
#include "page/note_form.h"

#include <fmt/format.h>

#include <algorithm>

namespace tapbook {
namespace {

enum class Shown { first, more };

struct FormRow {
    std::string_view field, label;
    Shown shown;
};

// In the order in which they are found at the car. Fields of the note table; a kind shows those that apply to it.
constexpr FormRow rows[] = {{"method", "How was it found?", Shown::first},
                            {"premium", "Is a separate amplifier there?", Shown::first},
                            {"tell", "What showed it", Shown::first},
                            {"positive", "+ colour", Shown::first},
                            {"negative", "\u2212 colour", Shown::first},
                            {"wire", "Colour", Shown::first},
                            {"polarity", "How was + found?", Shown::first},
                            {"key_off_v", "Key off", Shown::first},
                            {"accessory_v", "Accessory", Shown::first},
                            {"run_v", "Run", Shown::first},
                            {"crank_v", "While cranking", Shown::first},
                            {"retained_s", "Stays live after key off", Shown::more},
                            {"dc_positive_v", "d.c. + to chassis", Shown::first},
                            {"dc_negative_v", "d.c. \u2212 to chassis", Shown::first},
                            {"ac_v", "a.c. across the pair", Shown::first},
                            {"supply_v", "Supply", Shown::first},
                            {"full_volume", "At the highest clean volume?", Shown::first},
                            {"ac_positive_v", "a.c. + to chassis", Shown::more},
                            {"ac_negative_v", "a.c. \u2212 to chassis", Shown::more},
                            {"tone_hz", "Tone", Shown::more},
                            {"tone_db", "Tone level", Shown::more},
                            {"music", "Music instead of a tone?", Shown::more},
                            {"true_rms", "Does the meter read true RMS?", Shown::more},
                            {"speaker_connected", "Speaker connected?", Shown::more},
                            {"controls_flat", "Tone controls flat?", Shown::more},
                            {"drive", "How the output drives the pair", Shown::more},
                            {"connector", "Connector", Shown::more},
                            {"side", "Half of the connector", Shown::more},
                            {"positive_cavity", "+ cavity", Shown::more},
                            {"negative_cavity", "\u2212 cavity", Shown::more},
                            {"positive_mark", "+ second mark", Shown::more},
                            {"negative_mark", "\u2212 second mark", Shown::more},
                            {"source", "Copied from where", Shown::more},
                            {"knew_first", "Did you know the answer before?", Shown::more},
                            {"altered", "Earlier work by others found?", Shown::more},
                            {"remarks", "Remarks", Shown::more}};

bool is_shown(const FormRow& row, NoteKind kind) {
    const NoteField* field = find_note_field(row.field);
    return field != nullptr && applies_to(*field, kind);
}

std::string text_of(const std::map<std::string, std::string, std::less<>>& texts, std::string_view name) {
    const auto found = texts.find(name);
    return found == texts.end() ? std::string() : found->second;
}

FormChoices word_choices(const Field& field) {
    FormChoices list;
    for (const auto word : field.words()) list.emplace_back(word, spaced(word));
    return list;
}

void write_row(Html& html, const FormRow& row, const NoteForm& form) {
    const Field& field = find_note_field(row.field)->field;
    const std::string typed = text_of(form.typed, row.field), said = text_of(form.complaints, row.field);
    if (field.kind == FieldKind::flag) {
        write_radios(html, row.field, row.label, {{"yes", "yes"}, {"no", "no"}}, typed, said);
        return;
    }
    if (row.field == "method") {
        write_radios(html, row.field, row.label, word_choices(field), typed, said);
        return;
    }
    if (field.kind == FieldKind::word) {
        FormChoices choices = {{"", "not said"}};
        for (auto& choice : word_choices(field)) choices.push_back(std::move(choice));
        write_select(html, row.field, row.label, choices, typed);
        return;
    }
    const bool is_number = field.kind == FieldKind::decimal || field.kind == FieldKind::whole;
    write_form_box(html, {.name = std::string(row.field),
                          .label = std::string(row.label),
                          .value = typed,
                          .unit = std::string(field.unit.substr(0, field.unit.find(' '))),
                          .complaint = said,
                          .is_number = is_number,
                          .is_wide = field.kind == FieldKind::text});
}

void write_rows(Html& html, const NoteForm& form, Shown shown) {
    html.begin("div", {{"class", "boxes"}}).line();
    for (const auto& row : rows)
        if (row.shown == shown && is_shown(row, form.kind)) write_row(html, row, form);
    html.end().line();
}

// As people write it.
std::string written(const Field& field, const Value& value) {
    if (const auto* text = std::get_if<std::string>(&value)) return *text;
    if (const auto* number = std::get_if<std::int64_t>(&value)) return unscaled(*number, field.digits);
    if (const auto* flag = std::get_if<bool>(&value)) return *flag ? "yes" : "no";
    return {};
}

// A comma is taken as the point: the number pad of many phones has no other.
std::string with_point(std::string text) {
    std::replace(text.begin(), text.end(), ',', '.');
    return text;
}

}  // namespace

NoteForm typed_note_form(NoteKind kind, const FormFields& form) {
    NoteForm typed;
    typed.kind = kind;
    for (const auto& row : rows)
        if (const auto text = form.text(row.field); text && is_shown(row, kind) && !text->empty())
            typed.typed[std::string(row.field)] = *text;
    return typed;
}

NoteForm note_form_of(NoteKind kind, const Values& values) {
    NoteForm form;
    form.kind = kind;
    for (const auto& row : rows) {
        const NoteField* field = find_note_field(row.field);
        const auto found = values.find(field->field.stored);
        if (found != values.end()) form.typed[std::string(row.field)] = written(field->field, found->second);
    }
    return form;
}

Values read_note_form(NoteForm& form) {
    Values values;
    for (const auto& row : rows) {
        const NoteField* field = find_note_field(row.field);
        std::string text = text_of(form.typed, row.field);
        if (text.empty()) continue;
        const bool is_number = field->field.kind == FieldKind::decimal || field->field.kind == FieldKind::whole;
        if (is_number) text = with_point(std::move(text));
        const TypedField typed{field, std::string(row.label), text};
        try {
            values.merge(read_typed_note(form.kind, std::span(&typed, 1)));
        } catch (const InputRefused& refused) {
            const Complaint& first = refused.complaints().front();
            form.complaints[std::string(row.field)] =
                first.hint.empty() ? first.message : fmt::format("{}; {}", first.message, first.hint);
        }
    }
    return values;
}

void write_note_form(Html& html, const NoteForm& form) {
    write_rows(html, form, Shown::first);
    bool is_open = false;
    for (const auto& row : rows)
        is_open = is_open || (row.shown == Shown::more && is_shown(row, form.kind) &&
                              (form.typed.contains(row.field) || form.complaints.contains(row.field)));
    if (is_open)
        html.begin("details", {{"open", "open"}});
    else
        html.begin("details");
    html.element("summary", "More to write down").line();
    write_rows(html, form, Shown::more);
    html.end().line();
}

void put_complaint(NoteForm& form, const EntryComplaint& complaint) {
    const std::string words = complaint.severity == EntrySeverity::sure
                                  ? fmt::format("are you sure? {}", complaint_words(complaint))
                                  : complaint_words(complaint);
    std::string& said = form.complaints[std::string(complaint.field)];
    said += (said.empty() ? "" : "; ") + words;
}

std::optional<NoteKind> kind_at(const CarFacts& car, std::string_view path) {
    const auto tail = path_tail(path, system_depth);
    const auto system = path_tail(path_head(path, system_depth), vehicle_depth);
    for (const auto& tap : car.taps)
        if (path_tail(tap.code, system_depth) == tail && (tap.system == system || system == unrecorded_system))
            return carries_signal(tap.circuit.role) ? NoteKind::pair : NoteKind::switched;
    return std::nullopt;
}

std::optional<std::string> next_place(const CarFacts& car, std::string_view path,
                                      const std::vector<std::string>& done) {
    const std::string system(path_tail(path_head(path, system_depth), vehicle_depth));
    std::vector<std::string> order;
    for (const auto& place : taps_answer(car, system == unrecorded_system ? "" : system, false).places) {
        for (const auto& tap : place.pairs) order.push_back(tap.facts.code);
        for (const auto& tap : place.power) order.push_back(tap.code);
    }
    const auto here = std::find(order.begin(), order.end(), path);
    std::rotate(order.begin(), here == order.end() ? order.begin() : here + 1, order.end());
    for (const auto& code : order)
        if (code != path && std::find(done.begin(), done.end(), code) == done.end()) return code;
    return std::nullopt;
}

}  // namespace tapbook
