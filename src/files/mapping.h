// How is somebody's spreadsheet read as what tapbook keeps? A mapping file says what a row is, which column holds which
// field, what is the same in every row, what the words in the cells mean here, and which rows are passed over.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "files/toml.h"

namespace tapbook {

enum class RowsOf { note, vehicle, system, circuit, tap, converter, amplifier, stock };
template <>
struct NamedValues<RowsOf> {
    static constexpr Named<RowsOf> all[] = {
        {RowsOf::note, "note"},           {RowsOf::vehicle, "vehicle"}, {RowsOf::system, "system"},
        {RowsOf::circuit, "circuit"},     {RowsOf::tap, "tap"},         {RowsOf::converter, "converter"},
        {RowsOf::amplifier, "amplifier"}, {RowsOf::stock, "stock"}};
};
static_assert(table_is_sound<RowsOf>());

enum class CellMark { comma, semicolon, tab, line };
template <>
struct NamedValues<CellMark> {
    static constexpr Named<CellMark> all[] = {{CellMark::comma, "comma"},
                                              {CellMark::semicolon, "semicolon"},
                                              {CellMark::tab, "tab"},
                                              {CellMark::line, "line"}};
};
static_assert(table_is_sound<CellMark>());
char character_of(CellMark mark);

enum class DecimalMark { point, comma };
template <>
struct NamedValues<DecimalMark> {
    static constexpr Named<DecimalMark> all[] = {{DecimalMark::point, "point"}, {DecimalMark::comma, "comma"}};
};
static_assert(table_is_sound<DecimalMark>());

enum class DateOrder { year_month_day, day_month_year, month_day_year };
template <>
struct NamedValues<DateOrder> {
    static constexpr Named<DateOrder> all[] = {{DateOrder::year_month_day, "year-month-day"},
                                               {DateOrder::day_month_year, "day-month-year"},
                                               {DateOrder::month_day_year, "month-day-year"}};
};
static_assert(table_is_sound<DateOrder>());

// Which of the two wires of a pair stands first in a cell that holds both.
enum class PairOrder { positive_first, negative_first };
template <>
struct NamedValues<PairOrder> {
    static constexpr Named<PairOrder> all[] = {{PairOrder::positive_first, "positive-first"},
                                               {PairOrder::negative_first, "negative-first"}};
};
static_assert(table_is_sound<PairOrder>());

// A column by its name in the row of names or, when `number` is not 0, by its place from 1.
struct NamedColumn {
    std::string name;
    int number = 0;
    SourcePlace place;  // in the mapping
};

// What a mapping may give a column or a value to.
struct MappedKey {
    std::string_view name;
    FieldKind kind;
    std::string_view meaning;
};

struct Mapping {
    std::string file;
    RowsOf rows = RowsOf::note;
    std::optional<CellMark> separator;  // absent: found
    int names_row = 1;                  // 0: no row of names
    DateOrder dates = DateOrder::year_month_day;
    DecimalMark decimal_mark = DecimalMark::point;
    CellMark list_mark = CellMark::comma;
    bool keep_blanks = false;       // at the ends of cells
    std::string pair_mark = " / ";  // between the two wires of a cell that the key "pair" reads
    PairOrder pair_order = PairOrder::positive_first;

    std::vector<std::pair<MappedKey, NamedColumn>> columns;
    std::vector<std::pair<std::string, TomlValue>> always;  // by key
    // By key: what stands in cells, in small letters, and what it means; "" for nothing.
    std::map<std::string, std::map<std::string, std::string>, std::less<>> words;
    struct RowChoice {
        NamedColumn column;
        std::vector<std::string> cells;  // in small letters
    };
    std::vector<RowChoice> skip_rows;  // rows whose cell is one of these are passed over
    std::vector<RowChoice> only_rows;  // rows whose cell is none of these are passed over
};

// All keys that a mapping of such rows may name: the fields of the TOML table of that name and what places the row.
std::vector<MappedKey> mapped_keys(RowsOf rows);

// A to Z as a to z, blanks at both ends dropped: how cells and names of columns are compared.
std::string compared(std::string_view cell);

// Throws InputRefused with all complaints, at most 20.
Mapping read_mapping(std::string_view text, const std::string& file);

}  // namespace tapbook
