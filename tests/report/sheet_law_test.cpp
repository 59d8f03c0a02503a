// Does the sheet hold together for any plan? Laws for 500 sheets made by dice, hostile names among them.
#include <fmt/format.h>
#include <rapidcheck.h>
#include <catch2/catch.hpp>

#include "report/drawing_words.h"
#include "report/sheet_chain.h"
#include "report/sheet_words.h"
#include "sheet_dice.h"
#include "xml_reader.h"

using namespace tapbook;

namespace {

bool holds(const std::string& text, const std::string& part) {
    return text.find(part) != std::string::npos;
}

std::string as_html(const std::string& words) {
    return xml_escaped(clean_words(words));
}

std::string without(std::string text, const std::string& begin, const std::string& end) {
    for (auto at = text.find(begin); at != std::string::npos; at = text.find(begin, at + begin.size())) {
        const auto from = at + begin.size();
        text.erase(from, text.find(end, from) - from);
    }
    return text;
}

// What a reader of XML is given: style and script are not markup.
std::string markup_of(std::string html) {
    const std::string kind = "<!DOCTYPE html>\n";
    REQUIRE(html.starts_with(kind));
    return without(without(html.substr(kind.size()), "<style>", "</style>"), "<script>", "</script>");
}

template <class Law>
void for_random_sheets(const char* name, Law law) {
    for (unsigned times = 0; times < 5; ++times)  // 100 each
        REQUIRE(rc::check(name, [&](unsigned seed) {
            sheets::SheetDice dice(5 * seed + times);
            law(dice.sheet());
        }));
}

}  // namespace

TEST_CASE("every conductor of the plan stands on the sheet with code and words, in text and HTML") {
    for_random_sheets("conductors", [](const Sheet& sheet) {
        const std::string html = sheet_html(sheet, SheetPaper::a4), text = sheet_text(sheet, {});
        for (const auto& conductor : sheet.plan.conductors) {
            if (!conductor.colour || !has_plan(sheet)) continue;
            RC_ASSERT(holds(
                html, fmt::format("<b class=\"wire\">{}</b> {}", code(*conductor.colour), words(*conductor.colour))));
            RC_ASSERT(holds(text, code(*conductor.colour)));
        }
    });
}

TEST_CASE("every step and every caution stands on the sheet, whole and in the order of work") {
    for_random_sheets("cautions", [](const Sheet& sheet) {
        const std::string html = sheet_html(sheet, SheetPaper::letter);
        std::size_t at = html.find("class=\"work\"");
        for (const auto& step : sheet.plan.steps) {
            at = html.find(as_html(step.what), at);
            RC_ASSERT(at != std::string::npos);
            for (const auto& caution : step.cautions) {
                const auto stands = html.find(as_html(caution.text), at);
                RC_ASSERT(stands != std::string::npos);
                at = stands;
            }
        }
    });
}

TEST_CASE("every grade line of a fact and of a circuit stands on the sheet") {
    for_random_sheets("grades", [](const Sheet& sheet) {
        const std::string html = sheet_html(sheet, SheetPaper::letter);
        for (const auto& fact : sheet_facts(sheet))
            for (const auto& line : fact.rests_on) RC_ASSERT(holds(html, as_html(line)));
        for (const auto& facts : sheet.circuits)
            for (const auto& line : grade_lines(facts)) RC_ASSERT(holds(html, as_html(line)));
    });
}

TEST_CASE("the page is well formed, asks nobody for anything, and has no style attribute and no foreign element") {
    const std::set<std::string> known = {"html",    "head",   "meta",   "title", "style", "body",  "header", "main",
                                         "section", "div",    "p",      "h1",    "h2",    "h3",    "dl",     "dt",
                                         "dd",      "ul",     "ol",     "li",    "label", "input", "span",   "b",
                                         "small",   "code",   "table",  "thead", "tbody", "tr",    "th",     "td",
                                         "footer",  "button", "script", "svg",   "path",  "rect",  "circle", "text"};
    for_random_sheets("well-formed", [&](const Sheet& sheet) {
        const std::string markup = markup_of(sheet_html(sheet, SheetPaper::a4));
        const xml::Read read = xml::read_xml(markup);
        RC_ASSERT(read.wrong == "");
        for (const auto& [name, count] : read.elements) RC_ASSERT(known.contains(name));
        for (const char* name : {"style", "src", "href", "onclick", "onload", "action"})
            RC_ASSERT(!read.attributes.contains(name));
        RC_ASSERT(read.elements.at("style") == 1 &&
                  (!read.elements.contains("script") || read.elements.at("script") == 1));
    });
}

TEST_CASE("no style or script asks for an address") {
    for (const auto& sheet : {sheets::plain(), sheets::without_job()}) {
        const std::string html = sheet_html(sheet, SheetPaper::letter);
        for (const char* asking : {"url(", "@import", "<link", "<script src", "fetch(", "XMLHttpRequest", "https:"})
            CHECK_FALSE(holds(html, asking));
    }
}

TEST_CASE("names cannot end the style or the script") {
    Sheet sheet = sheets::plain();
    sheet.plan.vehicle.make = sheet.ledger.catalog = "</style><script>alert(1)</script>\"}}\\";
    const std::string html = sheet_html(sheet, SheetPaper::letter);
    const auto count = [&](const std::string& part) {
        std::size_t found = 0;
        for (auto at = html.find(part); at != std::string::npos; at = html.find(part, at + 1)) ++found;
        return found;
    };
    CHECK(count("</style>") == 1);
    CHECK(count("<script>") == 1);
    CHECK(count("<script>alert") == 0);
}

TEST_CASE("boxes carry the place in the job and a field that a note of that kind has") {
    for (const auto& facts : {cars::tap("front-left", Position::front_left, {}), cars::power_tap()}) {
        const auto kind = is_power(facts.circuit.role) ? NoteKind::switched : NoteKind::pair;
        for (const auto& box : boxes_of({}, facts)) {
            INFO(box.field);
            REQUIRE(find_note_field(box.field) != nullptr);
            CHECK(applies_to(*find_note_field(box.field), kind));
        }
    }
    CHECK(boxes_of({}, cars::other_tap("bus", Role::data_pair)).empty());
    const std::string html = sheet_html(sheets::plain(), SheetPaper::letter);
    CHECK(holds(html, "data-at=\"front-left/radio\" data-field=\"supply_v\" data-kind=\"number\" value=\"12.64\""));
    CHECK(holds(html, "data-at=\"accessory/fuse-box\" data-field=\"key_off_v\" data-kind=\"number\" value=\"\""));
}

TEST_CASE("no place and field has two boxes: what a step reads is not asked for again") {
    const std::string html = sheet_html(sheets::plain(), SheetPaper::letter);
    std::set<std::string> seen;
    for (auto at = html.find("data-at="); at != std::string::npos; at = html.find("data-at=", at + 1)) {
        const std::string box = html.substr(at, html.find(" data-kind", at) - at);
        INFO(box);
        CHECK(seen.insert(box).second);
    }
    CHECK(seen.size() == 17);  // 6 readings and 2 colours at the tap, 4 key positions, 5 at the one further circuit
}

TEST_CASE("the link is the address in capitals with the code, the code alone without one, nothing without a job") {
    Sheet sheet = sheets::plain();
    CHECK(sheet_link(sheet) == "HTTP://BENCH.LOCAL:8080/J/K7MQ2X");
    sheet.address = "http://bench.local:8080///";
    CHECK(sheet_link(sheet) == "HTTP://BENCH.LOCAL:8080/J/K7MQ2X");
    sheet.address = "";
    CHECK(sheet_link(sheet) == "K7MQ2X");
    sheet.address = std::string(5000, 'x');
    CHECK(sheet_link(sheet) == "K7MQ2X");
    CHECK(sheet_link(sheets::without_job()).empty());
}

TEST_CASE("a sheet without a job has no code, no symbol, no saving, and says how to start one") {
    const std::string html = sheet_html(sheets::without_job(), SheetPaper::letter);
    CHECK_FALSE(holds(html, "class=\"qr\""));
    CHECK_FALSE(holds(html, "id=\"save\""));
    CHECK_FALSE(holds(html, "<script"));
    CHECK(holds(html, "tapbook job start orlin/brelk/sedan/2014"));
}

TEST_CASE("a mixed pair names no colour on the sheet and is told not to be cut on") {
    const Sheet sheet = sheets::disputed();
    const auto conductors = conductors_of(sheet.plan.tap.tap.pair);
    REQUIRE(conductors.size() == 2);
    for (const auto& conductor : conductors) {
        CHECK_FALSE(conductor.colour);
        CHECK(conductor.instead == "MIXED");
    }
    CHECK(holds(sheet_text(sheet, {}), "MIXED"));
}

TEST_CASE("recommendations are gravest first, none twice, and none that stands beside a step") {
    for_random_sheets("recommendations", [](const Sheet& sheet) {
        const auto list = recommendations(sheet);
        for (std::size_t i = 0; i < list.size(); ++i) {
            for (std::size_t j = 0; j < i; ++j) {
                RC_ASSERT(list[j].effect <= list[i].effect);
                RC_ASSERT(list[j].rule != list[i].rule || list[j].says != list[i].says);
            }
            for (const auto& step : sheet.plan.steps)
                for (const auto& caution : step.cautions) RC_ASSERT(caution.text != list[i].says);
        }
    });
}

TEST_CASE("the same sheet gives the same bytes twice") {
    CHECK(sheet_html(sheets::plain(), SheetPaper::a4) == sheet_html(sheets::plain(), SheetPaper::a4));
    CHECK(sheet_json(sheets::plain()) == sheet_json(sheets::plain()));
}
