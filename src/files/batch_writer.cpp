// See batch_writer.h.
#include "files/batch_writer.h"

#include <fmt/format.h>

#include <algorithm>
#include <map>

#include "files/batch_reader.h"
#include "files/local_fields.h"
#include "files/toml_writer.h"

namespace tapbook {
namespace {

enum class TableOf { entry, note, terms, shop };

// One table of the file: where its draft stands in the batch, its lines, and why it is a comment, if it is one.
struct Table {
    TableOf of;
    std::size_t index;
    std::string what, text, reason;
    int first_line = 0, end_line = 0;  // in the last text that was made
};

std::string title_of(std::string_view word) {
    return fmt::format("[[{}]]\n", word);
}

std::string key_text(std::string_view key, std::string_view text) {
    return text.empty() ? std::string() : fmt::format("{} = {}\n", key, toml_text(text));
}

std::string derived_path(const Values& vehicle) {
    return fmt::format("{}/{}/{}/{}", slug_from(text_field(vehicle, "make")), slug_from(text_field(vehicle, "model")),
                       slug_from(text_field(vehicle, "body")), whole_field(vehicle, "first_year").value_or(0));
}

// "at" and "code" of an entry below a vehicle.
std::string place_lines(std::string_view path) {
    const auto tail = path_tail(path, vehicle_depth);
    const auto slash = tail.rfind('/');
    if (slash == std::string_view::npos) return key_text("code", tail);
    return key_text("at", tail.substr(0, slash)) + key_text("code", tail.substr(slash + 1));
}

std::string unknown_reason(const std::vector<std::string>& keys) {
    std::string list;
    for (const auto& key : keys) list += fmt::format("{}\"{}\"", list.empty() ? "" : ", ", key);
    return fmt::format("holds {} {}, which this version does not know", keys.size() == 1 ? "the field" : "the fields",
                       list);
}

class BatchWriter {
  public:
    explicit BatchWriter(const Extract& extract) : extract_(extract), batch_(extract.batch) { make_tables(); }

    WrittenFile write() {
        std::string text = whole_text();
        while (!reads_back(text)) text = whole_text();
        return result(std::move(text));
    }

  private:
    void make_tables() {
        for (std::size_t i = 0; i < batch_.shops.size(); ++i) {
            const ShopDraft& shop = batch_.shops[i];
            const std::string lines = key_text("code", shop.code) + key_text("name", shop.name);
            tables_.push_back({TableOf::shop, i, "shop " + shop.code, title_of("shop") + lines, {}});
        }
        for (std::size_t i = 0; i < batch_.entries.size(); ++i) add_entry(i);
        for (std::size_t i = 0; i < batch_.notes.size(); ++i)
            tables_.push_back(note_table(batch_.notes[i], i, unknown_in_note(batch_.notes[i])));
        for (const auto& note : extract_.notes) tables_.push_back(note_table(note.note, 0, note.reason));
        for (std::size_t i = 0; i < batch_.terms.size(); ++i) {
            const TermsDraft& terms = batch_.terms[i];
            const std::string lines = key_text("part", terms.part) + toml_lines(stock_fields(), values_of(terms.terms));
            tables_.push_back({TableOf::terms, i, "stock " + terms.part, title_of("stock") + lines, {}});
        }
    }

    void add_entry(std::size_t index) {
        constexpr std::string_view own[] = {"path"};
        const EntryDraft& entry = batch_.entries[index];
        const std::string path = text_field(entry.values, "path");
        const auto fields = fields_of(entry.kind);
        std::string text;
        switch (entry.kind) {
            case EntryKind::vehicle:
                text = "[vehicle]\n" + (derived_path(entry.values) == path ? "" : key_text("path", path));
                break;
            case EntryKind::system:
            case EntryKind::circuit:
            case EntryKind::tap:
                text = title_of(word_of(entry.kind)) + place_lines(path);
                break;
            case EntryKind::converter:
            case EntryKind::amplifier:
                text = title_of(word_of(entry.kind)) + key_text("code", path);
                break;
        }
        if (entry.kind == EntryKind::circuit)
            roles_[path] = word_field<Role>(entry.values, "role").value_or(Role::speaker);
        const auto unknown = unknown_keys(fields, own, entry.values);
        const bool is_vehicle = entry.kind == EntryKind::vehicle;
        const auto name = is_vehicle || path_parts(path).size() < system_depth ? std::string_view(path)
                                                                               : path_tail(path, vehicle_depth);
        tables_.push_back({TableOf::entry,
                           index,
                           fmt::format("{} {}", word_of(entry.kind), name),
                           text + toml_lines(fields, entry.values),
                           {}});
        if (!unknown.empty()) comment(tables_.back(), unknown_reason(unknown));
    }

    static std::vector<Field> fields_of_notes() {
        std::vector<Field> fields;
        for (const auto& note_field : note_fields()) fields.push_back(note_field.field);
        return fields;
    }

    std::string unknown_in_note(const NoteDraft& note) const {
        constexpr std::string_view own[] = {"path", "kind", "car"};
        const auto unknown = unknown_keys(note_fields_, own, note.values);
        return unknown.empty() ? std::string() : unknown_reason(unknown);
    }

    // The kind that the reader would take the note for, were it not said.
    NoteKind kind_by_circuit(const NoteDraft& note) const {
        const auto role = roles_.find(path_head(text_field(note.values, "path"), circuit_depth));
        if (role != roles_.end())
            return role->second == Role::speaker || role->second == Role::line_level ? NoteKind::pair
                                                                                     : NoteKind::switched;
        return note.values.contains("wire") || note.values.contains("key_off_mv") ? NoteKind::switched : NoteKind::pair;
    }

    Table note_table(const NoteDraft& note, std::size_t index, std::string reason) const {
        const std::string path = text_field(note.values, "path");
        const std::string at(path_tail(path, vehicle_depth));
        const auto kind = word_field<NoteKind>(note.values, "kind").value_or(NoteKind::pair);
        std::string text = title_of("note") + key_text("at", at);
        if (kind != NoteKind::system && kind != kind_by_circuit(note)) text += key_text("kind", word_of(kind));
        text += key_text("shop", note.shop_code) + key_text("car_token", text_field(note.values, "car"));
        return {TableOf::note, index, "note " + at, text + toml_lines(note_fields_, note.values), std::move(reason)};
    }

    std::string heading() const {
        std::string text;
        for (const auto& entry : batch_.entries) {
            if (entry.kind != EntryKind::vehicle) continue;
            const auto& car = entry.values;
            text = fmt::format("# {} {} {}, {} to {}.\n", shown(text_field(car, "make")),
                               shown(text_field(car, "model")), shown(text_field(car, "body")),
                               whole_field(car, "first_year").value_or(0), whole_field(car, "last_year").value_or(0));
        }
        text += "# Written by tapbook export. Adding it to the catalog it came from adds nothing.\n";
        if (batch_.practice) text += "# PRACTICE: everything here is invented.\npractice = true\n";
        return text;
    }

    // The whole file; remembers on which lines each table stands.
    std::string whole_text() {
        std::string text = heading();
        int line = static_cast<int>(std::count(text.begin(), text.end(), '\n'));
        for (auto& table : tables_) {
            std::string lines = table.text;
            if (!table.reason.empty()) {
                lines = fmt::format("# {}: {}\n", shown(table.what), shown(table.reason));
                for (std::string_view rest = table.text; !rest.empty(); rest.remove_prefix(rest.find('\n') + 1))
                    lines += fmt::format("# {}\n", rest.substr(0, rest.find('\n')));
            }
            table.first_line = line + 2;
            line += 1 + static_cast<int>(std::count(lines.begin(), lines.end(), '\n'));
            table.end_line = line + 1;
            text += '\n';
            text += lines;
        }
        return text;
    }

    // Is the file read as exactly the tables that are no comments? Else at least one more becomes a comment.
    bool reads_back(const std::string& text) {
        if (std::none_of(tables_.begin(), tables_.end(), [](const Table& table) { return table.reason.empty(); }))
            return true;
        try {
            return comment_on_differences(read_batch(text, "the export"));
        } catch (const InputRefused& refused) {
            bool one_more = false;
            for (const auto& complaint : refused.complaints())
                for (auto& table : tables_) {
                    if (complaint.place.line < table.first_line || complaint.place.line >= table.end_line) continue;
                    one_more = one_more || table.reason.empty();
                    comment(table, complaint.message);
                }
            if (!one_more) throw;
            return false;
        }
    }

    bool comment_on_differences(const Batch& read) {
        std::map<TableOf, std::size_t> next;
        bool same = true;
        for (auto& table : tables_) {
            if (!table.reason.empty() || is_same(table, read, next[table.of]++)) continue;
            comment(table, "would not be read back as it is stored");
            same = false;
        }
        return same;
    }

    bool is_same(const Table& table, const Batch& read, std::size_t at) const {
        switch (table.of) {
            case TableOf::entry:
                return at < read.entries.size() && read.entries[at].kind == batch_.entries[table.index].kind &&
                       read.entries[at].values == batch_.entries[table.index].values;
            case TableOf::note:
                return at < read.notes.size() && read.notes[at].values == batch_.notes[table.index].values &&
                       read.notes[at].shop_code == batch_.notes[table.index].shop_code;
            case TableOf::terms:
                return at < read.terms.size() && read.terms[at].part == batch_.terms[table.index].part &&
                       read.terms[at].terms == batch_.terms[table.index].terms;
            case TableOf::shop:
                return at < read.shops.size() && read.shops[at].name == batch_.shops[table.index].name;
        }
        return false;
    }

    void comment(Table& table, const std::string& reason) {
        if (table.of == TableOf::entry && batch_.entries[table.index].kind == EntryKind::vehicle)
            throw InputRefused(
                {{{table.what, 0, 0, {}},
                  fmt::format("cannot be written as a file: {}", reason),
                  "add the car with that line corrected, or export it with the version that stored it"}});
        if (table.reason.empty()) table.reason = reason;
    }

    WrittenFile result(std::string text) const {
        WrittenFile file{std::move(text), 0, 0, 0, {}};
        for (const auto& table : tables_) {
            if (!table.reason.empty())
                file.commented.push_back({table.what, table.reason});
            else if (table.of == TableOf::entry)
                ++file.entries;
            else if (table.of == TableOf::note)
                ++file.notes;
            else if (table.of == TableOf::terms)
                ++file.terms;
        }
        return file;
    }

    const Extract& extract_;
    const Batch& batch_;
    std::vector<Field> note_fields_ = fields_of_notes();
    std::map<std::string, Role, std::less<>> roles_;
    std::vector<Table> tables_;
};

}  // namespace

WrittenFile write_batch(const Extract& extract) {
    return BatchWriter(extract).write();
}

}  // namespace tapbook
