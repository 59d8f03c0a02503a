// Is the drawing well-formed XML that fetches nothing and runs nothing, whatever the names are?
#include <rapidcheck.h>
#include <catch2/catch.hpp>
#include <sstream>

#include <map>
#include <set>

#include "drawing_dice.h"
#include "report/drawing_words.h"
#include "report/html.h"
#include "xml_reader.h"

using namespace tapbook;
using xml::Read;
using xml::read_xml;

namespace {

const std::string hostile = "\"/><script>alert(1)</script>&<image href='x'/>]]>\u202e\x1b[31m\x01";

InstallDrawing with_hostile_names() {
    InstallDrawing plan = plans::one_channel();
    const DrawnBox box{1, hostile, {hostile}, {hostile}};
    plan.title = plan.code = plan.connector.seen_from = hostile;
    plan.connector.box = plan.amplifier = plan.turn_on.source = plan.feed.battery = plan.feed.fuse = plan.ground = box;
    plan.converter = box;
    plan.pairs[0] = {hostile, {hostile, {}, {}, hostile}, {hostile, {}, {}, hostile}, hostile, hostile};
    plan.lines = {{hostile, hostile, hostile}};
    plan.channels = {{hostile, hostile, hostile, hostile}};
    plan.turn_on.expected = plan.feed.cable = plan.feed.expected = hostile;
    return plan;
}

}  // namespace

TEST_CASE("the checker itself refuses what is not well formed") {
    CHECK(read_xml("<a x=\"1\"><b/>t &amp; u</a>").wrong.empty());
    for (const char* bad :
         {"<a>", "<a></b>", "</a>", "<a", "<a>&</a>", "<a x=1/>", "<a x=\"1/>", "<a>\x01</a>", "<a>></a>"})
        CHECK_FALSE(read_xml(bad).wrong.empty());
}

TEST_CASE("the drawing of any plan is well-formed XML of five known elements and presentation attributes") {
    const std::set<std::string> known_elements = {"svg", "rect", "path", "text", "title"};
    const std::set<std::string> known_attributes = {
        "xmlns",        "width",           "height",           "viewBox",     "font-family", "fill", "stroke",
        "stroke-width", "stroke-linejoin", "stroke-dasharray", "x",           "y",           "rx",   "d",
        "font-size",    "font-weight",     "textLength",       "lengthAdjust"};
    REQUIRE(rc::check("well-formed", [&](unsigned seed) {
        plans::PlanDice dice(seed);
        const Read read = read_xml(install_drawing_svg(dice.plan(), DrawingPage::letter));
        RC_ASSERT(read.wrong == "");
        for (const auto& [name, count] : read.elements) RC_ASSERT(known_elements.contains(name));
        for (const auto& name : read.attributes) RC_ASSERT(known_attributes.contains(name));
    }));
}

TEST_CASE("hostile names add no element, no control and no direction-changing character") {
    const std::string svg = install_drawing_svg(with_hostile_names(), DrawingPage::a4);
    const Read read = read_xml(svg);
    CHECK(read.wrong == "");
    CHECK(read.elements.size() == 5);
    CHECK(read.elements.at("svg") == 1);
    CHECK(read.elements.count("script") + read.elements.count("image") == 0);
    CHECK_FALSE(hidden_character(clean_words(hostile)));
    CHECK(svg.find("\u202e") == std::string::npos);
    CHECK(svg.find('\x1b') == std::string::npos);
}

TEST_CASE("words are cleaned: spaces run together, at most two marks on a letter, broken bytes replaced") {
    CHECK(clean_words("  a \n\t b  ") == "a b");
    CHECK(clean_words("x\u202ey\u200bz") == "xyz");
    CHECK(clean_words("e\u0301\u0302\u0303\u0304") == "e\u0301\u0302");
    CHECK(clean_words("a\xff z") == "a? z");
    CHECK(clean_words("\u202e\x01").empty());
}

TEST_CASE("of plain ASCII the words stay, with one blank between them") {
    REQUIRE(rc::check([] {
        const auto text = *rc::gen::container<std::string>(rc::gen::elementOf(std::string("ab~!   ")));
        std::string words;
        std::istringstream rest(text);
        for (std::string word; rest >> word;) words += (words.empty() ? "" : " ") + word;
        RC_ASSERT(clean_words(text) == words);
    }));
    CHECK(clean_words("").empty());
    CHECK(clean_words("a\x7f"
                      "b") == "ab");
}

TEST_CASE("a cut text ends in an ellipsis, is a beginning of the whole, and never breaks a character") {
    REQUIRE(rc::check("cut texts", [](unsigned seed) {
        plans::PlanDice dice(seed);
        const std::string whole = clean_words(dice.name());
        const double room = dice.below(300);
        const std::string fitted = fitted_words(whole, room);
        RC_ASSERT(words_width(fitted) <= room);
        RC_ASSERT(is_utf8(fitted));
        if (fitted != whole && !fitted.empty()) {
            RC_ASSERT(fitted.ends_with("\u2026"));
            RC_ASSERT(whole.starts_with(fitted.substr(0, fitted.size() - 3)));
        }
        for (const auto& line : wrapped_words(whole, room, 3)) RC_ASSERT(words_width(line) <= room);
    }));
}

namespace {

// Letter by letter, with the five entities of https://www.w3.org/TR/xml/#sec-predefined-ent and a number for one.
std::string escaped_letter_by_letter(const std::string& text) {
    const std::map<char, std::string> entities = {
        {'&', "&amp;"}, {'<', "&lt;"}, {'>', "&gt;"}, {'"', "&quot;"}, {'\'', "&#39;"}};
    std::string out;
    for (const char letter : text) out += entities.contains(letter) ? entities.at(letter) : std::string(1, letter);
    return out;
}

std::string mixed_text() {
    const auto pieces = *rc::gen::container<std::vector<std::string>>(rc::gen::element<std::string>(
        "a", "b", " ", " ", "&", "<", ">", "\"", "'", "\n", "\x01", "\u00e9", "\u202e", "\xff"));
    std::string text;
    for (const auto& piece : pieces) text += piece;
    return text;
}

}  // namespace

TEST_CASE("words added to a text are the clean words, escaped letter by letter") {
    REQUIRE(rc::check([] {
        const std::string text = mixed_text();
        std::string added = "before";
        add_xml_words(added, text);
        RC_ASSERT(added == "before" + escaped_letter_by_letter(clean_words(text)));
        RC_ASSERT(xml_escaped(text) == escaped_letter_by_letter(text));
    }));
}

TEST_CASE("text in a page keeps one blank at each end that had one, and where nothing is left the first alone") {
    REQUIRE(rc::check([] {
        const std::string text = mixed_text(), clean = escaped_letter_by_letter(clean_words(text));
        const std::string before = text.starts_with(' ') ? " " : "";
        const std::string after = !clean.empty() && text.size() > 1 && text.ends_with(' ') ? " " : "";
        RC_ASSERT(Html().text(text).take() == before + clean + after);
    }));
    CHECK(Html().begin("a", {{"title", " x<  y"}}).text(" b & c ").end().take() ==
          "<a title=\"x&lt; y\"> b &amp; c </a>");
}
