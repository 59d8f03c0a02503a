// What do the tests of the readers start from? A vehicle file without a fault, changed in one place, and the complaints
// about it as whole lines.
#pragma once

#include <catch2/catch.hpp>
#include <stdexcept>
#include <string>
#include <vector>

#include "files/files.h"

// One of each table; the numbers of the lines are relied on.
inline const std::string vehicle_file = R"([vehicle]
make = "Orrery"
model = "Vel Ostrel"
body = "sedan"
first_year = 2012
last_year = 2016
airbag_wait_s = 600
airbag_wait_source = "owner's book"
battery_sensor = true
battery_ah = 70
hazards = ["battery_in_cabin"]

[[system]]
code = "base"
name = "radio, four speakers"

[[circuit]]
at = "base"
code = "front-left"
role = "speaker"
drive = "bridged"
watts = 18
rating = "continuous"
rating_ohms = 4

[[tap]]
at = "base/front-left"
code = "radio-plug"
place = "radio"
panels = ["trim strip", "radio"]

[[note]]
at = "base/front-left/radio-plug"
date = 2021-06-03
method = "metered"
positive = "white"
negative = "white/black"
ac_v = 7.5
)";

// `whole` with the first `from` replaced. Throws when `from` is not there, so that no test changes nothing.
inline std::string with(std::string whole, const std::string& from, const std::string& to) {
    const auto at = whole.find(from);
    if (at == std::string::npos) throw std::logic_error("not in the text: " + from);
    return whole.replace(at, from.size(), to);
}

// The complaints about a text, each as "line:column message | hint"; none when it is taken.
inline std::vector<std::string> complaints_about(const std::string& text) {
    try {
        tapbook::read_batch(text, "car.toml");
        return {};
    } catch (const tapbook::InputRefused& refused) {
        std::vector<std::string> lines;
        for (const auto& complaint : refused.complaints())
            lines.push_back(std::to_string(complaint.place.line) + ":" + std::to_string(complaint.place.column) + " " +
                            complaint.message + (complaint.hint.empty() ? "" : " | " + complaint.hint));
        return lines;
    }
}

// The one complaint about the vehicle file with `from` replaced by `to`.
inline std::string complaint_when(const std::string& from, const std::string& to) {
    const auto lines = complaints_about(with(vehicle_file, from, to));
    INFO(from << " -> " << to);
    REQUIRE(lines.size() == 1);
    return lines.front();
}
