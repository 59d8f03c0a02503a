// A note typed on a page says the same as one typed on the command line, and what cannot be read stands at its box.
#include <catch2/catch.hpp>

#include <set>

#include "page/note_form.h"
#include "shop_pages.h"

using namespace tapbook;

namespace {

NoteForm typed(std::vector<std::pair<std::string, std::string>> fields, NoteKind kind = NoteKind::pair) {
    return typed_note_form(kind, FormFields(std::move(fields)));
}

std::string said(const NoteForm& form, const std::string& field) {
    const auto found = form.complaints.find(field);
    return found == form.complaints.end() ? std::string() : found->second;
}

}  // namespace

TEST_CASE("a form is read into the stored fields, numbers exactly") {
    NoteForm form = typed({{"method", "metered"},
                           {"positive", "white"},
                           {"negative", "white/black"},
                           {"ac_v", "8.4"},
                           {"dc_positive_v", "7,15"},
                           {"full_volume", "yes"},
                           {"remarks", ""}});
    const Values values = read_note_form(form);
    CHECK(form.complaints.empty());
    CHECK(values == Values{{"method", std::string("metered")},
                           {"positive", std::string("WH")},
                           {"negative", std::string("WH/BK")},
                           {"ac_mv", std::int64_t{8400}},
                           {"dc_positive_mv", std::int64_t{7150}},
                           {"full_volume", true}});
}

TEST_CASE("what a form was read into fills the same form again") {
    NoteForm form = typed({{"method", "scoped"},
                           {"positive", "LBU/RD"},
                           {"ac_v", "6.25"},
                           {"supply_v", "14"},
                           {"music", "no"},
                           {"positive_cavity", "B5"},
                           {"remarks", "loose lock"}});
    const Values values = read_note_form(form);
    NoteForm again = note_form_of(NoteKind::pair, values);
    CHECK(again.typed == form.typed);
    CHECK(read_note_form(again) == values);
}

TEST_CASE("each wrong box has its own complaint and keeps its text") {
    NoteForm form = typed({{"positive", "W-B"}, {"ac_v", "eight"}, {"full_volume", "perhaps"}, {"negative", "brown"}});
    const Values values = read_note_form(form);
    CHECK(values == Values{{"negative", std::string("BN")}});
    CHECK(said(form, "ac_v") ==
          "a.c. across the pair eight is not a number: write digits with at most one point, like 13.8");
    CHECK(said(form, "full_volume") == "At the highest clean volume? does not know \"perhaps\"; yes or no");
    CHECK(said(form, "positive").starts_with("+ colour"));
    CHECK(said(form, "negative").empty());
    CHECK(form.typed.at("positive") == "W-B");
}

TEST_CASE("a form takes only the boxes of its kind") {
    NoteForm form = typed({{"premium", "yes"}, {"positive", "white"}, {"wire", "red"}}, NoteKind::system);
    CHECK(form.typed == std::map<std::string, std::string, std::less<>>{{"premium", "yes"}});
    CHECK(read_note_form(form) == Values{{"premium", true}});
}

TEST_CASE("the next circuit goes through every place of the system once, in the order of reaching them") {
    shop::Shop shop(shop::plain, 5);
    const CarFacts car = shop.server.desk.catalog().car(shop.car, {});
    std::vector<std::string> done;
    std::string here = shop.car + "/base/accessory/fuse-box";
    done.push_back(here);
    while (const auto next = next_place(car, here, done)) {
        here = *next;
        REQUIRE(done.size() < 20);
        done.push_back(here);
    }
    CHECK(done.size() == car.taps.size());
    CHECK(std::set<std::string>(done.begin(), done.end()).size() == done.size());
    CHECK(done[1] == shop.car + "/base/circuit-1/radio-plug");  // at the dash, 10 min; the fuse box took 4
}

TEST_CASE("a place is read by its circuit's kind, and what is not there is none") {
    shop::Shop shop;
    const CarFacts car = shop.server.desk.catalog().car(shop.car, {});
    CHECK(kind_at(car, shop.car + "/" + shop::tap) == NoteKind::pair);
    CHECK(kind_at(car, shop.car + "/base/accessory/fuse-box") == NoteKind::switched);
    CHECK(kind_at(car, shop.car + "/unrecorded/front-left/radio-plug") == NoteKind::pair);
    CHECK_FALSE(kind_at(car, shop.car + "/premium/front-left/radio-plug"));
    CHECK_FALSE(kind_at(car, shop.car + "/base/nowhere/radio-plug"));
}
