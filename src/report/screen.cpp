// See screen.h. Escape sequences are ECMA-48 SGR; colours of swatches come from the trade's own palette.
#include "report/screen.h"

#include <fmt/format.h>

#include <algorithm>

namespace tapbook {
namespace {

constexpr int least_text_beside = 20;  // columns; with fewer the text goes below
constexpr int swatch_columns = 7;      // with the space after it

std::string_view without_trailing_spaces(std::string_view text) {
    return text.substr(0, text.find_last_not_of(' ') + 1);
}

// "WH/BK  white, black stripe, cavity 4" after the swatch, in columns.
std::string conductor_text(const Conductor& conductor) {
    const std::string where = conductor.where.empty() ? "" : ", " + shown(conductor.where);
    return words(conductor.colour) + where;
}

int conductor_columns(const Conductor& conductor) {
    return (conductor.sign.empty() ? 0 : 2) + swatch_columns + shown_width(code(conductor.colour)) + 2 +
           shown_width(conductor_text(conductor));
}

// What the screen really shows for `hue`.
Rgb shown_rgb(const Screen& screen, Hue hue) {
    return screen.colours == Colours::full ? rgb_of(hue) : terminal_rgb(terminal_256(hue));
}

// A stripe that could not be told from its base (dark green on dark brown in 256 colours) is drawn in another shade.
Hue visible_stripe(const Screen& screen, Hue base, Hue stripe) {
    constexpr int least_distance = 20;
    const Rgb a = shown_rgb(screen, base), b = shown_rgb(screen, stripe);
    const int red = a.red - b.red, green = a.green - b.green, blue = a.blue - b.blue;
    if (red * red + green * green + blue * blue >= least_distance * least_distance) return stripe;
    return {stripe.base, stripe.shade == Shade::plain ? Shade::dark : Shade::plain};
}

std::string colour_code(const Screen& screen, Hue hue, bool background) {
    const int layer = background ? 48 : 38;
    if (screen.colours == Colours::full) {
        const Rgb rgb = rgb_of(hue);
        return fmt::format("{};2;{};{};{}", layer, rgb.red, rgb.green, rgb.blue);
    }
    return fmt::format("{};5;{}", layer, terminal_256(hue));
}

}  // namespace

std::string spaced(std::string_view word) {
    std::string text(word);
    std::replace(text.begin(), text.end(), '_', ' ');
    return text;
}

std::vector<std::string> wrapped(std::string_view text, int width) {
    std::vector<std::string> lines;
    std::string line;
    int taken = 0;  // by the line so far
    while (!text.empty()) {
        const auto end = std::min(text.find(' '), text.size());
        const std::string_view word = text.substr(0, end);
        const int columns = shown_width(word);
        if (!line.empty() && taken + 1 + columns > width)
            lines.emplace_back(without_trailing_spaces(std::exchange(line, {})));
        taken = columns + (line.empty() ? 0 : taken + 1);
        if (!line.empty()) line += ' ';
        line += word;
        text.remove_prefix(std::min(end + 1, text.size()));
    }
    if (!line.empty() || lines.empty()) lines.emplace_back(without_trailing_spaces(line));
    return lines;
}

std::string Paper::paint(std::string_view code, std::string_view text) const {
    if (screen_.colours == Colours::none) return shown(text);
    return fmt::format("\x1b[{}m{}\x1b[0m", code, shown(text));
}

std::string Paper::accent(std::string_view text) const {
    return paint(screen_.colours == Colours::full ? "1;38;2;64;132;138" : "1;38;5;66", text);
}
std::string Paper::strong(std::string_view text) const {
    return paint("1", text);
}
std::string Paper::quiet(std::string_view text) const {
    return paint("2", text);
}

void Paper::blank() {
    out_ += '\n';
}

void Paper::heading(std::string_view text) {
    for (const auto& part : wrapped(shown(text), screen_.width)) out_ += accent(part) + "\n";
}

void Paper::notice(std::string_view text) {
    for (const auto& part : wrapped(shown(text), screen_.width)) out_ += strong(part) + "\n";
}

void Paper::raw(std::string_view text) {
    out_ += text;
    out_ += '\n';
}

void Paper::line(int indent, std::string_view first, std::string_view text, Weight weight_of_first) {
    const std::string plain = shown(first);
    const auto weighted = [&](std::string_view label) {
        return weight_of_first == Weight::strong ? strong(label) : std::string(label);
    };
    int taken = indent + (plain.empty() ? 0 : shown_width(plain) + 1);
    std::string label = plain.empty() ? "" : weighted(plain) + " ";
    if (!plain.empty() && screen_.width - taken < least_text_beside) {
        for (const auto& part : wrapped(without_trailing_spaces(plain), screen_.width - indent))
            out_ += fmt::format("{:{}}{}\n", "", indent, weighted(part));
        label.clear();
        taken = indent + 2;
    }
    for (const auto& part : wrapped(shown(text), std::max(least_text_beside, screen_.width - taken))) {
        out_ += label.empty() ? fmt::format("{:{}}{}\n", "", taken, part)
                              : fmt::format("{:{}}{}{}\n", "", indent, label, part);
        label.clear();
    }
}

void Paper::caution(int indent, std::string_view title, std::string_view text) {
    const std::string whole = text.empty() ? shown(title) : fmt::format("{}: {}", shown(title), shown(text));
    bool is_first = true;
    for (const auto& part : wrapped(whole, std::max(least_text_beside, screen_.width - indent - 2))) {
        out_ += fmt::format("{:{}}{} {}\n", "", indent, is_first ? strong("!") : " ", part);
        is_first = false;
    }
}

std::string Paper::swatch(const WireColour& colour) const {
    if (screen_.colours == Colours::none) return {};
    const auto all = hues(colour);
    const std::string base = colour_code(screen_, all[0], true);
    std::string inside;
    if (all.size() == 1) {
        inside = fmt::format("\x1b[{}m    ", base);
    } else {
        const Hue first = visible_stripe(screen_, all[0], all[1]);
        const Hue second = all.size() > 2 ? visible_stripe(screen_, all[0], all[2]) : first;
        inside = fmt::format("\x1b[{};{}m╱╱\x1b[{}m╱╱", base, colour_code(screen_, first, false),
                             colour_code(screen_, second, false));
    }
    return fmt::format("▕{}\x1b[0m▏", inside);
}

void Paper::conductors(int indent, std::string_view first, std::span<const Conductor> list, std::string_view remark) {
    int needed = indent + (first.empty() ? 0 : shown_width(first) + 1) + (remark.empty() ? 0 : shown_width(remark) + 3);
    for (const auto& conductor : list) needed += conductor_columns(conductor) + (&conductor == &list.front() ? 0 : 3);
    if (needed > screen_.width) {
        for (const auto& conductor : list)
            separate_conductor(
                indent, &conductor == &list.front() ? std::string(first) : std::string(first.size(), ' '), conductor);
        if (!remark.empty()) line(indent, std::string(first.size(), ' '), remark);
        return;
    }
    std::string all = fmt::format("{:{}}{}{}", "", indent, first, first.empty() ? "" : " ");
    for (const auto& conductor : list) {
        if (&conductor != &list.front()) all += "   ";
        if (!conductor.sign.empty()) all += strong(conductor.sign) + " ";
        const std::string drawn = swatch(conductor.colour);
        all += fmt::format("{}{}{}  {}", drawn, drawn.empty() ? "" : " ", strong(code(conductor.colour)),
                           conductor_text(conductor));
    }
    raw(remark.empty() ? all : all + "   " + shown(remark));
}

// The words go below the code where they do not fit beside it.
void Paper::separate_conductor(int indent, std::string_view first, const Conductor& conductor) {
    const int taken = indent + (first.empty() ? 0 : static_cast<int>(first.size()) + 1);
    const std::string drawn = swatch(conductor.colour), text = conductor_text(conductor);
    std::string all = fmt::format("{:{}}{}{}", "", indent, first, first.empty() ? "" : " ");
    if (!conductor.sign.empty()) all += strong(conductor.sign) + " ";
    all += fmt::format("{}{}{}", drawn, drawn.empty() ? "" : " ", strong(code(conductor.colour)));
    if (taken + conductor_columns(conductor) <= screen_.width) {
        raw(all + "  " + text);
        return;
    }
    raw(all);
    line(taken + 2, "", text);
}

}  // namespace tapbook
