// Words are cleaned, fitted and placed; boxes and conductors are noted in the order they are drawn.
#include "report/drawing_composer.h"

#include <fmt/format.h>

#include <algorithm>

namespace tapbook {

namespace {

constexpr int all_lines = 100;
constexpr double tag_padding = 4, baseline_below_middle = 3.9, baseline_below_top = 10.5, rounding = 0.01;

DrawnRect page_size(DrawingPage page) {
    switch (page) {
        case DrawingPage::letter:
            return {0, 0, 792, 612};  // 11 by 8.5 inches
        case DrawingPage::a4:
            return {0, 0, 842, 595};  // 297 by 210 mm
    }
    return {};
}

std::string all_words(const DrawnBox& box) {
    std::string out = clean_words(headline(box));
    for (const auto* list : {&box.remarks, &box.cautions})
        for (const auto& words : *list) out += "; " + clean_words(words);
    return out;
}

struct Line {
    std::string words;
    DrawnWeight weight;
    double indent;
    bool begins_caution;
};

std::vector<Line> lines_of(const DrawnBox& box, double width, int count) {
    std::vector<Line> out;
    const auto add = [&](std::string_view words, DrawnWeight weight, double indent) {
        const int left = count - static_cast<int>(out.size());
        bool first = true;
        for (auto& line : wrapped_words(clean_words(words), width - indent, left, weight)) {
            out.push_back({std::move(line), weight, indent, first && indent > 0});
            first = false;
        }
    };
    add(headline(box), DrawnWeight::strong, 0);
    for (const auto& caution : box.cautions) add(caution, DrawnWeight::plain, caution_indent);
    for (const auto& remark : box.remarks) add(remark, DrawnWeight::plain, 0);
    return out;
}

}  // namespace

double tag_width(std::string_view words) {
    const std::string clean = clean_words(words);
    return clean.empty() ? 0 : words_width(clean) + 2 * tag_padding;
}

std::string headline(const DrawnBox& box) {
    return box.step > 0 ? fmt::format("{}. {}", box.step, box.name) : box.name;
}

DrawingComposer::DrawingComposer(DrawingPage page)
    : layout_{page_size(page).width, page_size(page).height, {}, {}, {}, {}, {}, {}} {}

void DrawingComposer::box(PlacedKind kind, const DrawnRect& at, const DrawnBox& words) {
    layout_.boxes.push_back({kind, at, all_words(words)});
}

double DrawingComposer::lines(const DrawnBox& box, const DrawnRect& room) {
    double top = room.top;
    const int count = static_cast<int>(room.height / drawing_line);
    for (const auto& line : lines_of(box, room.width, count)) {
        const DrawnRect at{room.left + line.indent, top, room.width - line.indent, drawing_line};
        if (line.begins_caution) layout_.cautions.push_back({room.left + 5, top + 2});
        layout_.texts.push_back({at, top + baseline_below_top, line.words, drawing_font, line.weight});
        top += drawing_line;
    }
    return top;
}

double DrawingComposer::lines_height(const DrawnBox& box, double width) const {
    return static_cast<double>(lines_of(box, width, all_lines).size()) * drawing_line;
}

void DrawingComposer::label(std::string_view words, const DrawnRect& room, Side side) {
    const std::string fitted = fitted_words(clean_words(words), room.width);
    if (fitted.empty()) return;
    const double width = words_width(fitted);
    const double left = side == Side::left ? room.left : room.right() - width;
    const DrawnRect at{left, room.middle_y() - drawing_line / 2, width, drawing_line};
    layout_.texts.push_back({at, room.middle_y() + baseline_below_middle, fitted});
}

double DrawingComposer::tag(PlacedKind kind, std::string_view words, DrawnPoint left_middle, double height,
                            double room) {
    const std::string clean = clean_words(words);
    const std::string fitted = fitted_words(clean, room - 2 * tag_padding + rounding);
    if (fitted.empty()) return left_middle.x;
    const double width = words_width(fitted) + 2 * tag_padding;
    const DrawnRect at{left_middle.x, left_middle.y - height / 2, width, height};
    layout_.boxes.push_back({kind, at, clean});
    label(fitted, {at.left + tag_padding, at.top, width - 2 * tag_padding + rounding, height}, Side::left);
    return at.right();
}

void DrawingComposer::text(std::string_view words, const DrawnRect& room, double font, DrawnWeight weight) {
    const std::string fitted = fitted_words(clean_words(words), room.width, font, weight);
    if (!fitted.empty()) layout_.texts.push_back({room, room.top + font * 0.95, fitted, font, weight});
}

void DrawingComposer::conductor(PlacedConductorKind kind, std::string net, std::vector<DrawnPoint> points,
                                std::optional<WireColour> colour) {
    layout_.conductors.push_back({kind, std::move(net), std::move(points), colour});
}

}  // namespace tapbook
