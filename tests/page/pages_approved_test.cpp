// The pages as somebody has read and accepted them: a car, its converters, a job, its form, what is said after saving.
#include <catch2/catch.hpp>

#include "report/approved.h"
#include "shop_pages.h"

using namespace tapbook;

namespace {

std::string read(shop::Shop& shop, const std::string& address, const std::string& cookie = {}) {
    return shop::without_tokens(shop.server.ask(cookie.empty() ? get_here(address) : get(address, cookie)).body);
}

}  // namespace

TEST_CASE("pages for reading stand as approved") {
    shop::Shop shop;
    approval::approve("page_find", read(shop, "/"));
    approval::approve("page_car", read(shop, "/car/" + shop.car + "?year=2016"));
    approval::approve("page_advice", read(shop, "/advice/" + shop.car + "?amp=mono"));
    approval::approve("page_changes", read(shop, "/changes/" + shop.car));
    approval::approve("page_job", read(shop, "/job/" + shop.code));
    approval::approve("page_jobs", read(shop, "/jobs"));
}

TEST_CASE("forms of a paired phone stand as approved") {
    shop::Shop shop;
    const std::string phone = shop.server.paired();
    approval::approve("page_read", read(shop, "/job/" + shop.code + "/read?at=front-left/radio-plug", phone));
    approval::approve("page_plan", read(shop, "/job/" + shop.code + "/plan", phone));
    approval::approve("page_left", read(shop, "/job/" + shop.code + "/left", phone));
    approval::approve("page_note", read(shop, "/note/" + shop.car + "?tap=" + shop::tap, phone));
}

TEST_CASE("what is said after saving and refusing stands as approved") {
    shop::Shop shop;
    const std::string phone = shop.server.paired(), job = "/job/" + shop.code;
    const auto sent = [&](const std::string& address, std::vector<std::pair<std::string, std::string>> fields) {
        return shop::without_tokens(shop.server.ask(post(shop.server, address, phone, std::move(fields))).body);
    };
    approval::approve(
        "page_read_refused",
        sent(job + "/read",
             {{"at", "front-left/radio-plug"}, {"positive", "W-B"}, {"ac_v", "8,4 V"}, {"dc_positive_v", "7.1"}}));
    approval::approve("page_read_saved", sent(job + "/read", {{"at", "front-left/radio-plug"},
                                                              {"method", "metered"},
                                                              {"positive", "white"},
                                                              {"negative", "white/black"},
                                                              {"dc_positive_v", "7.1"},
                                                              {"dc_negative_v", "7.2"},
                                                              {"ac_v", "8,4"},
                                                              {"supply_v", "14.2"},
                                                              {"full_volume", "yes"},
                                                              {"then", "next"}}));
    approval::approve("page_close_refused", sent(job + "/close", {{"outcome", "fine"}}));
    approval::approve("page_note_saved", sent("/note/" + shop.car, {{"tap", shop::tap},
                                                                    {"method", "seen"},
                                                                    {"positive", "white"},
                                                                    {"negative", "white/black"},
                                                                    {"year", "2017"},
                                                                    {"then", "stay"}}));
}

TEST_CASE("undo takes back the note that was saved, and never another action") {
    shop::Shop shop;
    const std::string phone = shop.server.paired();
    const auto notes = [&] { return shop.server.desk.catalog().ledger_at(shop.car + "/" + shop::tap); };
    const auto before = notes().live().size();
    const SentAnswer saved = shop.server.ask(post(shop.server, "/note/" + shop.car, phone,
                                                  {{"tap", shop::tap},
                                                   {"method", "seen"},
                                                   {"positive", "white"},
                                                   {"negative", "white/black"},
                                                   {"year", "2017"}}));
    REQUIRE(notes().live().size() == before + 1);
    const auto at = saved.body.find("name=\"note\" value=\"");
    REQUIRE(at != std::string::npos);
    const std::string id = saved.body.substr(at + 19, 32);
    shop.server.ask(
        post(shop.server, "/note/" + shop.car, phone,
             {{"tap", "base/circuit-1/radio-plug"}, {"method", "seen"}, {"positive", "red"}, {"year", "2017"}}));
    CHECK(shop.server.ask(post(shop.server, "/undo", phone, {{"note", id}})).status == 409);
    CHECK(notes().live().size() == before + 1);
    Catalog::open(shop.server.place.catalog, Access::write).undo("2026-05-04");
    CHECK(shop.server.ask(post(shop.server, "/undo", phone, {{"note", id}})).status == 200);
    CHECK(notes().live().size() == before);
}

TEST_CASE("a browser on this machine that is not paired reads every form and writes none") {
    shop::Shop shop;
    const std::string body = read(shop, "/job/" + shop.code + "/read?at=front-left/radio-plug");
    CHECK(body.find("type=\"submit\"") == std::string::npos);
    CHECK(body.find("href=\"/pair\"") != std::string::npos);
}
