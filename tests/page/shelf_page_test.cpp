// Does the page of the shelf book what the command line books, say the same, and never book twice?
#include <catch2/catch.hpp>

#include "report/approved.h"
#include "shop_pages.h"

using namespace tapbook;

namespace {

using Fields = std::vector<std::pair<std::string, std::string>>;

// What a phone does at the shelf: looks at a part, fills its form, sends it, goes where it is led.
class Counting {
  public:
    explicit Counting(shop::Shop& shop) : shop_(shop), phone_(shop.server.paired()) {}

    std::string look(const std::string& address) { return shop_.server.ask(get(address, phone_)).body; }

    // The form as the page has it now.
    RawRequest form(const std::string& part, Fields fields) {
        const std::string page = look("/shelf/count/" + part);
        fields.emplace_back("last", value_of(page, "last"));
        return post(shop_.server, "/shelf/count/" + part, phone_, std::move(fields));
    }

    SentAnswer send(const RawRequest& request) { return shop_.server.ask(request); }

    // Books, and gives the page to which that leads.
    std::string book(const std::string& part, const std::string& booking, const std::string& pieces) {
        const SentAnswer answer = send(form(part, {{"booking", booking}, {"pieces", pieces}}));
        return answer.status == 303 ? look(header_of(answer, "Location")) : answer.body;
    }

    SentAnswer undo(const std::string& page) {
        return send(post(shop_.server, "/shelf/undo", phone_,
                         {{"part", value_of(page, "part")}, {"movement", value_of(page, "movement")}}));
    }

    // On hand and on order.
    std::pair<int, int> lies(const std::string& part) {
        for (const auto& row : shop_.server.desk.catalog().stock())
            if (row.part == part) return {row.terms.on_hand.value_or(-1), row.terms.on_order.value_or(0)};
        return {-1, 0};
    }

    static std::string value_of(const std::string& page, const std::string& name) {
        const std::string before = "name=\"" + name + "\" value=\"";
        const auto at = page.find(before);
        if (at == std::string::npos) return {};
        return page.substr(at + before.size(), page.find('"', at + before.size()) - at - before.size());
    }

    static bool says(const std::string& page, std::string_view words) { return page.find(words) != std::string::npos; }

  private:
    shop::Shop& shop_;
    std::string phone_;
};

}  // namespace

TEST_CASE("the shelf, the list for counting and a booked part stand as approved") {
    shop::Shop shop;
    Counting counting(shop);
    counting.book("part-0", "correct", "3");
    approval::approve("page_shelf", counting.look("/shelf"));
    approval::approve("page_shelf_count", counting.look("/shelf/count"));
    approval::approve("page_shelf_booked", shop::without_tokens(counting.book("part-0", "receive", "4")));
    approval::approve("page_why", counting.look("/why/" + shop.car + "?tap=" + shop::tap + "&year=2016"));
}

TEST_CASE("receive, use, correct, order and cancel book what they say") {
    shop::Shop shop;
    Counting counting(shop);
    CHECK(Counting::says(counting.book("part-0", "correct", "3"),
                         "not counted -&gt; 3 on the shelf, 0 -&gt; 0 on order"));
    CHECK(Counting::says(counting.book("part-0", "order", "5"), "3 -&gt; 3 on the shelf, 0 -&gt; 5 on order"));
    CHECK(Counting::says(counting.book("part-0", "cancel", "1"), "3 -&gt; 3 on the shelf, 5 -&gt; 4 on order"));
    CHECK(Counting::says(counting.book("part-0", "receive", "4"), "3 -&gt; 7 on the shelf, 4 -&gt; 0 on order"));
    CHECK(Counting::says(counting.book("part-0", "use", "2"), "7 -&gt; 5 on the shelf, 0 -&gt; 0 on order"));
    CHECK(counting.lies("part-0") == std::pair(5, 0));
    CHECK(Counting::says(counting.book("part-0", "correct", "5"), "5 on the shelf: it was so already"));
    CHECK(Counting::says(counting.book("mono", "correct", "1"), "1 on the shelf"));  // an amplifier can be counted too
}

TEST_CASE("what is taken for a job stands beside the job") {
    shop::Shop shop;
    Counting counting(shop);
    counting.book("part-0", "correct", "3");
    counting.send(counting.form("part-0", {{"booking", "use"}, {"pieces", "1"}, {"job", shop.code}}));
    const auto rows = shop.server.desk.catalog().stock();
    REQUIRE(rows.front().part == "part-0");
    CHECK(rows.front().movements.back().job == 1);
    CHECK(rows.front().movements.back().kind == MovementKind::used);
}

TEST_CASE("a form that is sent twice books once and says what was booked") {
    shop::Shop shop;
    Counting counting(shop);
    counting.book("part-0", "correct", "3");
    const RawRequest form = counting.form("part-0", {{"booking", "receive"}, {"pieces", "4"}});
    CHECK(counting.send(form).status == 303);
    const SentAnswer again = counting.send(form);
    CHECK(again.status == 409);
    CHECK(Counting::says(again.body,
                         "This was booked since the page was loaded: 2026-05-04 received, +4 on the shelf. "
                         "If it is what you meant, it is done; if not, book once more."));
    CHECK(Counting::value_of(again.body, "pieces").empty());  // name and value do not stand side by side in a box
    CHECK(Counting::says(again.body, "value=\"4\""));
    CHECK(counting.lies("part-0") == std::pair(7, 0));
}

TEST_CASE("undo takes back the booking that the message spoke of, and nothing else") {
    shop::Shop shop;
    Counting counting(shop);
    counting.book("part-0", "correct", "3");
    const std::string first = counting.book("part-0", "receive", "4");
    counting.book("part-1", "correct", "9");
    CHECK(counting.undo(first).status == 409);
    CHECK(counting.lies("part-0") == std::pair(7, 0));
    const std::string second = counting.book("part-0", "use", "1");
    CHECK(counting.undo(first).status == 409);
    const SentAnswer undone = counting.undo(second);
    CHECK(undone.status == 200);
    CHECK(Counting::says(undone.body, "Undone: shelf count part-0 use 1."));
    CHECK(counting.lies("part-0") == std::pair(7, 0));
    CHECK(counting.undo(second).status == 409);
    CHECK(counting.lies("part-1") == std::pair(9, 0));
}

TEST_CASE("what cannot be booked is said beside its box, keeps what was typed and changes nothing") {
    shop::Shop shop;
    Counting counting(shop);
    counting.book("part-0", "correct", "3");
    const struct {
        Fields fields;
        const char* said;
    } refused[] = {
        {{{"pieces", "4"}}, "receive, use, correct, order or cancel? press one"},
        {{{"booking", "lend"}, {"pieces", "4"}}, "receive, use, correct, order or cancel? press one"},
        {{{"booking", "receive"}, {"pieces", "0"}}, "0 pieces cannot be booked: write a whole number, 1 to 100000"},
        {{{"booking", "receive"}, {"pieces", "100001"}},
         "100001 pieces cannot be booked: write a whole number, 1 to 100000"},
        {{{"booking", "receive"}, {"pieces", "-2"}}, "write a whole number, 1 to 100000"},
        {{{"booking", "receive"}, {"pieces", ""}}, "write a whole number, 1 to 100000"},
        {{{"booking", "receive"}, {"pieces", "1.5"}}, "write a whole number, 1 to 100000"},
        {{{"booking", "use"}, {"pieces", "4"}}, "only 3 lie on the shelf: 4 cannot be taken"},
        {{{"booking", "cancel"}, {"pieces", "1"}}, "none are ordered: 1 cannot be cancelled"},
        {{{"booking", "receive"}, {"pieces", "4"}, {"job", shop.code}}, "a job belongs to use: choose no job"},
        {{{"booking", "use"}, {"pieces", "1"}, {"job", "ZZZZZZ"}}, "there is no such job"},
        {{{"booking", "use"}, {"pieces", "1"}, {"words", "a\u202eb"}}, "write it in plain characters"},
        {{{"booking", "use"}, {"pieces", "1"}, {"words", std::string(4001, 'a')}},
         "longer than 4000 bytes: shorten it"},
    };
    for (const auto& [fields, said] : refused) {
        const SentAnswer answer = counting.send(counting.form("part-0", fields));
        INFO(said);
        CHECK(answer.status == 422);
        CHECK(Counting::says(answer.body, said));
        CHECK(Counting::says(answer.body, "Not saved yet."));
        CHECK(counting.lies("part-0") == std::pair(3, 0));
    }
    CHECK(counting.send(counting.form("nothing", {{"booking", "correct"}, {"pieces", "1"}})).status == 404);
}

TEST_CASE("the order of the plan leads to a form that is filled with it") {
    shop::Shop shop;
    Counting counting(shop);
    const std::string page = counting.look("/shelf/count/part-0?booking=order&pieces=2");
    CHECK(Counting::says(page, "name=\"booking\" value=\"order\" checked=\"checked\""));
    CHECK(Counting::says(page, "value=\"2\""));
    CHECK(counting.lies("part-0") == std::pair(-1, 0));  // looking books nothing
}

TEST_CASE("while the shelf is worked out for one phone, another is told so and the turn comes back") {
    shop::Shop shop;
    AServer& server = shop.server;
    SentAnswer meanwhile;
    const auto read_rules = server.place.read_rules;
    server.place.read_rules = [&] {
        PageDesk other(server.place);
        if (meanwhile.body.empty()) meanwhile = server.gate.answer(other, get_here("/shelf?models=2"));
        return read_rules();
    };
    CHECK(server.ask(get_here("/shelf")).status == 200);
    CHECK(meanwhile.status == 503);
    CHECK(meanwhile.body.find("The shelf is being worked out for another phone.") != std::string::npos);
    CHECK(server.ask(get_here("/shelf?models=2")).status == 200);
}

TEST_CASE("a shelf that cannot be planned says why, and a number that is none is refused") {
    AServer server;
    const SentAnswer empty = server.ask(get_here("/shelf"));
    CHECK(empty.status == 200);
    CHECK(empty.body.find("No sound system with a speaker or line tap is known here") != std::string::npos);
    CHECK(server.ask(get_here("/shelf/count")).body.find("No converter is known here yet") != std::string::npos);
    for (const std::string models : {"0", "11", "x", "1.5"}) {
        const SentAnswer refused = server.ask(get_here("/shelf?models=" + models));
        CHECK(refused.status == 400);
        CHECK(refused.body.find("models: &quot;" + models + "&quot; is not from 1 to 10") != std::string::npos);
    }
}
