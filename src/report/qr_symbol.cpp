// Modules by a library; dark runs of each row become one path, so that no hairlines show between them.
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

}  // namespace

std::optional<std::string> qr_symbol_svg(std::string_view text, double least_mm) {
    const auto code = code_of(text);
    if (!code) return std::nullopt;
    const int across = code->getSize() + 2 * quiet_zone;
    const double millimetres = least_mm * across / code->getSize();
    return fmt::format(
        "<svg class=\"qr\" width=\"{0:.1f}mm\" height=\"{0:.1f}mm\" "
        "viewBox=\"0 0 {1} {1}\" role=\"img\" aria-label=\"QR code of this job\">"
        "<rect width=\"{1}\" height=\"{1}\" fill=\"#ffffff\"/><path d=\"{2}\" fill=\"#000000\"/></svg>",
        millimetres, across, path_of(*code));
}

}  // namespace tapbook
