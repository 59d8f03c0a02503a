// How does a shop's own spreadsheet become notes and parts? Words, dates, decimal commas, places put together from
// columns; each row that is refused says its column and why; a mapping with a mistake is refused as a whole.
#include <catch2/catch.hpp>

#include "a_folder.h"
#include "a_vehicle_file.h"

using namespace tapbook;

namespace {

const std::string mapping_file = R"(rows = "note"
separator = "semicolon"
dates = "day-month-year"
decimal_mark = "comma"

[columns]
date = "Day"
circuit = "Speaker"
positive = "Plus"
negative = "Minus"
ac_v = "AC volts"
full_volume = "Full?"
hazards = "Beware"

[always]
vehicle = "orrery/vel-ostrel/sedan/2012"
system = "base"
tap = "radio-plug"
method = "metered"

[words.circuit]
"L/F" = "front-left"

[words.positive]
"?" = ""

[words.hazards]
"bag" = "curtain_airbag"

[skip_rows]
"Speaker" = ["Sum"]
)";

const std::string names = "Day;Speaker;Plus;Minus;AC volts;Full?;Beware;Ticket\n";

ReadRows rows_of(const std::string& text, const std::string& mapping = mapping_file) {
    return read_rows(text, "bay.csv", read_mapping(mapping, "bay.toml"), [](const std::string& words) {
        if (words == "old sedan") return RowCar{"orrery/vel-ostrel/sedan/2012", {}, {}};
        return RowCar{{}, "no car is called \"" + words + "\"", "tapbook find lists all cars"};
    });
}

// "row 2, Plus: message | hint" of all rows.
std::vector<std::string> refusals(const ReadRows& rows) {
    std::vector<std::string> list;
    for (const auto& row : rows.rows)
        for (const auto& [column, complaint] : row.complaints)
            list.push_back("row " + std::to_string(row.number) + (column.empty() ? "" : ", " + column) + ": " +
                           complaint.message + (complaint.hint.empty() ? "" : " | " + complaint.hint));
    return list;
}

std::vector<std::string> refusal_of_cells(const std::string& line) {
    return refusals(rows_of(names + line + "\n"));
}

std::vector<std::string> complaints_about_mapping(const std::string& text) {
    try {
        read_mapping(text, "bay.toml");
        return {};
    } catch (const InputRefused& refused) {
        std::vector<std::string> lines;
        for (const auto& complaint : refused.complaints())
            lines.push_back(std::to_string(complaint.place.line) + ":" + std::to_string(complaint.place.column) + " " +
                            complaint.message + (complaint.hint.empty() ? "" : " | " + complaint.hint));
        return lines;
    }
}

using Lines = std::vector<std::string>;

}  // namespace

TEST_CASE("a row becomes the note that the same words in a vehicle file become") {
    const ReadRows rows = rows_of(names + "3.6.2021; l/f ;WHT;white w/ black stripe;7,5;YES;bag;4711\n");
    CHECK(refusals(rows) == Lines{});
    REQUIRE(rows.batch.notes.size() == 1);
    const Batch file = read_batch(
        with(vehicle_file, "ac_v = 7.5\n", "ac_v = 7.5\nfull_volume = true\nhazards = [\"curtain_airbag\"]\n"),
        "car.toml");
    CHECK(rows.batch.notes.front().values == file.notes.front().values);
    CHECK(rows.unread == Lines{"Ticket"});
    CHECK(rows.rows.front().number == 2);
    CHECK(rows.rows.front().what == "orrery/vel-ostrel/sedan/2012/base/front-left/radio-plug");
}

TEST_CASE("empty rows and those the mapping leaves out are passed over, and an empty cell says nothing") {
    const ReadRows rows = rows_of(names + ";;;;;;;\n\n01.02.2020;SUM;x;x;x;x;x;x\n1/2/2020;L/F;?;black;;;;\n");
    CHECK(rows.passed_over == 3);
    CHECK(refusals(rows) == Lines{});
    REQUIRE(rows.batch.notes.size() == 1);
    CHECK_FALSE(rows.batch.notes.front().values.contains("positive"));
    CHECK(text_field(rows.batch.notes.front().values, "date") == "2020-02-01");
}

TEST_CASE("a refused row names its row, its column, the reason and the way out, and the others are read") {
    const std::string start = "3.6.2021;L/F;WHT;black;";
    CHECK(
        refusal_of_cells("3.6.21;L/F;WHT;black;7,5;;;") ==
        Lines{"row 2, Day: date \"3.6.21\" is not a day in the order day-month-year | years have four digits; another "
              "order is said in the mapping: dates = \"day-month-year\""});
    CHECK(refusal_of_cells("31.2.2021;L/F;WHT;black;;;;").size() == 1);
    CHECK(refusal_of_cells(start + "7.5;;;") ==
          Lines{"row 2, AC volts: ac_v 7.5 has a point, and the mapping says decimal_mark = \"comma\" | write 13,8; a "
                "thousand has no point in it"});
    CHECK(refusal_of_cells(start + "700;;;") ==
          Lines{"row 2, AC volts: ac_v is 700 V RMS | it must be 0 to 100 V RMS"});
    CHECK(
        refusal_of_cells(start + "7,5;maybe;;") ==
        Lines{
            "row 2, Full?: full_volume does not know \"maybe\" | yes or no; what else it is called here is said under "
            "[words.full_volume]"});
    CHECK(refusal_of_cells(start + "7,5;;curtain_airbg;") ==
          Lines{"row 2, Beware: hazards does not know \"curtain_airbg\" | did you mean \"curtain_airbag\"?"});
    const auto colour = refusal_of_cells("3.6.2021;L/F;BL;black;;;;");
    REQUIRE(colour.size() == 1);
    CHECK(colour.front().starts_with("row 2, Plus: positive \"BL\" is not clear: "));
    CHECK(refusal_of_cells(";L/F;WHT;black;;;;") == Lines{"row 2: date is missing | date: day of the visit"});
    CHECK(refusal_of_cells("3.6.2021;Front Left;WHT;black;;;;") ==
          Lines{"row 2, Speaker: at \"base/Front Left/radio-plug\" is neither system nor system/circuit/tap"});
    CHECK(refusal_of_cells("3.6.2021;L/F;WHT") ==
          Lines{"row 2: the row has 3 cells, the row of names 8 | is a cell with a separator in it written without "
                "quotes?"});
    CHECK(rows_of(names + "x;L/F;WHT;black;;;;\n3.6.2021;L/F;WHT;black;;;;\n").batch.notes.size() == 1);
}

TEST_CASE("words that name a car are asked for once, and a car that is none refuses its rows") {
    const std::string mapping = with(with(mapping_file, "vehicle = \"orrery/vel-ostrel/sedan/2012\"\n", ""),
                                     "date = \"Day\"\n", "date = \"Day\"\nvehicle = \"Ticket\"\n");
    CHECK(refusals(rows_of(names + "3.6.2021;L/F;WHT;black;;;;old sedan\n", mapping)) == Lines{});
    CHECK(refusals(rows_of(names + "3.6.2021;L/F;WHT;black;;;;new sedan\n", mapping)) ==
          Lines{"row 2, Ticket: no car is called \"new sedan\" | tapbook find lists all cars"});
    CHECK(refusals(rows_of(names + "3.6.2021;L/F;WHT;black;;;;\n", mapping)) ==
          Lines{"row 2: vehicle is missing | vehicle: the car, as `tapbook find` names it"});
}

TEST_CASE("one cell that holds both wires of a pair gives the positive and the negative one, by a mark and an order") {
    const std::string columns = "positive = \"Plus\"\nnegative = \"Minus\"\n";
    std::string mapping = mapping_file;
    mapping.replace(mapping.find(columns), columns.size(), "pair = \"Plus\"\n");
    const auto wires = [&](const std::string& cell, const std::string& options) {
        const ReadRows rows = rows_of(names + "2.4.2026;L/F;" + cell + ";;8,1;;;\n", options + mapping);
        if (rows.batch.notes.empty()) return rows.rows.at(0).complaints.at(0).complaint.message;
        const Values& values = rows.batch.notes.at(0).values;
        return text_field(values, "positive") + " and " + text_field(values, "negative");
    };
    CHECK(wires("WHT/BLK / WHT", "") == "WH/BK and WH");
    CHECK(wires("WHT/BLK / WHT", "pair_order = \"negative-first\"\n") == "WH and WH/BK");
    CHECK(wires("white+black", "pair_mark = \"+\"\n") == "WH and BK");
    CHECK(wires("WHT / ?", "pair_order = \"negative-first\"\n") == " and WH");  // [words.positive]: nothing
    CHECK(wires("WHT/BLK/WHT", "") == "pair \"WHT/BLK/WHT\" is not two wires with \" / \" between them");
    CHECK(wires("WHT / BLK / GRY", "") == "pair \"WHT / BLK / GRY\" is not two wires with \" / \" between them");
    CHECK(wires(" / WHT", "") == "pair \"/ WHT\" is not two wires with \" / \" between them");
    CHECK(wires("WHT / plaid", "").starts_with("negative \"plaid\""));
    const auto refused_mapping = [&](const std::string& text) {
        try {
            read_mapping(text, "bay.toml");
            return std::string();
        } catch (const InputRefused& refused) {
            return refused.complaints().front().message;
        }
    };
    CHECK(refused_mapping("pair_mark = \" / \"\n" + mapping_file) ==
          "pair_mark says nothing without a column for pair");
    CHECK(refused_mapping("pair_mark = 3\n" + mapping) == "pair_mark must be a text in quotes");
    std::string both = mapping;
    both.replace(both.find("pair = "), 0, "negative = \"Minus\"\n");
    CHECK(refused_mapping(both) == "pair gives both positive and negative, and one of them is mapped as well");
}

TEST_CASE("columns are named by their number where there is no row of names") {
    const std::string mapping =
        "rows = \"converter\"\nnames_row = 0\n[columns]\ncode = 1\nname = 2\ntopology = 3\ninput_max_v = 4\n";
    const ReadRows rows = rows_of("low-one,Low One,transformer,8\n", mapping);
    CHECK(refusals(rows) == Lines{});
    REQUIRE(rows.batch.entries.size() == 1);
    CHECK(*find_value<std::int64_t>(rows.batch.entries.front().values, "input_max_mv") == 8000);
    CHECK_THROWS_WITH(rows_of("low-one,Low One,transformer\n", mapping), "bay.csv has no column 4");
}

TEST_CASE("a column that is not there, or there twice, refuses the spreadsheet and points into the mapping") {
    CHECK_THROWS_WITH(rows_of(with(names, "Plus", "Pluss")), "bay.csv has no column \"Plus\"");
    CHECK_THROWS_WITH(rows_of(with(names, "Minus", "plus")), "bay.csv has two columns \"Plus\"");
    CHECK_THROWS_WITH(rows_of(""), "has no row 1 with the columns' names");
}

TEST_CASE("a mapping with a mistake is refused with its place and the nearest word") {
    const auto when = [](const std::string& from, const std::string& to) {
        return complaints_about_mapping(with(mapping_file, from, to));
    };
    CHECK(complaints_about_mapping(mapping_file) == Lines{});
    CHECK(complaints_about_mapping("rows = \"nots\"\n") ==
          Lines{"1:8 rows does not know \"nots\" | did you mean \"note\"?"});
    CHECK(complaints_about_mapping("") == Lines{"1:1 rows is missing | rows: what each row is"});
    CHECK(when("dates = \"day-month-year\"", "dates = \"day-month\"").front().starts_with("3:9 dates does not know"));
    CHECK(when("separator = \"semicolon\"", "separator = \"line\"") ==
          Lines{"2:13 separator cannot be line | comma, semicolon or tab"});
    CHECK(when("positive = \"Plus\"", "positiv = \"Plus\"") ==
          Lines{"9:1 a note has no \"positiv\" | did you mean \"positive\"?"});
    CHECK(when("positive = \"Plus\"", "positive = true") ==
          Lines{"9:12 a column is named by its name in quotes, or by its number from 1"});
    CHECK(when("method = \"metered\"", "method = \"meterd\"") ==
          Lines{"19:10 method does not know \"meterd\" | did you mean \"metered\"?"});
    CHECK(when("method = \"metered\"\n", "") ==
          Lines{"1:1 method has neither a column nor a value | method: how it was found; name its column, or give it a "
                "value under [always]"});
    CHECK(when("vehicle = \"orrery/vel-ostrel/sedan/2012\"\n", "") ==
          Lines{"1:1 which car the rows belong to is not said | give vehicle a column, or a value under [always]"});
    CHECK(when("method = \"metered\"", "method = \"metered\"\npositive = \"white\"") ==
          Lines{"20:1 positive has a column already | keep one of them"});
    CHECK(when("[\"Sum\"]", "\"Sum\"") ==
          Lines{"31:13 skip_rows names a column and a list of cells: \"Remarks\" = [\"sum\"]"});
    CHECK(when("\"L/F\" = \"front-left\"", "\"L/F\" = 1") ==
          Lines{"22:9 what a word means is a text in quotes | \"\" for nothing"});
}

TEST_CASE("what the store refuses is told row by row, and the others go in only when that is wanted") {
    AFolder folder;
    Catalog catalog =
        Catalog::create(folder / "shop.sqlite", "Tarrowby", CatalogKind::real, "2024-05-02", repeatable_random("rows"));
    catalog.add(read_batch(vehicle_file, "car.toml"), false, "2024-05-02");
    const std::string line = "3.6.2021;L/F;WHT;white/black;7,5;;;\n";
    const ReadRows rows =
        rows_of(names + line + "4.6.2021;front-lift;WHT;black;;;;\n" + "5.6.2021;L/F;WHT;white/black;;;;\n");
    const auto fates = [&](RefusedRows refused, bool dry_run) {
        return rows_report(rows, "bay.toml", catalog.add_rows(rows.batch, refused, dry_run, "2024-05-02"), refused);
    };
    const RowsReport held = fates(RefusedRows::hold_back, false);
    CHECK_FALSE(held.written);
    CHECK(held.here == 1);
    CHECK(held.refused == 1);
    CHECK(held.added == 1);
    REQUIRE(held.rows[1].complaints.size() == 1);
    CHECK(held.rows[1].complaints.front().column == "Speaker");
    CHECK(held.rows[1].complaints.front().complaint.message == "there is no tap \"base/front-lift/radio-plug\"");
    CHECK(catalog.counts().notes == 1);
    CHECK_FALSE(fates(RefusedRows::leave_out, true).written);
    CHECK(catalog.counts().notes == 1);
    const RowsReport kept = fates(RefusedRows::leave_out, false);
    CHECK(kept.written);
    CHECK(catalog.counts().notes == 2);
    CHECK(refused_rows(rows, kept) ==
          "\xEF\xBB\xBF"
          "Day;Speaker;Plus;Minus;AC volts;Full?;Beware;Ticket;refused because\r\n"
          "4.6.2021;front-lift;WHT;black;;;;;\"there is no tap \"\"base/front-lift/radio-plug\"\": "
          "write its [[tap]] table above this one\"\r\n");
    CHECK(fates(RefusedRows::leave_out, false).added == 0);
}
