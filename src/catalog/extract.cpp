// How does what is stored become a batch again? Entries by their winning revision (retired ones too: their reason is a
// field), notes with the car's token instead of its words, and in a practice catalog with the code of the shop that
// wrote them.
#include <fmt/format.h>

#include <algorithm>

#include "catalog/alias_classes.h"

namespace tapbook {
namespace {

constexpr EntryKind below_vehicle[] = {EntryKind::system, EntryKind::circuit, EntryKind::tap};

struct NamedShop {
    std::string name, code;  // code: practice catalogs only; "" when it cannot be told
};

class Extracting {
  public:
    explicit Extracting(const Catalog::State& state) : state_(state), database_(state.database) {
        extract_.batch.practice = state.practice;
    }

    void add_entries(EntryKind kind, std::string_view first, std::string_view end) {
        for (auto& current : winning_entries(database_, kind, first, end))
            extract_.batch.entries.push_back({kind, std::move(current.entry.values), {}});
    }

    void add_notes(std::string_view vehicle_path) {
        read_shops();
        read_withdrawals();
        auto records = note_records(database_, vehicle_path, false);
        std::sort(records.begin(), records.end(), [](const auto& a, const auto& b) { return key_of(a) < key_of(b); });
        for (const auto& [id, record] : records) add_note(id, record);
        for (const auto& [hex, shop] : shops_)
            if (used_codes_.contains(shop.code)) extract_.batch.shops.push_back({shop.code, shop.name, {}});
    }

    void add_terms() {
        for (auto& [part, terms] : all_terms(database_)) extract_.batch.terms.push_back({part, terms, {}});
    }

    Extract take() { return std::move(extract_); }

  private:
    static std::tuple<std::string, std::string, int, RecordId> key_of(const std::pair<RecordId, Values>& note) {
        return {text_field(note.second, "path"), text_field(note.second, "date"),
                whole_field(note.second, "turn").value_or(0), note.first};
    }

    void read_shops() {
        auto rows = database_.prepare("SELECT id, name FROM shop");
        while (rows.step()) {
            const std::string id(rows.blob(0)), name(rows.optional_text(1).value_or(""));
            shops_[hex_of(id)] = {name, state_.practice ? practice_shop_code(database_, id, name) : std::string()};
        }
    }

    void read_withdrawals() {
        auto rows = database_.prepare(
            "SELECT withdrawal.target, shop.id, withdrawal.reason FROM withdrawal JOIN shop ON shop.number = "
            "withdrawal.shop WHERE withdrawal.vouched = 1");
        while (rows.step()) withdrawn_[hex_of(rows.blob(0)) + hex_of(rows.blob(1))] = std::string(rows.text(2));
    }

    // Why the note must not be added again; empty when it may.
    std::string reason_for_comment(const RecordId& id, const std::string& shop) const {
        if (const auto found = withdrawn_.find(to_hex(id) + shop); found != withdrawn_.end())
            return fmt::format("withdrawn ({})", found->second);
        const bool own = shop == state_.own.id;
        if (own) return {};
        const auto known = shops_.find(shop);
        if (state_.practice)
            return known == shops_.end() || known->second.code.empty() ? "of a shop whose code is not known"
                                                                       : std::string();
        const std::string name = known == shops_.end() ? std::string() : known->second.name;
        return fmt::format("of another shop, {}: only a pack signed by it can carry its notes",
                           name.empty() ? shop.substr(0, 8) : fmt::format("{} {}", shop.substr(0, 8), name));
    }

    void add_note(const RecordId& id, const Values& record) {
        NoteDraft draft;
        draft.values = record;
        draft.values.erase("type");
        draft.values.erase("shop");
        const std::string shop = text_field(record, "shop");
        if (const auto known = shops_.find(shop); known != shops_.end()) draft.shop_code = known->second.code;
        std::string reason = reason_for_comment(id, shop);
        if (!reason.empty()) {
            extract_.notes.push_back({std::move(draft), std::move(reason)});
            return;
        }
        if (!draft.shop_code.empty()) used_codes_.insert(draft.shop_code);
        extract_.batch.notes.push_back(std::move(draft));
    }

    const Catalog::State& state_;
    sqlite::Database& database_;
    Extract extract_;
    std::map<std::string, NamedShop> shops_;         // by id in hex
    std::map<std::string, std::string> withdrawn_;   // reason by note id and shop id, both in hex
    std::set<std::string, std::less<>> used_codes_;  // shops that wrote a note of this vehicle
};

// One state of the store for the whole extract.
template <class Fill>
Extract extracted(const Catalog::State& state, Fill fill) {
    try {
        std::optional<sqlite::Transaction> one_state;
        if (!state.database.in_transaction()) one_state.emplace(state.database, sqlite::Transaction::Kind::read);
        Extracting extracting(state);
        fill(extracting);
        return extracting.take();
    } catch (const sqlite::Error& error) {
        throw_catalog_error(error, state.file);
    }
}

}  // namespace

std::string practice_shop_bytes(std::string_view code) {
    return std::string(as_bytes(short_hash(fmt::format("practice shop/{}", code))));
}

std::string practice_shop_code(sqlite::Database& database, std::string_view id_bytes, std::string_view name) {
    auto own = database.prepare(
        "SELECT code.value FROM setting AS code, setting AS shop WHERE code.name = 'shop_code' AND shop.name = "
        "'shop_id' AND shop.value = ?1");
    own.bind_all(hex_of(id_bytes));
    if (own.step()) return std::string(own.text(0));
    auto kept = database.prepare("SELECT value FROM setting WHERE name = ?1");
    kept.bind_all(fmt::format("shop_code/{}", hex_of(id_bytes)));
    if (kept.step()) return std::string(kept.text(0));
    std::string guess = slug_from(name);  // catalogs made before the code was kept
    return practice_shop_bytes(guess) == id_bytes ? guess : std::string();
}

void keep_practice_shop_code(sqlite::Database& database, std::string_view code) {
    auto keep = database.prepare("INSERT OR REPLACE INTO setting (name, value) VALUES (?1, ?2)");
    keep.bind_all(fmt::format("shop_code/{}", hex_of(practice_shop_bytes(code))), code);
    keep.run();
}

Extract Catalog::extract_vehicle(std::string_view path) const {
    const auto at = [&](std::string_view place) {
        return extracted(*state_, [&](Extracting& extracting) {
            extracting.add_entries(EntryKind::vehicle, place, std::string(place) + '\x01');
            for (const EntryKind kind : below_vehicle)
                extracting.add_entries(kind, below_first(place), below_end(place));
            extracting.add_notes(place);
        });
    };
    const auto has_car = [](const Extract& one) {
        return !one.batch.entries.empty() && one.batch.entries.front().kind == EntryKind::vehicle;
    };
    Extract extract = at(path);
    if (!has_car(extract))  // the name of a class need not have an entry
        for (const auto& other : alias_classes(state_->database).members(path))
            if (extract = at(other); has_car(extract)) break;
    if (!has_car(extract))
        throw CatalogError(CatalogTrouble::not_found, fmt::format("there is no vehicle {}", path),
                           "tapbook find lists all cars");
    return extract;
}

Extract Catalog::extract_parts() const {
    return extracted(*state_, [](Extracting& extracting) {
        for (const EntryKind kind : {EntryKind::converter, EntryKind::amplifier})
            extracting.add_entries(kind, "", "\x7f");
    });
}

Extract Catalog::extract_stock() const {
    return extracted(*state_, [](Extracting& extracting) { extracting.add_terms(); });
}

}  // namespace tapbook
