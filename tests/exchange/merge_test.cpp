// What becomes of another shop's records? Who counts, who does not yet, what is final, what is kept unread.
#include "exchange/shop_fixture.h"

using namespace tapbook;

namespace {

// Two shops that know each other and a third that relays.
struct ThreeShops {
    Places places;
    Catalog one = places.shop("Bench Three"), other = places.shop("Quill Audio"), relay = places.shop("Relay Sound");
    ThreeShops() {
        one.change_shop(other.own_shop().id, ShopChange::know, "Quill Audio");
        other.change_shop(one.own_shop().id, ShopChange::know, "Bench Three");
    }
};

Values values_of_line(const std::string& line) {
    return read_record_line(line);
}

std::string line_of_type(const Catalog& catalog, const std::string& type) {
    for (const auto& line : records_of(catalog))
        if (text_field(values_of_line(line), "type") == type) return line;
    return {};
}

}  // namespace

TEST_CASE("what one shop knows another takes in, and a second time nothing changes") {
    ThreeShops shops;
    shops.one.add(one_car(), false, today);
    add_note(shops.one, "WH", "AB 1");
    const std::string pack = pack_of(shops.one);
    const TakeInReport preview = shops.other.take_in(read_pack(pack, "pack.jsonl"), today, true);
    CHECK_FALSE(preview.written);
    CHECK(records_of(shops.other).empty());
    const TakeInReport first = take(shops.other, pack);
    CHECK(first.written);
    CHECK(first.fresh() == 5);
    CHECK(first.here() == 0);
    CHECK(first.shop_name == "Bench Three");
    REQUIRE(first.moves.size() == 1);
    CHECK(first.moves[0].before == Grade::blank);
    CHECK(first.moves[0].after == Grade::one_car);
    CHECK(preview.fresh() == first.fresh());
    CHECK(records_of(shops.other) == records_of(shops.one));
    const TakeInReport again = take(shops.other, pack);
    CHECK(again.was_here);
    CHECK_FALSE(again.written);
    add_note(shops.one, "WH", "AB 2");
    const TakeInReport more = take(shops.other, pack_of(shops.one));
    CHECK(more.fresh() == 1);
    CHECK(more.here() == 5);
    CHECK(shops.other.check(CheckDepth::full).sound());
    CHECK(shops.other.find("vel ostrel").hits.size() == 1);  // the names are kept for the search
}

TEST_CASE("notes that another shop hands on count with the unknown shops until their own shop signs them") {
    ThreeShops shops;
    shops.one.add(one_car(), false, today);
    for (const char* plate : {"AB 1", "AB 2"}) add_note(shops.one, "WH", plate);
    for (const char* plate : {"CD 1", "CD 2"}) add_note(shops.other, "WH", plate);
    take(shops.relay, pack_of(shops.one));
    const TakeInReport relayed = take(shops.other, pack_of(shops.relay));
    CHECK(relayed.unvouched == 2);
    CHECK(grade_at(shops.other) == Grade::matched);
    const TakeInReport own = take(shops.other, pack_of(shops.one));
    CHECK(own.fresh_vouched == 2);
    CHECK(own.fresh() == 0);
    CHECK(grade_at(shops.other) == Grade::proven);
    REQUIRE(own.moves.size() == 1);
    CHECK(own.moves[0].after == Grade::proven);
    CHECK(shops.other.check(CheckDepth::full).sound());
}

TEST_CASE("vouched first and relayed later is the same as relayed first and vouched later") {
    ThreeShops shops;
    shops.one.add(one_car(), false, today);
    for (const char* plate : {"AB 1", "AB 2"}) add_note(shops.one, "WH", plate);
    for (const char* plate : {"CD 1", "CD 2"}) add_note(shops.other, "WH", plate);
    take(shops.relay, pack_of(shops.one));
    take(shops.other, pack_of(shops.one));
    take(shops.other, pack_of(shops.relay));
    CHECK(grade_at(shops.other) == Grade::proven);
}

TEST_CASE("notes forged in a known shop's name prove nothing, however many and in however many names") {
    ThreeShops shops;
    for (const char* plate : {"CD 1", "CD 2"}) add_note(shops.other, "WH", plate);
    REQUIRE(grade_at(shops.other) == Grade::matched);
    add_note(shops.one, "WH", "AB 1");
    Values note = values_of_line(line_of_type(shops.one, "note"));
    std::vector<std::string> forged;
    for (const std::string& shop : {shops.one.own_shop().id, shops.other.own_shop().id, std::string(32, 'b')})
        for (const char* plate : {"1", "2", "3", "4", "5"}) {
            note["shop"] = words(shop);
            note["car"] = words(to_hex(short_hash(plate)));
            forged.push_back(record_line(note));
        }
    const TakeInReport report = take(shops.other, signed_pack(shops.relay, in_order(forged)));
    CHECK(report.unvouched == 15);
    CHECK(grade_at(shops.other) == Grade::matched);
    CHECK(shops.other.check(CheckDepth::full).sound());
    CHECK(take(shops.other, pack_of(shops.one)).fresh() == 1);  // the real one makes the difference
    CHECK(grade_at(shops.other) == Grade::proven);
}

TEST_CASE("a withdrawal forged in another shop's name, or said by a stranger in its own, withdraws nothing") {
    ThreeShops shops;
    add_note(shops.one, "WH", "AB 1");
    for (const char* plate : {"CD 1", "CD 2"}) add_note(shops.other, "WH", plate);
    take(shops.other, pack_of(shops.one));
    REQUIRE(grade_at(shops.other) == Grade::proven);
    for (const std::string& shop : {shops.one.own_shop().id, shops.relay.own_shop().id}) {
        const Values gone = {
            {"type", words("withdrawal")}, {"target", words(to_hex(record_id(line_of_type(shops.one, "note"))))},
            {"path", words(tap_path)},     {"reason", words("typo")},
            {"shop", words(shop)},         {"date", words("2026-04-01")}};
        CHECK(take(shops.other, signed_pack(shops.relay, {record_line(gone)})).fresh() == 1);
        CHECK(grade_at(shops.other) == Grade::proven);
        for (const auto& entry : shops.other.ledger_at(tap_path).notes) CHECK(entry.state == NoteState::live);
        CHECK(shops.other.check(CheckDepth::full).sound());
    }
}

TEST_CASE("a withdrawal that comes before its note withdraws it when it comes") {
    ThreeShops shops;
    add_note(shops.one, "WH", "AB 1");
    const std::string note = line_of_type(shops.one, "note");
    const std::string early = pack_of(shops.one);
    shops.one.withdraw(record_id(note), WithdrawalReason::typo, today);
    take(shops.other, signed_pack(shops.one, {line_of_type(shops.one, "withdrawal")}));
    CHECK(grade_at(shops.other) == Grade::blank);
    take(shops.other, early);
    CHECK(grade_at(shops.other) == Grade::pulled);
    CHECK(records_of(shops.other) == records_of(shops.one));
}

TEST_CASE("a withdrawal that was handed on takes effect when its own shop signs it") {
    ThreeShops shops;
    add_note(shops.one, "WH", "AB 1");
    const std::string before = pack_of(shops.one);
    take(shops.other, before);
    take(shops.relay, before);
    shops.one.withdraw(record_id(line_of_type(shops.one, "note")), WithdrawalReason::typo, today);
    take(shops.relay, pack_of(shops.one));
    take(shops.other, pack_of(shops.relay));
    CHECK(grade_at(shops.other) == Grade::one_car);
    CHECK(take(shops.other, pack_of(shops.one)).fresh_vouched >= 1);
    CHECK(grade_at(shops.other) == Grade::pulled);
}

TEST_CASE("a blocked shop's records are stored, not counted, and not handed on") {
    ThreeShops shops;
    shops.one.add(one_car(), false, today);
    add_note(shops.one, "WH", "AB 1");
    shops.other.change_shop(shops.one.own_shop().id, ShopChange::block, std::nullopt);
    const TakeInReport report = take(shops.other, pack_of(shops.one));
    CHECK(report.is_blocked_shop);
    CHECK(report.fresh() == 5);
    CHECK(grade_at(shops.other) == Grade::blank);
    CHECK(shops.other.vehicle_names().empty());
    CHECK(records_of(shops.other).empty());
    shops.other.change_shop(shops.one.own_shop().id, ShopChange::unblock, std::nullopt);
    CHECK(grade_at(shops.other) == Grade::one_car);
    CHECK(shops.other.vehicle_names().size() == 1);
    CHECK(records_of(shops.other) == records_of(shops.one));
}

TEST_CASE("practice and real catalogs refuse each other's packs") {
    const Places places;
    Catalog real = places.shop("Bench Three"), practice = places.shop("Practice", CatalogKind::practice);
    add_note(real, "WH", "AB 1");
    add_note(practice, "WH", "AB 1");
    const std::string real_pack = pack_of(real), practice_pack = pack_of(practice);
    CHECK_THROWS_WITH(take(real, practice_pack), "this pack comes from a practice catalog: what it says is invented");
    CHECK_THROWS_WITH(take(practice, real_pack), "this pack holds what real shops found; this catalog is for practice");
    CHECK(count_in(real, "pack") == 1);  // its own note
}

TEST_CASE("a changed key is believed when the old one signed it, and every pack carries the change") {
    ThreeShops shops;
    add_note(shops.one, "WH", "AB 1");
    take(shops.other, pack_of(shops.one));
    const PublicKey first = shops.one.own_key().key;
    CHECK(shops.one.change_key(today, repeatable_random("next key"), false).changes == 1);
    CHECK(shops.one.change_key(today, repeatable_random("third key"), false).changes == 2);
    CHECK(shops.one.own_key().key != first);
    add_note(shops.one, "WH", "AB 2");
    CHECK(take(shops.other, pack_of(shops.one)).fresh() == 3);  // two changes, one note
    CHECK(take(shops.relay, pack_of(shops.one)).fresh() == 4);  // also where the shop was never seen
    CHECK(shops.one.check(CheckDepth::full).sound());
    CHECK(shops.other.check(CheckDepth::full).sound());
}

TEST_CASE("a stranger's key in a shop's name is refused, with or without a forged change of key") {
    ThreeShops shops;
    add_note(shops.one, "WH", "AB 1");
    const std::string id = shops.one.own_shop().id;
    const std::string head = record_line({{"format", words("tapbook.pack/1")},
                                          {"key", words(digits_of(shops.relay.own_key().key))},
                                          {"shop", words(id)},
                                          {"type", words("pack")}}) +
                             "\n";
    const std::string note = line_of_type(shops.one, "note");
    CHECK_THROWS_AS(take(shops.other, signed_pack(shops.relay, {note}, head)), UnknownKey);
    Values change = {{"type", words("key")},
                     {"shop", words(id)},
                     {"old_key", words(digits_of(shops.one.own_key().key))},
                     {"new_key", words(digits_of(shops.relay.own_key().key))},
                     {"date", words("2026-04-01")}};
    CHECK_THROWS_AS(take(shops.other, signed_pack(shops.relay, in_order({record_line(change), note}), head)),
                    UnknownKey);
    change["signature"] = words(digits_of(shops.relay.sign("tapbook/1 key\n" + record_line(change))));
    CHECK_THROWS_AS(take(shops.other, signed_pack(shops.relay, in_order({record_line(change), note}), head)),
                    UnknownKey);
    CHECK(count_in(shops.other, "note") == 0);
    CHECK(count_in(shops.other, "key_change") == 0);
}

TEST_CASE("what a later version wrote is kept, handed on unchanged and applied by nobody") {
    ThreeShops shops;
    const std::string id = shops.one.own_shop().id;
    const std::string zebra = R"({"path":")" + tap_path + R"(","shop":")" + id + R"(","stripes":9,"type":"zebra"})";
    const std::string kind = R"({"kind":"optical","path":"x","shop":")" + id + R"(","type":"note"})";
    add_note(shops.one, "WH", "AB 1");
    Values later = values_of_line(line_of_type(shops.one, "note"));
    later["glow"] = TextList{"dim"};
    const auto lines = in_order({zebra, kind, record_line(later)});
    const TakeInReport report = take(shops.other, signed_pack(shops.one, lines));
    CHECK(report.waiting == 2);
    CHECK(report.fresh() == 3);
    CHECK(records_of(shops.other) == lines);
    CHECK(grade_at(shops.other) == Grade::one_car);
    CHECK(shops.other.check(CheckDepth::full).sound());
    take(shops.relay, pack_of(shops.other));
    CHECK(records_of(shops.relay) == lines);
}

TEST_CASE("two shops that edit one entry apart are both kept, told, and settled by the next edit") {
    ThreeShops shops;
    shops.one.add(one_car(), false, today);
    take(shops.other, pack_of(shops.one));
    const auto edit = [&](Catalog& catalog, const std::string& name) {
        Batch batch = one_car();
        batch.entries[1].values["name"] = words(name);
        batch.notes.clear();
        catalog.add(batch, false, today);
    };
    edit(shops.one, "four speakers, radio A");
    edit(shops.other, "four speakers, radio B");
    const TakeInReport here = take(shops.other, pack_of(shops.one));
    REQUIRE(here.concurrent.size() == 1);
    CHECK(here.concurrent[0].path == car + "/base");
    CHECK(here.concurrent[0].edits == 2);
    take(shops.one, pack_of(shops.other));
    const auto name_in = [&](const Catalog& catalog) {
        return catalog.car(car, std::nullopt).systems.at(0).entry.name;
    };
    CHECK(name_in(shops.one) == name_in(shops.other));
    edit(shops.one, "four speakers");
    CHECK(take(shops.other, pack_of(shops.one)).concurrent.empty());
    CHECK(name_in(shops.other) == "four speakers");
}

TEST_CASE("a part of what is known goes out by make, car, day and author, and keys always") {
    ThreeShops shops;
    const std::string second = "orrery/brim/van/2018";
    shops.one.add(one_car(), false, today);
    shops.one.add(one_car(second), false, today);
    add_note(shops.one, "WH", "AB 1", "2026-03-04");
    add_note(shops.one, "WH", "AB 2", "2026-04-20", second + "/base/front-left/radio-plug");
    add_note(shops.other, "WH", "CD 1");
    take(shops.one, pack_of(shops.other));
    shops.one.change_key(today, repeatable_random("next key"), false);
    const auto count = [&](const OutgoingChoice& choice) {
        int lines = 0;
        shops.one.outgoing(choice, [&](OutgoingRecord&&) { ++lines; });
        return lines;
    };
    CHECK(count({}) == 12);
    CHECK(count({"orrery", {}, false}) == 12);
    CHECK(count({car, {}, false}) == 7);
    CHECK(count({car, {}, true}) == 6);
    CHECK(count({"orrery/brim", {}, false}) == 6);
    CHECK(count({{}, "2026-04-20", false}) == 10);
    CHECK(count({"orr", {}, false}) == 1);
}

TEST_CASE("what is local never goes out: customers, salts, secret keys, terms and the list of shops") {
    const Places places;
    Catalog catalog = places.shop("Bench Three");
    catalog.add(one_car(), false, today);
    add_note(catalog, "WH", "SECRET PLATE 77");
    Batch stock;
    stock.file = "stock.toml";
    stock.entries = {{EntryKind::converter, {{"path", words("wendric-plain-two")}, {"name", words("Plain Two")}}, {}}};
    stock.terms = {{"wendric-plain-two", {std::int64_t{98765}, 13, {}, 7, {}}, {}}};
    catalog.add(stock, false, today);
    catalog.change_shop(std::string(32, '7'), ShopChange::know, "Friend Next Door");
    JobStart start;
    start.vehicle = car;
    start.customer = "Mrs Private, 0123";
    catalog.start_job(start, today, repeatable_random("job"));
    const std::string pack = pack_of(catalog);
    sqlite::Database database(catalog.file(), sqlite::Open::read_write);
    auto secret = database.prepare("SELECT lower(hex(secret_key)), lower(hex(salt)) FROM secret");
    REQUIRE(secret.step());
    for (const std::string& local : {std::string("SECRET"), std::string("Private"), std::string("98765"),
                                     std::string("Friend"), std::string(secret.text(0)), std::string(secret.text(1))})
        CHECK(pack.find(local) == std::string::npos);
}

TEST_CASE("the key kept apart brings a catalog without one back to writing, and no other key does") {
    const Places places;
    Catalog catalog = places.shop("Bench Three");
    const std::string key = catalog.key_text(), other = places.shop("Stranger").key_text();
    backup_catalog(catalog.file(), places / "bare.sqlite", KeyInCopy::left_out);
    const auto open = [&] { return Catalog::open(places / "bare.sqlite", Access::write); };
    CHECK_THROWS_AS(open(), CatalogError);
    CHECK_THROWS_AS(Catalog::restore_key(places / "bare.sqlite", other, "other.key"), InputRefused);
    CHECK_THROWS_WITH(Catalog::restore_key(places / "bare.sqlite", "x", "other.key"), "is not a shop's key");
    std::string spoilt = key;
    spoilt[spoilt.find("key = \"") + 10] ^= 1;
    CHECK_THROWS_WITH(Catalog::restore_key(places / "bare.sqlite", spoilt, "my.key"), "is a shop's key, but damaged");
    CHECK(Catalog::restore_key(places / "bare.sqlite", key, "my.key").written);
    CHECK(open().own_key().key == catalog.own_key().key);
    CHECK(open().key_text() == key);
}

TEST_CASE("paths that are the same thing form a class named by the smallest, in whatever order it was said") {
    ThreeShops shops;
    const auto path = [](const std::string& model) { return "orrery/" + model + "/sedan/2012"; };
    CHECK(shops.one.add_alias(path("c"), path("b"), today, false).name == path("b"));
    CHECK(shops.one.add_alias(path("c"), path("d"), today, false).name == path("b"));
    CHECK(shops.one.add_alias(path("d"), path("a"), today, false).name == path("a"));
    CHECK(shops.one.add_alias(path("b"), path("d"), today, false).was_here);
    CHECK_THROWS_AS(shops.one.add_alias(path("b"), path("b"), today, false), InputRefused);
    CHECK_THROWS_AS(shops.one.add_alias(path("b"), path("b") + "/base", today, false), InputRefused);
    take(shops.other, pack_of(shops.one));
    CHECK(shops.other.add_alias(path("b"), path("z"), today, true).name == path("a"));
    CHECK(records_of(shops.other) == records_of(shops.one));
}
