// Signs that a reader knows without a word: ground, fuse, battery, as in circuit diagrams (IEC 60617, from memory).
#include <fmt/format.h>

#include "report/drawing_layout.h"

namespace tapbook {

namespace {

constexpr const char* ink = "#22272e";

std::string drawn(const std::string& path, double width, std::string_view fill = "none") {
    return fmt::format("<path d=\"{}\" fill=\"{}\" stroke=\"{}\" stroke-width=\"{:.1f}\"/>\n", path, fill, ink, width);
}

std::string ground(double x, double y) {
    return drawn(fmt::format("M{:.1f} {:.1f}v8m-8 0h16m-13 4h10m-7 4h4", x, y - 8), 1.6);
}

std::string fuse(double x, double y) {
    return drawn(fmt::format("M{:.1f} {:.1f}h16v7h-16z", x - 8, y - 3.5), 1.4, "#ffffff") +
           drawn(fmt::format("M{:.1f} {:.1f}h22", x - 11, y), 1.4);
}

std::string battery(double x, double y) {
    return drawn(fmt::format("M{:.1f} {:.1f}h8M{:.1f} {:.1f}h8", x - 11, y, x + 3, y), 1.4) +
           drawn(fmt::format("M{:.1f} {:.1f}v18", x - 3, y - 9), 1.4) +
           drawn(fmt::format("M{:.1f} {:.1f}v9", x + 3, y - 4.5), 3.2);
}

}  // namespace

std::string symbol_svg(const PlacedSymbol& symbol) {
    const double x = symbol.at.middle_x(), y = symbol.at.middle_y();
    switch (symbol.kind) {
        case SymbolKind::ground:
            return ground(x, y);
        case SymbolKind::fuse:
            return fuse(x, y);
        case SymbolKind::battery:
            return battery(x, y);
    }
    return {};
}

}  // namespace tapbook
