// Can a wire's colour be recognised on a screen? Every swatch is outlined, as wide as every other, and its stripe
// stands out from its base.
#include <catch2/catch.hpp>

#include <charconv>
#include <string>
#include <vector>

#include "report/report.h"
#include "trade/every_wire_colour.h"

using namespace tapbook;

namespace {

std::string swatch(std::string_view code, Colours colours) {
    return Paper({colours, 100}).swatch(*wire_colour_from_code(code));
}

struct Drawn {
    std::vector<int> background, first_stripe, second_stripe;  // the numbers of the sequences; empty without
    std::string inside;                                        // between the outlines, without escapes
};

std::vector<int> numbers_of(std::string_view sequence) {
    std::vector<int> numbers;
    for (const char* at = sequence.data(); at < sequence.data() + sequence.size(); ++at) {
        int number = 0;
        at = std::from_chars(at, sequence.data() + sequence.size(), number).ptr;
        numbers.push_back(number);
    }
    return numbers;
}

// Reads a swatch as a terminal does: 48 sets what is behind, 38 what is drawn, 0 ends both.
Drawn drawn(std::string_view text) {
    const std::string_view left = "▕", right = "▏";
    REQUIRE(text.starts_with(left));
    REQUIRE(text.ends_with(right));
    text = text.substr(left.size(), text.size() - left.size() - right.size());
    Drawn result;
    while (!text.empty()) {
        if (text[0] != '\x1b') {
            const auto end = std::min(text.find('\x1b'), text.size());
            result.inside += text.substr(0, end);
            text.remove_prefix(end);
            continue;
        }
        const auto end = text.find('m');
        auto numbers = numbers_of(text.substr(2, end - 2));
        text.remove_prefix(end + 1);
        const std::size_t length = numbers.size() > 1 && numbers[1] == 2 ? 5 : 3;
        if (numbers[0] == 48) {
            result.background.assign(numbers.begin() + 2, numbers.begin() + static_cast<std::ptrdiff_t>(length));
            numbers.erase(numbers.begin(), numbers.begin() + static_cast<std::ptrdiff_t>(length));
        }
        if (!numbers.empty() && numbers[0] == 38)
            (result.first_stripe.empty() ? result.first_stripe : result.second_stripe)
                .assign(numbers.begin() + 2, numbers.end());
    }
    return result;
}

// How far apart two colours look on this screen, in red, green and blue.
int squared_distance(const std::vector<int>& a, const std::vector<int>& b) {
    const auto rgb = [](const std::vector<int>& numbers) -> std::vector<int> {
        if (numbers.size() == 3) return numbers;
        const Rgb entry = terminal_rgb(numbers.at(0));
        return {entry.red, entry.green, entry.blue};
    };
    const auto x = rgb(a), y = rgb(b);
    int sum = 0;
    for (std::size_t i = 0; i < 3; ++i) sum += (x[i] - y[i]) * (x[i] - y[i]);
    return sum;
}

}  // namespace

TEST_CASE("without colours there is no swatch, only code and words") {
    CHECK(swatch("WH/BK", Colours::none).empty());
    CHECK(colour_text(*wire_colour_from_code("WH/BK"), {}) == "WH/BK  white, black stripe\n");
}

TEST_CASE("every swatch is outlined, six columns wide, and ends its colours before the right outline") {
    for (const Colours colours : {Colours::palette_256, Colours::full}) {
        const Paper paper({colours, 100});
        for (const auto& list : {every_solid_colour(), every_one_striped_colour()})
            for (const WireColour& colour : list) {
                const std::string text = paper.swatch(colour);
                const Drawn parts = drawn(text);
                const bool is_right = parts.inside == (colour.first_stripe ? "╱╱╱╱" : "    ") &&
                                      text.ends_with("\x1b[0m▏") && !parts.background.empty();
                if (!is_right) FAIL(code(colour) << " is drawn wrong");
            }
    }
    CHECK(shown_width("▕╱╱╱╱▏") == 6);
}

TEST_CASE("the stripe of every striped colour stands out from its base, in full colours and in 256") {
    for (const Colours colours : {Colours::palette_256, Colours::full}) {
        const Paper paper({colours, 100});
        for (const WireColour& colour : every_one_striped_colour()) {
            const Drawn parts = drawn(paper.swatch(colour));
            if (squared_distance(parts.background, parts.first_stripe) < 20 * 20)
                FAIL_CHECK(code(colour) << " shows no stripe");
        }
    }
}

// Every 13th of the 46,620 conductors: 13 shares no factor with 36 x 35, so all hues take part.
TEST_CASE("the second stripe of a conductor is drawn as it would be alone on that base") {
    const auto all = every_two_striped_colour();
    for (const Colours colours : {Colours::palette_256, Colours::full}) {
        const Paper paper({colours, 100});
        for (std::size_t i = 0; i < all.size(); i += 13) {
            const Drawn both = drawn(paper.swatch(all[i]));
            const Drawn first = drawn(paper.swatch({all[i].base, all[i].first_stripe}));
            const Drawn second = drawn(paper.swatch({all[i].base, all[i].second_stripe}));
            if (both.first_stripe != first.first_stripe || both.second_stripe != second.first_stripe)
                FAIL_CHECK(code(all[i]) << " is drawn wrong");
        }
    }
}

// The palette (wire_colour_swatch.cpp): white 252 252 250, black 34 34 36.
TEST_CASE("white with a black stripe in full colours is these bytes") {
    CHECK(swatch("WH/BK", Colours::full) == "▕\x1b[48;2;252;252;250;38;2;34;34;36m╱╱\x1b[38;2;34;34;36m╱╱\x1b[0m▏");
}

// Red is 196 46 46; of the cube's steps 0 95 135 175 215 255 the nearest are 215 (4), 0 (0), 0 (0): 16 + 36 x 4 = 160.
// Blue is 40 88 170: 0 (0), 95 (1), 175 (3): 16 + 6 x 1 + 3 = 25. White is nearest to 255 255 255: 16 + 215 = 231.
TEST_CASE("solid red, and blue with a white stripe, in 256 colours are these bytes") {
    CHECK(swatch("RD", Colours::palette_256) == "▕\x1b[48;5;160m    \x1b[0m▏");
    CHECK(swatch("BU/WH", Colours::palette_256) == "▕\x1b[48;5;25;38;5;231m╱╱\x1b[38;5;231m╱╱\x1b[0m▏");
}

// Dark is four tenths towards black: brown 117 74 44 becomes 71 45 27, green 38 128 68 becomes 23 77 41; both are
// nearest to the grey 48 48 48 (8 + 10 x 4), entry 232 + 4 = 236. Plain green: 0 (0), 135 (2), 95 (1): 16 + 12 + 1
// = 29.
TEST_CASE("a dark green stripe on dark brown is drawn in plain green where 256 colours merge the two") {
    CHECK(swatch("DBN/DGN", Colours::palette_256) == "▕\x1b[48;5;236;38;5;29m╱╱\x1b[38;5;29m╱╱\x1b[0m▏");
}
