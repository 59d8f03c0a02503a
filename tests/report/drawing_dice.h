// Plans by dice: any number of pairs, lines and channels, faces of 2 to 40 cavities, names short, long and unbroken.
#pragma once

#include <random>
#include <utility>

#include "drawing_plans.h"

namespace tapbook::plans {

class PlanDice {
  public:
    explicit PlanDice(unsigned seed) : engine_(seed) {}

    int below(int limit) { return static_cast<int>(engine_() % static_cast<unsigned>(limit)); }
    bool one_in(int count) { return below(count) == 0; }

    std::string name() {
        const char* pieces[] = {"Quill",
                                "a",
                                "the rear shelf",
                                "W",
                                "MMMMMMMM",
                                "iiii",
                                "ünïcödé",
                                "日本語",
                                "-",
                                "12.6 V",
                                "Unbrokenwordthatgoesonandonwithoutanyspaceatall",
                                "\u202e<b>&\"'",
                                "x\u0301\u0301\u0301"};
        std::string out;
        for (int i = below(6) == 0 ? 14 : below(4); i >= 0; --i)
            out += std::string(out.empty() ? "" : " ") + pieces[below(13)];
        return one_in(8) ? std::string() : out;
    }

    std::vector<std::string> names() {
        std::vector<std::string> out;
        for (int i = below(4); i > 0; --i) out.push_back(name());
        return out;
    }

    DrawnBox box() { return {below(9), name(), names(), names()}; }

    std::optional<WireColour> colour() {
        const char* codes[] = {"WH", "BK", "WH/BK", "LBU/DGN/LRD", "GN/YE", "BN/WH/BK", "TN"};
        if (one_in(4)) return std::nullopt;
        return wire_colour_from_code(codes[below(7)]);
    }

    InstallDrawing plan() {
        InstallDrawing out;
        out.title = name();
        out.code = name();
        out.connector = {box(), name(), 1 + below(4), 0};
        out.connector.columns = out.connector.rows == 1 ? 2 + below(39) : 1 + below(40 / out.connector.rows);
        if (one_in(6)) out.connector.rows = out.connector.columns = 0;
        pairs(out);
        if (!one_in(4)) out.converter = box();
        if (out.converter)
            for (int i = below(9); i > 0; --i) out.lines.push_back({name(), name(), name()});
        out.amplifier = box();
        for (int i = 1 + below(8); i > 0; --i) out.channels.push_back({name(), name(), name(), name()});
        out.turn_on = {out.converter && one_in(2) ? TurnOnBegins::converter
                       : one_in(4)                ? TurnOnBegins::none
                                                  : TurnOnBegins::own_source,
                       box(), colour(), name()};
        out.feed = {box(), box(), name(), name()};
        out.ground = box();
        return out;
    }

  private:
    // As many pairs as there are two free cavities for, each cavity used once.
    void pairs(InstallDrawing& out) {
        std::vector<DrawnCavity> free;
        for (int row = 1; row <= out.connector.rows; ++row)
            for (int column = 1; column <= out.connector.columns; ++column) free.push_back({row, column});
        for (int i = 1 + below(8); i > 0; --i) {
            DrawnPair pair{name(), conductor(), conductor(), name(), name()};
            if (free.size() >= 2) {
                pair.positive.place = take(free);
                pair.negative.place = take(free);
            }
            out.pairs.push_back(pair);
        }
    }

    DrawnConductor conductor() { return {name(), std::nullopt, colour(), name()}; }

    DrawnCavity take(std::vector<DrawnCavity>& free) {
        std::swap(free[static_cast<std::size_t>(below(static_cast<int>(free.size())))], free.back());
        const DrawnCavity out = free.back();
        free.pop_back();
        return out;
    }

    std::mt19937 engine_;
};

}  // namespace tapbook::plans
