// Are the quick ways the same as the slow ones? A line read in one pass against the JSON library; cells bound straight
// from the line against those made from the record.
#include <rapidcheck.h>

#include <catch2/catch.hpp>
#include <optional>
#include <string>

#include "catalog/cell_binding.h"
#include "catalog/cells.h"
#include "trade/trade.h"

using namespace tapbook;

namespace {

rc::Gen<std::string> some_text() {
    const auto piece =
        rc::gen::element<std::string>("a", "Z", "0", " ", "\"", "\\", "/", "\n", "\t", "\r", "\b", "\f", "\x01", "\x1f",
                                      "\x7f", "é", "Ω", "日", "🔧", "WH", "WH/BK", "metered", "2024-05-02");
    return rc::gen::map(rc::gen::container<std::vector<std::string>>(piece),
                        [](const std::vector<std::string>& pieces) {
                            std::string text;
                            for (const auto& one : pieces) text += one;
                            return nfc(text);
                        });
}

rc::Gen<Value> some_value() {
    const auto number = rc::gen::inRange<std::int64_t>(-most_record_integer, most_record_integer + 1);
    return rc::gen::oneOf(
        rc::gen::map(number, [](std::int64_t n) { return Value(n); }),
        rc::gen::map(rc::gen::arbitrary<bool>(), [](bool flag) { return Value(flag); }),
        rc::gen::map(some_text(), [](std::string text) { return Value(std::move(text)); }),
        rc::gen::map(rc::gen::element<std::string>("WH", "BN/RD", "XX", "metered", "scoped", "bridged", "2020-02-29",
                                                   "2021-02-29", ""),
                     [](std::string text) { return Value(std::move(text)); }),
        rc::gen::map(rc::gen::container<TextList>(some_text()), [](TextList list) { return Value(std::move(list)); }));
}

// Names of fields, among them those of the tables.
rc::Gen<std::string> some_key(std::span<const Field> fields) {
    std::vector<std::string> names = {"zz", "a", "glow", "type", "shop", "path"};
    for (const auto& field : fields) names.emplace_back(field.stored);
    return rc::gen::elementOf(names);
}

Values some_record(std::span<const Field> fields) {
    Values record;
    const int count = *rc::gen::inRange(0, 14);
    for (int i = 0; i < count; ++i) record[*some_key(fields)] = *some_value();
    return record;
}

std::optional<Values> quickly(const std::string& line) {
    RecordTokens tokens;
    return tokens.read(line) ? std::optional(values_of(tokens)) : std::nullopt;
}

std::optional<Values> slowly(const std::string& line) {
    try {
        return read_record_line_slowly(line);
    } catch (const RecordRefused&) {
        return std::nullopt;
    }
}

std::vector<Field> note_field_list() {
    std::vector<Field> fields;
    for (const auto& row : note_fields()) fields.push_back(row.field);
    return fields;
}

constexpr std::string_view kept[] = {"path", "shop", "type"};

// What the two ways would put into a row of a table with these fields.
void check_same_cells(sqlite::Database& database, CellBinding& binding, sqlite::Statement& insert,
                      std::span<const Field> fields, CellStyle style, const Values& record) {
    const std::string line = record_line(record);
    RecordTokens tokens;
    RC_ASSERT(tokens.read(line));
    binding.bind(insert, tokens);
    insert.run();
    auto row = database.prepare("SELECT * FROM cells");
    RC_ASSERT(row.step());
    int column = 0;
    for (const auto& field : fields) RC_ASSERT(row.value(column++) == cell_of(field, record, style));
    RC_ASSERT(row.value(column) == rest_of(record, fields, kept, style));
    row.reset();
    database.execute("DELETE FROM cells");
}

// A table of its own, so that every cell can be read back as it was bound.
void check_cells(std::span<const Field> fields, CellStyle style) {
    auto database = sqlite::Database::in_memory();
    std::string columns, marks;
    for (const auto& field : fields) {
        columns += std::string(field.stored) + " ANY, ";
        marks += "?, ";
    }
    database.execute("CREATE TABLE cells (" + columns + "rest ANY) STRICT");
    auto insert = database.prepare("INSERT INTO cells VALUES (" + marks + "?)");
    CellBinding binding(fields, kept, style, 1);
    // The same binding again and again: a cell of the record before must not stay.
    REQUIRE(rc::check([&] { check_same_cells(database, binding, insert, fields, style, some_record(fields)); }));
}

}  // namespace

TEST_CASE("a line in the accepted form is read in one pass as the JSON library reads it") {
    const auto fields = note_field_list();
    REQUIRE(rc::check([&] {
        const Values record = some_record(fields);
        RC_ASSERT(quickly(record_line(record)) == record);
    }));
}

TEST_CASE("a line with something changed is taken or refused alike by both ways") {
    const auto fields = note_field_list();
    REQUIRE(rc::check([&] {
        std::string line = record_line(some_record(fields));
        const int changes = *rc::gen::inRange(1, 4);
        for (int i = 0; i < changes; ++i) {
            const auto at = *rc::gen::inRange<std::size_t>(0, line.size() + 1);
            const auto piece = *rc::gen::element<std::string>("", "\"", ",", ":", "{", "}", "[", "]", "\\", "\\u0041",
                                                              "0", "-", "1e3", "1.0", " ", "\n", "\xff", "\xc3",
                                                              "e\xcc\x81", "true", "null", std::string(1, '\0'));
            line.replace(at, std::min<std::size_t>(line.size() - at, *rc::gen::inRange<std::size_t>(0, 3)), piece);
        }
        RC_ASSERT(quickly(line) == slowly(line));
    }));
}

TEST_CASE("the cells of a note bound from its line are those made from its record") {
    check_cells(note_field_list(), CellStyle::ledger);
}

TEST_CASE("the cells of an entry bound from its line are those made from its record") {
    for (const auto& kind : words_of<EntryKind>()) check_cells(fields_of(kind.value), CellStyle::entry);
}
