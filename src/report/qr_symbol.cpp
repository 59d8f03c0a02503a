// Modules by a library; in SVG dark runs of each row become one path, so that no hairlines show between them.
#include "report/qr_symbol.h"

#include <fmt/format.h>
#include <qrcodegen/qrcodegen.hpp>

namespace tapbook {
namespace {

using qrcodegen::QrCode;
using qrcodegen::QrSegment;

constexpr int quiet_zone = 4;

std::optional<QrCode> code_of(std::string_view text) {
    try {
        const auto segments = QrSegment::makeSegments(std::string(text).c_str());
        return QrCode::encodeSegments(segments, QrCode::Ecc::MEDIUM, QrCode::MIN_VERSION, QrCode::MAX_VERSION, -1,
                                      false);
    } catch (const qrcodegen::data_too_long&) {
        return std::nullopt;
    }
}

std::string path_of(const QrCode& code) {
    std::string path;
    for (int y = 0; y < code.getSize(); ++y)
        for (int x = 0; x < code.getSize(); ++x) {
            int run = 0;
            while (code.getModule(x + run, y)) ++run;
            if (run == 0) continue;
            path += fmt::format("M{} {}h{}v1h-{}z", x + quiet_zone, y + quiet_zone, run, run);
            x += run;
        }
    return path;
}

// One character for two modules, one above the other.
std::string_view half_blocks(bool above, bool below) {
    if (above) return below ? "\u2588" : "\u2580";
    return below ? "\u2584" : " ";
}

}  // namespace

std::optional<std::string> qr_symbol_svg(std::string_view text, double least_mm, std::string_view label) {
    const auto code = code_of(text);
    if (!code) return std::nullopt;
    const int across = code->getSize() + 2 * quiet_zone;
    const double millimetres = least_mm * across / code->getSize();
    return fmt::format(
        "<svg class=\"qr\" width=\"{0:.1f}mm\" height=\"{0:.1f}mm\" "
        "viewBox=\"0 0 {1} {1}\" role=\"img\" aria-label=\"{3}\">"
        "<rect width=\"{1}\" height=\"{1}\" fill=\"#ffffff\"/><path d=\"{2}\" fill=\"#000000\"/></svg>",
        millimetres, across, path_of(*code), label);
}

std::optional<std::string> qr_symbol_lines(std::string_view text, QrInk ink) {
    const auto code = code_of(text);
    if (!code) return std::nullopt;
    const bool coloured = ink == QrInk::black_on_white;
    const int end = code->getSize() + quiet_zone;
    std::string lines;
    for (int y = -quiet_zone; y < end; y += 2) {
        if (coloured) lines += "\x1b[38;5;16;48;5;231m";
        for (int x = -quiet_zone; x < end; ++x) {
            const bool below_ends = y + 1 >= end;  // the row below the last one is no part of the symbol
            const bool above = code->getModule(x, y), below = code->getModule(x, y + 1);
            lines += coloured ? half_blocks(above, below) : half_blocks(!above, !below && !below_ends);
        }
        lines += coloured ? "\x1b[0m\n" : "\n";
    }
    return lines;
}

}  // namespace tapbook
