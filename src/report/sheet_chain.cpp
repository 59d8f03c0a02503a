// Rows and bars; the numbers come from the level answer.
#include "report/sheet_chain.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace tapbook {
namespace {

constexpr double bar_width = 160, bar_height = 14, scale_low = 0.05, scale_decades = 3;
constexpr const char* ink = "#22272e";

std::string_view place_words(ClipPlace place, Topology topology) {
    if (topology == Topology::direct) return "the amplifier's speaker-level input";
    switch (place) {
        case ClipPlace::converter_input:
            return "the converter's input";
        case ClipPlace::converter_output:
            return "the converter's output";
        case ClipPlace::amplifier_input:
            return "the amplifier's input at its lowest gain";
    }
    return "";
}

ChainStage first_stage(const LevelAnswer& level) {
    const bool is_direct = level.topology == Topology::direct;
    ChainStage stage{is_direct ? "tap to amplifier" : "tap to converter", level.request.clean, level.limit_at_lowest,
                     level.headroom, ""};
    if (level.drive_margin)
        stage.remark = fmt::format("least volts {:+.1f} dB over what it needs", level.drive_margin->in(decibels));
    stage.clips_first = level.first_clip && (is_direct || level.first_clip->place == ClipPlace::converter_input);
    return stage;
}

// At its largest gain: does it reach the amplifier's rated power?
ChainStage reach_stage(const LevelAnswer& level) {
    ChainStage stage{"converter, largest gain", {}, std::nullopt, std::nullopt, ""};
    stage.volts.likely = level.chain.output ? level.chain.output : level.chain.output_open;
    if (level.chain.shortfall)
        stage.remark = level.chain.shortfall->in(decibels) > 0
                           ? fmt::format("{:.1f} dB short of rated power", level.chain.shortfall->in(decibels))
                           : std::string("reaches rated power");
    return stage;
}

// At its smallest gain: does it still overload the amplifier's input?
ChainStage overload_stage(const LevelAnswer& level) {
    ChainStage stage{"converter, smallest gain", {}, level.chain.overload_limit, std::nullopt, ""};
    stage.volts.high = level.chain.overload_volts;
    if (stage.volts.high && stage.limit) stage.left = gain_between(*stage.volts.high, *stage.limit);
    stage.remark = "limit of the amplifier's input";
    stage.clips_first = level.first_clip && level.first_clip->place != ClipPlace::converter_input;
    return stage;
}

std::optional<ChainStage> last_stage(const Install& install) {
    if (!install.gain_target) return std::nullopt;
    ChainStage stage{"amplifier to speaker",
                     {std::nullopt, install.gain_target, std::nullopt},
                     std::nullopt,
                     std::nullopt,
                     "gain target"};
    return stage;
}

double place_on_bar(RmsVolts volts) {
    const double decades = std::log10(std::max(volts.in(rms_volts), scale_low) / scale_low);
    return std::min(decades / scale_decades, 1.0) * bar_width;
}

}  // namespace

std::vector<ChainStage> chain_stages(const Install& install) {
    if (!install.levels) return {};
    const LevelAnswer& level = *install.levels;
    std::vector<ChainStage> stages = {first_stage(level)};
    if (level.topology != Topology::direct) {
        stages.push_back(reach_stage(level));
        stages.push_back(overload_stage(level));
    }
    if (auto last = last_stage(install)) stages.push_back(std::move(*last));
    return stages;
}

std::string clip_words(const Install& install) {
    if (!install.levels) return "";
    const LevelAnswer& level = *install.levels;
    if (!level.first_clip) return "Where it clips first is not known: no limit is recorded.";
    return fmt::format("Clips first: {}, from {:.1f} V at the tap{}.",
                       place_words(level.first_clip->place, level.topology), level.first_clip->tap.in(rms_volts),
                       level.clips.value_or(false) ? ": THIS TAP GOES HIGHER" : ", which this tap does not reach");
}

std::string chain_bar_svg(const ChainStage& stage) {
    std::string out = fmt::format(
        "<svg class=\"bar\" width=\"{0:.0f}\" height=\"{1:.0f}\" "
        "viewBox=\"0 0 {0:.0f} {1:.0f}\" aria-hidden=\"true\"><path d=\"M0 13.5H160\" fill=\"none\" stroke=\"#8a929c\" "
        "stroke-width=\"0.6\"/>",
        bar_width, bar_height);
    for (const double mark : {0.1, 1.0, 10.0}) {
        const double x = place_on_bar(rms_volts(mark));
        out += fmt::format("<path d=\"M{0:.1f} 2V13.5\" fill=\"none\" stroke=\"#8a929c\" stroke-width=\"0.6\"/>", x);
    }
    if (stage.volts.low && stage.volts.high) {
        const double left = place_on_bar(*stage.volts.low), right = place_on_bar(*stage.volts.high);
        out += fmt::format(
            "<rect x=\"{:.1f}\" y=\"5\" width=\"{:.1f}\" height=\"5\" rx=\"2\" fill=\"#dfe3e8\" stroke=\"{}\"/>", left,
            std::max(right - left, 1.0), ink);
    }
    for (const auto& end : {stage.volts.low, stage.volts.high})
        if (end) out += fmt::format("<path d=\"M{:.1f} 4v7\" fill=\"none\" stroke=\"{}\"/>", place_on_bar(*end), ink);
    if (stage.volts.likely)
        out += fmt::format("<circle cx=\"{:.1f}\" cy=\"7.5\" r=\"2.4\" fill=\"{}\"/>",
                           place_on_bar(*stage.volts.likely), ink);
    if (stage.limit)
        out += fmt::format("<path d=\"M{:.1f} 0.5v13\" fill=\"none\" stroke=\"{}\" stroke-width=\"2.6\"/>",
                           place_on_bar(*stage.limit), ink);
    return out + "</svg>";
}

}  // namespace tapbook
