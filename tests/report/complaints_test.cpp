// Does a refused input show its place, with the caret under the offending byte, whatever stands before it?
#include <catch2/catch.hpp>

#include <string>

#include "approved.h"
#include "report/report.h"

using namespace tapbook;
using approval::approve;

namespace {

Complaint complaint_at(int column, std::string line_text, std::string message = "unknown wire colour \"wht/blu\"",
                       std::string hint = "did you mean \"wht/blue\"?") {
    return {{"pack.toml", 14, column, std::move(line_text)}, std::move(message), std::move(hint)};
}

// Column of the byte where `part` begins, from 1.
int column_of(const std::string& line, std::string_view part) {
    return static_cast<int>(line.find(part)) + 1;
}

std::string shown_line(const Complaint& complaint, std::size_t number) {
    std::string text = complaints_text(std::span(&complaint, 1));
    for (; number > 0; --number) text = text.substr(text.find('\n') + 1);
    return text.substr(0, text.find('\n'));
}

// What stands above the caret, from there to the end of the line.
std::string above_caret(const Complaint& complaint) {
    const std::string line = shown_line(complaint, 1);
    int columns = shown_width(shown_line(complaint, 2)) - 1;
    std::size_t at = 0;
    while (columns > 0) {
        std::size_t next = at + 1;
        while (next < line.size() && (static_cast<unsigned char>(line[next]) & 0xc0) == 0x80) ++next;
        columns -= shown_width(line.substr(at, next - at));
        at = next;
    }
    REQUIRE(columns == 0);
    return line.substr(at);
}

}  // namespace

TEST_CASE("complaints read as approved: place, line, caret, way out") {
    const std::string plain = "positive = \"wht/blu\"", accents = "café = \"日本\", positive = \"wht/blu\"",
                      tabs = "\t\tpositive = \"wht/blu\"";
    const std::string head(300, 'x'), tail(300, 'y'), longest = head + " wht/blu " + tail;
    const Complaint all[] = {complaint_at(column_of(plain, "\"wht"), plain),
                             complaint_at(column_of(accents, "\"wht"), accents),
                             complaint_at(column_of(tabs, "\"wht"), tabs),
                             complaint_at(column_of(longest, "wht"), longest),
                             complaint_at(1, longest),
                             complaint_at(static_cast<int>(plain.size()) + 1, plain, "the table is not closed", ""),
                             {{"pack.toml", 3, 0, {}}, "no vehicle is named", "write [vehicle] first"},
                             {{"missing.toml", 0, 0, {}}, "there is no such file", "check the name and the folder"}};
    approve("complaints", complaints_text(all));
}

TEST_CASE("the caret stands under the offending byte after accents, wide characters and tabs") {
    for (const std::string before : {"", "x = ", "café ", "日本 ", "\t\t", "e\xcc\x81 ", "\xff\xfe ", "\x1b[31m"}) {
        const std::string line = before + "HERE and more";
        INFO(before);
        CHECK(above_caret(complaint_at(column_of(line, "HERE"), line)) == "HERE and more");
    }
}

TEST_CASE("a long line is cut around the caret, never inside a character, and fits 100 columns") {
    for (std::size_t before = 0; before < 400; before += 7) {
        std::string line;
        while (line.size() < before) line += "é";
        line += "HERE";
        for (int i = 0; i < 200; ++i) line += "ü";
        const Complaint complaint = complaint_at(column_of(line, "HERE"), line);
        CHECK(above_caret(complaint).substr(0, 4) == "HERE");
        CHECK(is_utf8(shown_line(complaint, 1)));
        CHECK(shown_line(complaint, 1).find("<0x") == std::string::npos);
        CHECK(shown_width(shown_line(complaint, 1)) <= 100);
        CHECK(shown_width(shown_line(complaint, 2)) <= 100);
    }
}

TEST_CASE("a column beyond the end of its line puts the caret behind the line") {
    CHECK(above_caret(complaint_at(500, "short")).empty());
    CHECK(above_caret(complaint_at(6, "short")).empty());
}
