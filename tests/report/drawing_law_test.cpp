// Does the drawing hold together for any plan? Laws on the places themselves, for plans made by dice: 1 to 8 channels,
// connectors of 2 to 40 cavities, names from one letter to a paragraph.
#include <rapidcheck.h>
#include <catch2/catch.hpp>

#include <algorithm>
#include <set>

#include "drawing_dice.h"
#include "report/drawing_layout.h"

using namespace tapbook;

namespace {

constexpr double rounding = 0.05;  // the page writes one decimal

bool overlap(const DrawnRect& a, const DrawnRect& b) {
    return a.left + rounding < b.right() && b.left + rounding < a.right() && a.top + rounding < b.bottom() &&
           b.top + rounding < a.bottom();
}

bool holds(const DrawnRect& outer, const DrawnRect& inner) {
    return inner.left >= outer.left - rounding && inner.right() <= outer.right() + rounding &&
           inner.top >= outer.top - rounding && inner.bottom() <= outer.bottom() + rounding;
}

DrawnRect area(const PlacedText& text) {
    return {text.room.left, text.baseline - text.font * 0.8, words_width(text.text, text.font, text.weight), text.font};
}

DrawnRect printable(const DrawingLayout& layout) {
    return {18, 18, layout.width - 36, layout.height - 36};
}

struct Segment {
    DrawnPoint a, b;
    std::string net;
};

std::vector<Segment> segments(const DrawingLayout& layout) {
    std::vector<Segment> out;
    for (const auto& conductor : layout.conductors)
        for (std::size_t i = 1; i < conductor.points.size(); ++i)
            out.push_back({conductor.points[i - 1], conductor.points[i], conductor.net});
    return out;
}

// The strip of paper a segment takes, a little wider than the widest outline.
DrawnRect strip(const Segment& s) {
    constexpr double half = 3.6;
    return {std::min(s.a.x, s.b.x) - half, std::min(s.a.y, s.b.y) - half, std::abs(s.a.x - s.b.x) + 2 * half,
            std::abs(s.a.y - s.b.y) + 2 * half};
}

DrawingLayout random_layout(unsigned seed) {
    plans::PlanDice dice(seed);
    const auto page = dice.one_in(2) ? DrawingPage::letter : DrawingPage::a4;
    return lay_out(dice.plan(), page);
}

}  // namespace

TEST_CASE("no two boxes of the drawing overlap, and all are within the page's margins") {
    REQUIRE(rc::check("boxes", [](unsigned seed) {
        const DrawingLayout layout = random_layout(seed);
        for (std::size_t i = 0; i < layout.boxes.size(); ++i) {
            RC_LOG() << layout.boxes[i].whole << '\n';
            RC_ASSERT(holds(printable(layout), layout.boxes[i].at));
            for (std::size_t j = 0; j < i; ++j) RC_ASSERT(!overlap(layout.boxes[i].at, layout.boxes[j].at));
        }
    }));
}

TEST_CASE("every text of the drawing is at least 11 points, fits its room, and covers no other text") {
    REQUIRE(rc::check("texts", [](unsigned seed) {
        const DrawingLayout layout = random_layout(seed);
        for (std::size_t i = 0; i < layout.texts.size(); ++i) {
            const PlacedText& text = layout.texts[i];
            RC_LOG() << text.text << '\n';
            RC_ASSERT(text.font >= 11);
            RC_ASSERT(words_width(text.text, text.font, text.weight) <= text.room.width + rounding);
            RC_ASSERT(holds(printable(layout), area(text)));
            for (std::size_t j = 0; j < i; ++j) RC_ASSERT(!overlap(area(text), area(layout.texts[j])));
        }
    }));
}

TEST_CASE("a text either lies wholly inside a box or touches none") {
    REQUIRE(rc::check("texts in boxes", [](unsigned seed) {
        const DrawingLayout layout = random_layout(seed);
        for (const auto& text : layout.texts)
            for (const auto& box : layout.boxes) RC_ASSERT(holds(box.at, area(text)) || !overlap(box.at, area(text)));
    }));
}

TEST_CASE("the signs of battery, fuse and ground lie inside a component each and cover no text") {
    REQUIRE(rc::check("signs", [](unsigned seed) {
        const DrawingLayout layout = random_layout(seed);
        RC_ASSERT(layout.symbols.size() == 3u);
        for (const auto& symbol : layout.symbols) {
            const auto holds_it = [&](const PlacedBox& box) {
                return box.kind == PlacedKind::part && holds(box.at, symbol.at);
            };
            RC_ASSERT(std::count_if(layout.boxes.begin(), layout.boxes.end(), holds_it) == 1);
            for (const auto& text : layout.texts) RC_ASSERT(!overlap(symbol.at, area(text)));
        }
    }));
}

TEST_CASE("the paper ends under the legend: a small plan leaves no blank third") {
    const DrawingLayout layout = lay_out(plans::one_channel(), DrawingPage::a4);
    double lowest = 0;
    for (const auto& text : layout.texts) lowest = std::max(lowest, text.room.bottom());
    CHECK(layout.height - lowest < drawing_margin);
    CHECK(layout.height < 595 * 0.8);
}

TEST_CASE("without a turn-on conductor none is drawn, and the box says why") {
    InstallDrawing plan = plans::without_converter();
    plan.turn_on = {TurnOnBegins::none, {4, "No turn-on lead", {"the amplifier wakes by itself"}}, {}, ""};
    const DrawingLayout layout = lay_out(plan, DrawingPage::a4);
    for (const auto& conductor : layout.conductors) CHECK(conductor.net != "turn-on");
    const auto says_it = [](const PlacedText& text) { return text.text == "4. No turn-on lead"; };
    CHECK(std::count_if(layout.texts.begin(), layout.texts.end(), says_it) == 1);
}

TEST_CASE("conductors of different nets never touch, and each segment is level or upright") {
    REQUIRE(rc::check("lanes", [](unsigned seed) {
        const auto all = segments(random_layout(seed));
        for (std::size_t i = 0; i < all.size(); ++i) {
            RC_ASSERT((all[i].a.x == all[i].b.x) != (all[i].a.y == all[i].b.y));
            for (std::size_t j = 0; j < i; ++j)
                RC_ASSERT(all[i].net == all[j].net || !overlap(strip(all[i]), strip(all[j])));
        }
    }));
}

TEST_CASE("no conductor runs through a component") {
    REQUIRE(rc::check("around the boxes", [](unsigned seed) {
        const DrawingLayout layout = random_layout(seed);
        for (const auto& segment : segments(layout))
            for (const auto& box : layout.boxes) {
                if (box.kind == PlacedKind::tag || box.kind == PlacedKind::meter) continue;
                const DrawnRect line{std::min(segment.a.x, segment.b.x), std::min(segment.a.y, segment.b.y),
                                     std::abs(segment.a.x - segment.b.x), std::abs(segment.a.y - segment.b.y)};
                RC_ASSERT(!overlap(box.at, line));
            }
    }));
}

TEST_CASE("exactly the cavities of the pairs are marked, each with its sign, on a face of the right size") {
    REQUIRE(rc::check("cavities", [](unsigned seed) {
        plans::PlanDice dice(seed);
        const InstallDrawing plan = dice.plan();
        const DrawingLayout layout = lay_out(plan, DrawingPage::a4);
        RC_ASSERT(static_cast<int>(layout.cavities.size()) == plan.connector.rows * plan.connector.columns);
        std::set<std::pair<int, int>> positive, negative, wanted_positive, wanted_negative;
        for (const auto& cavity : layout.cavities) {
            RC_ASSERT(holds(layout.boxes.front().at, cavity.at));
            if (cavity.mark == CavityMark::positive) positive.insert({cavity.place.row, cavity.place.column});
            if (cavity.mark == CavityMark::negative) negative.insert({cavity.place.row, cavity.place.column});
        }
        for (const auto& pair : plan.pairs) {
            if (pair.positive.place) wanted_positive.insert({pair.positive.place->row, pair.positive.place->column});
            if (pair.negative.place) wanted_negative.insert({pair.negative.place->row, pair.negative.place->column});
        }
        RC_ASSERT(positive == wanted_positive);
        RC_ASSERT(negative == wanted_negative);
    }));
}

TEST_CASE("a cavity of a higher row and column lies further down and to the right on the face") {
    const DrawingLayout layout = lay_out(plans::eight_channels(), DrawingPage::a4);
    for (const auto& a : layout.cavities)
        for (const auto& b : layout.cavities) {
            if (a.place.row < b.place.row) CHECK(a.at.top < b.at.top);
            if (a.place.column < b.place.column) CHECK(a.at.left < b.at.left);
        }
    CHECK(layout.cavities.size() == 40);
}

TEST_CASE("every conductor has its code beside it as words") {
    const DrawingLayout layout = lay_out(plans::eight_channels(), DrawingPage::letter);
    for (const auto& pair : plans::eight_channels().pairs)
        for (const auto* conductor : {&pair.positive, &pair.negative}) {
            const auto is_it = [&](const PlacedText& text) { return text.text == code(*conductor->colour); };
            INFO(code(*conductor->colour));
            CHECK(std::count_if(layout.texts.begin(), layout.texts.end(), is_it) == 1);
        }
}

TEST_CASE("a drawing of no pair, of nine pairs or of nine channels is refused") {
    const auto refused = [](auto change) {
        InstallDrawing plan = plans::eight_channels();
        change(plan);
        CHECK_THROWS_AS(install_drawing_svg(plan, DrawingPage::a4), std::invalid_argument);
    };
    refused([](InstallDrawing& plan) { plan.pairs.clear(); });
    refused([](InstallDrawing& plan) { plan.pairs.push_back(plan.pairs.front()); });
    refused([](InstallDrawing& plan) { plan.lines.push_back(plan.lines.front()); });
    refused([](InstallDrawing& plan) { plan.channels.push_back(plan.channels.front()); });
    refused([](InstallDrawing& plan) { plan.channels.clear(); });
}
