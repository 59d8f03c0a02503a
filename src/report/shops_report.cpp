// The shops that this one has seen, and what a change of the list did to the grades.
#include <fmt/format.h>

#include <algorithm>

#include "report/grade_moves.h"
#include "report/json.h"
#include "report/notes_report.h"

namespace tapbook {
namespace {

std::string standing_words(const ShopRow& shop) {
    if (shop.is_own) return "this shop";
    if (shop.is_blocked) return "blocked: its notes are left out";
    return shop.is_known ? "known: counts for itself" : "not known: counts with the other unknown ones as one";
}

std::string name_words(const ShopRow& shop) {
    return shop.name.empty() ? std::string("(no name yet)") : shop.name;
}

void write_shop(Json& json, const ShopRow& shop) {
    json.begin_object().member("id", shop.id);
    json.member("name", shop.name.empty() ? std::nullopt : std::optional(shop.name));
    json.key("own").flag(shop.is_own).key("known").flag(shop.is_known).key("blocked").flag(shop.is_blocked);
    json.key("notes").whole(shop.notes).end_object();
}

std::string grades_words(std::size_t moved) {
    if (moved == 0) return "No grade moved.";
    return moved == 1 ? "1 grade moved." : fmt::format("{} grades moved.", moved);
}

}  // namespace

std::string shops_text(std::span<const ShopRow> shops, const Screen& screen) {
    Paper paper(screen);
    int widest = 0;
    for (const auto& shop : shops) widest = std::max(widest, shown_width(shown(name_words(shop))));
    for (const auto& shop : shops) {
        const std::string name = shown(name_words(shop));
        const int gap = std::max(0, std::min(widest, 40) - shown_width(name));
        paper.line(0, fmt::format("{}  {}{:{}}", shop.id.substr(0, 8), name, "", gap),
                   fmt::format("{} note{}, {}", shop.notes, shop.notes == 1 ? "" : "s", standing_words(shop)));
    }
    return paper.take();
}

std::string shops_json(std::span<const ShopRow> shops) {
    Json json;
    json.begin_object().key("shops").begin_list();
    for (const auto& shop : shops) write_shop(json, shop);
    json.end_list().end_object();
    return json_answer("shops", json.take());
}

std::string shop_text(const ShopReport& report, const Screen& screen) {
    Paper paper(screen);
    const ShopRow& shop = report.shop;
    paper.line(0, "", fmt::format("{}  {}: {}", shop.id.substr(0, 8), name_words(shop), standing_words(shop)));
    if (!report.is_changed) {
        paper.line(0, "", "It was so already. Nothing was changed.");
        return paper.take();
    }
    for (const auto& move : report.moves)
        paper.line(2, "grade", fmt::format("{}: {} -> {}", move.path, word_of(move.before), word_of(move.after)));
    paper.line(0, "",
               fmt::format(
                   "{} {}", grades_words(report.moves.size()),
                   report.written ? "Saved here only: the list is never exchanged." : "Dry run: nothing was written."));
    return paper.take();
}

std::string shop_json(const ShopReport& report) {
    Json json;
    json.begin_object().member("change", word_of(report.change)).key("changed").flag(report.is_changed);
    json.key("written").flag(report.written).key("shop");
    write_shop(json, report.shop);
    json.key("grades");
    write_moves(json, report.moves);
    json.end_object();
    return json_answer("shops.change", json.take());
}

}  // namespace tapbook
