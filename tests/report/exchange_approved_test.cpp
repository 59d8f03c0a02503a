// Does what is told of packs, the exchange folder, keys and aliases still read as it was accepted?
#include <catch2/catch.hpp>

#include "approved.h"
#include "report/report.h"

using namespace tapbook;
using approval::approve;

namespace {

constexpr Screen wide{Colours::none, 100}, narrow{Colours::none, 60};
const std::string shop = "56475aa75463474c0285df5dbf2bcab7", place = "orlin/brelk/sedan/2014/base/front-left/radio";

PublicKey a_key() {
    PublicKey key{};
    for (std::size_t i = 0; i < key.size(); ++i) key[i] = static_cast<unsigned char>(i);
    return key;
}

// A pack with something of everything.
PackContents a_pack() {
    PackContents contents;
    contents.pack.file = "for-others.jsonl";
    contents.pack.shop = shop;
    contents.pack.key = a_key();
    contents.pack.practice = true;
    contents.pack.records.resize(27);
    contents.kinds = {{"alias", 2, 0}, {"key", 1, 0}, {"note", 20, 0}, {"other", 3, 0}, {"vehicle", 1, 0}};
    for (int car = 10; car < 35; ++car)
        contents.cars.push_back({"orlin/brelk/sedan/20" + std::to_string(car), car % 3 + 1});
    contents.of_other_shops = 4;
    return contents;
}

TakeInReport taken_in() {
    TakeInReport report;
    report.file = "for-others.jsonl";
    report.shop = shop;
    report.kinds = {{"alias", 1, 0}, {"key", 1, 0}, {"note", 20, 3}, {"other", 2, 1}, {"vehicle", 1, 0}};
    report.fresh_vouched = 1;
    report.unvouched = 5;
    report.waiting = 2;
    report.moves = {{place, Grade::one_car, Grade::proven}, {place + "-2", Grade::blank, Grade::mixed}};
    report.concurrent = {{EntryKind::tap, place, 2}};
    return report;
}

TakeInReport from_a_known_shop() {
    TakeInReport report = taken_in();
    report.shop_name = "Quill Audio";
    report.is_known_shop = report.written = true;
    report.is_too_large_to_grade = true;
    report.moves.clear();
    return report;
}

TakeInReport from_a_blocked_shop() {
    TakeInReport report = taken_in();
    report.is_blocked_shop = report.written = true;
    return report;
}

TakeInReport taken_before() {
    TakeInReport report;
    report.file = "for-others.jsonl";
    report.shop = shop;
    report.is_own_shop = report.was_here = true;
    return report;
}

// Every fate that a file can have.
FolderReport a_folder() {
    FolderReport report;
    report.folder = "/srv/shared/packs";
    for (const auto& [fate, word] : words_of<FileFate>())
        report.files.push_back({"tapbook-" + std::string(word) + ".jsonl", fate,
                                fate == FileFate::taken || fate == FileFate::here ? "" : "line 5: what is the matter"});
    report.taken = {from_a_known_shop()};
    report.written = {"tapbook-56475aa7-0123456789abcdef.jsonl"};
    report.records_written = 12;
    return report;
}

FolderReport a_quiet_folder() {
    FolderReport report;
    report.folder = ".";
    report.files = {{"tapbook-one.jsonl", FileFate::here, {}}};
    report.dry_run = true;
    return report;
}

}  // namespace

TEST_CASE("what a pack holds is shown as approved, wide, narrow and as JSON") {
    approve("pack-show-100", pack_text(a_pack(), wide));
    approve("pack-show-60", pack_text(a_pack(), narrow));
    approve("pack-show-json", pack_json(a_pack()));
}

TEST_CASE("what taking a pack in did is told as approved, whoever it came from") {
    approve("take-in-100", take_in_text(taken_in(), wide));
    approve("take-in-60", take_in_text(taken_in(), narrow));
    approve("take-in-json", take_in_json(taken_in()));
    approve("take-in-known-100", take_in_text(from_a_known_shop(), wide));
    approve("take-in-blocked-60", take_in_text(from_a_blocked_shop(), narrow));
    approve("take-in-again-100", take_in_text(taken_before(), wide));
}

TEST_CASE("what went out as packs is told as approved, one, several, none written") {
    approve("pack-export-100", pack_export_text({{{"all.jsonl", 5, 2345}}, true}, wide));
    approve("pack-export-60",
            pack_export_text({{{"all-1.jsonl", 199'998, 64'000'000}, {"all-2.jsonl", 1, 900}}, false}, narrow));
    approve("pack-export-json", pack_export_json({{{"all.jsonl", 5, 2345}}, true}));
}

TEST_CASE("what became of every file of a shared folder is told as approved") {
    approve("folder-100", folder_text(a_folder(), wide));
    approve("folder-60", folder_text(a_folder(), narrow));
    approve("folder-json", folder_json(a_folder()));
    approve("folder-quiet-100", folder_text(a_quiet_folder(), wide));
}

TEST_CASE("keys and aliases are told as approved") {
    const KeyReport key{shop, a_key(), 2, true};
    approve("key-60", key_text(key, "Saved.", narrow));
    approve("key-json", key_json(key));
    const AliasReport alias{"orlin/brelk-sport/sedan/2014", "orlin/brelk/sedan/2014", "orlin/brelk-sport/sedan/2014",
                            false, true};
    approve("alias-100", alias_text(alias, wide));
    approve("alias-60", alias_text(alias, narrow));
    approve("alias-json", alias_json(alias));
}
