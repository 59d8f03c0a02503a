// Which records may leave this shop, and in which order? By type, then path, then id: the order of a pack. They are
// written again from their cells; what is local (terms, jobs, customers, salts, the list of shops) has no record at
// all.
#include <fmt/format.h>

#include <algorithm>
#include <set>

#include "catalog/alias_classes.h"
#include "catalog/key_chain.h"
#include "catalog/ledger_rows.h"

namespace tapbook {
namespace {

constexpr std::string_view end_of_paths = "\x7f";

class Outgoing {
  public:
    Outgoing(const Catalog::State& state, const OutgoingChoice& choice, const EachOutgoing& each)
        : state_(state), database_(state.database), choice_(choice), each_(each) {
        const bool is_car = path_parts(choice.under).size() >= vehicle_depth;
        under_ = is_car ? alias_classes(database_).members(choice.under) : std::vector<std::string>{choice.under};
    }

    void run() {
        auto rows = database_.prepare("SELECT id FROM shop WHERE blocked = 1");
        while (rows.step()) blocked_.insert(hex_of(rows.blob(0)));
        std::set<std::string> types;
        for (const auto& [kind, word] : words_of<RecordKind>()) types.emplace(word);
        if (has_packs_) {
            auto others = database_.prepare("SELECT DISTINCT type FROM other_record");
            while (others.step()) types.emplace(others.text(0));
        }
        for (const auto& type : types) write_type(type);
    }

  private:
    struct Held {
        std::string path;
        OutgoingRecord record;
        friend bool operator<(const Held& a, const Held& b) {
            return a.path == b.path ? a.record.id < b.record.id : a.path < b.path;
        }
    };

    void write_type(const std::string& type) {
        held_ = other_records(type);
        if (const auto kind = parse_word<RecordKind>(type)) {
            if (*kind == RecordKind::note) return write_notes();
            if (const auto entry = entry_kind_of(*kind)) hold_entries(*entry);
            if (*kind == RecordKind::withdrawal) hold_withdrawals();
            if (*kind == RecordKind::alias) hold_aliases();
            if (*kind == RecordKind::key && has_packs_) hold_keys();
        }
        std::sort(held_.begin(), held_.end());
        for (auto& held : held_) each_(std::move(held.record));
        held_.clear();
    }

    bool is_under(std::string_view path) const {
        return std::any_of(under_.begin(), under_.end(), [&](const std::string& under) {
            return under.empty() || path == under || (path.starts_with(under) && path[under.size()] == '/');
        });
    }

    bool is_wanted(const Values& record, std::string_view path) const {
        if (!is_under(path) || text_field(record, "date") < choice_.since) return false;
        const std::string shop = text_field(record, "shop");
        return choice_.own_only ? shop == state_.own.id : !blocked_.contains(shop);
    }

    static OutgoingRecord record_of(const Values& values) {
        OutgoingRecord record;
        record.line = record_line(values);
        record.id = record_id(record.line);
        return record;
    }

    void hold(const Values& record, const std::string& path) {
        if (is_wanted(record, path)) held_.push_back({path, record_of(record)});
    }

    static std::string end_of(const std::string& under) {
        return under.empty() ? std::string(end_of_paths) : below_end(under);
    }

    // The ledger may be larger than memory: its notes are not held. Other records of the type come between them.
    void write_notes() {
        std::sort(held_.begin(), held_.end());
        auto next = held_.begin();
        const auto write = [&](LedgerRow&& row) {
            const std::string path = text_field(row.values, "path");
            const Values values = note_record(row.values, text_field(row.values, "shop"), state_.practice);
            if (!is_wanted(values, path)) return;
            OutgoingRecord record{row.id, record_line(values)};
            const auto is_before = [&](const Held& held) {
                return held.path == path ? held.record.id < record.id : held.path < path;
            };
            for (; next != held_.end() && is_before(*next); ++next) each_(std::move(next->record));
            each_(std::move(record));
        };
        for (const auto& under : under_) each_ledger_row(database_, under, end_of(under), write);
        for (; next != held_.end(); ++next) each_(std::move(next->record));
        held_.clear();
    }

    void hold_entries(EntryKind kind) {
        for (const auto& under : under_) hold_entries_in(kind, under, end_of(under));
    }

    void hold_entries_in(EntryKind kind, std::string_view first, std::string_view end) {
        auto rows = database_.prepare(
            fmt::format("SELECT path, revision, shop, date{}, rest FROM {} WHERE path >= ?1 AND path < ?2",
                        readable_columns(database_, kind), word_of(kind)));
        for (rows.bind_all(first, end); rows.step();) {
            StoredEntry entry;
            entry.values["path"] = std::string(rows.text(0));
            entry.revision = rows.integer(1);
            entry.shop = std::string(rows.blob(2));
            int column = 4;
            for (const auto& field : fields_of(kind))
                put_cell(field, rows.value(column++), entry.values, CellStyle::entry);
            put_rest(rows.value(column), entry.values);
            hold(entry_record(kind, entry, std::string(rows.text(3)), state_.practice), std::string(rows.text(0)));
        }
    }

    void hold_withdrawals() {
        auto rows = database_.prepare(
            "SELECT withdrawal.target, withdrawal.path, withdrawal.reason, shop.id, withdrawal.date, withdrawal.rest"
            " FROM withdrawal JOIN shop ON shop.number = withdrawal.shop");
        while (rows.step()) {
            Values record =
                withdrawal_record({hex_of(rows.blob(0)), std::string(rows.text(1)), std::string(rows.text(2)),
                                   hex_of(rows.blob(3)), std::string(rows.text(4))},
                                  state_.practice);
            put_rest(rows.value(5), record);
            hold(record, std::string(rows.text(1)));
        }
    }

    // An alias goes out when either of its paths is wanted; its place in the pack is that of the first.
    void hold_aliases() {
        auto rows = database_.prepare(
            "SELECT alias.first, alias.second, shop.id, alias.date, alias.rest FROM alias"
            " JOIN shop ON shop.number = alias.shop");
        while (rows.step()) {
            const std::string one(rows.text(0)), other(rows.text(1));
            Values record =
                alias_record({one, other, hex_of(rows.blob(2)), std::string(rows.text(3))}, state_.practice);
            put_rest(rows.value(4), record);
            if (is_wanted(record, one) || is_wanted(record, other)) held_.push_back({one, record_of(record)});
        }
    }

    // Whoever takes in a pack needs the key it is signed with: the shop's own changes always go out.
    void hold_keys() {
        auto rows =
            database_.prepare("SELECT shop, old_key, new_key, date, coalesce(signature, x''), rest FROM key_change");
        while (rows.step()) {
            Values record = key_record({std::string(rows.blob(0)), std::string(rows.blob(1)), std::string(rows.blob(2)),
                                        std::string(rows.text(3)), std::string(rows.blob(4))},
                                       state_.practice);
            put_rest(rows.value(5), record);
            const std::string shop = hex_of(rows.blob(0));
            const bool is_own = shop == state_.own.id;
            const bool is_all = choice_.under.empty() && !choice_.own_only && !blocked_.contains(shop) &&
                                text_field(record, "date") >= choice_.since;
            if (is_own || is_all) held_.push_back({"", record_of(record)});
        }
    }

    std::vector<Held> other_records(const std::string& type) {
        std::vector<Held> found;
        if (!has_packs_) return found;
        auto rows = database_.prepare("SELECT path, line FROM other_record WHERE type = ?1");
        for (rows.bind_all(type); rows.step();) {
            const std::string path(rows.text(0));
            const Values values = read_record_line(rows.text(1));
            if (is_wanted(values, path)) found.push_back({path, record_of(values)});
        }
        return found;
    }

    const Catalog::State& state_;
    sqlite::Database& database_;
    const OutgoingChoice& choice_;
    const EachOutgoing& each_;
    const bool has_packs_ =
        database_.user_version() >= first_version_with_packs;  // a file that is only read may be older
    std::vector<std::string> under_;                           // what the choice names by each of its paths, in order
    std::set<std::string> blocked_;                            // shops, in hexadecimal digits
    std::vector<Held> held_;
};

}  // namespace

void Catalog::outgoing(const OutgoingChoice& choice, const EachOutgoing& each) const {
    try {
        sqlite::Transaction one_state(state_->database, sqlite::Transaction::Kind::read);
        Outgoing(*state_, choice, each).run();
    } catch (const sqlite::Error& error) {
        throw_catalog_error(error, state_->file);
    }
}

}  // namespace tapbook
