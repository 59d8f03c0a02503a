// What do the tests of the exchange start from? Shops with repeatable keys, each with its own catalog in a temporary
// folder, and short words for what they hand each other.
#pragma once

#include <stdlib.h>
#include <unistd.h>

#include <catch2/catch.hpp>
#include <filesystem>
#include <fstream>
#include <map>
#include <memory>
#include <sstream>
#include <string>
#include <vector>

#include "exchange/exchange.h"
#include "sqlite/sqlite.h"

inline const std::string today = "2026-05-02";
inline const std::string car = "orrery/vel-ostrel/sedan/2012";
inline const std::string tap_path = car + "/base/front-left/radio-plug";

class Places {
  public:
    Places() {
        std::string name = (quickest_folder() / "tapbook-exchange-XXXXXX").string();
        if (mkdtemp(name.data()) == nullptr) throw std::runtime_error("no temporary folder");
        path_ = name;
    }
    ~Places() {
        std::error_code ignored;
        std::filesystem::remove_all(path_, ignored);
    }
    Places(const Places&) = delete;
    Places& operator=(const Places&) = delete;
    std::filesystem::path operator/(const std::string& name) const { return path_ / name; }

    tapbook::Catalog shop(const std::string& name, tapbook::CatalogKind kind = tapbook::CatalogKind::real) const {
        return tapbook::Catalog::create(path_ / (name + ".sqlite"), name, kind, today,
                                        tapbook::repeatable_random(name));
    }

    // The same from a file that was made once: copying it costs a tenth of making it. Shops of one name are one shop.
    tapbook::Catalog copied_shop(const std::string& name, const std::string& file) const {
        static const Places made;
        static std::map<std::string, std::filesystem::path> known;
        const auto [shop, is_new] = known.emplace(name, made / (name + ".sqlite"));
        if (is_new) made.shop(name);
        std::filesystem::copy_file(shop->second, path_ / (file + ".sqlite"));
        return tapbook::Catalog::open(path_ / (file + ".sqlite"), tapbook::Access::write);
    }

  private:
    // In memory where there is such a place: nothing here is about what survives a power cut.
    static std::filesystem::path quickest_folder() {
        const std::filesystem::path memory = "/dev/shm";
        return ::access(memory.c_str(), W_OK) == 0 ? memory : std::filesystem::temp_directory_path();
    }

    std::filesystem::path path_;
};

inline tapbook::Value words(const std::string& text) {
    return text;
}

// One car with one system, one circuit and one tap point.
inline tapbook::Batch one_car(const std::string& path = car) {
    using tapbook::EntryKind;
    const auto entry = [](EntryKind kind, const std::string& at, tapbook::Values values) {
        values["path"] = at;
        return tapbook::EntryDraft{kind, std::move(values), {"car.toml", 1, 1, "at = ..."}};
    };
    tapbook::Batch batch;
    batch.file = "car.toml";
    batch.entries = {entry(EntryKind::vehicle, path,
                           {{"make", words("Orrery")},
                            {"model", words("Vel Ostrel")},
                            {"body", words("sedan")},
                            {"first_year", std::int64_t{2012}}}),
                     entry(EntryKind::system, path + "/base", {{"name", words("radio, four speakers")}}),
                     entry(EntryKind::circuit, path + "/base/front-left", {{"role", words("speaker")}}),
                     entry(EntryKind::tap, path + "/base/front-left/radio-plug", {{"place", words("radio")}})};
    return batch;
}

// All that a shop would hand on, as one pack.
inline std::string pack_of(const tapbook::Catalog& catalog, const tapbook::OutgoingChoice& choice = {}) {
    const auto packs = tapbook::write_packs(catalog, choice);
    return packs.empty() ? std::string() : packs.front().text;
}

inline tapbook::TakeInReport take(tapbook::Catalog& catalog, const std::string& text,
                                  const std::string& name = "pack.jsonl") {
    return catalog.take_in(tapbook::read_pack(text, name), today);
}

// The lines of every record that the catalog would hand on: what two shops must agree on.
inline std::vector<std::string> records_of(const tapbook::Catalog& catalog) {
    std::vector<std::string> lines;
    catalog.outgoing({}, [&](tapbook::OutgoingRecord&& record) { lines.push_back(std::move(record.line)); });
    return lines;
}

// "line:column message" of the refusal; empty when the pack is taken.
inline std::string refusal_of(const std::string& text) {
    try {
        tapbook::read_pack(text, "pack.jsonl");
        return {};
    } catch (const tapbook::PackRefused& refused) {
        const auto& complaint = refused.complaints().front();
        CHECK_FALSE(complaint.hint.empty());
        return std::to_string(complaint.place.line) + ":" + std::to_string(complaint.place.column) + " " +
               complaint.message;
    }
}

// A pack of these record lines as they are, in this order, signed by the shop: what a program gone wrong could send.
inline std::string signed_pack(const tapbook::Catalog& signer, const std::vector<std::string>& lines,
                               const std::string& head = {}) {
    std::string text = head;
    if (head.empty()) {
        tapbook::Values values = {{"format", words("tapbook.pack/1")},
                                  {"key", words(tapbook::digits_of(signer.own_key().key))},
                                  {"shop", words(signer.own_shop().id)},
                                  {"type", words("pack")}};
        if (signer.is_practice()) values["practice"] = true;
        text = tapbook::record_line(values) + "\n";
    }
    for (const auto& line : lines) text += line + "\n";
    const std::string hash = tapbook::pack_hash(text);
    text += tapbook::record_line({{"hash", words(hash)},
                                  {"signature", words(tapbook::digits_of(signer.sign(tapbook::pack_message(hash))))},
                                  {"type", words("end")}}) +
            "\n";
    return text;
}

// The lines in the order of a pack.
inline std::vector<std::string> in_order(std::vector<std::string> lines) {
    std::sort(lines.begin(), lines.end(), [](const std::string& a, const std::string& b) {
        tapbook::RecordTokens one, other;
        one.read(a);
        other.read(b);
        const auto x = tapbook::head_of(one), y = tapbook::head_of(other);
        return std::tuple(x.type, x.path, tapbook::record_id(a)) < std::tuple(y.type, y.path, tapbook::record_id(b));
    });
    return lines;
}

// A note of this shop, whether or not the place has an entry: the shop hands itself a pack.
inline void add_note(tapbook::Catalog& catalog, const std::string& positive, const std::string& car_words,
                     const std::string& date = "2026-03-04", const std::string& path = tap_path) {
    tapbook::Values record = {{"path", words(path)},
                              {"kind", words("pair")},
                              {"date", words(date)},
                              {"method", words("metered")},
                              {"year", std::int64_t{2014}},
                              {"positive", words(positive)},
                              {"negative", words("BK")},
                              {"car", words(tapbook::to_hex(tapbook::short_hash(car_words)))},
                              {"shop", words(catalog.own_shop().id)},
                              {"type", words("note")}};
    if (catalog.is_practice()) record["practice"] = true;
    take(catalog, signed_pack(catalog, {tapbook::record_line(record)}));
}

inline std::int64_t count_in(const tapbook::Catalog& catalog, const std::string& what) {
    tapbook::sqlite::Database database(catalog.file(), tapbook::sqlite::Open::read_write);
    auto rows = database.prepare("SELECT count(*) FROM " + what);
    rows.step();
    return rows.integer(0);
}

inline tapbook::Grade grade_at(const tapbook::Catalog& catalog, const std::string& path = tap_path) {
    const auto ledger = catalog.ledger_at(path);
    const auto standing = tapbook::noted_standing(ledger.kind, ledger.live(), ledger.witnesses);
    return tapbook::standing_on(standing, tapbook::questions_of(ledger.kind).front()).grade;
}
