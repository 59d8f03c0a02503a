// See arrivals.h.
#include "catalog/arrivals.h"

#include <fmt/format.h>

#include <algorithm>

#include "catalog/ledger_rows.h"

namespace tapbook {
namespace {

constexpr std::string_view kept_by_entries[] = {"path", "revision", "shop", "date", "type", "practice"};
constexpr std::string_view kept_by_withdrawals[] = {"date", "path", "practice", "reason", "shop", "target", "type"};
constexpr std::string_view kept_by_aliases[] = {"date", "first", "practice", "second", "shop", "type"};
constexpr std::string_view kept_by_keys[] = {"date", "new_key", "old_key", "practice", "shop", "signature", "type"};

template <std::size_t size>
std::string bytes_of(std::string_view hex) {
    std::array<unsigned char, size> bytes{};
    if (!bytes_of_digits(hex, bytes)) return {};
    return {reinterpret_cast<const char*>(bytes.data()), bytes.size()};
}

std::string insert_text(EntryKind kind) {
    std::string columns, marks;
    int mark = 6;
    for (const auto& field : fields_of(kind)) {
        columns += fmt::format(", {}", field.stored);
        marks += fmt::format(", ?{}", mark++);
    }
    return fmt::format(
        "INSERT OR IGNORE INTO {} (path, revision, shop, id, date{}, rest) VALUES (?1, ?2, ?3, ?4, ?5{}, ?{})",
        word_of(kind), columns, marks, mark);
}

bool has_rows(sqlite::Database& database, std::string_view table) {
    auto rows = database.prepare(fmt::format("SELECT EXISTS (SELECT 1 FROM {})", table));
    return rows.step() && rows.integer(0) != 0;
}

}  // namespace

Arrivals::Arrivals(sqlite::Database& database, const RecordId& pack)
    : database_(database),
      pack_(pack),
      ledger_(database),
      relay_(database.prepare("INSERT INTO relayed (id, brought_by) VALUES (?1, ?2)")),
      vouch_(database.prepare("UPDATE relayed SET vouched_by = ?2 WHERE id = ?1 AND vouched_by IS NULL")),
      has_relayed_(has_rows(database, "relayed")) {}

Arrival Arrivals::take(const RecordTokens& record, const RecordHead& head, const PackedRecord& packed, bool vouched) {
    if (!head.kind) return take_other(record, head, packed, vouched);
    if (const auto entry = entry_kind_of(*head.kind)) return take_entry(record, packed.id, *entry);
    switch (*head.kind) {
        case RecordKind::alias:
            return take_alias(record, packed.id, vouched);
        case RecordKind::key:
            return take_key(record, packed.id);
        case RecordKind::withdrawal:
            return take_withdrawal(record, packed.id, vouched);
        case RecordKind::note:
        case RecordKind::amplifier:
        case RecordKind::circuit:
        case RecordKind::converter:
        case RecordKind::system:
        case RecordKind::tap:
        case RecordKind::vehicle:
            break;
    }
    return take_note(record, packed.id, vouched);
}

Arrival Arrivals::arrival_of(sqlite::Statement& insert) {
    insert.run();
    return database_.changes() == 1 ? Arrival::fresh : Arrival::here;
}

Arrival Arrivals::take_note(const RecordTokens& record, const RecordId& id, bool vouched) {
    const bool is_fresh = ledger_.insert(record, id, vouched);
    if (is_fresh && !vouched) relayed_.push_back(id);
    if (is_fresh || !vouched || !has_relayed_) return is_fresh ? Arrival::fresh : Arrival::here;
    vouch_.bind_all(sqlite::BlobView{as_bytes(id)}, sqlite::BlobView{as_bytes(pack_)});
    vouch_.run();
    return database_.changes() == 1 ? Arrival::fresh_vouched : Arrival::here;
}

// In the order of the table: a pack holds tens of thousands, and a place that was just written to is quickly found.
void Arrivals::finish() {
    std::sort(relayed_.begin(), relayed_.end());
    for (const auto& id : relayed_) {
        relay_.bind_all(sqlite::BlobView{as_bytes(id)}, sqlite::BlobView{as_bytes(pack_)});
        relay_.run();
    }
}

Arrivals::EntryWriting& Arrivals::writing_of(EntryKind kind) {
    if (const auto found = entries_.find(kind); found != entries_.end()) return found->second;
    EntryWriting writing{database_.prepare(insert_text(kind)),
                         CellBinding(fields_of(kind), kept_by_entries, CellStyle::entry, 6)};
    return entries_.emplace(kind, std::move(writing)).first->second;
}

Arrival Arrivals::take_entry(const RecordTokens& record, const RecordId& id, EntryKind kind) {
    auto& [insert, cells] = writing_of(kind);
    insert.bind(1, record.text("path"));
    insert.bind(2, record.find("revision")->number);
    insert.bind(3, sqlite::BlobView{bytes_of<16>(record.text("shop"))});
    insert.bind(4, sqlite::BlobView{as_bytes(id)});
    insert.bind(5, record.text("date"));
    cells.bind(insert, record);
    return arrival_of(insert);
}

// `table` and its column `vouched`: nowhere but in the ledger itself does the row say so.
Arrival Arrivals::vouch(std::string_view table, const RecordId& id) {
    auto vouch = database_.prepare(fmt::format("UPDATE {} SET vouched = 1 WHERE id = ?1 AND vouched = 0", table));
    vouch.bind_all(sqlite::BlobView{as_bytes(id)});
    vouch.run();
    return database_.changes() > 0 ? Arrival::fresh_vouched : Arrival::here;
}

Arrival Arrivals::take_withdrawal(const RecordTokens& record, const RecordId& id, bool vouched) {
    auto insert = database_.prepare(
        "INSERT OR IGNORE INTO withdrawal (target, id, path, shop, vouched, date, reason, rest)"
        " VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8)");
    CellBinding rest({}, kept_by_withdrawals, CellStyle::entry, 8);
    insert.bind(1, sqlite::BlobView{bytes_of<16>(record.text("target"))});
    insert.bind(2, sqlite::BlobView{as_bytes(id)});
    insert.bind(3, record.text("path"));
    insert.bind(4, ledger_.number_of_shop(record.text("shop")));
    insert.bind(5, vouched ? 1 : 0);
    insert.bind(6, record.text("date"));
    insert.bind(7, record.text("reason"));
    rest.bind(insert, record);
    const Arrival arrival = arrival_of(insert);
    return arrival == Arrival::here && vouched ? vouch("withdrawal", id) : arrival;
}

Arrival Arrivals::take_alias(const RecordTokens& record, const RecordId& id, bool vouched) {
    auto insert = database_.prepare(
        "INSERT OR IGNORE INTO alias (id, first, second, shop, vouched, date, rest) VALUES (?1, ?2, ?3, ?4, ?5, ?6, "
        "?7)");
    CellBinding rest({}, kept_by_aliases, CellStyle::entry, 7);
    insert.bind(1, sqlite::BlobView{as_bytes(id)});
    insert.bind(2, record.text("first"));
    insert.bind(3, record.text("second"));
    insert.bind(4, ledger_.number_of_shop(record.text("shop")));
    insert.bind(5, vouched ? 1 : 0);
    insert.bind(6, record.text("date"));
    rest.bind(insert, record);
    const Arrival arrival = arrival_of(insert);
    return arrival == Arrival::here && vouched ? vouch("alias", id) : arrival;
}

Arrival Arrivals::take_key(const RecordTokens& record, const RecordId& id) {
    auto insert = database_.prepare(
        "INSERT OR IGNORE INTO key_change (id, shop, old_key, new_key, date, signature, rest) VALUES (?1, ?2, ?3, ?4, "
        "?5, ?6, ?7)");
    CellBinding rest({}, kept_by_keys, CellStyle::entry, 7);
    const std::string signature = bytes_of<64>(record.text("signature"));
    insert.bind(1, sqlite::BlobView{as_bytes(id)});
    insert.bind(2, sqlite::BlobView{bytes_of<16>(record.text("shop"))});
    insert.bind(3, sqlite::BlobView{bytes_of<32>(record.text("old_key"))});
    insert.bind(4, sqlite::BlobView{bytes_of<32>(record.text("new_key"))});
    insert.bind(5, record.text("date"));
    signature.empty() ? insert.bind(6, std::nullopt) : insert.bind(6, sqlite::BlobView{signature});
    rest.bind(insert, record);
    return arrival_of(insert);
}

Arrival Arrivals::take_other(const RecordTokens& record, const RecordHead& head, const PackedRecord& packed,
                             bool vouched) {
    auto insert = database_.prepare(
        "INSERT OR IGNORE INTO other_record (id, type, shop, path, vouched, line) VALUES (?1, ?2, ?3, ?4, ?5, ?6)");
    insert.bind_all(sqlite::BlobView{as_bytes(packed.id)}, head.type,
                    sqlite::BlobView{bytes_of<16>(record.text("shop"))}, head.path, vouched ? 1 : 0, packed.line);
    const Arrival arrival = arrival_of(insert);
    return arrival == Arrival::here && vouched ? vouch("other_record", packed.id) : arrival;
}

}  // namespace tapbook
