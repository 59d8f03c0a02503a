// Can every record be written again from the cells it was stored in? Random records, with fields of the right and of
// the wrong type, go through the cells of their table and must come back equal: then their bytes and ids do as well.
#include "catalog/cells.h"

#include <rapidcheck.h>

#include <catch2/catch.hpp>
#include <string>

#include "sqlite/sqlite.h"

using namespace tapbook;

namespace {

std::vector<Field> note_columns() {
    std::vector<Field> fields;
    for (const auto& field : note_fields()) fields.push_back(field.field);
    return fields;
}

rc::Gen<Value> some_value() {
    const auto text = rc::gen::element<std::string>("", "WH", "WH/BK", "metered", "seen", "2021-06-03", "0000-01-01",
                                                    "exhaust", "x", "a\nb", "\n", "größer", "body");
    return rc::gen::oneOf(
        rc::gen::map(rc::gen::inRange<std::int64_t>(-3, 20000), [](std::int64_t n) { return Value(n); }),
        rc::gen::map(rc::gen::arbitrary<bool>(), [](bool flag) { return Value(flag); }),
        rc::gen::map(text, [](std::string one) { return Value(std::move(one)); }),
        rc::gen::map(rc::gen::container<TextList>(text), [](TextList list) { return Value(std::move(list)); }));
}

// Some of the table's fields and one that no version knows.
Values some_record(std::span<const Field> fields) {
    Values record;
    for (int i = *rc::gen::inRange(0, 8); i > 0; --i)
        record[std::string(fields[*rc::gen::inRange<std::size_t>(0, fields.size())].stored)] = *some_value();
    if (*rc::gen::arbitrary<bool>()) record["zz_later"] = *some_value();
    return record;
}

Values through_cells(const Values& record, std::span<const Field> fields, CellStyle style) {
    Values back;
    for (const auto& field : fields) put_cell(field, cell_of(field, record, style), back, style);
    put_rest(rest_of(record, fields, {}, style), back);
    return back;
}

bool is_integer_column(const Field& field, CellStyle style) {
    const bool small = field.kind == FieldKind::word || field.kind == FieldKind::colour || field.kind == FieldKind::day;
    return field.kind == FieldKind::whole || field.kind == FieldKind::decimal || field.kind == FieldKind::flag ||
           (small && style == CellStyle::ledger);
}

}  // namespace

TEST_CASE("every record comes back equal from the cells of the ledger") {
    const auto fields = note_columns();
    REQUIRE(rc::check([&] {
        const Values record = some_record(fields);
        RC_ASSERT(through_cells(record, fields, CellStyle::ledger) == record);
    }));
}

TEST_CASE("every record comes back equal from the cells of its entry") {
    for (const auto& kind : words_of<EntryKind>()) {
        const auto fields = fields_of(kind.value);
        REQUIRE(rc::check([&] {
            const Values record = some_record(fields);
            RC_ASSERT(through_cells(record, fields, CellStyle::entry) == record);
        }));
    }
}

TEST_CASE("no cell is of a type that its column refuses") {
    const auto fields = note_columns();
    REQUIRE(rc::check([&] {
        const Values record = some_record(fields);
        for (const auto style : {CellStyle::ledger, CellStyle::entry})
            for (const auto& field : fields) {
                const auto cell = cell_of(field, record, style);
                if (std::holds_alternative<std::monostate>(cell)) continue;
                RC_ASSERT(std::holds_alternative<std::int64_t>(cell) == is_integer_column(field, style));
            }
    }));
}

TEST_CASE("a word, a colour or a field that this version does not know is kept in the rest") {
    const auto fields = note_columns();
    const Values record = {
        {"method", std::string("listened")}, {"positive", std::string("XX/YY")}, {"zz_later", TextList{"x"}}};
    const auto rest = rest_of(record, fields, {}, CellStyle::ledger);
    REQUIRE(std::holds_alternative<std::string>(rest));
    CHECK(std::get<std::string>(rest) == record_line(record));
    CHECK(through_cells(record, fields, CellStyle::ledger) == record);
}

TEST_CASE("yes and no, zero, an empty text and an empty list are not the same as absent") {
    const auto fields = note_columns();
    const Values record = {
        {"premium", false}, {"key_off_mv", std::int64_t{0}}, {"remarks", std::string()}, {"hazards", TextList{}}};
    for (const auto style : {CellStyle::ledger, CellStyle::entry})
        CHECK(through_cells(record, fields, style) == record);
}
