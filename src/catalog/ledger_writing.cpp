// How are notes put into the ledger? Rows are only ever added: vehicle and tap numbers are given on first sight.
#include <fmt/format.h>

#include "catalog/ledger_rows.h"

namespace tapbook {
namespace {

constexpr std::string_view kept_by_notes[] = {"type", "kind", "path", "shop", "car", "practice"};

}  // namespace

const std::vector<Field>& ledger_fields() {
    static const std::vector<Field> fields = [] {
        std::vector<Field> list;
        for (const auto& note_field : note_fields()) list.push_back(note_field.field);
        return list;
    }();
    return fields;
}

std::int64_t shop_number(sqlite::Database& database, std::string_view id_bytes) {
    auto known = database.prepare("SELECT number FROM shop WHERE id = ?1");
    known.bind_all(sqlite::BlobView{id_bytes});
    if (known.step()) return known.integer(0);
    auto insert = database.prepare("INSERT INTO shop (id) VALUES (?1)");
    insert.bind_all(sqlite::BlobView{id_bytes});
    insert.run();
    return database.last_insert_rowid();
}

namespace {

std::string insert_text() {
    std::string columns, marks;
    int mark = 8;
    for (const auto& field : ledger_fields()) {
        columns += fmt::format(", {}", field.stored);
        marks += fmt::format(", ?{}", mark++);
    }
    return fmt::format(
        "INSERT OR IGNORE INTO note (vehicle, tap, id, kind, shop, vouched, car{}, rest) "
        "VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7{}, ?{})",
        columns, marks, mark);
}

}  // namespace

LedgerWriting::LedgerWriting(sqlite::Database& database)
    : database_(database),
      known_(database.prepare("SELECT vehicle, tap FROM subject WHERE path = ?1")),
      insert_(database.prepare(insert_text())),
      insert_line_(database.prepare(insert_text())),
      new_subject_(database.prepare("INSERT INTO subject (vehicle, path) VALUES (?1, ?2)")),
      cells_(ledger_fields(), kept_by_notes, CellStyle::ledger, 8) {}

// Notes of one path mostly follow each other.
LedgerWriting::Subject LedgerWriting::subject_of(std::string_view path) {
    if (path == last_path_) return last_;
    known_.bind_all(path);
    if (known_.step()) {
        last_ = {known_.integer(0), known_.integer(1)};
        known_.reset();
    } else {
        last_ = new_subject(path);
    }
    last_path_ = path;
    return last_;
}

LedgerWriting::Subject LedgerWriting::new_subject(std::string_view path) {
    const auto vehicle = vehicle_of(path);
    new_subject_.bind_all(vehicle, path);
    new_subject_.run();
    return {vehicle, database_.last_insert_rowid()};
}

// So do new places of one car. REQUIRES that a note follows each new number: see next_vehicle_number.
std::int64_t LedgerWriting::vehicle_of(std::string_view path) {
    const auto car = path_head(path, vehicle_depth);
    if (car == last_car_) return last_vehicle_;
    auto vehicle = vehicle_number(database_, car);
    if (!vehicle) {
        auto highest = database_.prepare(next_vehicle_number);
        highest.step();
        vehicle = highest.integer(0);
    }
    last_car_ = car;
    last_vehicle_ = *vehicle;
    return *vehicle;
}

std::int64_t LedgerWriting::number_of_shop(std::string_view hex) {
    if (const auto found = shops_.find(hex); found != shops_.end()) return found->second;
    const auto number = shop_number(database_, bytes_of_hex(hex));
    shops_.emplace(hex, number);
    return number;
}

bool LedgerWriting::insert(const Values& record, const RecordId& id, bool vouched) {
    const auto subject = subject_of(text_field(record, "path"));
    const auto kind = word_field<NoteKind>(record, "kind").value_or(NoteKind::pair);
    const std::string car = bytes_of_hex(text_field(record, "car"));
    insert_.bind(1, subject.vehicle);
    insert_.bind(2, subject.tap);
    insert_.bind(3, sqlite::BlobView{as_bytes(id)});
    insert_.bind(4, static_cast<std::int64_t>(kind));
    insert_.bind(5, number_of_shop(text_field(record, "shop")));
    insert_.bind(6, vouched ? 1 : 0);
    car.empty() ? insert_.bind(7, std::nullopt) : insert_.bind(7, sqlite::BlobView{car});
    int mark = 8;
    for (const auto& field : ledger_fields()) insert_.bind(mark++, cell_of(field, record, CellStyle::ledger));
    insert_.bind(mark, rest_of(record, ledger_fields(), kept_by_notes, CellStyle::ledger));
    insert_.run();
    return database_.changes() == 1;
}

bool LedgerWriting::insert(const RecordTokens& record, const RecordId& id, bool vouched) {
    const auto subject = subject_of(record.text("path"));
    const auto kind = parse_word<NoteKind>(record.text("kind")).value_or(NoteKind::pair);
    RecordId car{};
    const bool has_car = from_hex(record.text("car"), car);
    insert_line_.bind(1, subject.vehicle);
    insert_line_.bind(2, subject.tap);
    insert_line_.bind(3, sqlite::BlobView{as_bytes(id)});
    insert_line_.bind(4, static_cast<std::int64_t>(kind));
    insert_line_.bind(5, number_of_shop(record.text("shop")));
    insert_line_.bind(6, vouched ? 1 : 0);
    has_car ? insert_line_.bind(7, sqlite::BlobView{as_bytes(car)}) : insert_line_.bind(7, std::nullopt);
    cells_.bind(insert_line_, record);
    insert_line_.run();
    return database_.changes() == 1;
}

}  // namespace tapbook
