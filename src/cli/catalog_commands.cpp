// init, demo, add, find, where: making a catalog and filling it.
#include <fmt/format.h>

#include "cli/command.h"
#include "embedded.h"
#include "files/files.h"

namespace tapbook {
namespace {

// The practice shop's files in the order they build on each other.
std::vector<EmbeddedText> demo_files() {
    std::vector<EmbeddedText> files;
    for (const std::string_view wanted : {"data/shops.toml", "data/parts.toml", "data/stock.toml"})
        for (const auto& text : embedded_texts())
            if (text.name == wanted) files.push_back(text);
    for (const auto& text : embedded_texts())
        if (text.name.starts_with("vehicles/")) files.push_back(text);
    return files;
}

std::string practice_words(const CatalogCounts& counts) {
    return fmt::format(
        "{} cars, {} sound systems, {} tap points, {} notes from {} shops, {} converters, {} amplifiers. All invented.",
        counts.vehicles, counts.systems, counts.taps, counts.notes, counts.shops, counts.converters, counts.amplifiers);
}

}  // namespace

Exit run_init(Session& session, const Parsed& parsed) {
    const std::string shop = parsed.text("--shop").value_or("This shop");
    if (shop.empty() || hidden_character(shop)) throw UsageError("--shop: write the shop's name in plain characters");
    const Catalog catalog =
        Catalog::create(session.database, nfc(shop), CatalogKind::real, session.today, system_random());
    const OwnShop own = catalog.own_shop();
    Json json;
    json.begin_object()
        .member("catalog", catalog.file().string())
        .member("shop", own.name)
        .member("shop_id", own.id)
        .end_object();
    session.answer(fmt::format("Made an empty catalog for \"{}\" at {}.\nIt holds the shop's signing key: readable by "
                               "its owner only.\nNext: tapbook add FILE.toml (the README shows a vehicle file "
                               "and a parts file).\n",
                               shown(own.name), catalog.file().string()),
                   json_answer("init", json.take()));
    return Exit::done;
}

Exit run_demo(Session& session, const Parsed&) {
    if (!session.database_given) session.database.replace_filename("practice.sqlite");
    const auto files = demo_files();
    if (files.empty() || files.front().name != "data/shops.toml")
        throw CatalogError(CatalogTrouble::input_output, "this build holds no practice shop");
    const Batch shops = read_batch(files.front().text, std::string(files.front().name));
    Catalog catalog = Catalog::create(session.database, shops.shops.front().name, CatalogKind::practice, session.today,
                                      repeatable_random("practice"));
    for (const auto& file : files) catalog.add(read_batch(file.text, std::string(file.name)), false, session.today);
    for (const auto& text : embedded_texts())
        if (text.name == "data/jobs.toml") catalog.add_past_jobs(read_past_jobs(text.text, std::string(text.name)));
    const CatalogCounts counts = catalog.counts();
    const std::string place = std::filesystem::absolute(session.database).string();
    Json json;
    json.begin_object().member("catalog", place).key("practice").flag(true);
    json.key("vehicles")
        .whole(counts.vehicles)
        .key("notes")
        .whole(counts.notes)
        .key("converters")
        .whole(counts.converters)
        .end_object();
    std::string text = fmt::format("Made a practice shop at {}.\n{}\n\nTry:\n  export TAPBOOK_DB={}\n", place,
                                   practice_words(counts), place);
    for (const auto& example : examples_of("try")) text += fmt::format("  {}\n", example);
    session.answer(text, json_answer("demo", json.take()));
    return Exit::done;
}

Exit run_add(Session& session, const Parsed& parsed) {
    const std::string& file = parsed.words.front();
    Catalog catalog = Catalog::open(session.database, Access::write);
    const Batch batch = read_batch(read_file(file), file == "-" ? "standard input" : file);
    const AddReport report = catalog.add(batch, parsed.flag("--dry-run"), session.today);
    session.answer(add_text(report, batch.file, session.screen), add_json(report, batch.file));
    return Exit::done;
}

Exit run_find(Session& session, const Parsed& parsed) {
    session.database = reading_place(session);
    const Catalog catalog = Catalog::open(session.database, Access::read);
    const auto names = catalog.vehicle_names();
    const auto hits = find_vehicles(names, parsed.joined_words());
    if (hits.empty() && session.json) {
        session.answer({}, find_json(hits));
        return Exit::answer_is_no;
    }
    if (names.empty()) throw NoAnswer("the catalog holds no cars yet", "tapbook add FILE.toml puts one in");
    if (hits.empty())
        throw NoAnswer(fmt::format("no car matches \"{}\"", shown(parsed.joined_words())),
                       "try fewer words; tapbook find lists all cars");
    session.answer(find_text(hits, session.screen), find_json(hits));
    return Exit::done;
}

Exit run_where(Session& session, const Parsed&) {
    std::filesystem::path practice = session.database, rules = session.database;
    practice.replace_filename("practice.sqlite");
    rules.replace_extension(".rules.toml");
    Json json;
    json.begin_object()
        .member("catalog", session.database.string())
        .member("practice", practice.string())
        .member("rules", rules.string())
        .end_object();
    session.answer(fmt::format("catalog    {}\npractice   {}\nown rules  {}\n", session.database.string(),
                               practice.string(), rules.string()),
                   json_answer("where", json.take()));
    return Exit::done;
}

}  // namespace tapbook
