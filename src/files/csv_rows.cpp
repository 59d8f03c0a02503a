// See csv_rows.h. Places hold line and column, not the line's text: finding it anew for each of many rows is slow.
#include "files/csv_rows.h"

#include <fmt/format.h>

#include <algorithm>

#include "files/batch_reader.h"
#include "files/cell_value.h"
#include "files/csv_writer.h"

namespace tapbook {
namespace {

std::string name_of_place(std::size_t place) {
    return fmt::format("column {}", place + 1);
}

bool is_path_of_car(std::string_view words) {
    const auto parts = path_parts(words);
    return parts.size() == vehicle_depth && std::all_of(parts.begin(), parts.end(), is_slug);
}

class RowsReader {
  public:
    RowsReader(std::string_view text, const std::string& file, const Mapping& mapping, const RowCarOf& car_of)
        : text_(text), file_(file), mapping_(mapping), car_of_(car_of) {}

    ReadRows read() {
        const auto separator = mapping_.separator ? std::optional(character_of(*mapping_.separator)) : std::nullopt;
        read_.csv = read_csv(text_, file_, separator);
        read_.batch.file = file_;
        read_.names_row = mapping_.names_row;
        name_columns();
        find_columns();
        for (std::size_t i = static_cast<std::size_t>(mapping_.names_row); i < read_.csv.rows.size(); ++i) {
            const CsvRow& row = read_.csv.rows[i];
            if (row.is_empty() || !is_chosen(row))
                ++read_.passed_over;
            else
                read_row(row, static_cast<int>(i) + 1);
        }
        return std::move(read_);
    }

  private:
    void name_columns() {
        const auto names_row = static_cast<std::size_t>(mapping_.names_row);
        if (read_.csv.rows.size() < std::max<std::size_t>(names_row, 1))
            throw InputRefused({{{file_, 0, 0, {}},
                                 fmt::format("has no row {} with the columns' names", std::max(mapping_.names_row, 1)),
                                 "names_row in the mapping says which row it is"}});
        const CsvRow& row = read_.csv.rows[names_row == 0 ? 0 : names_row - 1];
        for (std::size_t i = 0; i < row.cells.size(); ++i) {
            const std::string name = names_row == 0 ? std::string() : row.cells[i].text;
            read_.column_names.push_back(compared(name).empty() ? name_of_place(i) : name);
        }
    }

    // Where the column stands; complains in the mapping when it is not there, or there twice.
    std::optional<std::size_t> place_of_column(const NamedColumn& column) {
        const auto& names = read_.column_names;
        if (column.number > 0) {
            if (static_cast<std::size_t>(column.number) <= names.size())
                return static_cast<std::size_t>(column.number) - 1;
            complaints_.push_back({column.place, fmt::format("{} has no column {}", shown(file_), column.number),
                                   fmt::format("it has {}", names.size())});
            return std::nullopt;
        }
        const auto is_it = [&](const std::string& name) { return compared(name) == compared(column.name); };
        const auto found = std::find_if(names.begin(), names.end(), is_it);
        if (found == names.end()) {
            const std::vector<std::string_view> list(names.begin(), names.end());
            const auto near = nearest(column.name, list);
            complaints_.push_back({column.place,
                                   fmt::format("{} has no column \"{}\"", shown(file_), shown(column.name)),
                                   near ? fmt::format("did you mean \"{}\"?", shown(*near))
                                        : fmt::format("row {} names the columns", std::max(mapping_.names_row, 1))});
            return std::nullopt;
        }
        if (std::find_if(found + 1, names.end(), is_it) != names.end())
            complaints_.push_back({column.place,
                                   fmt::format("{} has two columns \"{}\"", shown(file_), shown(column.name)),
                                   "name one of them by its number, from 1"});
        return static_cast<std::size_t>(found - names.begin());
    }

    void find_columns() {
        std::vector<bool> is_read(read_.column_names.size(), false);
        for (const auto& [key, column] : mapping_.columns)
            if (const auto place = place_of_column(column)) {
                columns_.push_back({key, *place});
                is_read[*place] = true;
            }
        for (const auto* choices : {&mapping_.skip_rows, &mapping_.only_rows})
            for (const auto& choice : *choices)
                if (const auto place = place_of_column(choice.column)) {
                    choices_.push_back({&choice, *place, choices == &mapping_.skip_rows});
                    is_read[*place] = true;
                }
        if (!complaints_.empty()) throw InputRefused(std::move(complaints_));
        for (std::size_t i = 0; i < is_read.size(); ++i)
            if (!is_read[i]) read_.unread.push_back(read_.column_names[i]);
    }

    bool is_chosen(const CsvRow& row) const {
        return std::all_of(choices_.begin(), choices_.end(), [&](const Choice& choice) {
            const std::string cell =
                choice.place < row.cells.size() ? compared(row.cells[choice.place].text) : std::string();
            const auto& cells = choice.choice->cells;
            return (std::find(cells.begin(), cells.end(), cell) != cells.end()) != choice.skips;
        });
    }

    SourcePlace place_of_cell(const CsvCell& cell) const { return {file_, cell.line, cell.column, {}}; }

    void read_row(const CsvRow& row, int number) {
        ReadRow read;
        read.number = number;
        try {
            read_table(row, read);
        } catch (const InputRefused& refused) {
            for (const auto& complaint : refused.complaints()) complain(read, complaint);
        }
        read_.rows.push_back(std::move(read));
    }

    void complain(ReadRow& read, Complaint complaint) const {
        const std::string column = read_.column_at(read.number, complaint.place);
        read.complaints.push_back({column, std::move(complaint)});
    }

    void read_table(const CsvRow& row, ReadRow& read) {
        const SourcePlace start{file_, row.cells.front().line, 0, {}};
        if (row.cells.size() != read_.column_names.size()) {
            const auto width = row.cells.size();
            read.complaints.push_back({{},
                                       {start,
                                        fmt::format("the row has {} {}, the row of names {}", width,
                                                    width == 1 ? "cell" : "cells", read_.column_names.size()),
                                        "is a cell with a separator in it written without quotes?"}});
            return;
        }
        TomlValue table;
        table.place = start;
        placing_.clear();
        for (const auto& [key, place] : columns_) add_cell(table, key, row.cells[place], read);
        for (const auto& [key, value] : mapping_.always) add_constant(table, key, value);
        const std::string vehicle = vehicle_of(read, start);
        add_at(table, start);
        if (!read.complaints.empty()) return;
        auto& batch = read_.batch;
        read_one_table(word_of(mapping_.rows), table, vehicle, batch);
        if (placing_.contains("practice") && !batch.practice) batch.practice_place = start;
        batch.practice = batch.practice || placing_.contains("practice");
        if (!batch.notes.empty()) {
            read.draft = batch.notes.size() - 1;
            read.what = text_field(batch.notes.back().values, "path");
        } else if (!batch.entries.empty()) {
            read.draft = batch.entries.size() - 1;
            read.what = text_field(batch.entries.back().values, "path");
        } else {
            read.draft = batch.terms.size() - 1;
            read.what = batch.terms.back().part;
        }
    }

    void add_cell(TomlValue& table, const MappedKey& key, const CsvCell& cell, ReadRow& read) {
        const std::string text = translated(mapping_, key.name, unguarded(cell.text));
        if (text.empty()) return;
        if (key.name == "pair") return add_pair(table, text, place_of_cell(cell), read);
        add_text(table, key, text, place_of_cell(cell), read);
    }

    // Both wires of a cell: what stands before the mark and what stands behind it.
    void add_pair(TomlValue& table, const std::string& text, const SourcePlace& place, ReadRow& read) {
        const std::string& mark = mapping_.pair_mark;
        const auto at = text.find(mark);
        const bool is_two = at != std::string::npos && text.find(mark, at + mark.size()) == std::string::npos &&
                            !compared(text.substr(0, at)).empty() && !compared(text.substr(at + mark.size())).empty();
        if (!is_two)
            return complain(
                read, {place, fmt::format("pair \"{}\" is not two wires with \"{}\" between them", shown(text), mark),
                       "pair_mark in the mapping says what stands between the two"});
        const bool is_turned = mapping_.pair_order == PairOrder::negative_first;
        const std::string first = text.substr(0, at), second = text.substr(at + mark.size());
        const auto add = [&](std::string_view name, const std::string& wire) {
            const std::string word = translated(mapping_, name, wire);
            if (!word.empty()) add_text(table, {name, FieldKind::colour, {}}, word, place, read);
        };
        add("positive", is_turned ? second : first);
        add("negative", is_turned ? first : second);
    }

    void add_text(TomlValue& table, const MappedKey& key, const std::string& text, const SourcePlace& place,
                  ReadRow& read) {
        auto value = cell_value(mapping_, key, text, place);
        if (const auto* refusal = std::get_if<CellRefusal>(&value))
            complain(read, {place, fmt::format("{} {}", key.name, refusal->message), refusal->hint});
        else if (is_placing(key.name))
            put_placing(key.name, std::get<TomlValue>(value));
        else
            put(table, std::string(key.name), std::get<TomlValue>(std::move(value)));
    }

    void add_constant(TomlValue& table, const std::string& key, const TomlValue& value) {
        is_placing(key) ? put_placing(key, value) : put(table, key, value);
    }

    // Keys that say where the row belongs: no part of its table.
    static bool is_placing(std::string_view key) {
        return key == "vehicle" || key == "system" || key == "circuit" || key == "tap" || key == "practice";
    }

    void put_placing(std::string_view key, const TomlValue& value) {
        if (value.type != TomlValue::Type::flag || value.flag) placing_[std::string(key)] = value;
    }

    static void put(TomlValue& table, std::string key, TomlValue value) {
        table.member_places.push_back(value.place);
        table.members.emplace_back(std::move(key), std::move(value));
    }

    std::string vehicle_of(ReadRow& read, const SourcePlace& start) {
        const auto found = placing_.find("vehicle");
        if (found == placing_.end()) {
            const auto names = mapped_keys(mapping_.rows);
            if (std::any_of(names.begin(), names.end(), [](const MappedKey& key) { return key.name == "vehicle"; }))
                complain(read, {start, "vehicle is missing", "vehicle: the car, as `tapbook find` names it"});
            return {};
        }
        const std::string& words = found->second.text;
        if (is_path_of_car(words)) return words;
        const auto [known, is_first] = cars_.try_emplace(words);
        if (is_first) known->second = car_of_(words);
        if (known->second.path.empty())
            complain(read, {found->second.place, known->second.message, known->second.hint});
        return known->second.path;
    }

    // "at" from the codes of system, circuit and tap point, unless it is there.
    void add_at(TomlValue& table, const SourcePlace& start) {
        if (mapping_.rows == RowsOf::vehicle || mapping_.rows == RowsOf::system || table.find("at") != nullptr) return;
        TomlValue at;
        at.type = TomlValue::Type::text;
        at.place = start;
        for (const std::string_view part : {"system", "circuit", "tap"})
            if (const auto found = placing_.find(part); found != placing_.end()) {
                at.text = at.text.empty() ? found->second.text : path_join(at.text, found->second.text);
                at.place = found->second.place.file == file_ ? found->second.place : at.place;
            }
        if (!at.text.empty()) put(table, "at", std::move(at));
    }

    struct Column {
        MappedKey key;
        std::size_t place;
    };
    struct Choice {
        const Mapping::RowChoice* choice;
        std::size_t place;
        bool skips;
    };

    std::string_view text_;
    const std::string& file_;
    const Mapping& mapping_;
    const RowCarOf& car_of_;
    ReadRows read_;
    std::vector<Column> columns_;
    std::vector<Choice> choices_;
    std::vector<Complaint> complaints_;
    std::map<std::string, TomlValue, std::less<>> placing_;  // of the row that is read
    std::map<std::string, RowCar> cars_;                     // by words
};

}  // namespace

std::string ReadRows::column_at(int number, const SourcePlace& place) const {
    const auto& cells = csv.rows[static_cast<std::size_t>(number) - 1].cells;
    const auto found = std::find_if(cells.begin(), cells.end(), [&](const CsvCell& cell) {
        return cell.line == place.line && cell.column == place.column && place.file == batch.file;
    });
    const auto at = static_cast<std::size_t>(found - cells.begin());
    return at < column_names.size() && found != cells.end() ? column_names[at] : std::string();
}

ReadRows read_rows(std::string_view text, const std::string& file, const Mapping& mapping, const RowCarOf& car_of) {
    return RowsReader(text, file, mapping, car_of).read();
}

std::string rows_with_reasons(const ReadRows& rows, const std::vector<std::pair<int, std::string>>& reasons) {
    CsvSheet sheet(rows.csv.separator);
    const auto write = [&](int number, const std::string& last) {
        std::vector<CsvValue> cells;
        for (const auto& cell : rows.csv.rows[static_cast<std::size_t>(number) - 1].cells)
            cells.emplace_back(std::string(unguarded(cell.text)));
        cells.resize(std::max(cells.size(), rows.column_names.size()), std::string());
        cells.emplace_back(last);
        sheet.row(cells);
    };
    if (rows.names_row > 0) write(rows.names_row, "refused because");
    for (const auto& [number, reason] : reasons) write(number, reason);
    return sheet.take();
}

}  // namespace tapbook
