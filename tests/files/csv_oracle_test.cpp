// Does the reader of CSV agree with libcsv 3 in its strict mode, on random texts? libcsv drops empty lines and the
// blanks around a cell; the texts have no blanks, and empty lines are left out of the comparison.
#include <csv.h>
#include <rapidcheck.h>

#include <catch2/catch.hpp>

#include "files/csv.h"

using namespace tapbook;

namespace {

using Cells = std::vector<std::vector<std::string>>;

struct Read {
    bool taken = true;
    Cells rows;
    std::vector<std::string> row;
};

extern "C" void at_cell(void* text, std::size_t size, void* read) {
    static_cast<Read*>(read)->row.emplace_back(static_cast<const char*>(text), size);
}

extern "C" void at_row(int, void* read) {
    auto* whole = static_cast<Read*>(read);
    whole->rows.push_back(std::move(whole->row));
    whole->row.clear();
}

Read by_libcsv(const std::string& text) {
    Read read;
    csv_parser parser;
    csv_init(&parser, CSV_STRICT | CSV_STRICT_FINI);
    read.taken = csv_parse(&parser, text.data(), text.size(), at_cell, at_row, &read) == text.size() &&
                 csv_fini(&parser, at_cell, at_row, &read) == 0;
    csv_free(&parser);
    return read;
}

Read by_us(const std::string& text) {
    Read read;
    try {
        for (const auto& row : read_csv(text, "a.csv", ',').rows) {
            const bool is_empty_line = row.cells.size() == 1 && row.cells.front().text.empty();
            if (is_empty_line) continue;
            read.rows.emplace_back();
            for (const auto& cell : row.cells) read.rows.back().push_back(cell.text);
        }
    } catch (const InputRefused&) {
        read.taken = false;
    }
    return read;
}

Cells without_empty_lines(Cells rows) {
    std::erase_if(rows, [](const auto& row) { return row.empty() || (row.size() == 1 && row.front().empty()); });
    return rows;
}

}  // namespace

TEST_CASE("the reader takes, refuses and reads the same texts as libcsv") {
    int taken = 0, refused = 0;
    CHECK(rc::check("beside libcsv", [&] {
        const auto piece = rc::gen::weightedElement<std::string>({{6, "a"},
                                                                  {4, ","},
                                                                  {2, "\"\""},
                                                                  {2, "\"x\""},
                                                                  {1, "\""},
                                                                  {2, "\n"},
                                                                  {2, "\r\n"},
                                                                  {1, "\r"},
                                                                  {2, "\"b,c\"\"d\n\""},
                                                                  {1, "\xC3\xA9"}});
        std::string text;
        for (int i = *rc::gen::inRange(0, 12); i > 0; --i) text += *piece;
        const Read theirs = by_libcsv(text), ours = by_us(text);
        RC_ASSERT(ours.taken == theirs.taken);
        if (ours.taken) RC_ASSERT(ours.rows == without_empty_lines(theirs.rows));
        ours.taken ? ++taken : ++refused;
    }));
    CHECK(taken > 10);
    CHECK(refused > 10);
}
