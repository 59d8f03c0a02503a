// init, demo, add: making a catalog and filling it.
#include <fmt/format.h>

#include "cli/command.h"
#include "cli/progress_line.h"
#include "cli/spreadsheet.h"
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

std::string counted_words(const CatalogCounts& counts) {
    return fmt::format(
        "{} cars, {} sound systems, {} tap points, {} notes from {} shops, {} converters, {} amplifiers. All invented.",
        counts.vehicles, counts.systems, counts.taps, counts.notes, counts.shops, counts.converters, counts.amplifiers);
}

}  // namespace

Exit run_init(Session& session, const Parsed& parsed) {
    const std::string shop = parsed.text("--shop").value_or("This shop");
    if (shop.empty() || !is_utf8(shop) || hidden_character(shop))
        throw UsageError("--shop: write the shop's name in plain characters");
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
    const auto fill = [&](Catalog& catalog) {
        for (const auto& file : files) catalog.add(read_batch(file.text, std::string(file.name)), false, session.today);
        for (const auto& text : embedded_texts())
            if (text.name == "data/jobs.toml") catalog.add_past_jobs(read_past_jobs(text.text, std::string(text.name)));
    };
    const Catalog catalog = Catalog::create(session.database, shops.shops.front().name, CatalogKind::practice,
                                            session.today, repeatable_random("practice"), fill);
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
                                   counted_words(counts), place);
    for (const auto& example : examples_of("try")) text += fmt::format("  {}\n", example);
    session.answer(text, json_answer("demo", json.take()));
    return Exit::done;
}

Exit run_add(Session& session, const Parsed& parsed) {
    if (parsed.text("--mapping")) return add_spreadsheet(session, parsed);
    check_no_spreadsheet(parsed);
    const std::string& file = parsed.words.front();
    Catalog catalog = Catalog::open(session.database, Access::write);
    const Batch batch = read_batch(read_file(file), file == "-" ? "standard input" : file);
    ProgressLine line("added");
    catalog.tell_progress(line.listener());
    const AddReport report = catalog.add(batch, parsed.flag("--dry-run"), session.today);
    session.answer(add_text(report, batch.file, session.screen), add_json(report, batch.file));
    return Exit::done;
}

}  // namespace tapbook
