// Are notes read straight from their row the same as by way of their record? Random notes with values in every field,
// among them values that no column holds.
#include <algorithm>
#include <random>

#include "a_catalog.h"
#include "catalog/ledger_rows.h"

using namespace tapbook;

namespace {

class RandomNotes {
  public:
    Values next(int number) {
        Values values{{"path", words(car + (number % 3 == 0 ? "/base" : "/base/front-left/radio-plug"))},
                      {"type", words("note")},
                      {"shop", words("00112233445566778899aabbccddeef" + std::to_string(below(3)))},
                      {"kind", std::string(words_of<NoteKind>()[below(words_of<NoteKind>().size())].word)}};
        if (below(2) == 0) values["car"] = words("ffeeddccbbaa9988776655443322110" + std::to_string(below(3)));
        for (const auto& row : note_fields())
            if (below(3) != 0) put(row.field, values);
        if (below(10) == 0) values["field_of_tomorrow"] = words("later");
        return values;
    }

  private:
    std::size_t below(std::size_t end) { return engine_() % end; }

    void put(const Field& field, Values& values) {
        const std::string key(field.stored);
        switch (field.kind) {
            case FieldKind::flag:
                values[key] = below(2) == 0;
                return;
            case FieldKind::whole:
            case FieldKind::decimal:
                values[key] = static_cast<std::int64_t>(below(20'000)) - 5'000;
                return;
            case FieldKind::word: {
                const auto list = field.words();
                values[key] = below(12) == 0 ? words("unheard_of") : std::string(list[below(list.size())]);
                return;
            }
            case FieldKind::colour:
                values[key] = words(below(12) == 0 ? "no colour" : below(2) == 0 ? "WH/BK" : "LBU");
                return;
            case FieldKind::day:
                values[key] = words(below(12) == 0 ? "last week" : "2021-06-0" + std::to_string(1 + below(9)));
                return;
            case FieldKind::names:
            case FieldKind::word_list:
            case FieldKind::loads:
                values[key] = TextList{"exhaust", "sharp_edges", "word " + std::to_string(below(4))};
                return;
            case FieldKind::name:
            case FieldKind::text:
            case FieldKind::slug:
                values[key] = words(below(12) == 0 ? "one\ntwo" : "words " + std::to_string(below(100)));
                return;
        }
    }

    std::mt19937 engine_{4};
};

}  // namespace

TEST_CASE("a note read from its row is the note its record says, whatever its fields hold") {
    constexpr int count = 2'000;
    CatalogFolder folder;
    auto catalog = folder.create();
    sqlite::Database database(folder.file());
    {
        sqlite::Transaction transaction(database);
        RandomNotes random;
        LedgerWriting ledger(database);
        for (int i = 0; i < count; ++i) {
            const Values record = random.next(i);
            ledger.insert(record, record_id(record_line(record)), i % 2 == 0);
        }
        transaction.commit();
    }
    std::map<RecordId, Note> by_record;
    std::map<std::string, std::set<std::string>> hazards;
    for (const auto& row : ledger_rows(database, car)) {
        Note note = note_of(row.values, row.id);
        note.vouched = row.vouched;
        by_record.emplace(row.id, note);
        for (const auto& word : list_field(row.values, "hazards")) hazards[note.path].insert(word);
    }
    REQUIRE(by_record.size() > count * 9 / 10);
    std::size_t seen = 0;
    const LedgerNotes notes = notes_of_vehicle(database, car);
    for (const auto& [path, live] : notes.live)
        for (const auto& note : live) {
            ++seen;
            CHECK(note.path == path);
            REQUIRE(note == by_record.at(note.id));
        }
    CHECK(seen == by_record.size());
    for (const auto& [path, wanted] : hazards) {
        const auto& found = notes.hazards.at(path);
        CHECK(std::set<std::string>(found.begin(), found.end()) == wanted);
        CHECK(found.size() == wanted.size());
    }
}
