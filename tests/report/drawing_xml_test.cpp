// Is the drawing well-formed XML that fetches nothing and runs nothing, whatever the names are? A small checker of its
// own reads elements, attributes and entities (XML 1.0, sections 2.2, 3.1 and 4.6, as far as the drawing uses them).
#include <rapidcheck.h>
#include <catch2/catch.hpp>

#include <algorithm>
#include <map>
#include <set>

#include "drawing_dice.h"
#include "report/drawing_words.h"

using namespace tapbook;

namespace {

struct Read {
    std::string wrong;  // "" for a well-formed document
    std::map<std::string, int> elements;
    std::set<std::string> attributes;
};

bool is_entity(const std::string& text, std::size_t at) {
    for (const std::string entity : {"&amp;", "&lt;", "&gt;", "&quot;", "&#39;"})
        if (text.compare(at, entity.size(), entity) == 0) return true;
    return false;
}

bool is_clean(const std::string& text) {
    for (std::size_t at = 0; at < text.size(); ++at) {
        const auto byte = static_cast<unsigned char>(text[at]);
        if (text[at] == '<' || text[at] == '>' || byte == 0x7f || (byte < 0x20 && byte != '\n')) return false;
        if (text[at] == '&' && !is_entity(text, at)) return false;
    }
    return is_utf8(text);
}

// The attributes of a tag's inside, " x="1" y="2"", noted in `read`.
void read_attributes(std::string inside, Read& read) {
    while (!inside.empty()) {
        const auto equals = inside.find("=\"");
        const auto end = equals == std::string::npos ? equals : inside.find('"', equals + 2);
        if (inside[0] != ' ' || end == std::string::npos) {
            read.wrong = "attributes: " + inside;
            return;
        }
        read.attributes.insert(inside.substr(1, equals - 1));
        if (!is_clean(inside.substr(equals + 2, end - equals - 2))) read.wrong = "value: " + inside;
        inside.erase(0, end + 1);
    }
}

void read_tag(std::string tag, std::vector<std::string>& open, Read& read) {
    if (tag.starts_with('/')) {
        if (open.empty() || open.back() != tag.substr(1)) read.wrong = "closes " + tag;
        if (!open.empty()) open.pop_back();
        return;
    }
    const bool is_empty = tag.ends_with('/');
    if (is_empty) tag.pop_back();
    const auto end = std::min(tag.find(' '), tag.size());
    const std::string name = tag.substr(0, end);
    ++read.elements[name];
    read_attributes(tag.substr(end), read);
    if (!is_empty) open.push_back(name);
}

Read read_xml(const std::string& text) {
    Read read;
    std::vector<std::string> open;
    for (std::size_t at = 0; at < text.size() && read.wrong.empty();) {
        const auto begin = std::min(text.find('<', at), text.size());
        if (!is_clean(text.substr(at, begin - at))) read.wrong = "text: " + text.substr(at, begin - at);
        if (begin == text.size()) break;
        const auto end = text.find('>', begin);
        if (end == std::string::npos) {
            read.wrong = "a tag without an end";
            break;
        }
        read_tag(text.substr(begin + 1, end - begin - 1), open, read);
        at = end + 1;
    }
    if (read.wrong.empty() && !open.empty()) read.wrong = "left open: " + open.back();
    return read;
}

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
