// See batch_reader.h.
#include "files/batch_reader.h"

#include <fmt/format.h>

#include <algorithm>
#include <map>

#include "files/entry_rules.h"
#include "files/table_reader.h"

namespace tapbook {
namespace {

constexpr std::string_view top_keys[] = {"vehicle",   "system",    "circuit", "tap", "note",
                                         "converter", "amplifier", "stock",   "shop"};

class BatchReader {
  public:
    BatchReader(const TomlValue& root, std::string file) : root_(root) { batch_.file = std::move(file); }

    Batch read() {
        check_top();
        if (const auto* vehicle = root_.find("vehicle")) read_vehicle(*vehicle);
        read_parts("converter", EntryKind::converter);
        read_parts("amplifier", EntryKind::amplifier);
        for (const auto* table : tables("stock")) read_stock(*table);
        for (const auto* table : tables("shop")) read_shop(*table);
        complaints_.throw_if_any();
        return std::move(batch_);
    }

  private:
    void check_top() {
        if (root_.members.empty())
            complaints_.add({batch_.file, 0, 0, {}}, "holds nothing to add",
                            "see the README for a vehicle file and a parts file");
        for (std::size_t i = 0; i < root_.members.size(); ++i) {
            const auto& key = root_.members[i].first;
            if (std::find(std::begin(top_keys), std::end(top_keys), key) != std::end(top_keys)) continue;
            const auto near = nearest(key, top_keys);
            complaints_.add(root_.member_places[i], fmt::format("unknown table \"{}\"", shown(key)),
                            near ? fmt::format("did you mean \"{}\"?", *near)
                                 : "known are vehicle, system, circuit, tap, note, converter, amplifier, stock, shop");
        }
        for (const std::string_view key : {"system", "circuit", "tap", "note"})
            if (root_.find("vehicle") == nullptr && root_.find(key) != nullptr)
                complaints_.add(place_of(root_, key), fmt::format("[[{}]] without a [vehicle]", key),
                                "a vehicle file starts with one [vehicle] table");
    }

    // The [[key]] tables; a complaint when it is something else.
    std::vector<const TomlValue*> tables(std::string_view key) {
        std::vector<const TomlValue*> list;
        const auto* value = root_.find(key);
        if (value == nullptr) return list;
        if (value->type != TomlValue::Type::list) {
            complaints_.add(value->place, fmt::format("{} must be written as [[{}]]", key, key));
            return list;
        }
        for (const auto& item : value->items) {
            if (item.type == TomlValue::Type::table)
                list.push_back(&item);
            else
                complaints_.add(item.place, fmt::format("{} must be written as [[{}]]", key, key));
        }
        return list;
    }

    std::string slug_of(const TomlValue& table, std::string_view key) {
        const std::string text = read_text(table, key, true, complaints_);
        if (text.empty()) return "?";
        if (const auto complaint = slug_complaint(text))
            complaints_.add(place_of(table, key), fmt::format("{} \"{}\" {}", key, shown(text), *complaint));
        return text;
    }

    // "base/front-left" below the vehicle; `depth` parts are wanted.
    std::string at_path(const TomlValue& table, std::size_t depth, std::string_view wanted) {
        const std::string at = read_text(table, "at", true, complaints_);
        const auto parts = path_parts(at);
        const bool good = std::all_of(parts.begin(), parts.end(), is_slug);
        if (!at.empty() && (parts.size() != depth || !good))
            complaints_.add(place_of(table, "at"), fmt::format("at \"{}\" is not {}", shown(at), wanted));
        return path_join(vehicle_path_, at);
    }

    void draft(EntryKind kind, std::string path, Values values, const SourcePlace& place) {
        values["path"] = std::move(path);
        batch_.entries.push_back({kind, std::move(values), place});
    }

    void read_vehicle(const TomlValue& table) {
        if (table.type != TomlValue::Type::table) {
            complaints_.add(table.place, "vehicle must be written as [vehicle]", "one vehicle per file");
            return;
        }
        Values values = read_fields(table, fields_of(EntryKind::vehicle), {}, complaints_);
        check_vehicle(values, table, complaints_);
        const auto first_year = whole_field(values, "first_year").value_or(0);
        vehicle_path_ =
            fmt::format("{}/{}/{}/{}", slug_from(text_field(values, "make")), slug_from(text_field(values, "model")),
                        slug_from(text_field(values, "body")), first_year);
        for (const std::string_view key : {"make", "model", "body"})
            if (values.contains(key) && !is_slug(slug_from(text_field(values, key))))
                complaints_.add(place_of(table, key), fmt::format("{} must hold letters a to z or digits", key),
                                "it becomes part of the car's path");
        draft(EntryKind::vehicle, vehicle_path_, std::move(values), table.place);
        for (const auto* system : tables("system")) read_system(*system);
        for (const auto* circuit : tables("circuit")) read_circuit(*circuit);
        for (const auto* tap : tables("tap")) read_tap(*tap);
        for (const auto* note : tables("note")) read_note(*note);
    }

    void read_system(const TomlValue& table) {
        constexpr std::string_view own[] = {"code"};
        Values values = read_fields(table, fields_of(EntryKind::system), own, complaints_);
        const std::string code = slug_of(table, "code");
        if (code == unrecorded_system)
            complaints_.add(place_of(table, "code"),
                            "\"unrecorded\" is kept for notes on cars whose system was not written down",
                            "choose another code");
        draft(EntryKind::system, path_join(vehicle_path_, code), std::move(values), place_of(table, "code"));
    }

    void read_circuit(const TomlValue& table) {
        constexpr std::string_view own[] = {"at", "code"};
        Values values = read_fields(table, fields_of(EntryKind::circuit), own, complaints_);
        check_circuit(values, table, complaints_);
        const std::string path = path_join(at_path(table, 1, "a system's code"), slug_of(table, "code"));
        roles_[path] = word_field<Role>(values, "role").value_or(Role::speaker);
        draft(EntryKind::circuit, path, std::move(values), place_of(table, "at"));
    }

    void read_tap(const TomlValue& table) {
        constexpr std::string_view own[] = {"at", "code"};
        Values values = read_fields(table, fields_of(EntryKind::tap), own, complaints_);
        const std::string path = path_join(at_path(table, 2, "system/circuit"), slug_of(table, "code"));
        draft(EntryKind::tap, path, std::move(values), place_of(table, "at"));
    }

    NoteKind note_kind(const TomlValue& table, const std::string& at) {
        const auto parts = path_parts(at);
        const bool good = std::all_of(parts.begin(), parts.end(), is_slug);
        if (good && parts.size() == 1) return NoteKind::system;
        if (good && parts.size() == 3) {
            const auto role = roles_.find(std::string(path_head(path_join(vehicle_path_, at), circuit_depth)));
            if (role != roles_.end())
                return role->second == Role::speaker || role->second == Role::line_level ? NoteKind::pair
                                                                                         : NoteKind::switched;
            return table.find("wire") != nullptr || table.find("key_off_v") != nullptr ? NoteKind::switched
                                                                                       : NoteKind::pair;
        }
        if (!at.empty())
            complaints_.add(place_of(table, "at"),
                            fmt::format("at \"{}\" is neither system nor system/circuit/tap", shown(at)));
        return NoteKind::pair;
    }

    void read_note(const TomlValue& table) {
        constexpr std::string_view own[] = {"at", "shop", "car"};
        const std::string at = read_text(table, "at", true, complaints_);
        const NoteKind kind = note_kind(table, at);
        std::vector<Field> fields;
        for (const auto& note_field : note_fields())
            if (applies_to(note_field, kind)) fields.push_back(note_field.field);
        NoteDraft note;
        note.values = read_fields(table, fields, own, complaints_);
        note.values["kind"] = std::string(word_of(kind));
        note.values["path"] = path_join(vehicle_path_, at);
        note.shop_code = read_text(table, "shop", false, complaints_);
        note.car_words = read_text(table, "car", false, complaints_);
        note.place = place_of(table, "at");
        check_note_fields(note.values, table, complaints_);
        batch_.notes.push_back(std::move(note));
    }

    void read_parts(std::string_view key, EntryKind kind) {
        constexpr std::string_view own[] = {"code"};
        for (const auto* table : tables(key)) {
            Values values = read_fields(*table, fields_of(kind), own, complaints_);
            check_part(kind, values, *table, complaints_);
            draft(kind, slug_of(*table, "code"), std::move(values), place_of(*table, "code"));
        }
    }

    void read_stock(const TomlValue& table) {
        static constexpr Field fields[] = {
            {"cost", "cost_cents", FieldKind::decimal, 2, "", 0, 100000000, nullptr, false, "what one costs the shop"},
            {"lead_days", "lead_days", FieldKind::whole, 0, "days", 0, 3650, nullptr, false, "from order to delivery"},
            {"pack", "pack", FieldKind::whole, 0, "", 1, 10000, nullptr, false, "how many come in one pack"},
            {"on_hand", "on_hand", FieldKind::whole, 0, "", 0, 100000, nullptr, false, "how many lie on the shelf"},
            {"on_order", "on_order", FieldKind::whole, 0, "", 0, 100000, nullptr, false, "how many are ordered"}};
        constexpr std::string_view own[] = {"part"};
        const Values values = read_fields(table, fields, own, complaints_);
        TermsDraft terms{slug_of(table, "part"), {}, place_of(table, "part")};
        if (const auto* cents = find_value<std::int64_t>(values, "cost_cents")) terms.terms.cost_cents = *cents;
        terms.terms.lead_days = whole_field(values, "lead_days");
        terms.terms.pack = whole_field(values, "pack");
        terms.terms.on_hand = whole_field(values, "on_hand");
        terms.terms.on_order = whole_field(values, "on_order");
        batch_.terms.push_back(std::move(terms));
    }

    void read_shop(const TomlValue& table) {
        static constexpr Field fields[] = {
            {"name", "name", FieldKind::name, 0, "", 0, 0, nullptr, true, "what the shop is called"},
            {"place", "place", FieldKind::name, 0, "", 0, 0, nullptr, false, "where it is"}};
        constexpr std::string_view own[] = {"code"};
        const Values values = read_fields(table, fields, own, complaints_);
        batch_.shops.push_back({slug_of(table, "code"), text_field(values, "name"), place_of(table, "code")});
    }

    const TomlValue& root_;
    Batch batch_;
    Complaints complaints_;
    std::string vehicle_path_;
    std::map<std::string, Role, std::less<>> roles_;
};

}  // namespace

Batch read_batch(std::string_view text, const std::string& file) {
    const TomlValue root = read_toml(text, file);
    return BatchReader(root, file).read();
}

}  // namespace tapbook
