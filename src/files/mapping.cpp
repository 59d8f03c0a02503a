// See mapping.h. The single values are read by a table of fields like any other table of a file.
#include "files/mapping.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>

#include "files/local_fields.h"
#include "files/table_reader.h"

namespace tapbook {
namespace {

constexpr Field layout[] = {
    {"rows", "rows", FieldKind::word, 0, "", 0, 0, spellings<RowsOf>, true, "what each row is"},
    {"separator", "separator", FieldKind::word, 0, "", 0, 0, spellings<CellMark>, false, "what stands between cells"},
    {"names_row", "names_row", FieldKind::whole, 0, "", 0, 1000, nullptr, false,
     "the row with the columns' names; 0 for none"},
    {"dates", "dates", FieldKind::word, 0, "", 0, 0, spellings<DateOrder>, false, "the order in dates"},
    {"decimal_mark", "decimal_mark", FieldKind::word, 0, "", 0, 0, spellings<DecimalMark>, false, "in numbers"},
    {"list_mark", "list_mark", FieldKind::word, 0, "", 0, 0, spellings<CellMark>, false, "between items in one cell"},
    {"pair_order", "pair_order", FieldKind::word, 0, "", 0, 0, spellings<PairOrder>, false, "in a cell with two wires"},
    {"keep_blanks", "keep_blanks", FieldKind::flag, 0, "", 0, 0, nullptr, false, "at the ends of cells"},
};

struct PlacingKey {
    MappedKey key;
    std::array<bool, 8> of;  // in the order of RowsOf
};

//                                                     note vehicle system circuit tap converter amplifier stock
constexpr PlacingKey placing_keys[] = {
    {{"vehicle", FieldKind::name, "the car, as find names it"}, {true, false, true, true, true, false, false, false}},
    {{"at", FieldKind::name, "the place below the car, parts joined by /"},
     {true, false, false, true, true, false, false, false}},
    {{"system", FieldKind::name, "code of the sound system, when at is not given"},
     {true, false, false, true, true, false, false, false}},
    {{"circuit", FieldKind::name, "code of the circuit, when at is not given"},
     {true, false, false, false, true, false, false, false}},
    {{"tap", FieldKind::name, "code of the tap point, when at is not given"},
     {true, false, false, false, false, false, false, false}},
    {{"code", FieldKind::name, "its own code"}, {false, false, true, true, true, true, true, false}},
    {{"path", FieldKind::name, "the car's path, when it is kept"},
     {false, true, false, false, false, false, false, false}},
    {{"part", FieldKind::name, "code of the part"}, {false, false, false, false, false, false, false, true}},
    {{"kind", FieldKind::name, "pair or switched"}, {true, false, false, false, false, false, false, false}},
    {{"pair", FieldKind::name, "both wires of the pair in one cell, pair_mark between them"},
     {true, false, false, false, false, false, false, false}},
    {{"car", FieldKind::name, "plate or VIN; only a salted token of it is kept"},
     {true, false, false, false, false, false, false, false}},
    {{"car_token", FieldKind::name, "the token, as an export wrote it"},
     {true, false, false, false, false, false, false, false}},
    {{"shop", FieldKind::name, "who wrote it; practice catalogs only"},
     {true, false, false, false, false, false, false, false}},
    {{"practice", FieldKind::flag, "everything in the row is invented"},
     {true, true, true, true, true, true, true, true}},
};

std::vector<Field> fields_of_rows(RowsOf rows) {
    std::vector<Field> fields;
    const auto all_of = [&](std::span<const Field> list) { fields.assign(list.begin(), list.end()); };
    switch (rows) {
        case RowsOf::note:
            for (const auto& row : note_fields()) fields.push_back(row.field);
            break;
        case RowsOf::vehicle:
            all_of(fields_of(EntryKind::vehicle));
            break;
        case RowsOf::system:
            all_of(fields_of(EntryKind::system));
            break;
        case RowsOf::circuit:
            all_of(fields_of(EntryKind::circuit));
            break;
        case RowsOf::tap:
            all_of(fields_of(EntryKind::tap));
            break;
        case RowsOf::converter:
            all_of(fields_of(EntryKind::converter));
            break;
        case RowsOf::amplifier:
            all_of(fields_of(EntryKind::amplifier));
            break;
        case RowsOf::stock:
            all_of(stock_fields());
            break;
    }
    return fields;
}

class MappingReader {
  public:
    MappingReader(const TomlValue& root, const std::string& file) : root_(root) { mapping_.file = file; }

    Mapping read() {
        constexpr std::string_view tables[] = {"columns", "always", "words", "skip_rows", "only_rows", "pair_mark"};
        const Values values = read_fields(root_, layout, tables, complaints_);
        complaints_.throw_if_any();  // what a row is decides which keys there are
        read_layout(values);
        read_pair_mark();
        keys_ = mapped_keys(mapping_.rows);
        if (const auto* columns = table("columns")) read_columns(*columns);
        if (const auto* always = table("always")) read_always(*always);
        if (const auto* words = table("words")) read_words(*words);
        read_choices("skip_rows", mapping_.skip_rows);
        read_choices("only_rows", mapping_.only_rows);
        check_whole();
        complaints_.throw_if_any();
        return std::move(mapping_);
    }

  private:
    void read_layout(const Values& values) {
        mapping_.rows = word_field<RowsOf>(values, "rows").value_or(RowsOf::note);
        mapping_.separator = word_field<CellMark>(values, "separator");
        mapping_.names_row = whole_field(values, "names_row").value_or(1);
        mapping_.dates = word_field<DateOrder>(values, "dates").value_or(DateOrder::year_month_day);
        mapping_.decimal_mark = word_field<DecimalMark>(values, "decimal_mark").value_or(DecimalMark::point);
        mapping_.list_mark = word_field<CellMark>(values, "list_mark").value_or(CellMark::comma);
        mapping_.pair_order = word_field<PairOrder>(values, "pair_order").value_or(PairOrder::positive_first);
        mapping_.keep_blanks = flag_field(values, "keep_blanks").value_or(false);
        if (mapping_.separator == CellMark::line)
            complaints_.add(place_of(root_, "separator"), "separator cannot be line", "comma, semicolon or tab");
    }

    // Kept as written: blanks tell "WH/BK / WH" apart.
    void read_pair_mark() {
        const auto* mark = root_.find("pair_mark");
        if (mark == nullptr) return;
        if (mark->type == TomlValue::Type::text && !mark->text.empty())
            mapping_.pair_mark = mark->text;
        else
            complaints_.add(mark->place, "pair_mark must be a text in quotes",
                            "what stands between two wires: \" / \"");
    }

    const TomlValue* table(std::string_view name) {
        const auto* value = root_.find(name);
        if (value == nullptr || value->type == TomlValue::Type::table) return value;
        complaints_.add(value->place, fmt::format("{} must be a table, [{}]", name, name));
        return nullptr;
    }

    const MappedKey* key_named(const std::string& name, const SourcePlace& place) {
        const auto found =
            std::find_if(keys_.begin(), keys_.end(), [&](const MappedKey& key) { return key.name == name; });
        if (found != keys_.end()) return &*found;
        std::vector<std::string_view> names;
        for (const auto& key : keys_) names.push_back(key.name);
        const auto near = nearest(name, names);
        complaints_.add(place, fmt::format("a {} has no \"{}\"", word_of(mapping_.rows), shown(name)),
                        near ? fmt::format("did you mean \"{}\"?", *near)
                             : "the names are those of the TOML files, on the left the field, on the right the column");
        return nullptr;
    }

    std::optional<NamedColumn> column_of(const TomlValue& value) {
        NamedColumn column{value.text, 0, value.place};
        const auto number = value.type == TomlValue::Type::number ? scaled(value.text, 0) : NotANumber{};
        if (const auto* place = std::get_if<std::int64_t>(&number); place != nullptr && *place > 0 && *place <= 1000)
            column.number = static_cast<int>(*place);
        if (column.number > 0 || (value.type == TomlValue::Type::text && !value.text.empty())) return column;
        complaints_.add(value.place, "a column is named by its name in quotes, or by its number from 1");
        return std::nullopt;
    }

    void read_columns(const TomlValue& columns) {
        for (std::size_t i = 0; i < columns.members.size(); ++i) {
            const auto& [name, value] = columns.members[i];
            const auto* key = key_named(name, columns.member_places[i]);
            const auto column = column_of(value);
            if (key == nullptr || !column) continue;
            if (mapping_.names_row == 0 && column->number == 0)
                complaints_.add(value.place, "without a row of names a column is named by its number",
                                "write the number, or names_row = 1");
            mapping_.columns.emplace_back(*key, *column);
        }
    }

    // Read once as the table it will be part of, so that a mistake is told here and not for each row.
    void read_always(const TomlValue& always) {
        std::vector<Field> fields = fields_of_rows(mapping_.rows);
        std::vector<std::string_view> placing;
        for (auto& field : fields) field.required = false;
        for (const auto& key : keys_)
            if (find_field(fields, key.name) == nullptr) placing.push_back(key.name);
        read_fields(always, fields, placing, complaints_);
        for (std::size_t i = 0; i < always.members.size(); ++i) {
            const auto& [name, value] = always.members[i];
            const auto is_it = [&name = name](const auto& column) { return column.first.name == name; };
            if (std::any_of(mapping_.columns.begin(), mapping_.columns.end(), is_it))
                complaints_.add(always.member_places[i], fmt::format("{} has a column already", shown(name)),
                                "keep one of them");
            if (name == "pair")
                complaints_.add(always.member_places[i], "pair is read from a column",
                                "the same in every row: write positive and negative");
            const bool is_placing = std::find(placing.begin(), placing.end(), name) != placing.end();
            if (is_placing && name != "practice" && value.type != TomlValue::Type::text)
                complaints_.add(value.place, fmt::format("{} must be a text in quotes", name));
            mapping_.always.emplace_back(name, value);
        }
    }

    void read_words(const TomlValue& words) {
        for (std::size_t i = 0; i < words.members.size(); ++i) {
            const auto& [name, table] = words.members[i];
            if (key_named(name, words.member_places[i]) == nullptr) continue;
            if (table.type != TomlValue::Type::table) {
                complaints_.add(table.place, fmt::format("must be a table, [words.{}]", name));
                continue;
            }
            for (const auto& [cell, meaning] : table.members) {
                if (meaning.type != TomlValue::Type::text)
                    complaints_.add(meaning.place, "what a word means is a text in quotes", "\"\" for nothing");
                mapping_.words[name][compared(cell)] = meaning.text;
            }
        }
    }

    void read_choices(std::string_view name, std::vector<Mapping::RowChoice>& choices) {
        const auto* columns = table(name);
        if (columns == nullptr) return;
        for (std::size_t i = 0; i < columns->members.size(); ++i) {
            const auto& [column, cells] = columns->members[i];
            Mapping::RowChoice choice{{column, 0, columns->member_places[i]}, {}};
            if (cells.type != TomlValue::Type::list)
                complaints_.add(cells.place,
                                fmt::format("{} names a column and a list of cells: \"Remarks\" = [\"sum\"]", name));
            for (const auto& cell : cells.items) choice.cells.push_back(compared(cell.text));
            choices.push_back(std::move(choice));
        }
    }

    bool has(std::string_view key) const {
        const auto is_it = [&](const auto& one) { return one.first.name == key; };
        return std::any_of(mapping_.columns.begin(), mapping_.columns.end(), is_it) ||
               std::any_of(mapping_.always.begin(), mapping_.always.end(),
                           [&](const auto& one) { return one.first == key; });
    }

    void check_whole() {
        if (mapping_.columns.empty())
            complaints_.add(root_.place, "no column is named", "write a [columns] table: positive = \"Plus\"");
        const bool needs_car =
            std::any_of(keys_.begin(), keys_.end(), [](const MappedKey& key) { return key.name == "vehicle"; });
        if (needs_car && !has("vehicle"))
            complaints_.add(root_.place, "which car the rows belong to is not said",
                            "give vehicle a column, or a value under [always]");
        check_pair();
        for (const auto& field : fields_of_rows(mapping_.rows))
            if (field.required && !has(field.name))
                complaints_.add(root_.place, fmt::format("{} has neither a column nor a value", field.name),
                                fmt::format("{}: {}; name its column, or give it a value under [always]", field.name,
                                            field.meaning));
    }

    void check_pair() {
        const bool has_pair = has("pair");
        for (const std::string_view key : {"pair_mark", "pair_order"})
            if (!has_pair && root_.find(key) != nullptr)
                complaints_.add(place_of(root_, key), fmt::format("{} says nothing without a column for pair", key),
                                "write pair = \"Wires\" under [columns], or leave it out");
        if (has_pair && (has("positive") || has("negative")))
            complaints_.add(root_.place, "pair gives both positive and negative, and one of them is mapped as well",
                            "keep pair, or the two");
    }

    const TomlValue& root_;
    Mapping mapping_;
    std::vector<MappedKey> keys_;
    Complaints complaints_;
};

}  // namespace

char character_of(CellMark mark) {
    switch (mark) {
        case CellMark::comma:
            return ',';
        case CellMark::semicolon:
            return ';';
        case CellMark::tab:
            return '\t';
        case CellMark::line:
            break;
    }
    return '\n';
}

std::vector<MappedKey> mapped_keys(RowsOf rows) {
    std::vector<MappedKey> keys;
    for (const auto& row : placing_keys)
        if (row.of[static_cast<std::size_t>(rows)]) keys.push_back(row.key);
    for (const auto& field : fields_of_rows(rows)) keys.push_back({field.name, field.kind, field.meaning});
    return keys;
}

std::string compared(std::string_view cell) {
    const auto start = cell.find_first_not_of(" \t"), end = cell.find_last_not_of(" \t");
    if (start == std::string_view::npos) return {};
    std::string small(cell.substr(start, end - start + 1));
    for (char& c : small)
        if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
    return small;
}

Mapping read_mapping(std::string_view text, const std::string& file) {
    const TomlValue root = read_toml(text, file);
    return MappingReader(root, file).read();
}

}  // namespace tapbook
