// Is a page that was finished before ever sent when it should no longer be? Held against a desk that has finished
// none, whatever is written in between and by whom; and it stays within its room.
#include "page/finished_pages.h"

#include <catch2/catch.hpp>
#include <fstream>

#include <rapidcheck.h>

#include "shop_pages.h"

using namespace tapbook;

namespace {

// The answer of a desk that remembers nothing.
std::string made_anew(AServer& server, const RawRequest& request) {
    PageDesk fresh(server.place);
    return shop::without_tokens(server.gate.answer(fresh, request).body);
}

PageAnswer page_of(std::size_t bytes) {
    PageAnswer answer;
    answer.body = std::string(bytes, 'x');
    return answer;
}

StockChange counted(int pieces) {
    StockChange change;
    change.part = "part-0";
    change.pieces = pieces;
    return change;
}

// Something that a page shows changes, by somebody else than this server's desk.
void change_something(shop::Shop& shop, int what, int number) {
    Catalog other = Catalog::open(shop.server.place.catalog, Access::write);
    if (what == 0) {
        other.book_stock(counted(number), "2026-05-04");
    } else if (what == 1) {
        JobStart start;
        start.vehicle = shop.car;
        start.customer = "T-" + std::to_string(number);
        other.start_job(start, "2026-05-04", repeatable_random("job " + std::to_string(number)));
    } else {
        std::ofstream(shop.server.place.own_rules) << "# " << number << "\n"
                                                   << std::string(static_cast<std::size_t>(number), '#') << "\n";
    }
}

}  // namespace

TEST_CASE("a finished page is never sent when another desk would make another one") {
    shop::Shop shop;
    const std::string phones[] = {shop.server.paired("bay one"), shop.server.paired("bay two")};
    const std::string addresses[] = {"/car/" + shop.car, "/shelf/count", "/jobs", "/shelf/count/part-0",
                                     "/car/" + shop.car + "?year=2016"};
    int number = 0, found_before = 0;
    REQUIRE(rc::check("any order of reading and writing", [&] {
        const auto steps = *rc::gen::container<std::vector<int>>(rc::gen::inRange(0, 14));
        for (const int step : steps) {
            if (step < 3) {
                change_something(shop, step, ++number);
                continue;
            }
            const std::string& address = addresses[step % 5];
            const RawRequest request = step < 8 ? get_here(address) : get(address, phones[step % 2]);
            const std::size_t before = shop.server.desk.finished().count();
            const std::string sent = shop::without_tokens(shop.server.ask(request).body);
            const bool has_token = address.ends_with("/part-0");
            found_before += !has_token && before == shop.server.desk.finished().count() ? 1 : 0;
            RC_ASSERT(sent == made_anew(shop.server, request));
        }
    }));
    CHECK(found_before > 50);  // else nothing was shown
}

TEST_CASE("the same words are answered from memory until anybody writes, and the day is part of the words") {
    shop::Shop shop;
    AServer& server = shop.server;
    const RawRequest request = get_here("/shelf/count");
    server.ask(request);
    server.ask(request);
    CHECK(server.desk.finished().count() == 1);
    Catalog::open(server.place.catalog, Access::write).book_stock(counted(8), "2026-05-04");
    CHECK(server.desk.finished().count() == 0);
    CHECK(server.ask(request).body.find("8 on the shelf") != std::string::npos);
    server.place.today = [] { return "2026-05-05"; };
    CHECK(server.ask(request).body.find("count-2026-05-05") != std::string::npos);
    CHECK(server.desk.finished().count() == 2);
}

TEST_CASE("no page with the hidden token of a form is kept, nor one that refuses or leads elsewhere") {
    shop::Shop shop;
    AServer& server = shop.server;
    const std::string phone = server.paired();
    for (const auto& address :
         {"/note/" + shop.car + "?tap=" + shop::tap, "/job/" + shop.code + "/read?at=front-left/radio-plug",
          std::string("/car/no/such/car/2012"), "/?words=" + shop.code, std::string("/phones"), std::string("/pair"),
          std::string("/page.css")})
        server.ask(get(address, phone));
    CHECK(server.desk.finished().count() == 0);
    const std::string mine = server.ask(get("/shelf/count/part-0", phone)).body;
    const std::string other = server.ask(get("/shelf/count/part-0", server.paired("other"))).body;
    CHECK(mine != other);  // each with its own token
}

TEST_CASE("a catalog that is put in the place of another one is seen at once") {
    shop::Shop shop, other;
    AServer& server = shop.server;
    Catalog::open(other.server.place.catalog, Access::write).book_stock(counted(5), "2026-05-04");
    const RawRequest request = get_here("/shelf/count");
    CHECK(server.ask(request).body.find("5 on the shelf") == std::string::npos);
    CHECK(server.ask(request).body.find("5 on the shelf") == std::string::npos);
    const auto copy = server.folder / "copy.sqlite";
    Catalog::open(other.server.place.catalog, Access::read);
    std::filesystem::copy_file(other.server.place.catalog, copy);
    for (const auto* log : {"-wal", "-shm"}) std::filesystem::remove(server.place.catalog.string() + log);
    std::filesystem::rename(copy, server.place.catalog);
    CHECK(shop::without_tokens(server.ask(request).body) == made_anew(server, request));
}

TEST_CASE("finished pages keep within their room, and the one asked for longest ago goes first") {
    REQUIRE(rc::check("any pages", [](const std::vector<unsigned short>& sizes) {
        constexpr std::size_t room = 40'000;
        FinishedPages pages(room);
        pages.begin("a");
        for (std::size_t i = 0; i < sizes.size(); ++i) {
            const std::string name = "page " + std::to_string(i);
            pages.keep(name, page_of(sizes[i]));
            RC_ASSERT(pages.bytes() <= room);
            const PageAnswer* kept = pages.find(name);
            RC_ASSERT((kept != nullptr) == (sizes[i] + 550U < room / 4));
            if (kept != nullptr) RC_ASSERT(kept->body.size() == sizes[i]);
        }
        pages.begin("b");
        RC_ASSERT(pages.count() == 0U);
        RC_ASSERT(pages.bytes() == 0U);
    }));
    FinishedPages pages(8000);
    pages.begin("a");
    for (const auto* name : {"first", "second", "third"}) pages.keep(name, page_of(1000));
    CHECK(pages.find("first") != nullptr);
    for (const auto* name : {"fourth", "fifth", "sixth"}) pages.keep(name, page_of(1000));
    CHECK(pages.find("first") != nullptr);
    CHECK(pages.find("second") == nullptr);
}
