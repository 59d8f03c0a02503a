// Do the smaller tables fit the records? Subjects have notes and one car's number, withdrawals are what was written,
// actions name records that are there, terms belong to a part, shops carry the key that names them.
#include <fmt/format.h>

#include <algorithm>
#include <map>

#include "catalog/check_rows.h"

namespace tapbook {
namespace {

std::string id_text(const RecordId& id) {
    return to_hex(id).substr(0, 8);
}

bool holds(const std::vector<RecordId>& sorted, const RecordId& id) {
    return std::binary_search(sorted.begin(), sorted.end(), id);
}

// Each line of `records` that is no id of a record that is there.
void check_action_row(RowCheck& check, const std::string& name, std::string_view records) {
    while (!records.empty()) {
        const auto end = std::min(records.find('\n'), records.size());
        RecordId id{};
        if (!from_hex(records.substr(0, end), id))
            check.findings.fact("actions whose list of records cannot be read", name);
        else if (!holds(check.present, id) && !holds(check.broken, id))
            check.findings.fact("records that were written and are gone",
                                fmt::format("record {}, written by {}", id_text(id), name));
        records.remove_prefix(std::min(end + 1, records.size()));
    }
}

}  // namespace

void check_subjects(RowCheck& check) {
    std::map<std::string, std::int64_t> number_of_car;
    std::map<std::int64_t, std::string> car_of_number;
    auto rows = check.database.prepare(
        "SELECT subject.vehicle, subject.path, EXISTS (SELECT 1 FROM note WHERE note.vehicle = subject.vehicle AND "
        "note.tap = subject.tap) FROM subject");
    while (rows.step()) {
        ++check.findings.report().other_rows;
        const auto number = number_of_cell(rows.value(0)).value_or(0);
        const std::string path = text_of_cell(rows.value(1));
        const auto parts = path_parts(path);
        if (parts.size() < system_depth || !std::all_of(parts.begin(), parts.end(), is_slug)) {
            check.findings.fact("tap points whose path is not one", path);
            continue;
        }
        const std::string car(path_head(path, vehicle_depth));
        const bool same_number = number_of_car.emplace(car, number).first->second == number;
        const bool same_car = car_of_number.emplace(number, car).first->second == car;
        if (!same_number || !same_car) check.findings.fact("tap points that lie under another car's number", path);
        if (number_of_cell(rows.value(2)) != 1) check.findings.fact("tap points whose notes are gone", path);
    }
}

void check_withdrawals(RowCheck& check) {
    auto rows = check.database.prepare(
        "SELECT withdrawal.target, withdrawal.id, withdrawal.path, withdrawal.reason, withdrawal.date, withdrawal.rest,"
        " withdrawal.vouched, shop.id FROM withdrawal LEFT JOIN shop ON shop.number = withdrawal.shop");
    while (rows.step()) {
        ++check.findings.report().other_rows;
        const std::string path = text_of_cell(rows.value(2)), shop = bytes_of_cell(rows.value(7));
        const std::string name =
            fmt::format("withdrawal of note {} at {}", hex_of(bytes_of_cell(rows.value(0))).substr(0, 8), path);
        if (shop.size() != RecordId().size()) {
            check.findings.fact("withdrawals whose shop is not in the list of shops", name);
            continue;
        }
        Values record = withdrawal_record({hex_of(bytes_of_cell(rows.value(0))), path, text_of_cell(rows.value(3)),
                                           hex_of(shop), text_of_cell(rows.value(4))},
                                          check.practice);
        try {
            put_rest(rows.value(5), record);
        } catch (const RecordRefused&) {
            record["path"] = std::string();  // no id fits
        }
        check_record(check, record, bytes_of_cell(rows.value(1)), "withdrawals", name);
        const auto vouched = number_of_cell(rows.value(6));
        if (vouched != 0 && vouched != 1) check.findings.fact("withdrawals that are not what was written", name);
    }
}

void check_actions(RowCheck& check) {
    std::sort(check.present.begin(), check.present.end());
    std::sort(check.broken.begin(), check.broken.end());
    auto rows = check.database.prepare(
        "SELECT action.number, action.date, action.records, action.undone_by, other.number FROM action LEFT JOIN "
        "action "
        "AS other ON other.number = action.undone_by");
    while (rows.step()) {
        ++check.findings.report().other_rows;
        const std::string name =
            fmt::format("action {} of {}", number_of_cell(rows.value(0)).value_or(0), text_of_cell(rows.value(1)));
        check_action_row(check, name, text_of_cell(rows.value(2)));
        if (number_of_cell(rows.value(3)) && !number_of_cell(rows.value(4)))
            check.findings.fact("actions undone by an action that is gone", name);
    }
}

void check_terms(RowCheck& check) {
    constexpr std::int32_t first_version_with_small_parts = 10;
    const bool has_small = check.database.user_version() >= first_version_with_small_parts;
    auto rows = check.database.prepare(fmt::format(
        "SELECT part, min(coalesce(cost_cents, 0), coalesce(lead_days, 0), coalesce(pack, 0), coalesce(on_hand, 0), "
        "coalesce(on_order, 0)), EXISTS (SELECT 1 FROM converter WHERE path = part) OR EXISTS (SELECT 1 FROM amplifier "
        "WHERE path = part){} FROM terms",
        has_small ? " OR small_kind IS NOT NULL" : ""));
    while (rows.step()) {
        ++check.findings.report().other_rows;
        const std::string part = text_of_cell(rows.value(0));
        if (number_of_cell(rows.value(1)).value_or(-1) < 0) check.findings.fact("terms below zero", part);
        if (number_of_cell(rows.value(2)) != 1) check.findings.fact("terms of a part that is gone", part);
    }
}

void check_shops(RowCheck& check) {
    auto rows = check.database.prepare("SELECT id, coalesce(name, ''), public_key, known, blocked FROM shop");
    bool own_there = false;
    while (rows.step()) {
        ++check.findings.report().other_rows;
        const std::string id = bytes_of_cell(rows.value(0)), key = bytes_of_cell(rows.value(2));
        own_there = own_there || hex_of(id) == check.own_shop;
        const auto is_switch = [&](int column) {
            const auto number = number_of_cell(rows.value(column));
            return number == 0 || number == 1;
        };
        const std::string name = fmt::format("{} {}", hex_of(id).substr(0, 8), text_of_cell(rows.value(1)));
        const bool key_fits = key.empty() || hex_of(id) == to_hex(short_hash(key));
        if (id.size() != RecordId().size() || !key_fits || !is_switch(3) || !is_switch(4))
            check.findings.fact("shops that are not what was written", name);
    }
    if (!own_there) check.findings.structure("this shop is not in its own list of shops", check.own_shop);
}

}  // namespace tapbook
