// See screen.h. Escape sequences are ECMA-48 SGR; colours of swatches come from the trade's own palette.
#include "report/screen.h"

#include <fmt/format.h>

#include <algorithm>

namespace tapbook {
namespace {

std::string colour_code(const Screen& screen, Hue hue, bool background) {
    const int layer = background ? 48 : 38;
    if (screen.colours == Colours::full) {
        const Rgb rgb = rgb_of(hue);
        return fmt::format("{};2;{};{};{}", layer, rgb.red, rgb.green, rgb.blue);
    }
    return fmt::format("{};5;{}", layer, terminal_256(hue));
}

}  // namespace

std::vector<std::string> wrapped(std::string_view text, int width) {
    std::vector<std::string> lines;
    std::string line;
    while (!text.empty()) {
        const auto end = std::min(text.find(' '), text.size());
        const std::string_view word = text.substr(0, end);
        if (!line.empty() && shown_width(line) + 1 + shown_width(word) > width)
            lines.push_back(std::exchange(line, {}));
        if (!line.empty()) line += ' ';
        line += word;
        text.remove_prefix(std::min(end + 1, text.size()));
    }
    if (!line.empty() || lines.empty()) lines.push_back(line);
    return lines;
}

std::string Paper::paint(std::string_view code, std::string_view text) const {
    if (screen_.colours == Colours::none) return std::string(text);
    return fmt::format("\x1b[{}m{}\x1b[0m", code, text);
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
    out_ += accent(shown(text)) + "\n";
}

void Paper::raw(std::string_view text) {
    out_ += text;
    out_ += '\n';
}

void Paper::line(int indent, std::string_view first, std::string_view text) {
    const int taken = indent + (first.empty() ? 0 : shown_width(first) + 1);
    bool is_first = true;
    for (const auto& part : wrapped(shown(text), std::max(20, screen_.width - taken))) {
        if (is_first && !first.empty())
            out_ += fmt::format("{:{}}{} {}\n", "", indent, shown(first), part);
        else
            out_ += fmt::format("{:{}}{}\n", "", taken, part);
        is_first = false;
    }
}

void Paper::caution(int indent, std::string_view title, std::string_view text) {
    const std::string whole = text.empty() ? shown(title) : fmt::format("{}: {}", shown(title), shown(text));
    bool is_first = true;
    for (const auto& part : wrapped(whole, std::max(20, screen_.width - indent - 2))) {
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
        const Hue second = all.size() > 2 ? all[2] : all[1];
        inside = fmt::format("\x1b[{};{}m╱╱\x1b[{}m╱╱", base, colour_code(screen_, all[1], false),
                             colour_code(screen_, second, false));
    }
    return fmt::format("▕{}\x1b[0m▏", inside);
}

std::string conductor_words(const Paper& paper, const WireColour& colour) {
    const std::string swatch = paper.swatch(colour);
    return fmt::format("{}{}{}  {}", swatch, swatch.empty() ? "" : " ", paper.strong(code(colour)), words(colour));
}

}  // namespace tapbook
