// Do all texts keep to the screen, and is colour only ever an addition to the words?
#include <rapidcheck.h>
#include <catch2/catch.hpp>

#include "answers.h"

using namespace tapbook;
using namespace tapbook::answers;

namespace {

// A swatch is outlined by one-eighth blocks and followed by a space; inside are four columns.
std::string without_swatches(std::string text) {
    const std::string left = "▕", right = "▏ ";
    for (const std::string inside : {"    ", "╱╱╱╱"}) {
        const std::string swatch = left + inside + right;
        for (auto at = text.find(swatch); at != std::string::npos; at = text.find(swatch))
            text.erase(at, swatch.size());
    }
    return text;
}

// A line may be too wide only for a single word that has no room beside a short label either.
bool is_one_long_word(const std::string& line) {
    const auto space = line.find_last_of(' ');
    const std::string word = space == std::string::npos ? line : line.substr(space + 1);
    return shown_width(word) > 20 && shown_width(line) - shown_width(word) <= 18;
}

std::vector<Shop> every_shop() {
    JobFacts disputed = cars::disputed_car();
    disputed.converters.push_back({fixture::plain_divider(), {}});
    return {shop_of(cars::plain_car()), shop_of(disputed), shop_of(cars::plain_car(), [] {
                return std::string("a rather long name of several words with ünïcödé and 日本 in it");
            })};
}

}  // namespace

TEST_CASE("no line is wider than the screen, from 40 to 100 columns, with colours and without") {
    const auto shops = every_shop();
    for (int width = 40; width <= 100; ++width)
        for (const Colours colours : {Colours::none, Colours::full})
            for (const Shop& shop : shops)
                for (const auto& [name, text] : texts(shop, {colours, width}))
                    for (const auto& line : lines_of(without_escapes(text)))
                        if (shown_width(line) > width && !is_one_long_word(line)) {
                            INFO(name << " at " << width << ": " << line);
                            CHECK(shown_width(line) <= width);
                        }
    SUCCEED();
}

TEST_CASE("a text in colours says the same words on the same lines as one without, but for the swatches") {
    const auto shops = every_shop();
    for (int width = 40; width <= 100; width += 4)
        for (const Shop& shop : shops) {
            const auto plain = texts(shop, {Colours::none, width});
            for (const Colours colours : {Colours::palette_256, Colours::full}) {
                const auto coloured = texts(shop, {colours, width});
                for (std::size_t i = 0; i < plain.size(); ++i) {
                    INFO(plain[i].name << " at " << width);
                    REQUIRE(without_swatches(without_escapes(coloured[i].text)) == plain[i].text);
                }
            }
        }
}

TEST_CASE("no line ends in spaces") {
    for (const Shop& shop : every_shop())
        for (const int width : {40, 47, 60, 83, 100})
            for (const auto& [name, text] : texts(shop, {Colours::none, width}))
                for (const auto& line : lines_of(text))
                    if (line.ends_with(' ')) FAIL_CHECK(name << " at " << width << ": \"" << line << '"');
    SUCCEED();
}

TEST_CASE("every text ends its lines with a line feed and leaves no colour switched on") {
    for (const Shop& shop : every_shop())
        for (const auto& [name, text] : texts(shop, {Colours::full, 80})) {
            INFO(name);
            REQUIRE_FALSE(text.empty());
            CHECK(text.back() == '\n');
            for (const auto& line : lines_of(text)) {
                const auto last = line.rfind("\x1b[");
                if (last != std::string::npos) CHECK(line.substr(last, 4) == "\x1b[0m");
            }
        }
}

TEST_CASE("wrapped lines hold every word once, in order, and only a single word is wider than asked") {
    REQUIRE(rc::check("wrapping", [](unsigned seed) {
        ledgers::Dice dice(seed);
        std::string text;
        for (int i = dice.below(30); i > 0; --i)
            text += (text.empty() ? "" : " ") + std::string(static_cast<std::size_t>(1 + dice.below(30)), 'w');
        const int width = 1 + dice.below(60);
        std::string joined;
        for (const auto& line : wrapped(text, width)) {
            RC_ASSERT(shown_width(line) <= width || line.find(' ') == std::string::npos);
            joined += (joined.empty() ? "" : " ") + line;
        }
        RC_ASSERT(joined == text);
    }));
}
