// See batch_reader.h.
#include "files/batch_reader.h"

#include <fmt/format.h>

#include <algorithm>
#include <iterator>
#include <map>

#include "files/entry_rules.h"
#include "files/local_fields.h"
#include "files/table_reader.h"

namespace tapbook {
namespace {

constexpr std::string_view top_keys[] = {"vehicle",   "system",    "circuit", "tap",  "note",
                                         "converter", "amplifier", "stock",   "shop", "practice"};

class BatchReader {
  public:
    BatchReader(const TomlValue& root, std::string file) : root_(root) { batch_.file = std::move(file); }

    Batch read() {
        check_top();
        read_practice();
        if (const auto* vehicle = root_.find("vehicle")) read_vehicle(*vehicle);
        for (const auto* table : tables("converter")) read_converter(*table);
        for (const auto* table : tables("amplifier")) read_amplifier(*table);
        for (const auto* table : tables("stock")) read_stock(*table);
        for (const auto* table : tables("shop")) read_shop(*table);
        complaints_.throw_if_any();
        return std::move(batch_);
    }

    Batch read_one(std::string_view name, const TomlValue& table, const std::string& vehicle_path) {
        using Read = void (BatchReader::*)(const TomlValue&);
        constexpr std::pair<std::string_view, Read> readers[] = {
            {"vehicle", &BatchReader::read_vehicle},     {"system", &BatchReader::read_system},
            {"circuit", &BatchReader::read_circuit},     {"tap", &BatchReader::read_tap},
            {"note", &BatchReader::read_note},           {"converter", &BatchReader::read_converter},
            {"amplifier", &BatchReader::read_amplifier}, {"stock", &BatchReader::read_stock}};
        vehicle_path_ = vehicle_path;
        for (const auto& [word, read] : readers)
            if (word == name) (this->*read)(table);
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

    // The mark of a file that was exported from a practice catalog.
    void read_practice() {
        const auto* mark = root_.find("practice");
        if (mark == nullptr) return;
        if (mark->type != TomlValue::Type::flag) complaints_.add(mark->place, "practice must be true or false");
        batch_.practice = mark->flag;
        batch_.practice_place = mark->place;
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
        constexpr std::string_view own[] = {"path"};
        Values values = read_fields(table, fields_of(EntryKind::vehicle), own, complaints_);
        check_vehicle(values, table, complaints_);
        const auto first_year = whole_field(values, "first_year").value_or(0);
        vehicle_path_ =
            fmt::format("{}/{}/{}/{}", slug_from(text_field(values, "make")), slug_from(text_field(values, "model")),
                        slug_from(text_field(values, "body")), first_year);
        if (table.find("path") != nullptr) vehicle_path_ = kept_path(table);
        for (const std::string_view key : {"make", "model", "body"})
            if (table.find("path") == nullptr && values.contains(key) && !is_slug(slug_from(text_field(values, key))))
                complaints_.add(place_of(table, key), fmt::format("{} must hold letters a to z or digits", key),
                                "it becomes part of the car's path");
        draft(EntryKind::vehicle, vehicle_path_, std::move(values), table.place);
        for (const auto* system : tables("system")) read_system(*system);
        for (const auto* circuit : tables("circuit")) read_circuit(*circuit);
        for (const auto* tap : tables("tap")) read_tap(*tap);
        for (const auto* note : tables("note")) read_note(*note);
    }

    // A path is never edited: a car whose make was respelt keeps the one it was first written under.
    std::string kept_path(const TomlValue& table) {
        const std::string path = read_text(table, "path", true, complaints_);
        const auto parts = path_parts(path);
        if (!path.empty() && (parts.size() != vehicle_depth || !std::all_of(parts.begin(), parts.end(), is_slug)))
            complaints_.add(place_of(table, "path"), fmt::format("path \"{}\" is not a car's path", shown(path)),
                            "leave it out for a new car; for a known one take it from `tapbook find`");
        return path;
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

    // The kind that a note says itself: written only where its circuit does not tell.
    std::optional<NoteKind> said_kind(const TomlValue& table) {
        if (table.find("kind") == nullptr) return std::nullopt;
        const std::string word = read_text(table, "kind", true, complaints_);
        const auto kind = parse_word<NoteKind>(word);
        if (!word.empty() && (!kind || kind == NoteKind::system))
            complaints_.add(place_of(table, "kind"), fmt::format("kind does not know \"{}\"", shown(word)),
                            "write pair or switched, or leave it out: the circuit's role tells");
        return kind == NoteKind::system ? NoteKind::pair : kind;
    }

    NoteKind note_kind(const TomlValue& table, const std::string& at) {
        const auto parts = path_parts(at);
        const bool good = std::all_of(parts.begin(), parts.end(), is_slug);
        if (good && parts.size() == 1) {
            if (table.find("kind") != nullptr)
                complaints_.add(place_of(table, "kind"), "a note on a whole system has no kind", "leave it out");
            return NoteKind::system;
        }
        if (good && parts.size() == 3) {
            if (const auto kind = said_kind(table)) return *kind;
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
        constexpr std::string_view own[] = {"at", "shop", "car", "car_token", "kind"};
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
        if (table.find("car_token") != nullptr) note.values["car"] = token_of(table);
        note.place = place_of(table, "at");
        check_note_fields(note.values, table, complaints_);
        batch_.notes.push_back(std::move(note));
    }

    // What an exported note holds instead of plate or VIN.
    std::string token_of(const TomlValue& table) {
        const std::string token = read_text(table, "car_token", true, complaints_);
        RecordId bytes{};
        if (!token.empty() && !from_hex(token, bytes))
            complaints_.add(
                place_of(table, "car_token"), fmt::format("car_token \"{}\" is not one", shown(token)),
                "it has 32 digits 0-9 and a-f, as an export wrote it; write car = \"plate or VIN\" instead");
        if (table.find("car") != nullptr)
            complaints_.add(place_of(table, "car_token"), "car and car_token in one note", "keep one of them");
        return token;
    }

    void read_converter(const TomlValue& table) { read_part(table, EntryKind::converter); }
    void read_amplifier(const TomlValue& table) { read_part(table, EntryKind::amplifier); }

    void read_part(const TomlValue& table, EntryKind kind) {
        constexpr std::string_view own[] = {"code"};
        Values values = read_fields(table, fields_of(kind), own, complaints_);
        check_part(kind, values, table, complaints_);
        draft(kind, slug_of(table, "code"), std::move(values), place_of(table, "code"));
    }

    void read_stock(const TomlValue& table) {
        constexpr std::string_view own[] = {"part"};
        const Values values = read_fields(table, stock_fields(), own, complaints_);
        // What belongs to a small part whose kind could not be read is no further trouble.
        const bool is_known = table.find("small") == nullptr || values.contains("small_kind");
        for (const FieldTrouble& trouble : is_known ? trouble_of_stock(values) : std::vector<FieldTrouble>())
            complaints_.add(place_of(table, trouble.key), fmt::format("{} {}", trouble.key, trouble.message),
                            trouble.hint);
        batch_.terms.push_back({slug_of(table, "part"), terms_of(values), place_of(table, "part")});
    }

    void read_shop(const TomlValue& table) {
        constexpr std::string_view own[] = {"code"};
        const Values values = read_fields(table, shop_fields(), own, complaints_);
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

void read_one_table(std::string_view name, const TomlValue& table, const std::string& vehicle_path, Batch& batch) {
    const TomlValue nothing;
    Batch one = BatchReader(nothing, batch.file).read_one(name, table, vehicle_path);
    std::move(one.entries.begin(), one.entries.end(), std::back_inserter(batch.entries));
    std::move(one.notes.begin(), one.notes.end(), std::back_inserter(batch.notes));
    std::move(one.terms.begin(), one.terms.end(), std::back_inserter(batch.terms));
}

}  // namespace tapbook
