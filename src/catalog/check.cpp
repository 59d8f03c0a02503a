// Is the file sound? First its structure (SQLite's own check, with the sizes of cells), its schema against the one it
// should have, settings and key; then, when asked, every row. What cannot be read on is damage, never the end of the
// check.
#include "catalog/check_report.h"

#include <fmt/format.h>
#include <sodium.h>

#include <algorithm>
#include <cstdio>
#include <memory>

#include "catalog/check_rows.h"
#include "catalog/key_chain.h"
#include "embedded.h"

namespace tapbook {
namespace {

namespace fs = std::filesystem;

constexpr std::size_t most_examples = 5;

// The tables as the schema files of this version make them, by name.
std::map<std::string, std::string> wanted_schema(std::int32_t version) {
    auto database = sqlite::Database::in_memory();
    std::int32_t number = 0;
    for (const auto& text : embedded_texts())
        if (text.name.starts_with("schema/") && ++number <= version) database.execute(text.text);
    std::map<std::string, std::string> tables;
    auto rows = database.prepare("SELECT name, coalesce(sql, '') FROM sqlite_master");
    while (rows.step()) tables[std::string(rows.text(0))] = rows.text(1);
    return tables;
}

void check_schema(sqlite::Database& database, Findings& findings) {
    auto wanted = wanted_schema(database.user_version());
    auto rows = database.prepare("SELECT name, coalesce(sql, '') FROM sqlite_master");
    while (rows.step()) {
        const std::string name = text_of_cell(rows.value(0));
        const auto found = wanted.find(name);
        if (found == wanted.end()) {
            if (!name.starts_with("sqlite_"))
                findings.report().remarks.push_back(fmt::format("\"{}\" was put in by another program", name));
            continue;
        }
        if (found->second != text_of_cell(rows.value(1)))
            findings.structure("tables that are not as this version makes them", name);
        wanted.erase(found);
    }
    for (const auto& [name, sql] : wanted) findings.structure("tables that are gone", name);
}

void check_key(sqlite::Database& database, const std::string& own_shop, Findings& findings) {
    auto rows = database.prepare("SELECT public_key, secret_key, salt FROM secret");
    if (!rows.step()) {
        findings.report().remarks.push_back("no key: this is a copy that cannot speak for its shop");
        return;
    }
    const std::string open = bytes_of_cell(rows.value(0)), secret = bytes_of_cell(rows.value(1));
    std::array<unsigned char, crypto_sign_PUBLICKEYBYTES> made{};
    const bool sized = open.size() == made.size() && secret.size() == crypto_sign_SECRETKEYBYTES;
    if (sized) crypto_sign_ed25519_sk_to_pk(made.data(), reinterpret_cast<const unsigned char*>(secret.data()));
    if (!sized || !std::equal(made.begin(), made.end(), reinterpret_cast<const unsigned char*>(open.data())))
        findings.structure("the shop's signing key does not fit itself", "secret");
    PublicKey key{};
    std::copy_n(open.begin(), std::min(open.size(), key.size()), key.begin());
    const bool has_changes = database.user_version() >= first_version_with_packs;
    if (to_hex(short_hash(open)) != own_shop && !(has_changes && is_key_of(database, bytes_of_hex(own_shop), key)))
        findings.structure("the shop's name is not the one its key gives", own_shop);
    if (bytes_of_cell(rows.value(2)).size() != 16) findings.structure("the salt of car tokens is gone", "secret");
}

// Fills in the practice flag and this shop's id.
void check_settings(RowCheck& check) {
    std::map<std::string, std::string> settings;
    auto rows = check.database.prepare("SELECT name, value FROM setting");
    while (rows.step()) settings[text_of_cell(rows.value(0))] = text_of_cell(rows.value(1));
    for (const char* name : {"shop_id", "shop_name", "practice", "created"})
        if (!settings.contains(name)) check.findings.structure("settings that are gone", name);
    RecordId ignored{};
    if (!from_hex(settings["shop_id"], ignored)) check.findings.structure("settings that are not one", "shop_id");
    if (settings["practice"] != "0" && settings["practice"] != "1")
        check.findings.structure("settings that are not one", "practice");
    check.practice = settings["practice"] == "1";
    check.own_shop = settings["shop_id"];
    check.findings.report().practice = check.practice;
    check_key(check.database, check.own_shop, check.findings);
}

// Runs one part; when the file cannot be read on, that is a finding and the next part follows.
template <class Part>
void guarded(Findings& findings, const std::string& name, Part part) {
    try {
        part();
    } catch (const sqlite::Error& error) {
        if (error.is_busy()) throw;
        findings.structure(fmt::format("{} cannot be read on", name), error.what());
    }
}

void check_structure(sqlite::Database& database, const fs::path& file, Findings& findings) {
    for (const auto& sentence : database.quick_check()) findings.structure("the file's structure", sentence);
    // A last page that held nothing yet looks whole when half of it is gone.
    auto rows = database.prepare("PRAGMA page_size");
    rows.step();
    std::error_code unknown;
    const auto size = fs::file_size(file, unknown);
    if (!unknown && size % static_cast<std::uintmax_t>(rows.integer(0)) != 0)
        findings.structure("the file's structure", "the file does not end with a whole page: it was cut off");
}

// What is worked out from the entries must be what working it out again gives.
void check_derived(RowCheck& check) {
    if (!names_are_current(check.database))
        check.findings.structure("names of cars, as kept for the search, are not those of the entries",
                                 "`tapbook rebuild` writes them again");
}

void check_rows(RowCheck& check) {
    constexpr std::pair<const char*, void (*)(RowCheck&)> parts[] = {{"shops", check_shops},
                                                                     {"notes", check_notes},
                                                                     {"entries", check_entries},
                                                                     {"tap points", check_subjects},
                                                                     {"withdrawals", check_withdrawals},
                                                                     {"exchange", check_exchange},
                                                                     {"actions", check_actions},
                                                                     {"terms", check_terms},
                                                                     {"shelf", check_stock},
                                                                     {"jobs", check_jobs},
                                                                     {"kept names", check_derived}};
    for (const auto& [name, part] : parts) guarded(check.findings, name, [&, run = part] { run(check); });
}

// Copies beside the file: those of backup and those made before a new schema; newest first.
std::vector<fs::path> copies_beside(const fs::path& file) {
    std::vector<std::pair<fs::file_time_type, fs::path>> found;
    std::error_code ignored;
    const fs::path folder = file.has_parent_path() ? file.parent_path() : fs::path(".");
    for (const auto& item : fs::directory_iterator(folder, ignored)) {
        const std::string name = item.path().filename().string();
        const bool of_backup = name.starts_with(file.stem().string() + ".") && name.ends_with(".backup");
        const bool of_schema = name.starts_with(file.filename().string() + ".before-");
        if ((of_backup || of_schema) && item.is_regular_file(ignored))
            found.emplace_back(item.last_write_time(ignored), file.parent_path() / name);
    }
    std::sort(found.rbegin(), found.rend());
    std::vector<fs::path> paths;
    for (const auto& [time, path] : found) paths.push_back(path);
    return paths;
}

// Names the way out: only copies that are sound themselves.
void look_for_backups(CheckReport& report) {
    if (report.sound()) return;
    for (const auto& copy : copies_beside(report.file)) {
        bool sound = false;
        try {
            sound = Catalog::open(copy, Access::read).check(report.depth).sound();
        } catch (const CatalogError&) {
            sound = false;
        }
        if (sound)
            report.backups.push_back(copy);
        else
            report.remarks.push_back(fmt::format("the copy {} is not sound either", copy.string()));
    }
}

// Does the file carry this program's mark where a database has it (offset 68), whatever else is wrong with it?
bool has_our_mark(const fs::path& file) {
    const std::unique_ptr<std::FILE, int (*)(std::FILE*)> stream(std::fopen(file.c_str(), "rb"), std::fclose);
    char mark[4] = {};
    return stream && std::fseek(stream.get(), 68, SEEK_SET) == 0 && std::fread(mark, 1, 4, stream.get()) == 4 &&
           std::string_view(mark, 4) == "TAPB";
}

}  // namespace

Damage& Findings::of(const std::string& what) {
    auto& damages = report_.damages;
    const auto found = std::find_if(damages.begin(), damages.end(), [&](const Damage& d) { return d.what == what; });
    return found != damages.end() ? *found : damages.emplace_back(Damage{what, 0, {}});
}

void Findings::fact(const std::string& what, const std::string& example) {
    ++of(what).facts;
    structure(what, example);
}

void Findings::structure(const std::string& what, const std::string& example) {
    auto& damage = of(what);
    if (damage.examples.size() < most_examples) damage.examples.push_back(example);
}

CheckReport Catalog::check(CheckDepth depth) const {
    CheckReport report;
    report.file = state_->file;
    report.depth = depth;
    report.practice = state_->practice;
    Findings findings(report);
    auto& database = state_->database;
    guarded(findings, "the file", [&] { check_structure(database, state_->file, findings); });
    guarded(findings, "the schema", [&] { check_schema(database, findings); });
    RowCheck check{database, findings, state_->practice, state_->own.id, state_->progress, {}, {}};
    guarded(findings, "settings", [&] { check_settings(check); });
    if (depth == CheckDepth::full) check_rows(check);
    return report;
}

CheckReport check_catalog(const fs::path& file, CheckDepth depth, const Progress& told) {
    CheckReport report;
    try {
        Catalog catalog = Catalog::open(file, Access::read);
        catalog.tell_progress(told);
        report = catalog.check(depth);
    } catch (const CatalogError& error) {
        const bool header_gone = error.trouble() == CatalogTrouble::not_ours && has_our_mark(file);
        if (error.trouble() != CatalogTrouble::damaged && !header_gone) throw;
        report.file = file;
        report.depth = depth;
        report.readable = false;
        Findings(report).structure("the file cannot be opened", error.what());
    }
    look_for_backups(report);
    return report;
}

}  // namespace tapbook
