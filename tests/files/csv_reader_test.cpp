// Which texts are CSV, what do their cells say and where do they stand? Accepted and refused texts, limits at N-1, N
// and N+1, and the law that what is written comes back.
#include <rapidcheck.h>

#include <catch2/catch.hpp>

#include "files/csv.h"
#include "files/csv_writer.h"

using namespace tapbook;

namespace {

using Cells = std::vector<std::vector<std::string>>;

Cells cells_of(const std::string& text, std::optional<char> separator = {}) {
    Cells rows;
    for (const auto& row : read_csv(text, "a.csv", separator).rows) {
        rows.emplace_back();
        for (const auto& cell : row.cells) rows.back().push_back(cell.text);
    }
    return rows;
}

std::string complaint_about(const std::string& text, const CsvLimits& limits = {}) {
    try {
        read_csv(text, "a.csv", {}, limits);
        return "taken";
    } catch (const InputRefused& refused) {
        const auto& one = refused.complaints().front();
        return std::to_string(one.place.line) + ":" + std::to_string(one.place.column) + " " + one.message + " | " +
               one.hint;
    }
}

}  // namespace

TEST_CASE("cells hold separators, quotes and line ends when they are quoted, and every line end ends a row") {
    CHECK(cells_of("").empty());
    CHECK(cells_of("a") == Cells{{"a"}});
    CHECK(cells_of("a,b\r\nc,d\r\n") == Cells{{"a", "b"}, {"c", "d"}});
    CHECK(cells_of("a,b\nc,d") == Cells{{"a", "b"}, {"c", "d"}});
    CHECK(cells_of("a,b\rc,d\r") == Cells{{"a", "b"}, {"c", "d"}});
    CHECK(cells_of("\"a,b\",\"c\"\"d\",\"e\r\nf\"\r\n") == Cells{{"a,b", "c\"d", "e\r\nf"}});
    CHECK(cells_of("\"\"") == Cells{{""}});
    CHECK(cells_of("a,\n,b\n") == Cells{{"a", ""}, {"", "b"}});
    CHECK(cells_of("a,b,") == Cells{{"a", "b", ""}});
    CHECK(cells_of("a\n\nb\n") == Cells{{"a"}, {""}, {"b"}});
    CHECK(cells_of(" a , b ") == Cells{{" a ", " b "}});
    CHECK(cells_of("\xEF\xBB\xBFName,\"x\"\n") == Cells{{"Name", "x"}});
}

TEST_CASE("the separator is found in the first row that is not empty, outside quotes") {
    CHECK(read_csv("a;b;c\n1,5;2;3\n", "a.csv").separator == ';');
    CHECK(read_csv("\r\na\tb\n", "a.csv").separator == '\t');
    CHECK(read_csv("\"x;y;z\",b\n", "a.csv").separator == ',');
    CHECK(read_csv("alone\n", "a.csv").separator == ',');
    CHECK(cells_of("a,b;c", ';') == Cells{{"a,b", "c"}});
}

TEST_CASE("every cell knows its line and column, in bytes, behind line ends in quotes too") {
    const auto csv = read_csv(
        "\xEF\xBB\xBF"
        "a,\"b\r\nc\",d\n\xC3\xA9,f\n",
        "a.csv");
    const auto& first = csv.rows[0].cells;
    CHECK((first[0].line == 1 && first[0].column == 1));
    CHECK((first[1].line == 1 && first[1].column == 3));
    CHECK((first[2].line == 2 && first[2].column == 4));
    const auto& second = csv.rows[1].cells;
    CHECK((second[1].line == 3 && second[1].column == 4));
    CHECK(csv_line("\xEF\xBB\xBF"
                   "a\r\nb\rc\nd",
                   1) == "a");
    CHECK(csv_line("a\r\nb\rc\nd", 3) == "c");
    CHECK(csv_line("a\r\nb\rc\nd", 4) == "d");
    CHECK(csv_line("a", 2).empty());
}

TEST_CASE("a quote that stands wrong or is never closed is refused where it stands") {
    const std::string twice = "write the whole cell in quotes and each quote in it twice: \"6.5\"\" speaker\"";
    CHECK(complaint_about("a,6.5\" speaker\n") == "1:6 a quote inside a cell that does not begin with one | " + twice);
    CHECK(complaint_about("a, \"b\"\n") == "1:4 a quote inside a cell that does not begin with one | " + twice);
    CHECK(
        complaint_about("a\n\"b\"c,d\n") ==
        "2:4 something stands between a closing quote and the end of its cell | write each quote inside a cell twice");
    CHECK(complaint_about("a\nb,\"c\nd,e\n") == "2:3 this quote is never closed | close it, or take it away");
    CHECK(complaint_about("\"") == "1:1 this quote is never closed | close it, or take it away");
    CHECK(complaint_about("\"a\"\"") == "1:1 this quote is never closed | close it, or take it away");
}

TEST_CASE("what is not UTF-8 text is refused with the way to save it") {
    const std::string said =
        "0:0 is not text in UTF-8 | save it from the spreadsheet as CSV with the character set Unicode (UTF-8)";
    CHECK(complaint_about("Gr\xFCn\n") == said);
    CHECK(complaint_about(std::string("a\0b", 3)) == said);
}

TEST_CASE("each limit takes one less and itself and refuses one more") {
    CsvLimits limits;
    limits.rows = 3;
    CHECK(complaint_about("a\nb\n", limits) == "taken");
    CHECK(complaint_about("a\nb\nc\n", limits) == "taken");
    CHECK(complaint_about("a\nb\nc\nd\n", limits) == "4:1 holds more than 3 rows | split the sheet");
    limits = {};
    limits.cells_in_row = 3;
    CHECK(complaint_about("a,b\n", limits) == "taken");
    CHECK(complaint_about("a,b,c\n", limits) == "taken");
    CHECK(complaint_about("a,b,c,d\n", limits) ==
          "1:7 holds more than 3 cells in one row | is the separator right? the mapping can name it: separator = "
          "\"semicolon\"");
    limits = {};
    limits.bytes_in_cell = 3;
    CHECK(complaint_about("ab,\"ab\"\n", limits) == "taken");
    CHECK(complaint_about("abc,\"abc\"\n", limits) == "taken");
    CHECK(complaint_about("abcd\n", limits) == "1:1 a cell longer than 3 bytes | shorten it");
    CHECK(complaint_about("a,\"abcd\"\n", limits) == "1:3 a cell longer than 3 bytes | shorten it");
    limits = {};
    limits.bytes = 1024 * 1024;
    CHECK(complaint_about(std::string(1024 * 1024 - 1, '\n'), limits).starts_with("100001:1 "));  // of rows, not bytes
    CHECK(complaint_about(std::string(1024 * 1024 + 1, '\n'), limits) == "0:0 is larger than 1 MiB | split the sheet");
}

TEST_CASE("what a spreadsheet would take for a formula is written behind an apostrophe, and comes back without it") {
    for (const std::string text : {"=1+1", "+1", "-1", "@x", "\tx", "\rx", "\nx",
                                   "\xEF\xBC\x9D"
                                   "1",
                                   "'", "''", "'=1"}) {
        INFO(text);
        CHECK(guarded(text) == "'" + text);
        CHECK(unguarded(guarded(text)) == text);
        CsvSheet sheet;
        sheet.row({text});
        CHECK(sheet.take().starts_with("\xEF\xBB\xBF\"'"));
    }
    for (const std::string text : {"", "a=1", "1-1", "x'y", "12"}) {
        CHECK(guarded(text) == text);
        CHECK(unguarded(text) == text);
    }
    CHECK(unguarded("'tis") == "'tis");  // typed by people: not ours
    CsvSheet sheet;
    sheet.row({CsvNumber{"-12.5"}, CsvNumber{"=1"}, std::string("-12.5")});
    CHECK(sheet.take() == "\xEF\xBB\xBF-12.5,\"'=1\",\"'-12.5\"\r\n");
}

TEST_CASE("random texts come back as they were written, whatever the separator") {
    CHECK(rc::check("write and read", [] {
        const auto separator = *rc::gen::element(',', ';', '\t');
        const int rows = *rc::gen::inRange(1, 6), columns = *rc::gen::inRange(1, 5);
        const auto piece =
            rc::gen::element<std::string>("a", "\"", ",", ";", "\t", "\r", "\n", "\r\n", "'", "=", "+", "-", "@", " ",
                                          "\xC3\xA9", "\xEF\xBC\x9D", "\xEF\xBB\xBF", "x y");
        Cells wanted;
        CsvSheet sheet(separator);
        for (int r = 0; r < rows; ++r) {
            std::vector<CsvValue> row;
            wanted.emplace_back();
            for (int c = 0; c < columns; ++c) {
                std::string text;
                for (int i = *rc::gen::inRange(0, 6); i > 0; --i) text += *piece;
                wanted.back().push_back(text);
                row.emplace_back(text);
            }
            sheet.row(row);
        }
        Cells read;
        for (const auto& row : read_csv(sheet.take(), "a.csv", separator).rows) {
            read.emplace_back();
            for (const auto& cell : row.cells) read.back().emplace_back(unguarded(cell.text));
        }
        RC_ASSERT(read == wanted);
    }));
}
