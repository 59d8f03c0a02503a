// Do the field tables and the tables of the schema name the same things? Each table's columns are read from the texts
// of schema/ by this test alone; the fields come from the code.
#include "trade/field.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <filesystem>
#include <fstream>
#include <map>
#include <set>
#include <sstream>
#include <string>

#include "trade/record.h"
#include "trade/wire_colour.h"

using namespace tapbook;

namespace {

struct Column {
    std::string type;
    int since = 0;  // number of the schema file that has it first
};
using Columns = std::map<std::string, Column>;  // by name

std::vector<std::filesystem::path> schema_files() {
    std::vector<std::filesystem::path> files;
    for (const auto& entry : std::filesystem::directory_iterator(std::string(TAPBOOK_SOURCE) + "/schema"))
        if (entry.path().extension() == ".sql") files.push_back(entry.path());
    std::sort(files.begin(), files.end());
    return files;
}

// The columns between "CREATE TABLE name (" and the line that starts with ")", and those added by
// "ALTER TABLE name ADD COLUMN ...".
Columns columns_of(const std::string& table) {
    Columns columns;
    const std::string added = "ALTER TABLE " + table + " ADD COLUMN ";
    const auto take = [&](const std::string& words, int since) {
        std::string name, type;
        std::istringstream(words) >> name >> type;
        columns[name] = {type.substr(0, type.find_first_of(",;")), since};  // "INTEGER,-- comment"
    };
    for (const auto& file : schema_files()) {
        const int since = std::stoi(file.filename().string().substr(0, 4));
        std::ifstream lines(file);
        bool inside = false;
        for (std::string line; std::getline(lines, line);) {
            if (line == "CREATE TABLE " + table + " (") {
                inside = true;
            } else if (line.starts_with(")")) {
                inside = false;
            } else if (inside && !line.starts_with("    PRIMARY KEY")) {
                take(line, since);
            } else if (line.starts_with(added)) {
                take(line.substr(added.size()), since);
            }
        }
    }
    return columns;
}

const std::set<std::string> of_every_entry = {"path", "revision", "shop", "id", "date", "rest"};
const std::set<std::string> of_every_note = {"vehicle", "tap", "id", "kind", "shop", "vouched", "car", "rest"};

std::vector<Field> all_note_fields() {
    std::vector<Field> fields;
    for (const auto& field : note_fields()) fields.push_back(field.field);
    return fields;
}

// Every table under its name.
std::map<std::string, std::vector<Field>> all_tables() {
    std::map<std::string, std::vector<Field>> tables{{"note", all_note_fields()}};
    for (const auto& kind : words_of<EntryKind>()) {
        const auto fields = fields_of(kind.value);
        tables[std::string(kind.word)] = {fields.begin(), fields.end()};
    }
    return tables;
}

bool is_number_in(const std::string& table, FieldKind kind) {
    const bool small = kind == FieldKind::word || kind == FieldKind::colour || kind == FieldKind::day;
    return kind == FieldKind::whole || kind == FieldKind::decimal || kind == FieldKind::flag ||
           (small && table == "note");
}

}  // namespace

TEST_CASE("every field is a column of its table in the schema, and every other column is one of the record itself") {
    for (const auto& [table, fields] : all_tables()) {
        INFO(table);
        auto columns = columns_of(table);
        REQUIRE(columns.size() > 10);
        for (const auto& field : fields) {
            INFO(field.stored);
            REQUIRE(columns.contains(std::string(field.stored)));
            CHECK(columns.at(std::string(field.stored)).since == field.since);
            columns.erase(std::string(field.stored));
        }
        std::set<std::string> rest;
        for (const auto& [name, column] : columns) rest.insert(name);
        CHECK(rest == (table == "note" ? of_every_note : of_every_entry));
    }
}

TEST_CASE("numbers, yes and no lie in INTEGER columns, everything else in TEXT, and in the ledger words are numbers") {
    for (const auto& [table, fields] : all_tables()) {
        const auto columns = columns_of(table);
        for (const auto& field : fields) {
            INFO(table << "." << field.stored);
            CHECK(columns.at(std::string(field.stored)).type == (is_number_in(table, field.kind) ? "INTEGER" : "TEXT"));
        }
    }
}

TEST_CASE("names are unique within a table, written in small letters, and no longer than a record's key may be") {
    for (const auto& [table, fields] : all_tables()) {
        std::set<std::string_view> names, stored;
        for (const auto& field : fields) {
            INFO(table << "." << field.name);
            CHECK(names.insert(field.name).second);
            CHECK(stored.insert(field.stored).second);
            CHECK(field.stored.size() <= most_key_bytes);
            for (const auto name : {field.name, field.stored})
                CHECK(name.find_first_not_of("abcdefghijklmnopqrstuvwxyz0123456789_") == std::string_view::npos);
            CHECK_FALSE(field.meaning.empty());
        }
        for (const char* taken : {"type", "path", "revision", "shop", "practice", "at", "code", "id", "rest"})
            CHECK(stored.count(taken) + names.count(taken) == 0);
        CHECK(fields.size() + 8 <= most_record_keys);  // type, kind, path, shop, car, date, revision, practice
    }
}

TEST_CASE("a decimal field has a scale and bounds, and a unit unless it is a mere share") {
    for (const auto& [table, fields] : all_tables())
        for (const auto& field : fields) {
            INFO(table << "." << field.name);
            if (field.kind == FieldKind::decimal) {
                CHECK(field.digits >= 1);
                CHECK(field.digits <= 6);
                CHECK(field.least < field.most);
                CHECK(field.most <= most_record_integer);
                CHECK((!field.unit.empty() || field.name == "efficiency"));
            } else if (field.kind == FieldKind::whole) {
                CHECK(field.digits == 0);
                CHECK(field.least < field.most);
            } else {
                CHECK(field.digits == 0);
                CHECK(field.least == 0);
                CHECK(field.most == 0);
            }
        }
}

TEST_CASE("the name says the unit people write, the stored name the small unit it becomes") {
    // digits between the two units
    struct Spelling {
        std::string_view written, stored;
        int digits;
    };
    const Spelling spellings[] = {
        {"_v", "_mv", 3},   {"_volts", "_mv", 3}, {"_ohms", "_mohm", 3}, {"_hz", "_mhz", 3},       {"_amps", "_ma", 3},
        {"_ah", "_mah", 3}, {"_mm2", "_um2", 3},  {"_db", "_mdb", 3},    {"watts", "watts_mw", 3}, {"_s", "_ms", 3}};
    int seen = 0;
    for (const auto& [table, fields] : all_tables())
        for (const auto& field : fields) {
            if (field.kind != FieldKind::decimal || field.stored.ends_with("_milli")) continue;
            INFO(table << "." << field.name << " stored as " << field.stored);
            const bool known = std::any_of(std::begin(spellings), std::end(spellings), [&](const Spelling& s) {
                return field.name.ends_with(s.written) && field.stored.ends_with(s.stored) && field.digits == s.digits;
            });
            CHECK((known || (field.stored.ends_with("_mohm") && field.name.find("ohms") != std::string_view::npos) ||
                   (field.stored.ends_with("_mw") && field.unit == "W")));
            ++seen;
        }
    CHECK(seen > 30);
}

TEST_CASE("every list of words has words, all different, and only words and lists of words have one") {
    for (const auto& [table, fields] : all_tables())
        for (const auto& field : fields) {
            INFO(table << "." << field.name);
            const bool wanted = field.kind == FieldKind::word || field.kind == FieldKind::word_list;
            REQUIRE((field.words != nullptr) == wanted);
            if (!wanted) continue;
            const auto words = field.words();
            CHECK(words.size() >= 2);
            CHECK(std::set<std::string_view>(words.begin(), words.end()).size() == words.size());
            for (const auto word : words) CHECK_FALSE(word.empty());
        }
}

TEST_CASE("each field of a note belongs to a kind of note, and measured numbers and remarks are never voted on") {
    for (const auto& note_field : note_fields()) {
        INFO(note_field.field.name);
        CHECK((note_field.pair || note_field.switched || note_field.system));
        CHECK(applies_to(note_field, NoteKind::pair) == note_field.pair);
        CHECK(applies_to(note_field, NoteKind::switched) == note_field.switched);
        CHECK(applies_to(note_field, NoteKind::system) == note_field.system);
        const auto kind = note_field.field.kind;
        if (kind == FieldKind::decimal || kind == FieldKind::whole || kind == FieldKind::text || kind == FieldKind::day)
            CHECK_FALSE(note_field.voted);
        if (kind == FieldKind::colour) CHECK(note_field.voted);
        CHECK(find_note_field(note_field.field.name) == &note_field);
    }
    CHECK(find_note_field("ac_mv") == nullptr);  // the stored name is not what people write
    CHECK(find_note_field("") == nullptr);
}

TEST_CASE("what one field needs another of comes in the same kinds of note") {
    const auto kinds = [](std::string_view name) {
        const auto* field = find_note_field(name);
        REQUIRE(field != nullptr);
        return std::tuple(field->pair, field->switched, field->system);
    };
    for (const auto* name : {"date", "method", "year", "hazards", "remarks"})
        CHECK(kinds(name) == std::tuple(true, true, true));
    for (const auto* name : {"positive", "negative", "polarity", "ac_v", "tone_hz", "tone_db", "full_volume", "drive"})
        CHECK(kinds(name) == std::tuple(true, false, false));
    for (const auto* name : {"wire", "key_off_v", "accessory_v", "run_v", "crank_v"})
        CHECK(kinds(name) == std::tuple(false, true, false));
    CHECK(kinds("premium") == std::tuple(false, false, true));
    CHECK(find_note_field("date")->field.required);
    CHECK(find_note_field("method")->field.required);
}

TEST_CASE("a field is found by what people write and by nothing else") {
    const auto fields = fields_of(EntryKind::circuit);
    REQUIRE(find_field(fields, "rating_ohms") != nullptr);
    CHECK(find_field(fields, "rating_ohms")->stored == "rating_mohm");
    for (const char* bad : {"rating_mohm", "Rating_ohms", "rating_ohm", "", " watts"})
        CHECK(find_field(fields, bad) == nullptr);
}
