// Made-up plans for the drawing: three to look at, and any number by dice.
#pragma once

#include <string>

#include "report/drawing.h"

namespace tapbook::plans {

inline std::optional<WireColour> colour(std::string_view code) {
    return wire_colour_from_code(code);
}

// One pair, a passive converter, one amplifier channel for a subwoofer.
inline InstallDrawing one_channel() {
    InstallDrawing plan;
    plan.title = "Ferrolan Quill 2019, system Harbour: subwoofer";
    plan.code = "K7M4PX";
    plan.connector = {
        {1, "Rear deck connector", {"behind the left trim panel"}, {"Curtain air bag along the roof edge"}},
        "wire side",
        2,
        6};
    plan.pairs = {{"rear left",
                   {"3", DrawnCavity{1, 3}, colour("WH/BK")},
                   {"9", DrawnCavity{2, 3}, colour("BN/LGN")},
                   "in 1",
                   "4.1 to 9.2 V"}};
    plan.converter = DrawnBox{2, "Quiet Pond 2", {"passive, takes up to 12 V RMS"}};
    plan.lines = {{"out 1", "in 1", "2.3 V"}};
    plan.amplifier = {3, "Ridge 500", {"500 W into 2 ohm", "gain: 31.6 V at the speaker"}};
    plan.channels = {{"1", "Subwoofer", "2 ohm", "31.6 V"}};
    plan.turn_on = {TurnOnBegins::own_source,
                    {4, "Accessory socket feed", {"cavity 2, 12 V with key"}},
                    colour("YE/RD"),
                    "12 to 14.4 V"};
    plan.feed = {{5, "Battery", {"front left"}, {"Negative off first, on last"}},
                 {0, "Fuse 60 A", {"within 450 mm of the battery"}},
                 "21 mm\u00b2 copper, 5.2 m",
                 "13.8 V, engine on"};
    plan.ground = {6,
                   "Ground",
                   {"bare steel under the seat bracket", "21 mm\u00b2 copper, 0.4 m"},
                   {"Look beneath before drilling"}};
    return plan;
}

// Eight pairs of a 40-cavity connector, eight channels, turn-on from the converter.
inline InstallDrawing eight_channels() {
    InstallDrawing plan = one_channel();
    plan.title = "Ferrolan Quill Estate 2021, system Grand Harbour: all eight channels";
    plan.connector = {
        {1, "Amplifier connector A", {}, {"Seat air bag connector beside it: leave it mated"}}, "wire side", 2, 20};
    plan.pairs.clear();
    plan.lines.clear();
    plan.channels.clear();
    const char* names[] = {"front left", "front right", "rear left", "rear right",
                           "dash left",  "dash right",  "centre",    "subwoofer"};
    const char* colours[] = {"WH",    "WH/BK", "LBU/RD",   "LBU", "GN/YE", "DGN", "VT/WH", "VT",
                             "GY/RD", "GY",    "BN/WH/BK", "BN",  "OG/BK", "OG",  "PK/BU", "TN"};
    for (int i = 0; i < 8; ++i) {
        const auto number = std::to_string(i + 1);
        plan.pairs.push_back({names[i],
                              {std::to_string(i + 3), DrawnCavity{1, i + 3}, colour(colours[2 * i])},
                              {std::to_string(i + 23), DrawnCavity{2, i + 3}, colour(colours[2 * i + 1])},
                              "in " + number,
                              "2.8 to 6.4 V"});
        plan.lines.push_back({"out " + number, "in " + number, "1.9 V"});
        plan.channels.push_back({number, names[i], "4 ohm", "15.5 V"});
    }
    plan.converter = DrawnBox{2, "Still Water 8", {"active, takes up to 20 V RMS"}};
    plan.amplifier = {3, "Ridge 8x60", {"60 W into 4 ohm each"}};
    plan.turn_on = {TurnOnBegins::converter, {}, std::nullopt, "12 V"};
    return plan;
}

// No converter, one colour disputed, no face recorded.
inline InstallDrawing without_converter() {
    InstallDrawing plan = one_channel();
    plan.title = "Brelk Ombra 2016: front pair to the amplifier's own inputs";
    plan.connector.rows = plan.connector.columns = 0;
    plan.connector.seen_from.clear();
    plan.pairs = {{"front left", {"B4", {}, std::nullopt, "MIXED"}, {"B5", {}, colour("BK")}, "high 1", "0.8 to 3.9 V"},
                  {"front right", {"B6", {}, colour("RD/LBU")}, {"B7", {}, colour("RD")}, "high 2", "0.8 to 3.9 V"}};
    plan.converter.reset();
    plan.lines.clear();
    plan.channels = {{"1", "Front left", "4 ohm", "12.6 V"}, {"2", "Front right", "4 ohm", "12.6 V"}};
    return plan;
}

}  // namespace tapbook::plans
