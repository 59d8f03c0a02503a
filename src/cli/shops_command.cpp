// shops: who wrote the notes, and whose count for themselves. This shop's own list, never exchanged.
#include <fmt/format.h>

#include <algorithm>

#include "cli/command.h"
#include "cli/progress_line.h"

namespace tapbook {
namespace {

bool is_hex(std::string_view text) {
    return !text.empty() && text.size() <= 32 && std::all_of(text.begin(), text.end(), [](char c) {
        return (c >= '0' && c <= '9') || (c >= 'a' && c <= 'f');
    });
}

// The id of the shop that the words name: the first digits of an id, a whole id of a shop not seen yet, or a name.
std::string chosen_shop(const std::vector<ShopRow>& shops, const std::string& typed) {
    constexpr std::size_t fewest_digits = 4, all_digits = 32;
    std::vector<const ShopRow*> found;
    for (const auto& shop : shops) {
        const bool by_id = is_hex(typed) && typed.size() >= fewest_digits && shop.id.starts_with(typed);
        if (by_id || (!shop.name.empty() && folded(shop.name) == folded(typed))) found.push_back(&shop);
    }
    if (found.size() == 1) return found.front()->id;
    if (found.empty() && is_hex(typed) && typed.size() == all_digits) return typed;
    std::string list;
    for (const auto* shop : found) list += fmt::format("\n  {}  {}", shop->id, shown(shop->name));
    if (found.size() > 1)
        throw UsageError(fmt::format("\"{}\" names {} shops:{}", shown(typed), found.size(), list),
                         "write more digits of its id");
    std::vector<std::string_view> names;
    for (const auto& shop : shops) names.push_back(shop.name);
    const auto near = nearest(typed, names);
    throw NoAnswer(
        fmt::format("there is no shop \"{}\"", shown(typed)),
        near && !near->empty() ? fmt::format("did you mean \"{}\"?", shown(*near)) : "tapbook shops lists them");
}

[[noreturn]] void refuse_name() {
    throw UsageError("--name goes with shops know", "for example: tapbook shops know ID --name NAME");
}

Exit change_shop(Session& session, const Parsed& parsed, ShopChange change) {
    if (parsed.words.size() < 2)
        throw UsageError(fmt::format("shops {} needs the shop's ID or name", word_of(change)),
                         "tapbook shops lists them");
    const auto name = parsed.text("--name");
    if (name && change != ShopChange::know) refuse_name();
    if (name && (!is_utf8(*name) || hidden_character(*name)))
        throw UsageError("--name: write the shop's name in plain characters");
    if (name && name->size() > most_text_bytes)
        throw UsageError(fmt::format("--name is longer than {} bytes", most_text_bytes), "shorten it");
    std::string typed;
    for (std::size_t i = 1; i < parsed.words.size(); ++i) typed += (typed.empty() ? "" : " ") + parsed.words[i];
    Catalog catalog = Catalog::open(session.database, Access::write);
    const std::string id = chosen_shop(catalog.shops(), typed);
    const ShopReport report =
        catalog.change_shop(id, change, name ? std::optional(nfc(*name)) : std::nullopt, parsed.flag("--dry-run"));
    session.answer(shop_text(report, session.screen), shop_json(report));
    return Exit::done;
}

Exit show_errors(Session& session, const Parsed& parsed) {
    if (parsed.words.size() > 1)
        throw UsageError(fmt::format("\"{}\" is one word too many for shops errors", shown(parsed.words[1])),
                         "tapbook shops errors");
    if (parsed.text("--name")) refuse_name();
    session.database = reading_place(session);
    Catalog catalog = Catalog::open(session.database, Access::read);
    ProgressLine line("read");
    catalog.tell_progress(line.listener());
    const auto facts = catalog.shared_sayings();
    ShopErrorsAnswer answer{{}, facts.size()};
    const auto errors = shop_errors(facts);
    for (auto& shop : catalog.shops()) {
        const auto found =
            std::find_if(errors.begin(), errors.end(), [&](const ShopErrors& one) { return one.shop == shop.id; });
        answer.shops.push_back({shop, found == errors.end() ? ShopErrors() : *found});
    }
    session.answer([&] { return shop_errors_text(answer, session.screen); }, [&] { return shop_errors_json(answer); });
    return Exit::done;
}

}  // namespace

Exit run_shops(Session& session, const Parsed& parsed) {
    if (parsed.words.size() == 1 && parsed.words.front() == "key") {
        if (parsed.text("--name")) refuse_name();
        return run_shops_key(session, parsed);
    }
    if (parsed.flag("--new") || parsed.text("--out") || parsed.text("--from"))
        throw UsageError("--new, --out and --from go with shops key", "for example: tapbook shops key --out shop.key");
    if (parsed.words.empty()) {
        if (parsed.text("--name")) refuse_name();
        session.database = reading_place(session);
        const auto shops = Catalog::open(session.database, Access::read).shops();
        session.answer(shops_text(shops, session.screen), shops_json(shops));
        return Exit::done;
    }
    const std::string& what = parsed.words.front();
    if (what == "errors") return show_errors(session, parsed);
    if (const auto change = parse_word<ShopChange>(what)) return change_shop(session, parsed, *change);
    const auto words = spellings<ShopChange>();
    const auto near = nearest(what, words);
    throw UsageError(
        fmt::format("shops does not know \"{}\"", shown(what)),
        near ? fmt::format("did you mean `tapbook shops {}`?", *near) : "know, forget, block, unblock, errors or key");
}

}  // namespace tapbook
