// How does a batch get into the store? One transaction: shops, entries as new revisions where they differ, notes as
// this shop's own (or, in a practice catalog, the named shop's), terms. A dry run does the same work and gives it up at
// the end.
#include <fmt/format.h>
#include <sodium.h>

#include <algorithm>
#include <set>

#include "catalog/adding.h"

namespace tapbook {
namespace {

std::string_view as_bytes(const RecordId& id) {
    return {reinterpret_cast<const char*>(id.data()), id.size()};
}

std::string practice_shop_bytes(std::string_view code) {
    return std::string(as_bytes(short_hash(fmt::format("practice shop/{}", code))));
}

std::string car_token(std::string_view salt, std::string_view words) {
    std::string plain;
    for (const char c : folded(words))
        if (c != ' ') plain += c;
    return to_hex(short_hash(fmt::format("{}{}", salt, plain)));
}

std::string salt_of_own_shop(sqlite::Database& database) {
    auto rows = database.prepare("SELECT salt FROM secret");
    return rows.step() ? std::string(rows.blob(0)) : std::string();
}

std::string own_shop_code(sqlite::Database& database) {
    auto rows = database.prepare("SELECT value FROM setting WHERE name = 'shop_code'");
    return rows.step() ? std::string(rows.text(0)) : std::string();
}

bool has_shop(sqlite::Database& database, std::string_view id_bytes) {
    auto rows = database.prepare("SELECT 1 FROM shop WHERE id = ?1");
    rows.bind_all(sqlite::BlobView{id_bytes});
    return rows.step();
}

// Which of the authors that the batch names may write here.
Authors known_authors(const Catalog::State& state, const Batch& batch) {
    Authors authors{state.practice, {}};
    if (!state.practice) return authors;
    authors.codes.insert(own_shop_code(state.database));
    for (const auto& shop : batch.shops) authors.codes.insert(shop.code);
    for (const auto& note : batch.notes)
        if (!authors.codes.contains(note.shop_code) && has_shop(state.database, practice_shop_bytes(note.shop_code)))
            authors.codes.insert(note.shop_code);
    return authors;
}

class BatchAdding {
  public:
    BatchAdding(Catalog::State& state, const Batch& batch, const std::string& today)
        : state_(state), batch_(batch), today_(today), own_code_(own_shop_code(state.database)) {}

    Added run() {
        for (const auto& shop : batch_.shops) add_shop(shop);
        for (const auto& entry : batch_.entries) add_entry(entry);
        remember_grades(before_);
        for (const auto& note : batch_.notes) add_note(note);
        remember_grades(after_);
        for (const auto& [path, grade] : after_)
            if (before_[path] != grade) report_.moves.push_back({path, before_[path], grade});
        for (const auto& terms : batch_.terms) add_terms(terms);
        added_.report = std::move(report_);
        return std::move(added_);
    }

  private:
    bool is_own_code(std::string_view code) const { return code.empty() || code == own_code_; }

    // Throws InputRefused at `place` when the record breaks a limit.
    static RecordId id_of(const Values& record, const SourcePlace& place) {
        try {
            return record_id(record_line(record));
        } catch (const RecordRefused& refused) {
            throw InputRefused({{place, refused.what(), "shorten it, or spread it over several entries or notes"}});
        }
    }

    // In a practice catalog the shop with the catalog's own name is this shop; its code is kept for the files that
    // follow.
    void add_shop(const ShopDraft& shop) {
        if (shop.name == state_.own.name) {
            own_code_ = shop.code;
            auto keep =
                state_.database.prepare("INSERT OR REPLACE INTO setting (name, value) VALUES ('shop_code', ?1)");
            keep.bind_all(shop.code);
            keep.run();
            return;
        }
        const auto number = shop_number(state_.database, practice_shop_bytes(shop.code));
        auto update = state_.database.prepare("UPDATE shop SET name = ?1, known = 1 WHERE number = ?2");
        update.bind_all(shop.name, number);
        update.run();
    }

    void add_entry(const EntryDraft& draft) {
        const std::string path = text_field(draft.values, "path");
        const auto stored = winning_entries(state_.database, draft.kind, path, path + '\x01');
        StoredEntry entry{draft.values, 1, bytes_of_hex(state_.own.id)};
        std::string_view word = "new";
        if (!stored.empty()) {
            if (same_fields(stored.front().entry.values, draft.values)) {
                ++report_.entries_here;
                return;
            }
            word = "changed";
            keep_hazards(stored.front().entry.values, entry.values);
        }
        entry.revision = 1 + highest_revision(draft.kind, path);
        word == "new" ? ++report_.entries_new : ++report_.entries_changed;
        report_.lines.push_back(fmt::format("{:<8} {:<9} {}", word, word_of(draft.kind), path));
        const RecordId id = id_of(entry_record(draft.kind, entry, today_, state_.practice), draft.place);
        insert_entry(state_.database, draft.kind, entry, id, today_);
        added_.records.push_back(id);
    }

    // Hazards only grow: the stored union counts as the same when it holds all that the draft says.
    static bool same_fields(Values stored, Values draft) {
        const auto stored_hazards = list_field(stored, "hazards"), draft_hazards = list_field(draft, "hazards");
        const bool covered = std::all_of(draft_hazards.begin(), draft_hazards.end(), [&](const std::string& word) {
            return std::find(stored_hazards.begin(), stored_hazards.end(), word) != stored_hazards.end();
        });
        const bool first_look = draft.contains("hazards") && !stored.contains("hazards");
        if (first_look || !covered) return false;
        stored.erase("hazards");
        draft.erase("hazards");
        return stored == draft;
    }

    // The stored hazards, then those that `edit` adds.
    static void keep_hazards(const Values& stored, Values& edit) {
        if (!stored.contains("hazards")) return;
        TextList all = list_field(stored, "hazards");
        for (const auto& word : list_field(edit, "hazards"))
            if (std::find(all.begin(), all.end(), word) == all.end()) all.push_back(word);
        edit["hazards"] = std::move(all);
    }

    std::int64_t highest_revision(EntryKind kind, const std::string& path) {
        auto rows = state_.database.prepare(
            fmt::format("SELECT coalesce(max(revision), 0) FROM {} WHERE path = ?1", word_of(kind)));
        rows.bind_all(path);
        rows.step();
        return rows.integer(0);
    }

    struct Author {
        std::string shop_hex, salt;
    };

    Author author_of(const NoteDraft& note) {
        if (!is_own_code(note.shop_code)) {
            const RecordId salt = short_hash(fmt::format("practice salt/{}", note.shop_code));
            return {hex_of(practice_shop_bytes(note.shop_code)), std::string(as_bytes(salt))};
        }
        if (own_salt_.empty()) own_salt_ = salt_of_own_shop(state_.database);
        return {state_.own.id, own_salt_};
    }

    void add_note(const NoteDraft& note) {
        const Author author = author_of(note);
        Values fields = note.values;
        if (!note.car_words.empty()) fields["car"] = car_token(author.salt, note.car_words);
        const Values record = note_record(fields, author.shop_hex, state_.practice);
        const RecordId id = id_of(record, note.place);
        const bool is_new = insert_note(state_.database, record, id, true);
        is_new ? ++report_.notes_new : ++report_.notes_here;
        added_.notes.push_back(id);
        if (is_new) added_.records.push_back(id);
    }

    // The grade of every pair, power circuit and premium flag that the batch's notes touch.
    void remember_grades(std::map<std::string, Grade>& grades) {
        std::set<std::string> cars;
        for (const auto& note : batch_.notes) cars.emplace(path_head(text_field(note.values, "path"), vehicle_depth));
        const KnownShops known = known_shops(state_.database);
        for (const auto& car : cars) {
            const auto notes = notes_of_vehicle(state_.database, car);
            for (const auto& draft : batch_.notes) {
                const std::string path = text_field(draft.values, "path");
                if (path_head(path, vehicle_depth) != car) continue;
                const auto live = notes.live.find(path);
                const std::vector<Note> list = live == notes.live.end() ? std::vector<Note>() : live->second;
                const auto kind = word_field<NoteKind>(draft.values, "kind").value_or(NoteKind::pair);
                const auto gone = notes.withdrawn.find(path);
                grades[path] = grade_of(list, kind, known, side_of_tap(state_.database, path),
                                        gone == notes.withdrawn.end() ? 0 : gone->second);
            }
        }
    }

    void add_terms(const TermsDraft& draft) {
        auto rows =
            state_.database.prepare("SELECT cost_cents, lead_days, pack, on_hand, on_order FROM terms WHERE part = ?1");
        rows.bind_all(draft.part);
        Terms stored;
        const bool there = rows.step();
        if (there) {
            const auto small = [&](int column) -> std::optional<int> {
                const auto number = rows.optional_integer(column);
                return number ? std::optional(static_cast<int>(*number)) : std::nullopt;
            };
            stored = {rows.optional_integer(0), small(1), small(2), small(3), small(4)};
        }
        if (there && stored == draft.terms) {
            ++report_.terms_here;
            return;
        }
        rows.reset();
        added_.terms_before.push_back({draft.part, there ? std::optional(stored) : std::nullopt});
        auto put = state_.database.prepare(
            "INSERT INTO terms (part, cost_cents, lead_days, pack, on_hand, on_order) VALUES (?1, ?2, ?3, ?4, ?5, ?6)"
            " ON CONFLICT (part) DO UPDATE SET cost_cents = ?2, lead_days = ?3, pack = ?4, on_hand = ?5, on_order = "
            "?6");
        put.bind_all(draft.part, draft.terms.cost_cents, draft.terms.lead_days, draft.terms.pack, draft.terms.on_hand,
                     draft.terms.on_order);
        put.run();
        ++report_.terms_changed;
        report_.lines.push_back(fmt::format("{:<8} {:<9} {}", there ? "changed" : "new", "terms", draft.part));
    }

    Catalog::State& state_;
    const Batch& batch_;
    const std::string& today_;
    Added added_;
    AddReport report_;
    std::map<std::string, Grade> before_, after_;
    std::string own_salt_, own_code_;
};

}  // namespace

std::string own_car_token(sqlite::Database& database, std::string_view words) {
    return car_token(salt_of_own_shop(database), words);
}

Added add_in_transaction(Catalog::State& state, const Catalog& catalog, const Batch& batch, const std::string& today) {
    check_batch(batch, catalog, known_authors(state, batch));
    return BatchAdding(state, batch, today).run();
}

AddReport Catalog::add(const Batch& batch, bool dry_run, const std::string& today) {
    try {
        sqlite::Transaction transaction(state_->database);
        Added added = add_in_transaction(*state_, *this, batch, today);
        remember_action(state_->database, today, fmt::format("add {}", batch.file), added);
        if (dry_run) return added.report;
        transaction.commit();
        added.report.written = true;
        return added.report;
    } catch (const sqlite::Error& error) {
        throw_catalog_error(error, state_->file);
    }
}

}  // namespace tapbook
