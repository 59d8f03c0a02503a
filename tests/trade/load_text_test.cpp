// Is what hangs on an output read as the trade writes it? A list of good loads, a longer list of refused ones with
// their offset, and laws: ohms in series add, conductances side by side add (Ohm's law), worked out here by another
// way.
#include "trade/load_text.h"

#include <fmt/format.h>
#include <rapidcheck.h>

#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>
#include <numeric>
#include <vector>

using namespace tapbook;

namespace {

double ohms_of(std::string_view text) {
    const auto read = parse_load(text);
    if (const auto* trouble = std::get_if<LoadTrouble>(&read)) FAIL(text << ": " << trouble->message);
    return std::get<Ohms>(read).in(ohms);
}

std::string trouble_of(std::string_view text) {
    const auto read = parse_load(text);
    const auto* trouble = std::get_if<LoadTrouble>(&read);
    return trouble == nullptr ? "taken" : fmt::format("{}: {}", trouble->offset, trouble->message);
}

// A load built by dice, its ohms worked out while it is written. Parentheses only where they are needed, or everywhere.
struct Written {
    std::string text;
    double ohm;
    bool is_sum = false;
};

Written coil() {
    const int thousandths = *rc::gen::inRange(100, 1000001);
    std::string text = fmt::format("{}.{:03}", thousandths / 1000, thousandths % 1000);
    return {text, thousandths / 1000.0};
}

Written load(int depth) {
    const int kind = depth == 0 ? 0 : *rc::gen::inRange(0, 3);
    if (kind == 0) return coil();
    Written a = load(depth - 1), b = load(depth - 1);
    if (kind == 1) return {a.text + "+" + b.text, a.ohm + b.ohm, true};
    for (Written* one : {&a, &b})
        if (one->is_sum || *rc::gen::arbitrary<bool>()) one->text = "(" + one->text + ")";
    return {a.text + " // " + b.text, 1 / (1 / a.ohm + 1 / b.ohm)};
}

std::string joined(const std::vector<int>& coils, std::string_view sign) {
    std::string text;
    for (const int one : coils) text += fmt::format("{}{}", text.empty() ? "" : sign, one);
    return text;
}

std::vector<int> some_coils() {
    std::vector<int> coils;
    for (int left = *rc::gen::inRange(1, 33); left > 0; --left) coils.push_back(*rc::gen::inRange(1, 1001));
    return coils;
}

bool near(double a, double b) {
    return std::abs(a - b) <= 1e-9 * std::max(a, b);
}

}  // namespace

TEST_CASE("a load is read as the trade writes it") {
    CHECK(ohms_of("4") == 4);
    CHECK(ohms_of("0.1") == Approx(0.1));
    CHECK(ohms_of("1000") == 1000);
    CHECK(ohms_of("3.7") == Approx(3.7));
    CHECK(ohms_of("4//4") == Approx(2));
    CHECK(ohms_of("2+2") == 4);
    CHECK(ohms_of("(4+4)//(4+4)") == Approx(4));
    CHECK(ohms_of("4//4//4//4") == Approx(1));
    CHECK(ohms_of(" ( 4 // 4 ) + 2 ") == Approx(4));
    CHECK(ohms_of("((((((((8))))))))") == 8);
}

TEST_CASE("side by side binds tighter than in series") {
    CHECK(ohms_of("4+4//4") == Approx(6));
    CHECK(ohms_of("4//4+4") == Approx(6));
    CHECK(ohms_of("(4+4)//4") == Approx(8.0 / 3));
}

// The ways a subwoofer of two coils is joined (common practice): two of 4 ohm give 2 or 8, two of 2 ohm give 1 or 4,
// two such subwoofers of 4 ohm coils all in one give 1, 4 or 16.
TEST_CASE("subwoofers of two coils come to the loads the trade knows") {
    CHECK(ohms_of("4//4") == Approx(2));
    CHECK(ohms_of("4+4") == 8);
    CHECK(ohms_of("2//2") == Approx(1));
    CHECK(ohms_of("2+2") == 4);
    CHECK(ohms_of("(4//4)//(4//4)") == Approx(1));
    CHECK(ohms_of("(4//4)+(4//4)") == Approx(4));
    CHECK(ohms_of("(4+4)+(4+4)") == 16);
}

TEST_CASE("what is no load is refused with the byte where it stops making sense") {
    CHECK(trouble_of("") == "0: ohms are missing here");
    CHECK(trouble_of("   ") == "3: ohms are missing here");
    CHECK(trouble_of("x") == "0: \"x\" is no number of ohms");
    CHECK(trouble_of("4//x") == "3: \"x\" is no number of ohms");
    CHECK(trouble_of("4 ohm") == "2: \"+\" or \"//\" is missing here");
    CHECK(trouble_of("4ohm") == "0: \"4ohm\" is no number of ohms");
    CHECK(trouble_of("4,7") == "0: \"4,7\" uses a comma: write 4.7");
    CHECK(trouble_of("4.0001") == "0: \"4.0001\" has more than 3 digits after the point");
    CHECK(trouble_of("4/4") == "1: a single \"/\": coils side by side are written 4//4");
    CHECK(trouble_of("4/ /4") == "1: a single \"/\": coils side by side are written 4//4");
    CHECK(trouble_of("4///4") == "3: ohms are missing here");
    CHECK(trouble_of("4//") == "3: ohms are missing here");
    CHECK(trouble_of("//4") == "0: ohms are missing here");
    CHECK(trouble_of("4+") == "2: ohms are missing here");
    CHECK(trouble_of("+4") == "0: ohms are missing here");
    CHECK(trouble_of("4++4") == "2: ohms are missing here");
    CHECK(trouble_of("()") == "1: ohms are missing here");
    CHECK(trouble_of("(4") == "2: \")\" is missing");
    CHECK(trouble_of("(4 4)") == "3: \"+\", \"//\" or \")\" is missing here");
    CHECK(trouble_of("4)") == "1: no \"(\" belongs to this \")\"");
    CHECK(trouble_of(")") == "0: ohms are missing here");
    CHECK(trouble_of("4(4)") == "1: \"+\" or \"//\" is missing here");
    CHECK(trouble_of("(4)(4)") == "3: \"+\" or \"//\" is missing here");
    CHECK(trouble_of("0.099") == "0: 0.099 ohm: a voice coil has 0.1 to 1000 ohm");
    CHECK(trouble_of("4+1000.001") == "2: 1000.001 ohm: a voice coil has 0.1 to 1000 ohm");
    CHECK(trouble_of("0") == "0: 0 ohm: a voice coil has 0.1 to 1000 ohm");
    CHECK(trouble_of("-4") == "0: -4 ohm: a voice coil has 0.1 to 1000 ohm");
    CHECK(trouble_of("1e2") == "0: \"1e2\" is no number of ohms");
    CHECK(trouble_of("4\t4") == "0: \"4<U+0009>4\" is no number of ohms");
    CHECK(trouble_of(std::string_view("4\0", 2)) == "0: \"4<U+0000>\" is no number of ohms");
    CHECK(trouble_of("4*2") == "0: \"4*2\" is no number of ohms");
    CHECK(trouble_of("٤") == "0: \"٤\" is no number of ohms");
    CHECK(trouble_of("9999999999999") == "0: \"9999999999999\" is far too large");
}

TEST_CASE("32 coils and 8 parentheses are read, one more of either is refused") {
    const auto times = [](int count, std::string_view text) {
        std::string all;
        for (int i = 0; i < count; ++i) all += text;
        return all;
    };
    CHECK(ohms_of(times(31, "4+") + "4") == 128);
    CHECK(trouble_of(times(32, "4+") + "4") == "64: more than 32 voice coils");
    CHECK(ohms_of(times(8, "(") + "4" + times(8, ")")) == 4);
    CHECK(trouble_of(times(9, "(") + "4" + times(9, ")")) == "8: more than 8 parentheses deep");
    CHECK(ohms_of("(4)+(4)+(4)+(4)+(4)+(4)+(4)+(4)+(4)") == 36);
    CHECK(trouble_of(times(100000, "(")) == "8: more than 8 parentheses deep");
}

TEST_CASE("a load that is written is read back with the ohms it was made of") {
    const bool holds = rc::check("writing and reading", [] {
        const Written written = load(*rc::gen::inRange(0, 5));
        RC_ASSERT(near(ohms_of(written.text), written.ohm));
    });
    CHECK(holds);
}

TEST_CASE("the order of coils says nothing, in series or side by side") {
    const bool holds = rc::check("sums and sums of conductances", [] {
        const auto coils = some_coils();
        auto other = coils;
        std::sort(other.begin(), other.end());
        RC_ASSERT(near(ohms_of(joined(coils, "//")), ohms_of(joined(other, "//"))));
        RC_ASSERT(ohms_of(joined(coils, "+")) == std::accumulate(coils.begin(), coils.end(), 0));
        double conductance = 0;
        for (const int one : coils) conductance += 1.0 / one;
        RC_ASSERT(near(ohms_of(joined(coils, "//")), 1 / conductance));
    });
    CHECK(holds);
}

TEST_CASE("side by side is never above the least coil, in series never below the greatest") {
    const bool holds = rc::check("bounds", [] {
        const auto coils = some_coils();
        const auto [least, most] = std::minmax_element(coils.begin(), coils.end());
        RC_ASSERT(ohms_of(joined(coils, "//")) <= *least);
        RC_ASSERT(ohms_of(joined(coils, "+")) >= *most);
    });
    CHECK(holds);
}

TEST_CASE("any text is either a load above nothing or a trouble inside the text") {
    const bool holds = rc::check("no text is too strange", [] {
        const auto letters = rc::gen::elementOf(std::string("0123456789.+/() x\xff"));
        const auto text = *rc::gen::container<std::string>(letters);
        const auto read = parse_load(text);
        if (const auto* trouble = std::get_if<LoadTrouble>(&read))
            RC_ASSERT(trouble->offset <= text.size() && !trouble->message.empty());
        else
            RC_ASSERT(std::get<Ohms>(read) > ohms(0));
    });
    CHECK(holds);
}
