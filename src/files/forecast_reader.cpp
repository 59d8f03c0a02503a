// See forecast_reader.h.
#include "files/forecast_reader.h"

#include <fmt/format.h>

#include <algorithm>

#include "files/table_reader.h"

namespace tapbook {
namespace {

constexpr Field fields[] = {{"jobs_a_year", "thousandths", FieldKind::decimal, 3, "", 0, 100'000'000, nullptr, true,
                             "how many jobs a year are expected"}};

}  // namespace

std::vector<ForecastLine> read_forecast(std::string_view text, const std::string& file) {
    const TomlValue root = read_toml(text, file);
    Complaints complaints;
    std::vector<ForecastLine> lines;
    constexpr std::string_view own[] = {"of"};
    for (std::size_t i = 0; i < root.members.size(); ++i) {
        const auto& [key, value] = root.members[i];
        if (key != "expect" || value.type != TomlValue::Type::list) {
            complaints.add(root.member_places[i], fmt::format("unknown table \"{}\"", shown(key)),
                           "a forecast holds [[expect]] tables");
            continue;
        }
        for (const TomlValue& table : value.items) {
            const Values values = read_fields(table, fields, own, complaints);
            ForecastLine line{read_text(table, "of", true, complaints), 0, place_of(table, "of")};
            if (const auto* number = find_value<std::int64_t>(values, "thousandths")) line.thousandths = *number;
            const auto depth = path_parts(line.path).size();
            if (!line.path.empty() && depth != vehicle_depth && depth != system_depth)
                complaints.add(line.place,
                               fmt::format("\"{}\" is not the path of a car or a sound system", shown(line.path)),
                               "write make/model/body/first-year, or add /system behind it");
            for (const auto& other : lines)
                if (!line.path.empty() && other.path == line.path)
                    complaints.add(line.place, fmt::format("{} stands twice", shown(line.path)),
                                   fmt::format("the first is on line {}", other.place.line));
            lines.push_back(std::move(line));
        }
    }
    if (lines.empty() && complaints.empty())
        complaints.add(root.place, "it expects nothing",
                       "write [[expect]], and under it of = \"PATH\" and jobs_a_year = N");
    complaints.throw_if_any();
    return lines;
}

}  // namespace tapbook
