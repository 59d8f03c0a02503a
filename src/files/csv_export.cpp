// See csv_export.h.
#include "files/csv_export.h"

#include <fmt/format.h>

#include <algorithm>
#include <set>

#include "files/cell_value.h"
#include "files/local_fields.h"
#include "files/toml_writer.h"

namespace tapbook {
namespace {

CsvValue cell_of(const Field& field, const Value& value) {
    if (const auto* number = std::get_if<std::int64_t>(&value)) return CsvNumber{unscaled(*number, field.digits)};
    if (const auto* flag = std::get_if<bool>(&value)) return std::string(*flag ? "yes" : "no");
    if (const auto* text = std::get_if<std::string>(&value)) return spelled(field.kind, *text);
    const auto& items = std::get<TextList>(value);
    if (items.empty()) return std::string(empty_list_cell);
    std::string lines;
    for (const auto& item : items) lines += (lines.empty() ? "" : "\n") + spelled(field.kind, item);
    return lines == empty_list_cell ? lines + "\n" : lines;
}

void add_names(std::vector<CsvValue>& cells, std::span<const Field> fields) {
    for (const auto& field : fields) cells.emplace_back(std::string(field.name));
}

void add_values(std::vector<CsvValue>& cells, std::span<const Field> fields, const Values& values) {
    for (const auto& field : fields) {
        const auto found = values.find(field.stored);
        cells.push_back(found == values.end() ? CsvValue(std::string()) : cell_of(field, found->second));
    }
}

std::string reason_of_unknown(std::span<const Field> fields, std::span<const std::string_view> own,
                              const Values& values) {
    std::string list;
    for (const auto& key : unknown_keys(fields, own, values))
        list += fmt::format("{}\"{}\"", list.empty() ? "" : ", ", key);
    return list.empty() ? list : fmt::format("holds {}, which this version does not know", list);
}

std::string yes_or_nothing(bool is_so) {
    return is_so ? "yes" : "";
}

class NotesWriter {
  public:
    explicit NotesWriter(const Batch& vehicle) : practice_(vehicle.practice) {
        for (const auto& entry : vehicle.entries)
            if (entry.values.contains("retired")) retired_.insert(text_field(entry.values, "path"));
        for (const auto& row : note_fields()) fields_.push_back(row.field);
        std::vector<CsvValue> names;
        for (const char* name : {"not_added", "practice", "shop", "vehicle", "at", "kind", "car_token"})
            names.emplace_back(std::string(name));
        add_names(names, fields_);
        sheet_.row(names);
    }

    void add(const NoteDraft& note, std::string reason) {
        constexpr std::string_view own[] = {"path", "kind", "car"};
        if (reason.empty()) reason = reason_of_unknown(fields_, own, note.values);
        const std::string path = text_field(note.values, "path");
        if (reason.empty() && retired_.contains(path))
            reason = "its place is retired: notes on it stay, none are added";
        const std::string at(path_tail(path, vehicle_depth));
        const std::string kind = text_field(note.values, "kind");
        std::vector<CsvValue> cells = {reason,
                                       yes_or_nothing(practice_),
                                       note.shop_code,
                                       std::string(path_head(path, vehicle_depth)),
                                       at,
                                       kind == word_of(NoteKind::system) ? std::string() : kind,
                                       text_field(note.values, "car")};
        add_values(cells, fields_, note.values);
        sheet_.row(cells);
        if (reason.empty())
            ++file_.notes;
        else
            file_.commented.push_back({"note " + at, reason});
    }

    WrittenFile take() {
        file_.text = sheet_.take();
        return std::move(file_);
    }

  private:
    bool practice_;
    std::set<std::string> retired_;  // paths
    std::vector<Field> fields_;
    CsvSheet sheet_;
    WrittenFile file_;
};

}  // namespace

WrittenFile notes_csv(const Extract& vehicle) {
    NotesWriter writer(vehicle.batch);
    for (const auto& note : vehicle.batch.notes) writer.add(note, {});
    for (const auto& note : vehicle.notes) writer.add(note.note, note.reason);
    return writer.take();
}

namespace {

WrittenFile parts_csv(EntryKind kind, const Extract& parts, const Extract& stock) {
    constexpr std::string_view own[] = {"path"};
    const auto fields = fields_of(kind);
    WrittenFile file;
    CsvSheet sheet;
    std::vector<CsvValue> names;
    for (const char* name : {"not_added", "practice", "code", "has_terms"}) names.emplace_back(std::string(name));
    add_names(names, terms_fields());
    add_names(names, fields);
    sheet.row(names);
    for (const auto& entry : parts.batch.entries) {
        if (entry.kind != kind) continue;
        const std::string code = text_field(entry.values, "path"),
                          reason = reason_of_unknown(fields, own, entry.values);
        const auto terms = std::find_if(stock.batch.terms.begin(), stock.batch.terms.end(),
                                        [&](const TermsDraft& draft) { return draft.part == code; });
        const bool has_terms = terms != stock.batch.terms.end();
        std::vector<CsvValue> cells = {reason, yes_or_nothing(parts.batch.practice), code, yes_or_nothing(has_terms)};
        add_values(cells, terms_fields(), has_terms ? values_of(terms->terms) : Values());
        add_values(cells, fields, entry.values);
        sheet.row(cells);
        file.terms += has_terms ? 1 : 0;
        if (reason.empty())
            ++file.entries;
        else
            file.commented.push_back({fmt::format("{} {}", word_of(kind), code), reason});
    }
    file.text = sheet.take();
    return file;
}

}  // namespace

WrittenFile converters_csv(const Extract& parts, const Extract& stock) {
    return parts_csv(EntryKind::converter, parts, stock);
}

WrittenFile amplifiers_csv(const Extract& parts, const Extract& stock) {
    return parts_csv(EntryKind::amplifier, parts, stock);
}

}  // namespace tapbook
