// What lies in the store for a car or a place that has several names? Read under each of them and put together under
// one.
#include <algorithm>

#include "catalog/alias_classes.h"

namespace tapbook {
namespace {

void add_hazards(TextList& all, const TextList& more) {
    for (const auto& word : more)
        if (std::find(all.begin(), all.end(), word) == all.end()) all.push_back(word);
}

// Moves what notes say of one path to another.
void move_notes(LedgerNotes& from, const std::string& path, LedgerNotes& to, const std::string& name) {
    if (const auto live = from.live.find(path); live != from.live.end()) {
        auto& list = to.live[name];
        list.insert(list.end(), std::make_move_iterator(live->second.begin()),
                    std::make_move_iterator(live->second.end()));
    }
    if (const auto gone = from.withdrawn.find(path); gone != from.withdrawn.end()) to.withdrawn[name] += gone->second;
    if (const auto met = from.hazards.find(path); met != from.hazards.end()) add_hazards(to.hazards[name], met->second);
}

std::set<std::string> paths_in(const LedgerNotes& notes) {
    std::set<std::string> paths;
    for (const auto& [path, list] : notes.live) paths.insert(path);
    for (const auto& [path, count] : notes.withdrawn) paths.insert(path);
    return paths;
}

bool is_at_or_below(std::string_view path, std::string_view place) {
    return path.starts_with(place) && (path.size() == place.size() || path[place.size()] == '/');
}

// Notes are the same record by their id, whatever path they were read under.
void in_order_of_ids(LedgerNotes& notes) {
    for (auto& [path, list] : notes.live)
        std::sort(list.begin(), list.end(), [](const Note& a, const Note& b) { return a.id < b.id; });
}

void add_entry(std::map<std::string, CurrentEntry>& by_name, CurrentEntry entry, const std::string& name) {
    entry.entry.values["path"] = name;
    const auto [found, is_new] = by_name.emplace(name, entry);
    if (is_new) return;
    auto hazards = list_field(found->second.entry.values, "hazards");
    add_hazards(hazards, list_field(entry.entry.values, "hazards"));
    if (!hazards.empty()) found->second.entry.values["hazards"] = hazards;
}

}  // namespace

AliasClasses alias_classes(sqlite::Database& database) {
    std::vector<AliasClasses::Pair> said;
    auto rows = database.prepare(
        "SELECT first, second FROM alias JOIN shop ON shop.number = alias.shop"
        " WHERE alias.vouched = 1 AND shop.known = 1 AND shop.blocked = 0");
    while (rows.step()) {
        const auto first = path_parts(rows.text(0)), second = path_parts(rows.text(1));
        if (first.size() == second.size() && first.size() >= vehicle_depth)
            said.emplace_back(std::string(rows.text(0)), std::string(rows.text(1)));
    }
    return said.empty() ? AliasClasses() : AliasClasses(said);
}

Counting counting_in(sqlite::Database& database) {
    Counting counting;
    bool is_any = false;
    auto rows = database.prepare("SELECT id, EXISTS (SELECT 1 FROM alias) FROM shop WHERE known = 1");
    while (rows.step()) {
        counting.known.insert(hex_of(rows.blob(0)));
        is_any = rows.integer(1) != 0;
    }
    if (is_any) counting.same = alias_classes(database);
    return counting;
}

LedgerNotes notes_of_car(sqlite::Database& database, const AliasClasses& same, std::string_view car) {
    if (same.empty()) return notes_of_vehicle(database, car);
    LedgerNotes all;
    for (const auto& place : same.places_of_car(car)) {
        LedgerNotes notes = notes_of_vehicle(database, path_head(place, vehicle_depth));
        for (const auto& path : paths_in(notes))
            if (is_at_or_below(path, place)) move_notes(notes, path, all, same.name_in(car, path));
    }
    in_order_of_ids(all);
    return all;
}

std::vector<CurrentEntry> entries_of_car(sqlite::Database& database, const AliasClasses& same, EntryKind kind,
                                         std::string_view car) {
    const auto read = [&](std::string_view place) {
        return kind == EntryKind::vehicle ? current_entries(database, kind, place, std::string(place) + '\x01')
                                          : current_entries(database, kind, below_first(place), below_end(place));
    };
    if (same.empty()) return read(car);
    std::map<std::string, CurrentEntry> by_name;
    for (const auto& place : same.places_of_car(car)) {
        if (kind != EntryKind::vehicle && path_parts(place).size() > vehicle_depth)
            for (auto& entry : current_entries(database, kind, place, place + '\x01'))
                add_entry(by_name, std::move(entry), same.name_in(car, place));
        for (auto& entry : read(place)) {
            const std::string path = text_field(entry.entry.values, "path");
            add_entry(by_name, std::move(entry), same.name_in(car, path));
        }
    }
    std::vector<CurrentEntry> entries;
    for (auto& [name, entry] : by_name) entries.push_back(std::move(entry));
    return entries;
}

std::optional<StoredEntry> entry_of_class(sqlite::Database& database, const AliasClasses& same, EntryKind kind,
                                          std::string_view path) {
    for (const auto& member : same.members(path)) {
        auto entry = current_entries(database, kind, member, member + '\x01');
        if (!entry.empty()) return std::move(entry.front().entry);
    }
    return std::nullopt;
}

LedgerNotes notes_of_classes(sqlite::Database& database, const AliasClasses& same, const std::set<std::string>& paths) {
    if (same.empty()) return notes_at(database, paths);
    LedgerNotes all;
    for (const auto& path : paths) {
        const auto members = same.members(path);
        LedgerNotes notes = notes_at(database, {members.begin(), members.end()});
        for (const auto& member : members) move_notes(notes, member, all, path);
    }
    in_order_of_ids(all);
    return all;
}

}  // namespace tapbook
