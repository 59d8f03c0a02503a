// What does the level come to on its way, stage by stage, and where does it clip first? Rows of the judged chain, and
// each range as a bar on one logarithmic scale for all of them.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "report/sheet.h"

namespace tapbook {

struct ChainStage {
    std::string name;  // "tap to converter"
    VoltageRange volts;
    std::optional<RmsVolts> limit;  // of what takes these volts
    std::optional<Gain> left;       // from the highest volts to the limit
    std::string remark;             // "drive margin +14.0 dB"; may be empty
    bool clips_first = false;
};

// None without levels.
std::vector<ChainStage> chain_stages(const Install& install);

// "Clips first: the converter's input, from 10.0 V at the tap, which this tap does not reach." "" without levels.
std::string clip_words(const Install& install);

// Low to high as an outlined bar, likely as a dot, the limit as a thick stroke, from 50 mV to 50 V.
std::string chain_bar_svg(const ChainStage& stage);

}  // namespace tapbook
