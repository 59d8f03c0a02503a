// What is known of one car, and what lies on the shelf? Reads whole key ranges and hands out plain values.
#include <fmt/format.h>

#include <algorithm>
#include <span>

#include "catalog/alias_classes.h"
#include "catalog/ledger_rows.h"

namespace tapbook {
namespace {

template <class T>
const T* found_or_null(const std::map<std::string, T, std::less<>>& by_path, std::string_view path) {
    const auto found = by_path.find(path);
    return found == by_path.end() ? nullptr : &found->second;
}

class CarReader {
  public:
    CarReader(sqlite::Database& database, std::string_view path, std::optional<int> year)
        : database_(database), counting_(counting_in(database)), path_(counting_.same.name_of(path)) {
        car_.year = year;
    }

    void count_notes() { notes_ = notes_of_car(database_, counting_.same, path_); }

    // False when there is no such vehicle.
    bool read() {
        const auto vehicle = entries(EntryKind::vehicle);
        if (vehicle.empty()) return false;
        car_.vehicle = vehicle_of(vehicle.front().entry.values);
        car_.also = others_of(path_);
        for (const auto& system : entries(EntryKind::system)) add_system(system);
        for (const auto& circuit : entries(EntryKind::circuit))
            circuits_[text_field(circuit.entry.values, "path")] = circuit_of(circuit.entry.values);
        const auto taps = entries(EntryKind::tap);
        car_.taps.reserve(taps.size());
        for (const auto& tap : taps) add_tap(tap);
        add_unrecorded();
        add_unrecorded_system();
        return true;
    }

    CarFacts take() { return std::move(car_); }

  private:
    std::vector<CurrentEntry> entries(EntryKind kind) { return entries_of_car(database_, counting_.same, kind, path_); }

    // The other paths of a car.
    TextList others_of(const std::string& path) const {
        TextList others;
        if (counting_.same.empty()) return others;
        for (auto& other : counting_.same.members(path))
            if (other != path) others.push_back(std::move(other));
        return others;
    }

    // The other paths of a place of the car, without those that only the car's other names make.
    TextList also_called(const std::string& path) const {
        TextList others;
        for (auto& other : others_of(path)) {
            const auto head = path_head(other, vehicle_depth);
            const bool is_own = std::find(car_.also.begin(), car_.also.end(), head) == car_.also.end();
            if (is_own) others.push_back(std::move(other));
        }
        return others;
    }

    std::span<const Note> notes_at(std::string_view path) const {
        const auto* live = found_or_null(notes_.live, path);
        return live == nullptr ? std::span<const Note>() : *live;
    }
    int withdrawn_at(std::string_view path) const {
        const auto* count = found_or_null(notes_.withdrawn, path);
        return count == nullptr ? 0 : *count;
    }

    void add_system(const CurrentEntry& entry) {
        SystemFacts system;
        system.entry = sound_system_of(entry.entry.values);
        system.code = path_tail(system.entry.path, vehicle_depth);
        const auto notes = notes_at(system.entry.path);
        system.premium = premium_standing(notes, counting_.known, car_.year, withdrawn_at(system.entry.path));
        for (const auto& note : notes)
            if (!note.tell.empty()) system.noted_tells.push_back(note.tell);
        car_.systems.push_back(std::move(system));
    }

    void fill_standing(TapFacts& facts, std::string_view path, std::optional<ConnectorSide> side,
                       const ProvenElsewhere& proven = {}) {
        const auto notes = notes_at(path);
        const int withdrawn = withdrawn_at(path);
        facts.also = also_called(facts.code);
        if (is_power(facts.circuit.role))
            facts.switched = switched_standing(notes, counting_.known, car_.year, withdrawn, side, proven);
        else
            facts.pair = pair_standing(notes, side, counting_.known, car_.year, withdrawn, proven);
        const auto* hazards = found_or_null(notes_.hazards, path);
        if (hazards == nullptr) return;
        for (const auto& word : *hazards)
            if (const auto hazard = parse_word<Hazard>(word);
                hazard &&
                std::find(facts.tap.hazards.begin(), facts.tap.hazards.end(), *hazard) == facts.tap.hazards.end())
                facts.tap.hazards.push_back(*hazard);
    }

    void add_tap(const CurrentEntry& entry) {
        TapFacts facts;
        facts.tap = tap_point_of(entry.entry.values);
        facts.code = facts.tap.path;
        facts.system = path_parts(facts.code)[vehicle_depth];
        facts.concurrent_edits = entry.concurrent;
        const auto circuit = circuits_.find(path_head(facts.code, circuit_depth));
        if (circuit == circuits_.end()) return;  // its circuit or system was retired
        facts.circuit = circuit->second;
        fill_standing(facts, facts.code, facts.tap.side);
        car_.taps.push_back(std::move(facts));
    }

    // The PROVEN values of the taps of the same name in the recorded systems.
    ProvenElsewhere proven_at(std::string_view unrecorded_path) const {
        ProvenElsewhere proven;
        for (const auto& tap : car_.taps)
            if (path_tail(tap.code, system_depth) == path_tail(unrecorded_path, system_depth))
                for (const auto* standing : {&tap.pair.pair, &tap.switched.circuit})
                    if (standing->grade == Grade::proven && standing->value) proven.insert(*standing->value);
        return proven;
    }

    // What system notes say of cars whose sound system was not written down.
    void add_unrecorded_system() {
        const std::string path = path_join(path_, unrecorded_system);
        const auto notes = notes_at(path);
        const int withdrawn = withdrawn_at(path);
        if (notes.empty() && withdrawn == 0) return;
        SystemFacts system;
        system.entry.path = path;
        system.code = unrecorded_system;
        system.premium = premium_standing(notes, counting_.known, car_.year, withdrawn);
        for (const auto& note : notes)
            if (!note.tell.empty()) system.noted_tells.push_back(note.tell);
        car_.unrecorded_system = std::move(system);
    }

    void add_unrecorded() {
        const std::string first = below_first(path_join(path_, unrecorded_system));
        for (const auto& [path, notes] : notes_.live) {
            if (!path.starts_with(first)) continue;
            TapFacts facts;
            facts.code = path;
            facts.system = unrecorded_system;
            facts.tap.path = path;
            facts.tap.place = path_tail(path, circuit_depth);
            facts.circuit.path = path_head(path, circuit_depth);
            facts.circuit.role = notes.front().kind == NoteKind::switched ? Role::switched_power : Role::speaker;
            fill_standing(facts, path, {}, proven_at(path));
            car_.unrecorded.push_back(std::move(facts));
        }
    }

    sqlite::Database& database_;
    Counting counting_;
    std::string path_;  // of the car's class
    LedgerNotes notes_;
    CarFacts car_;
    std::map<std::string, Circuit, std::less<>> circuits_;
};

enum class CountNotes { yes, no };

// All of the car as it is at one moment, and one lock for it.
CarFacts car_from(Catalog::State& state, std::string_view path, std::optional<int> year, CountNotes count) {
    try {
        std::optional<sqlite::Transaction> one_state;
        if (!state.database.in_transaction()) one_state.emplace(state.database, sqlite::Transaction::Kind::read);
        CarReader reader(state.database, path, year);
        if (count == CountNotes::yes) reader.count_notes();
        if (reader.read()) return reader.take();
    } catch (const sqlite::Error& error) {
        throw_catalog_error(error, state.file);
    }
    throw CatalogError(CatalogTrouble::not_found, fmt::format("there is no vehicle {}", path),
                       "tapbook find lists all cars");
}

std::vector<CurrentEntry> all_parts(sqlite::Database& database, EntryKind kind) {
    return current_entries(database, kind, "", "\x7f");
}

}  // namespace

bool carries_signal(Role role) {
    return role == Role::speaker || role == Role::line_level;
}

bool is_power(Role role) {
    return role == Role::switched_power || role == Role::constant_power || role == Role::turn_on_lead ||
           role == Role::illumination;
}

CarFacts Catalog::car(std::string_view path, std::optional<int> year) const {
    return car_from(*state_, path, year, CountNotes::yes);
}

CarFacts Catalog::car_layout(std::string_view path) const {
    return car_from(*state_, path, {}, CountNotes::no);
}

std::vector<ShelfConverter> Catalog::converters() const {
    try {
        const auto terms = all_terms(state_->database);
        std::vector<ShelfConverter> parts;
        for (const auto& entry : all_parts(state_->database, EntryKind::converter)) {
            Converter part = converter_of(entry.entry.values);
            const auto* own = found_or_null(terms, part.path);
            parts.push_back({std::move(part), own == nullptr ? Terms{} : *own});
        }
        return parts;
    } catch (const sqlite::Error& error) {
        throw_catalog_error(error, state_->file);
    }
}

std::vector<Amplifier> Catalog::amplifiers() const {
    try {
        std::vector<Amplifier> parts;
        for (const auto& entry : all_parts(state_->database, EntryKind::amplifier))
            parts.push_back(amplifier_of(entry.entry.values));
        return parts;
    } catch (const sqlite::Error& error) {
        throw_catalog_error(error, state_->file);
    }
}

bool Catalog::has_entry(EntryKind kind, std::string_view path, Retired retired) const {
    const auto is_at = [&](const std::string& place) {
        return retired == Retired::included ? !winning_entries(state_->database, kind, place, place + '\x01').empty()
                                            : !current_entries(state_->database, kind, place, place + '\x01').empty();
    };
    if (is_at(std::string(path))) return true;
    if (path_parts(path).size() < vehicle_depth) return false;  // a part's
    const auto names = alias_classes(state_->database).members(path);
    return std::any_of(names.begin(), names.end(), is_at);
}

std::vector<std::string> Catalog::note_lines(std::string_view vehicle_path) const {
    std::vector<std::string> lines;
    auto records = note_records(state_->database, vehicle_path, state_->practice);
    std::sort(records.begin(), records.end(), [](const auto& a, const auto& b) { return a.first < b.first; });
    for (const auto& [id, record] : records) lines.push_back(record_line(record));
    return lines;
}

LedgerState Catalog::ledger_state(std::string_view vehicle_path) const {
    LedgerState all;
    std::optional<std::int64_t> newest;
    for (const auto& car : counting_in(state_->database).same.members(vehicle_path)) {
        const auto vehicle = vehicle_number(state_->database, car);
        if (!vehicle) continue;
        auto rows = state_->database.prepare("SELECT count(*), max(date) FROM note WHERE vehicle = ?1");
        rows.bind_all(*vehicle);
        rows.step();
        all.notes += rows.integer(0);
        if (const auto day = rows.optional_integer(1)) newest = std::max(newest.value_or(*day), *day);
    }
    if (newest) all.newest = day_text(*newest);
    return all;
}

CatalogCounts Catalog::counts() const {
    const auto count = [this](std::string_view table) {
        auto rows = state_->database.prepare(fmt::format("SELECT count(*) FROM {}", table));
        rows.step();
        return rows.integer(0);
    };
    constexpr std::string_view paths = "(SELECT DISTINCT path FROM {})";
    const auto distinct = [&](std::string_view table) { return count(fmt::format(fmt::runtime(paths), table)); };
    return {distinct("vehicle"), distinct("system"),    distinct("circuit"),   distinct("tap"),
            count("note"),       distinct("converter"), distinct("amplifier"), count("shop")};
}

}  // namespace tapbook
