// See kept_records.h. Asked after a file was brought up to date, and by `rebuild`.
#include "catalog/kept_records.h"

#include <vector>

#include "catalog/arrivals.h"

namespace tapbook {
namespace {

struct Kept {
    RecordId id{};
    bool vouched = false;
    std::string line;
};

std::vector<Kept> kept_records(sqlite::Database& database) {
    std::vector<Kept> list;
    auto rows = database.prepare("SELECT id, vouched, line FROM other_record ORDER BY type, path, id");
    while (rows.step()) {
        Kept kept{{}, rows.integer(1) != 0, std::string(rows.text(2))};
        if (from_hex(hex_of(rows.blob(0)), kept.id)) list.push_back(std::move(kept));
    }
    return list;
}

bool is_practice(sqlite::Database& database) {
    auto rows = database.prepare("SELECT 1 FROM setting WHERE name = 'practice' AND value = '1'");
    return rows.step();
}

// A note that its own shop has not vouched for says which pack brought it. Which one that was is not known of a record
// that was kept unread: the first of all stands for it.
RecordId first_pack(sqlite::Database& database) {
    RecordId id{};
    auto rows = database.prepare("SELECT id FROM pack ORDER BY date, id LIMIT 1");
    if (rows.step()) from_hex(hex_of(rows.blob(0)), id);
    return id;
}

}  // namespace

std::int64_t read_kept_records(sqlite::Database& database) {
    const auto list = kept_records(database);
    if (list.empty()) return 0;
    const bool practice = is_practice(database);
    Arrivals arrivals(database, first_pack(database));
    RecordTokens tokens;
    std::int64_t read = 0;
    for (const auto& kept : list) {
        if (!tokens.read(kept.line)) continue;
        const RecordHead head = head_of(tokens);
        if (!head.kind || fault_of(tokens, head, practice)) continue;
        arrivals.take(tokens, head, {kept.line, kept.id, 0}, kept.vouched);
        auto forget = database.prepare("DELETE FROM other_record WHERE id = ?1");
        forget.bind_all(sqlite::BlobView{as_bytes(kept.id)});
        forget.run();
        ++read;
    }
    if (read > 0) keep_names(database);
    return read;
}

}  // namespace tapbook
