// What happens in a folder to which others write, at any time and with any program? Everything strange is survived and
// named, nothing is deleted or changed, and what is whole is taken in once.
#include <sys/stat.h>
#include <unistd.h>

#include <map>

#include "exchange/shop_fixture.h"

using namespace tapbook;
namespace fs = std::filesystem;

namespace {

struct TwoShops {
    Places places;
    fs::path folder = places / "shared";
    Catalog one = places.shop("Bench Three"), other = places.shop("Quill Audio");
    TwoShops() {
        fs::create_directory(folder);
        one.add(one_car(), false, today);
        add_note(one, "WH", "AB 1");
    }
};

FolderReport exchange(Catalog& catalog, const fs::path& folder, bool dry_run = false) {
    return exchange_folder(catalog, folder, today, dry_run);
}

std::string contents(const fs::path& file) {
    std::ifstream stream(file, std::ios::binary);
    return {std::istreambuf_iterator<char>(stream), {}};
}

void write(const fs::path& file, const std::string& text) {
    std::ofstream(file, std::ios::binary) << text;
}

std::map<std::string, std::string> all_files(const fs::path& folder) {
    std::map<std::string, std::string> files;
    for (const auto& item : fs::recursive_directory_iterator(folder))
        if (item.is_regular_file()) files[item.path().string()] = contents(item.path());
    return files;
}

std::string fate_of(const FolderReport& report, const std::string& name) {
    for (const auto& file : report.files)
        if (file.name == name) return std::string(word_of(file.fate)) + (file.why.empty() ? "" : ": " + file.why);
    return "not seen";
}

}  // namespace

TEST_CASE("two shops that exchange through a folder end up knowing the same, and then nothing more happens") {
    TwoShops shops;
    const FolderReport first = exchange(shops.one, shops.folder);
    REQUIRE(first.written.size() == 1);
    CHECK(first.records_written == 5);
    add_note(shops.other, "BN", "CD 1");
    const FolderReport second = exchange(shops.other, shops.folder);
    CHECK(second.taken.size() == 1);
    CHECK(second.records_written == 1);
    const FolderReport third = exchange(shops.one, shops.folder);
    CHECK(third.taken.size() == 1);
    CHECK(third.written.empty());
    CHECK(records_of(shops.one) == records_of(shops.other));
    const auto before = all_files(shops.folder);
    for (Catalog* shop : {&shops.one, &shops.other}) {
        const FolderReport again = exchange(*shop, shops.folder);
        CHECK(again.taken.empty());
        CHECK(again.written.empty());
        CHECK_FALSE(again.has_trouble());
    }
    CHECK(all_files(shops.folder) == before);
}

TEST_CASE("a file's name comes from its contents, and a dry run writes nothing") {
    TwoShops shops;
    const FolderReport dry = exchange(shops.one, shops.folder, true);
    CHECK(fs::is_empty(shops.folder));
    const FolderReport report = exchange(shops.one, shops.folder);
    CHECK(dry.written == report.written);
    const std::string text = contents(shops.folder / report.written.at(0));
    const std::string hash = to_hex(read_pack(text, "p").id);
    CHECK(report.written[0] == "tapbook-" + shops.one.own_shop().id.substr(0, 8) + "-" + hash + ".jsonl");
    CHECK(exchange(shops.other, shops.folder, true).taken.size() == 1);
    CHECK(records_of(shops.other).empty());
}

TEST_CASE("strange files are named with their reason, passed over, and left as they are") {
    TwoShops shops;
    const std::string name = exchange(shops.one, shops.folder).written.at(0), text = contents(shops.folder / name);
    fs::remove(shops.folder / name);
    std::string changed = text;
    changed[text.size() / 2] ^= 1;
    write(shops.folder / "a half copied.jsonl", text.substr(0, text.size() / 2));
    write(shops.folder / "b empty.jsonl", "");
    write(shops.folder / "c changed.jsonl", changed);
    write(shops.folder / "d renamed.bin", text);
    write(shops.folder / "e conflicting copy.jsonl", text);
    write(shops.folder / "f holiday.jpg", "\xff\xd8\xff\xe0 picture");
    write(shops.folder / "g README", "Please put packs here.\n");
    write(shops.folder / ".hidden", text.substr(0, 100));
    fs::create_directories(shops.folder / "h folder");
    write(shops.folder / "h folder" / "inside.jsonl", text);
    fs::create_symlink("/etc/passwd", shops.folder / "i link");
    REQUIRE(mkfifo((shops.folder / "j pipe").c_str(), 0600) == 0);
    write(shops.folder / "k more.jsonl", text + text);
    const auto before = all_files(shops.folder);
    const FolderReport report = exchange(shops.other, shops.folder);
    CHECK(fate_of(report, "a half copied.jsonl").starts_with("not-whole: line "));
    CHECK(fate_of(report, "b empty.jsonl") == "not-whole: line 1: is empty");
    CHECK(fate_of(report, "c changed.jsonl").starts_with("refused: line "));
    CHECK(fate_of(report, "d renamed.bin") == "taken");
    CHECK(fate_of(report, "e conflicting copy.jsonl") == "same: the same as d renamed.bin");
    CHECK(fate_of(report, "f holiday.jpg") == "no-pack");
    CHECK(fate_of(report, "g README") == "no-pack");
    CHECK(fate_of(report, ".hidden") == "not seen");
    CHECK(fate_of(report, "h folder") == "not seen");
    CHECK(fate_of(report, "i link") == "no-pack: is a link: not followed");
    CHECK(fate_of(report, "j pipe") == "no-pack: is not a plain file");
    CHECK(fate_of(report, "k more.jsonl").starts_with("refused: line "));
    CHECK(report.has_trouble());
    CHECK(all_files(shops.folder) == before);
    CHECK(records_of(shops.other) == records_of(shops.one));
}

TEST_CASE("a file that was half copied is taken in when it is whole") {
    TwoShops shops;
    const std::string name = exchange(shops.one, shops.folder).written.at(0), text = contents(shops.folder / name);
    write(shops.folder / name, text.substr(0, text.size() - 10));
    CHECK(exchange(shops.other, shops.folder).taken.empty());
    write(shops.folder / name, text);
    CHECK(exchange(shops.other, shops.folder).taken.size() == 1);
}

TEST_CASE("a pack that was lost or damaged in the folder is written again beside it") {
    TwoShops shops;
    const std::string name = exchange(shops.one, shops.folder).written.at(0), text = contents(shops.folder / name);
    std::string damaged = text;
    damaged[damaged.size() / 3] ^= 4;
    write(shops.folder / name, damaged);
    const FolderReport report = exchange(shops.one, shops.folder);
    REQUIRE(report.written.size() == 1);
    CHECK(report.written[0] == name.substr(0, name.size() - 6) + "-2.jsonl");
    CHECK(contents(shops.folder / name) == damaged);
    CHECK(contents(shops.folder / report.written[0]) == text);
    fs::remove(shops.folder / report.written[0]);
    fs::remove(shops.folder / name);
    CHECK(exchange(shops.one, shops.folder).written == std::vector<std::string>{name});
}

TEST_CASE("a stranger who signs in this shop's name neither gets in nor keeps its records out of the folder") {
    TwoShops shops;
    std::vector<std::string> lines = records_of(shops.one);
    const std::string head = record_line({{"format", words("tapbook.pack/1")},
                                          {"key", words(digits_of(shops.other.own_key().key))},
                                          {"shop", words(shops.one.own_shop().id)},
                                          {"type", words("pack")}}) +
                             "\n";
    write(shops.folder / "forged.jsonl", signed_pack(shops.other, lines, head));
    const FolderReport report = exchange(shops.one, shops.folder);
    CHECK(fate_of(report, "forged.jsonl").starts_with("waiting: line 1: signed with a key"));
    CHECK(report.records_written == 5);
}

TEST_CASE("a pack signed with a key that is not known yet waits for the pack that brings the change") {
    TwoShops shops;
    shops.one.change_key(today, repeatable_random("next key"), false);
    std::vector<std::string> keys, others;
    for (const auto& line : records_of(shops.one))
        (line.find("\"type\":\"key\"") == std::string::npos ? others : keys).push_back(line);
    write(shops.folder / "a notes.jsonl", signed_pack(shops.one, others));
    CHECK(fate_of(exchange(shops.other, shops.folder), "a notes.jsonl").starts_with("waiting"));
    write(shops.folder / "b keys.jsonl", pack_of(shops.one, {{}, {}, true}));
    const FolderReport report = exchange(shops.other, shops.folder);
    CHECK(fate_of(report, "a notes.jsonl") == "taken");
    CHECK(fate_of(report, "b keys.jsonl") == "taken");
}

TEST_CASE("a folder that is not there, or may not be written, is said") {
    TwoShops shops;
    CHECK_THROWS_AS(exchange(shops.one, shops.places / "nowhere"), CatalogError);
    write(shops.places / "file", "x");
    CHECK_THROWS_AS(exchange(shops.one, shops.places / "file"), CatalogError);
    if (::geteuid() == 0) return;  // root may write everywhere
    fs::permissions(shops.folder, fs::perms::owner_read | fs::perms::owner_exec);
    CHECK_THROWS_AS(exchange(shops.one, shops.folder), CatalogError);
    fs::permissions(shops.folder, fs::perms::owner_all);
}
