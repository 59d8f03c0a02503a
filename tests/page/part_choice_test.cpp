// Is a part found among thousands: by its path, its name or a piece of it, on a page that stays small?
#include "page/part_choice.h"

#include <catch2/catch.hpp>

#include "shop_pages.h"

using namespace tapbook;

namespace {

const FormChoices none_chosen = {{"", "none chosen yet"}};
const FormChoices a_few = {{"kessa-mono", "Kessa Mono"},
                           {"kessa-mono-two", "Kessa Mono"},
                           {"kessa-pair", "Kessa Pair 60"},
                           {"vellin-pair", "Vellin P\u00e4ir 60"}};

std::string amplifiers(int many) {
    std::string text;
    for (int i = 0; i < many; ++i)
        text += "[[amplifier]]\ncode = \"many-" + std::to_string(i) + "\"\nmaker = \"Kessa\"\nname = \"Long" +
                std::to_string(i) +
                "\"\nuse = \"sub\"\nchannels = 1\ninput_max_v = 8\nwatts_at = [\"4:300\"]\n"
                "least_ohms = 2\nsensitivity_high_gain_v = 0.2\nsensitivity_low_gain_v = 6\ninput_ohms = 10000\n"
                "shield = \"lifted\"\nturn_on_ma = 15\n";
    return text;
}

// A shop that knows so many amplifiers more.
struct LargeShop : shop::Shop {
    explicit LargeShop(int more, int converters = 2) : Shop(shop::plain, 2, converters) {
        Catalog catalog = Catalog::open(server.place.catalog, Access::write);
        catalog.add(read_batch(amplifiers(more), "amplifiers.toml"), false, "2026-05-04");
    }
    std::string page(const std::string& address) { return server.ask(get(address, server.paired())).body; }
};

bool says(const std::string& page, std::string_view words) {
    return page.find(words) != std::string::npos;
}

}  // namespace

TEST_CASE("a path is taken as it is, a whole name before words of one, words in any order before pieces of them") {
    const auto path = [](std::string_view typed) { return chosen_part(a_few, none_chosen, typed).path; };
    CHECK(path("kessa-mono") == "kessa-mono");
    CHECK(path("Kessa Pair 60") == "kessa-pair");
    CHECK(path("60 KESSA") == "kessa-pair");
    CHECK(path("vellin pair") == "vellin-pair");
    CHECK(path("mono-two") == "kessa-mono-two");
    CHECK(chosen_part({{"k-1", "Kessa Floor 1"}, {"k-12", "Kessa Floor 12"}}, none_chosen, "floor 1").path == "k-1");
    CHECK(path("").empty());
    CHECK(chosen_part(a_few, none_chosen, "").complaint.empty());
    CHECK(chosen_part(a_few, {{"", "the best"}, {"direct", "none"}}, "direct").path == "direct");
}

TEST_CASE("words that fit none or several parts choose nothing and say so") {
    const auto complaint = [](std::string_view typed) { return chosen_part(a_few, none_chosen, typed).complaint; };
    CHECK(complaint("orvin") == "none is called \"orvin\"");
    CHECK(complaint("kessa") == "3 have \"kessa\" in their name: choose one of them");
    CHECK(complaint("Kessa Mono") == "2 have \"Kessa Mono\" in their name: choose one of them");
    CHECK(complaint(" ") == "none is called \" \"");
    FormChoices many;
    for (int i = 0; i < 61; ++i) many.emplace_back("k" + std::to_string(i), "Kessa " + std::to_string(i));
    CHECK(chosen_part(many, none_chosen, "kessa").complaint == "61 have \"kessa\" in their name: type more of it");
}

TEST_CASE("60 parts are a list, 61 a box to type in") {
    LargeShop fits(59), too_many(60);  // and the shop's own one
    CHECK(says(fits.page("/advice/" + fits.car), "<select name=\"amp\">"));
    const std::string page = too_many.page("/advice/" + too_many.car);
    CHECK_FALSE(says(page, "<select name=\"amp\">"));
    CHECK(says(page, "a part of its name; 61 are known"));
}

TEST_CASE("with thousands of amplifiers and hundreds of converters each page that chooses one stays below 60 KB") {
    LargeShop shop(2500, 700);
    for (const std::string& address :
         {"/advice/" + shop.car, "/advice/" + shop.car + "?amp=kessa", "/advice/" + shop.car + "?amp=long24",
          "/advice/" + shop.car + "?amp=many-7", "/job/" + shop.code + "/plan"}) {
        INFO(address);
        CHECK(shop.page(address).size() <= most_page_bytes);
    }
}

TEST_CASE("an amplifier is judged when a piece of its name means only it, else the page asks which") {
    LargeShop shop(100);
    const std::string one = shop.page("/advice/" + shop.car + "?amp=long77");
    CHECK(says(one, "value=\"Kessa Long77\""));
    CHECK(says(one, "Converters, best first"));
    const std::string ten = shop.page("/advice/" + shop.car + "?amp=ong7");  // Long7 and Long70 to Long79
    CHECK(says(ten, "11 have &quot;ong7&quot; in their name: choose one of them"));
    CHECK(says(ten, "<option value=\"many-79\">Kessa Long79</option>"));
    CHECK_FALSE(says(ten, "Converters, best first"));
    CHECK(shop.server.ask(get("/advice/" + shop.car + "?amp=orvin", shop.server.paired())).status == 404);
}

TEST_CASE("a plan takes the amplifier and the converter that were typed, and keeps what was typed when it is refused") {
    LargeShop shop(100, 100);
    const std::string phone = shop.server.paired(), plan = "/job/" + shop.code + "/plan";
    const auto sent = [&](const std::string& amplifier, const std::string& converter) {
        return shop.server.ask(
            post(shop.server, plan, phone, {{"system", "base"}, {"amp", amplifier}, {"converter", converter}}));
    };
    const SentAnswer refused = sent("ong7", "part-42");
    CHECK(refused.status == 422);
    CHECK(says(refused.body, "11 have &quot;ong7&quot; in their name: choose one of them"));
    CHECK(says(refused.body, "value=\"part-42\""));  // all of them are called Vellin Two: the path stays
    const SentAnswer saved = sent("long 42", "part-42");
    CHECK(saved.status != 422);
    const ShopJob job = shop.server.desk.catalog().jobs().front();
    CHECK(job.plan.amplifier == "many-42");
    CHECK(job.plan.converter == "part-42");
}
