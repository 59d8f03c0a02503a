// How does another shop's pack get into the catalog? In one transaction: its key changes first, so that the key it is
// signed with can be judged; then every record in the order of the pack. Whatever is refused, nothing stays.
#include <fmt/format.h>

#include <algorithm>
#include <set>

#include "catalog/adding.h"
#include "catalog/arrivals.h"
#include "catalog/key_chain.h"
#include "catalog/tap_ledger.h"

namespace tapbook {
namespace {

constexpr std::size_t most_graded = 1000;  // places whose grades are compared: more would take longer than the import

bool has_pack(sqlite::Database& database, const RecordId& id) {
    auto rows = database.prepare("SELECT 1 FROM pack WHERE id = ?1");
    rows.bind_all(sqlite::BlobView{as_bytes(id)});
    return rows.step();
}

class TakingIn {
  public:
    TakingIn(Catalog::State& state, const Incoming& pack, const std::string& today)
        : state_(state), database_(state.database), pack_(pack), today_(today), arrivals_(database_, pack.id) {
        report_.file = pack.file;
        report_.shop = pack.shop;
        report_.is_own_shop = pack.shop == state.own.id;
        auto rows = database_.prepare("SELECT coalesce(name, ''), known, blocked FROM shop WHERE id = ?1");
        rows.bind_all(sqlite::BlobView{shop_bytes_});
        if (!rows.step()) return;
        report_.shop_name = rows.text(0);
        report_.is_known_shop = rows.integer(1) != 0;
        report_.is_blocked_shop = rows.integer(2) != 0;
    }

    TakeInReport run() {
        report_.was_here = has_pack(database_, pack_.id);
        if (report_.was_here) return std::move(report_);
        refuse_other_kind();
        take_keys();
        refuse_foreign_key();
        keep_key();
        const auto places = places_of_pack();
        const bool compared = places.size() <= most_graded;
        report_.is_too_large_to_grade = !compared;
        const auto before = compared ? grades_at(database_, places) : std::map<std::string, Grade>();
        take_all_but_keys();
        arrivals_.finish();
        if (compared) report_.moves = moves_between(before, grades_at(database_, places));
        count_kinds();
        if (changes_cars_) keep_names(database_);
        find_concurrent_edits();
        remember_pack();
        return std::move(report_);
    }

  private:
    [[noreturn]] void refuse(int line, int column, const std::string& why, const std::string& way_out) const {
        throw InputRefused({Complaint{{pack_.file, line, column, {}}, why, way_out}});
    }

    void refuse_other_kind() const {
        if (pack_.practice == state_.practice) return;
        if (pack_.practice)
            refuse(1, 0, "this pack comes from a practice catalog: what it says is invented",
                   "a real catalog takes nothing of it; take it into a practice shop (tapbook demo)");
        refuse(1, 0, "this pack holds what real shops found; this catalog is for practice",
               "take it into your own catalog: name it with --db FILE");
    }

    void refuse_foreign_key() const {
        if (is_key_of(database_, shop_bytes_, pack_.key)) return;
        throw UnknownKey({Complaint{
            {pack_.file, 1, 0, {}},
            fmt::format("signed with a key that is not known as one of shop {}", pack_.shop),
            "ask that shop for a pack made after its change of key, and for its fingerprint (`tapbook shops key`)"}});
    }

    // The shop's first key, once it is seen: the one its id comes from.
    void keep_key() {
        const std::string_view key(reinterpret_cast<const char*>(pack_.key.data()), pack_.key.size());
        const auto number = shop_number(database_, shop_bytes_);
        if (hex_of(as_bytes(short_hash(key))) != pack_.shop) return;
        auto keep = database_.prepare("UPDATE shop SET public_key = ?1 WHERE number = ?2 AND public_key IS NULL");
        keep.bind_all(sqlite::BlobView{key}, number);
        keep.run();
    }

    // Where notes and withdrawals of the pack lie, and what is noted of that which it calls the same; no more than what
    // is asked for.
    std::set<std::string> places_of_pack() {
        std::set<std::string> places;
        std::string last;
        for (const auto& packed : pack_.records) {
            if (!tokens_.read(packed.line)) continue;
            const RecordHead head = head_of(tokens_);
            if (head.kind == RecordKind::alias)
                for (const std::string_view key : {"first", "second"}) add_noted_places(tokens_.text(key), places);
            const bool is_seen = head.kind == RecordKind::note || head.kind == RecordKind::withdrawal;
            if (!is_seen || head.path == last) continue;
            last = head.path;
            places.insert(last);
            if (places.size() > most_graded) break;
        }
        return places;
    }

    void add_noted_places(std::string_view path, std::set<std::string>& places) {
        auto rows =
            database_.prepare("SELECT path FROM subject WHERE path = ?1 OR (path >= ?2 AND path < ?3) LIMIT ?4");
        rows.bind_all(path, below_first(path), below_end(path), most_graded + 1);
        while (rows.step()) places.emplace(rows.text(0));
    }

    RecordHead head_of_line(const PackedRecord& packed) {
        if (!tokens_.read(packed.line)) refuse(packed.number, 1, "not a record", "the pack was changed meanwhile");
        return head_of(tokens_);
    }

    // Records come by type: behind the keys none is left.
    void take_keys() {
        for (const auto& packed : pack_.records) {
            const RecordHead head = head_of_line(packed);
            if (head.type > word_of(RecordKind::key)) return;
            if (head.kind == RecordKind::key) take(packed, head);
        }
    }

    void take_all_but_keys() {
        Steps steps(state_.progress, static_cast<std::int64_t>(pack_.records.size()));
        for (const auto& packed : pack_.records) {
            const RecordHead head = head_of_line(packed);
            if (head.kind != RecordKind::key) take(packed, head);
            steps.one();
        }
    }

    void take(const PackedRecord& packed, const RecordHead& head) {
        const bool vouched = head.shop == pack_.shop;
        const Arrival arrival = arrivals_.take(tokens_, head, packed, vouched);
        const auto kind = head.kind ? static_cast<std::size_t>(*head.kind) : other_kind;
        Tally& tally = tallies_[kind];
        arrival == Arrival::fresh ? ++tally.fresh : ++tally.here;
        if (arrival == Arrival::fresh_vouched) ++report_.fresh_vouched;
        if (arrival != Arrival::fresh) return;
        if (head.kind == RecordKind::note && !vouched) ++report_.unvouched;
        if (!head.kind) ++report_.waiting;
        if (const auto entry = head.kind ? entry_kind_of(*head.kind) : std::nullopt) {
            changes_cars_ = changes_cars_ || entry == EntryKind::vehicle;
            fresh_entries_.emplace(*entry, std::string(head.path));
        }
    }

    void count_kinds() {
        for (const auto& [kind, word] : words_of<RecordKind>()) {
            const Tally& tally = tallies_[static_cast<std::size_t>(kind)];
            if (tally.fresh + tally.here > 0) report_.kinds.push_back({std::string(word), tally.fresh, tally.here});
        }
        const Tally& other = tallies_[other_kind];
        if (other.fresh + other.here > 0) report_.kinds.push_back({"other", other.fresh, other.here});
    }

    // By kind, as they lie in the set: each kind's questions are made once. Nearly every path has one entry alone, and
    // that is asked first: who is blocked takes thirty times as long.
    void find_concurrent_edits() {
        std::optional<EntryKind> asked;
        std::optional<sqlite::Statement> second, rows;
        for (const auto& [kind, path] : fresh_entries_) {
            if (asked != kind) {
                second =
                    database_.prepare(fmt::format("SELECT 1 FROM {} WHERE path = ?1 LIMIT 1 OFFSET 1", word_of(kind)));
                rows = database_.prepare(
                    fmt::format("SELECT count(*) FROM {} WHERE path = ?1 AND {} AND revision = (SELECT max(revision)"
                                " FROM {} WHERE path = ?1 AND {})",
                                word_of(kind), not_by_blocked, word_of(kind), not_by_blocked));
            }
            asked = kind;
            second->bind_all(path);
            const bool has_more = second->step();
            second->reset();
            if (!has_more) continue;
            rows->bind_all(path);
            rows->step();
            const auto edits = static_cast<int>(rows->integer(0));
            rows->reset();
            if (edits > 1) report_.concurrent.push_back({kind, path, edits});
        }
    }

    void remember_pack() {
        auto keep = database_.prepare("INSERT INTO pack (id, shop, date, records) VALUES (?1, ?2, ?3, ?4)");
        keep.bind_all(sqlite::BlobView{as_bytes(pack_.id)}, sqlite::BlobView{shop_bytes_}, today_,
                      pack_.records.size());
        keep.run();
    }

    struct Tally {
        int fresh = 0, here = 0;
    };
    static constexpr std::size_t other_kind = words_of<RecordKind>().size();

    Catalog::State& state_;
    sqlite::Database& database_;
    const Incoming& pack_;
    const std::string& today_;
    const std::string shop_bytes_ = bytes_of_hex(pack_.shop);
    Arrivals arrivals_;
    RecordTokens tokens_;
    std::array<Tally, words_of<RecordKind>().size() + 1> tallies_{};
    std::set<std::pair<EntryKind, std::string>> fresh_entries_;
    bool changes_cars_ = false;
    TakeInReport report_;
};

}  // namespace

int TakeInReport::fresh() const {
    int sum = 0;
    for (const auto& kind : kinds) sum += kind.fresh;
    return sum;
}

int TakeInReport::here() const {
    int sum = 0;
    for (const auto& kind : kinds) sum += kind.here;
    return sum;
}

bool Catalog::has_taken_in(const RecordId& pack) const {
    try {
        return has_pack(state_->database, pack);
    } catch (const sqlite::Error& error) {
        throw_catalog_error(error, state_->file);
    }
}

TakeInReport Catalog::take_in(const Incoming& pack, const std::string& today, bool dry_run) {
    // Pages wait in memory, not in the log, until the pack is in: about as much as the largest pack itself.
    state_->database.execute("PRAGMA cache_size = -65536");
    return in_one_transaction(
        *state_, [&] { return TakingIn(*state_, pack, today).run(); },
        [&](const TakeInReport& report) { return !report.was_here && !dry_run; });
}

}  // namespace tapbook
