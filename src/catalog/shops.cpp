// Which shops does this one know or block? Its own list, kept here only; every grade follows it at once.
#include <fmt/format.h>

#include <algorithm>
#include <set>
#include <tuple>

#include "catalog/adding.h"
#include "catalog/tap_ledger.h"

namespace tapbook {
namespace {

std::vector<ShopRow> read_shops(sqlite::Database& database, const OwnShop& own) {
    std::vector<ShopRow> shops;
    auto rows = database.prepare(
        "SELECT shop.id, coalesce(shop.name, ''), shop.known, shop.blocked,"
        " (SELECT count(*) FROM note WHERE note.shop = shop.number) FROM shop");
    while (rows.step()) {
        ShopRow row{hex_of(rows.blob(0)), std::string(rows.text(1)), false,
                    rows.integer(2) != 0, rows.integer(3) != 0,      rows.integer(4)};
        row.is_own = row.id == own.id;
        shops.push_back(std::move(row));
    }
    std::sort(shops.begin(), shops.end(), [](const ShopRow& a, const ShopRow& b) {
        return std::tuple(!a.is_own, a.name.empty(), std::string_view(a.name), std::string_view(a.id)) <
               std::tuple(!b.is_own, b.name.empty(), std::string_view(b.name), std::string_view(b.id));
    });
    return shops;
}

const ShopRow* find_shop(const std::vector<ShopRow>& shops, const std::string& id) {
    const auto found = std::find_if(shops.begin(), shops.end(), [&](const ShopRow& shop) { return shop.id == id; });
    return found == shops.end() ? nullptr : &*found;
}

// Every path on which the shop wrote.
std::set<std::string> paths_of(sqlite::Database& database, const std::string& id_bytes) {
    std::set<std::string> paths;
    auto rows = database.prepare(
        "SELECT DISTINCT subject.path FROM note JOIN subject ON subject.tap = note.tap"
        " JOIN shop ON shop.number = note.shop WHERE shop.id = ?1");
    for (rows.bind_all(sqlite::BlobView{id_bytes}); rows.step();) paths.emplace(rows.text(0));
    return paths;
}

ShopRow changed(ShopRow shop, ShopChange change, const std::optional<std::string>& name) {
    switch (change) {
        case ShopChange::know:
            shop.is_known = true;
            break;
        case ShopChange::forget:
            shop.is_known = false;
            break;
        case ShopChange::block:
            shop.is_blocked = true;
            break;
        case ShopChange::unblock:
            shop.is_blocked = false;
            break;
    }
    if (name) shop.name = *name;
    return shop;
}

bool adds_shop(ShopChange change) {
    return change == ShopChange::know || change == ShopChange::block;
}

void put_shop(sqlite::Database& database, const ShopRow& shop) {
    const auto number = shop_number(database, bytes_of_hex(shop.id));
    auto update = database.prepare("UPDATE shop SET known = ?1, blocked = ?2, name = ?3 WHERE number = ?4");
    const std::optional<std::string> name = shop.name.empty() ? std::nullopt : std::optional(shop.name);
    update.bind_all(shop.is_known ? 1 : 0, shop.is_blocked ? 1 : 0, name, number);
    update.run();
}

}  // namespace

std::vector<ShopRow> Catalog::shops() const {
    try {
        return read_shops(state_->database, state_->own);
    } catch (const sqlite::Error& error) {
        throw_catalog_error(error, state_->file);
    }
}

ShopReport Catalog::change_shop(const std::string& id, ShopChange change, const std::optional<std::string>& name,
                                bool dry_run) {
    if (id == state_->own.id)
        throw CatalogError(CatalogTrouble::not_found, "this is your own shop: it always counts for itself",
                           "a note of your own is taken back with `tapbook note withdraw ID`");
    const auto work = [&] {
        const auto all = read_shops(state_->database, state_->own);
        const ShopRow* found = find_shop(all, id);
        if (found == nullptr && (!adds_shop(change) || bytes_of_hex(id).empty()))
            throw CatalogError(CatalogTrouble::not_found, fmt::format("there is no shop {}", id),
                               "tapbook shops lists them");
        ShopRow before;
        before.id = id;
        if (found != nullptr) before = *found;
        ShopReport report{changed(before, change, name), change, false, {}, false};
        const auto state_before = std::tie(before.is_known, before.is_blocked, before.name);
        report.is_changed = found == nullptr ||
                            state_before != std::tie(report.shop.is_known, report.shop.is_blocked, report.shop.name);
        if (!report.is_changed) return report;
        const auto paths = paths_of(state_->database, bytes_of_hex(id));
        const auto grades = grades_at(state_->database, paths);
        put_shop(state_->database, report.shop);
        if (before.is_blocked != report.shop.is_blocked) keep_names(state_->database);
        report.moves = moves_between(grades, grades_at(state_->database, paths));
        return report;
    };
    return in_one_transaction(*state_, work, [&](const ShopReport& report) { return report.is_changed && !dry_run; });
}

}  // namespace tapbook
