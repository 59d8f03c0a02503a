// Which boxes are left blank for the pen, and under which field names are they saved? Fields of the note table.
#include <fmt/format.h>

#include "report/sheet_words.h"

namespace tapbook {
namespace {

struct NamedBox {
    std::string_view field, label;
};

constexpr NamedBox pair_boxes[] = {{"positive", "+ colour"},
                                   {"negative", "\u2212 colour"},
                                   {"dc_positive_v", "d.c. +"},
                                   {"dc_negative_v", "d.c. \u2212"},
                                   {"ac_v", "a.c. pair"}};
constexpr NamedBox power_boxes[] = {
    {"wire", "colour"}, {"key_off_v", "key off"}, {"accessory_v", "accessory"}, {"run_v", "run"}, {"crank_v", "crank"}};
constexpr NamedBox reading_labels[] = {{"supply_v", "supply"},
                                       {"dc_positive_v", "d.c. + to chassis"},
                                       {"dc_negative_v", "d.c. \u2212 to chassis"},
                                       {"ac_v", "a.c. across the pair"},
                                       {"ac_positive_v", "a.c. + to chassis"},
                                       {"ac_negative_v", "a.c. \u2212 to chassis"},
                                       {"key_off_v", "key off"},
                                       {"accessory_v", "accessory"},
                                       {"run_v", "run"},
                                       {"crank_v", "crank"}};

ReadingBox box(std::string_view name, std::string_view label) {
    const NoteField* known = find_note_field(name);
    if (known == nullptr) return {name, std::string(label), ""};
    const std::string unit(known->field.unit.substr(0, known->field.unit.find(' ')));  // "V RMS" is "V" in a box
    return {known->field.name, std::string(label), unit, known->field.kind};
}

std::vector<ReadingBox> boxes(std::span<const NamedBox> list) {
    std::vector<ReadingBox> out;
    for (const auto& named : list) out.push_back(box(named.field, named.label));
    return out;
}

// As people write it: a decimal without the zeros it does not need.
std::string written(const Field& field, const Value& value) {
    if (const auto* text = std::get_if<std::string>(&value)) return *text;
    if (const auto* number = std::get_if<std::int64_t>(&value)) {
        double divisor = 1;
        for (int i = 0; i < field.digits; ++i) divisor *= 10;
        return fmt::format("{:g}", static_cast<double>(*number) / divisor);
    }
    return {};
}

}  // namespace

std::string read_before(const Sheet& sheet, std::string_view path, const ReadingBox& box) {
    const NoteField* known = find_note_field(box.field);
    for (const auto& visit : sheet.plan.job.visits)
        if (known != nullptr && visit.path == path)
            if (const auto found = visit.readings.find(known->field.stored); found != visit.readings.end())
                return written(known->field, found->second);
    return {};
}

std::vector<ReadingBox> boxes_of(const Sheet& sheet, const TapFacts& facts) {
    for (const auto& step : sheet.plan.steps)
        for (const auto& reading : step.readings)
            if (read_at(sheet, reading) == facts.code) return {};
    if (is_power(facts.circuit.role)) return boxes(power_boxes);
    if (carries_signal(facts.circuit.role)) return boxes(pair_boxes);
    return {};
}

std::vector<ReadingBox> colour_boxes() {
    return boxes(std::span(pair_boxes).first(2));
}

std::string read_at(const Sheet& sheet, const PredictedReading& reading) {
    const NoteField* known = find_note_field(reading.field);
    const JudgedTurnOn* turn_on = planned_turn_on(sheet.plan.install);
    const bool of_turn_on = known != nullptr && !known->pair && turn_on != nullptr;
    return of_turn_on ? turn_on->facts.code : sheet.plan.plan.tap;
}

ReadingBox box_of(const PredictedReading& reading) {
    for (const auto& named : reading_labels)
        if (named.field == reading.field) return box(named.field, named.label);
    return box(reading.field, spaced(reading.field));
}

}  // namespace tapbook
