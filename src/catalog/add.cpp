// How does a batch get into the store? One transaction: shops, entries as new revisions where they differ, notes as
// this shop's own (or, in a practice catalog, the named shop's), terms. A dry run does the same work and gives it up at
// the end.
#include <fmt/format.h>
#include <sodium.h>

#include <algorithm>
#include <set>

#include "catalog/adding.h"
#include "catalog/alias_classes.h"

namespace tapbook {
namespace {

// The words that tell a car apart, without blanks and case, so that "AB 123" and "ab123" are one car.
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

class BatchAdding {
  public:
    BatchAdding(Catalog::State& state, const Batch& batch, const std::string& today)
        : state_(state),
          batch_(batch),
          today_(today),
          own_code_(own_shop_code(state.database)),
          ledger_(state.database) {}

    Added run(GradeMoves moves) {
        for (const auto& shop : batch_.shops) add_shop(shop);
        Steps steps(state_.progress, static_cast<std::int64_t>(batch_.entries.size() + batch_.notes.size()));
        for (const auto& entry : batch_.entries) {
            add_entry(entry);
            steps.one();
        }
        if (moves == GradeMoves::told) remember_grades(before_);
        for (const auto& note : batch_.notes) {
            add_note(note);
            steps.one();
        }
        if (moves == GradeMoves::told) remember_grades(after_);
        for (const auto& [path, grade] : after_)
            if (before_[path] != grade) report_.moves.push_back({path, before_[path], grade});
        for (const auto& terms : batch_.terms) add_terms(terms);
        added_.report = std::move(report_);
        return std::move(added_);
    }

    // The same for many notes: put in the ledger's own order, and no grades told.
    Added run_in_ledger_order() {
        for (const auto& shop : batch_.shops) add_shop(shop);
        for (const auto& entry : batch_.entries) add_entry(entry);
        std::vector<std::pair<RecordId, Values>> records;
        records.reserve(batch_.notes.size());
        for (const auto& note : batch_.notes) {
            Values record = record_of(note);
            const RecordId id = id_of(record, note.place);
            records.emplace_back(id, std::move(record));
        }
        std::sort(records.begin(), records.end(), [](const auto& a, const auto& b) {
            const auto path_of = [](const auto& one) -> const Value& { return one.second.find("path")->second; };
            return path_of(a) == path_of(b) ? a.first < b.first : path_of(a) < path_of(b);
        });
        for (const auto& [id, record] : records)
            ledger_.insert(record, id, true) ? ++report_.notes_new : ++report_.notes_here;
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
        keep_practice_shop_code(state_.database, shop.code);
    }

    void add_entry(const EntryDraft& draft) {
        const std::string path = text_field(draft.values, "path");
        const bool nothing_yet = is_new_car(draft.kind, path);
        const auto stored = nothing_yet ? std::vector<CurrentEntry>()
                                        : winning_entries(state_.database, draft.kind, path, path + '\x01');
        StoredEntry entry{draft.values, 1, bytes_of_hex(state_.own.id)};
        std::string_view word = "new";
        if (!stored.empty()) {
            if (same_fields(stored.front().entry.values, draft.values)) {
                ++report_.entries_here;
                added_.entry_fates.push_back(RowFate::here);
                return;
            }
            word = "changed";
            keep_hazards(stored.front().entry.values, entry.values);
        }
        entry.revision = 1 + (nothing_yet ? 0 : highest_revision(draft.kind, path));
        word == "new" ? ++report_.entries_new : ++report_.entries_changed;
        added_.entry_fates.push_back(word == "new" ? RowFate::added : RowFate::changed);
        report_.lines.push_back(fmt::format("{:<8} {:<9} {}", word, word_of(draft.kind), path));
        const RecordId id = id_of(entry_record(draft.kind, entry, today_, state_.practice), draft.place);
        insert_entry(state_.database, draft.kind, entry, id, today_);
        added_.records.push_back(id);
        added_.changes_cars = added_.changes_cars || draft.kind == EntryKind::vehicle;
    }

    // Nothing is stored of the car that the path belongs to: none of its entries need be looked for. Asked once a car.
    bool is_new_car(EntryKind kind, std::string_view path) {
        if (kind == EntryKind::converter || kind == EntryKind::amplifier) return false;
        const std::string car(path_head(path, vehicle_depth));
        const auto [found, is_first] = new_cars_.try_emplace(car, false);
        if (is_first) {
            auto rows = state_.database.prepare(
                "SELECT EXISTS (SELECT 1 FROM vehicle WHERE path = ?1) OR EXISTS (SELECT 1 FROM system WHERE path >= ?2"
                " AND path < ?3) OR EXISTS (SELECT 1 FROM circuit WHERE path >= ?2 AND path < ?3) OR EXISTS (SELECT 1"
                " FROM tap WHERE path >= ?2 AND path < ?3)");
            rows.bind_all(car, below_first(car), below_end(car));
            rows.step();
            found->second = rows.integer(0) == 0;
        }
        return found->second;
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
        auto rows = state_.database.prepare(fmt::format(
            "SELECT coalesce(max(revision), 0) FROM {} WHERE path = ?1 AND {}", word_of(kind), not_by_blocked));
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

    Values record_of(const NoteDraft& note) {
        const Author author = author_of(note);
        Values fields = note.values;
        if (!note.car_words.empty()) fields["car"] = car_token(author.salt, note.car_words);
        return note_record(fields, author.shop_hex, state_.practice);
    }

    void add_note(const NoteDraft& note) {
        const Values record = record_of(note);
        const RecordId id = id_of(record, note.place);
        const bool is_new = ledger_.insert(record, id, true);
        is_new ? ++report_.notes_new : ++report_.notes_here;
        added_.notes.push_back(id);
        added_.note_fates.push_back(is_new ? RowFate::added : RowFate::here);
        if (is_new) added_.records.push_back(id);
    }

    // The grade of every pair, power circuit and premium flag that the batch's notes touch.
    void remember_grades(std::map<std::string, Grade>& grades) {
        constexpr std::size_t few = 4;  // more are read quicker together with all others of their car
        std::map<std::string, std::set<std::string>> paths_of_car;
        std::map<std::string, NoteKind> kinds;
        for (const auto& draft : batch_.notes) {
            const std::string path = text_field(draft.values, "path");
            paths_of_car[std::string(path_head(path, vehicle_depth))].insert(path);
            kinds.emplace(path, word_field<NoteKind>(draft.values, "kind").value_or(NoteKind::pair));
        }
        const auto [known, same] = counting_in(state_.database);
        for (const auto& [car, paths] : paths_of_car) {
            const LedgerNotes notes = paths.size() <= few || !same.empty()
                                          ? notes_of_classes(state_.database, same, paths)
                                          : notes_of_vehicle(state_.database, car);
            for (const auto& path : paths) {
                const auto live = notes.live.find(path);
                const std::vector<Note> list = live == notes.live.end() ? std::vector<Note>() : live->second;
                const auto gone = notes.withdrawn.find(path);
                grades[path] = grade_of(list, kinds.at(path), known, side_of_class(state_.database, same, path),
                                        gone == notes.withdrawn.end() ? 0 : gone->second);
            }
        }
    }

    void add_terms(const TermsDraft& draft) {
        const auto [put, before] = put_terms(state_.database, draft, today_);
        added_.terms_fates.push_back(put == TermsPut::here      ? RowFate::here
                                     : put == TermsPut::changed ? RowFate::changed
                                                                : RowFate::added);
        if (put == TermsPut::here) {
            ++report_.terms_here;
            return;
        }
        added_.terms_before.push_back({draft.part, before});
        ++report_.terms_changed;
        report_.lines.push_back(
            fmt::format("{:<8} {:<9} {}", put == TermsPut::changed ? "changed" : "new", "terms", draft.part));
    }

    Catalog::State& state_;
    const Batch& batch_;
    const std::string& today_;
    Added added_;
    AddReport report_;
    std::map<std::string, Grade> before_, after_;
    std::string own_salt_, own_code_;
    std::map<std::string, bool> new_cars_;
    LedgerWriting ledger_;
};

}  // namespace

std::string own_car_token(sqlite::Database& database, std::string_view words) {
    return car_token(salt_of_own_shop(database), words);
}

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

Added add_in_transaction(Catalog::State& state, const Catalog& catalog, const Batch& batch, const std::string& today,
                         GradeMoves moves) {
    check_batch(batch, catalog, known_authors(state, batch));
    return BatchAdding(state, batch, today).run(moves);
}

AddReport Catalog::add(const Batch& batch, bool dry_run, const std::string& today) {
    try {
        sqlite::Transaction transaction(state_->database);
        Added added = add_in_transaction(*state_, *this, batch, today);
        remember_action(state_->database, today, fmt::format("add {}", batch.file), added);
        if (dry_run) return added.report;
        if (added.changes_cars || !has_kept_names(state_->database)) keep_names(state_->database);
        transaction.commit();
        added.report.written = true;
        return added.report;
    } catch (const sqlite::Error& error) {
        throw_catalog_error(error, state_->file);
    }
}

AddReport Catalog::add_many(const BatchSource& next, std::size_t together, const std::string& today) {
    try {
        AddReport total;
        bool changes_cars = false;
        for (auto batch = next(); batch;) {
            sqlite::Transaction transaction(state_->database);
            for (std::size_t i = 0; batch && i < together; ++i, batch = next()) {
                check_batch(*batch, *this, known_authors(*state_, *batch));
                BatchAdding adding(*state_, *batch, today);
                const Added added = adding.run_in_ledger_order();
                const AddReport& report = added.report;
                changes_cars = changes_cars || added.changes_cars;
                total.entries_new += report.entries_new;
                total.entries_changed += report.entries_changed;
                total.entries_here += report.entries_here;
                total.notes_new += report.notes_new;
                total.notes_here += report.notes_here;
                total.terms_changed += report.terms_changed;
                total.terms_here += report.terms_here;
            }
            if (!batch && (changes_cars || !has_kept_names(state_->database))) keep_names(state_->database);
            transaction.commit();
            total.written = true;
        }
        return total;
    } catch (const sqlite::Error& error) {
        throw_catalog_error(error, state_->file);
    }
}

}  // namespace tapbook
