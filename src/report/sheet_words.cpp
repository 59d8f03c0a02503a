// Words from the values of the plan and of the circuits; colours only as the notes settle them.
#include "report/sheet_words.h"

#include <fmt/format.h>

#include <algorithm>

namespace tapbook {
namespace {

std::string value_of(const Standing& standing) {
    return standing.value.value_or("");
}

void add_part(std::string& text, std::string_view part) {
    if (!part.empty()) text += fmt::format("{}{}", text.empty() ? "" : ", ", part);
}

bool stands_beside_a_step(const Sheet& sheet, const std::string& says) {
    for (const auto& step : sheet.plan.steps)
        for (const auto& caution : step.cautions)
            if (caution.text == says) return true;
    return false;
}

}  // namespace

std::string conductor_text(const SheetConductor& conductor) {
    std::string text =
        conductor.colour ? fmt::format("{}  {}", code(*conductor.colour), words(*conductor.colour)) : conductor.instead;
    if (!conductor.cavity.empty()) add_part(text, "cavity " + conductor.cavity);
    if (!conductor.mark.empty()) add_part(text, "with " + conductor.mark);
    return conductor.sign.empty() ? text : fmt::format("{} {}", conductor.sign, text);
}

std::vector<SheetConductor> conductors_of(const PairStanding& pair) {
    const std::string positive_cavity = value_of(pair.positive_cavity),
                      negative_cavity = value_of(pair.negative_cavity);
    if (pair.positive || pair.negative)
        return {{"+", pair.positive, "not recorded", positive_cavity, pair.positive_mark},
                {"-", pair.negative, "not recorded", negative_cavity, pair.negative_mark}};
    std::vector<SheetConductor> out;
    for (const auto& colour : pair.conductors) out.push_back({"", colour, ""});
    if (!out.empty()) return out;
    const bool disputed = pair.pair.grade == Grade::mixed || pair.pair.grade == Grade::year_split;
    const std::string instead = disputed ? std::string(word_of(pair.pair.grade)) : "not recorded";
    return {{"+", {}, instead, positive_cavity}, {"-", {}, instead, negative_cavity}};
}

std::vector<SheetConductor> conductor_of(const SwitchedStanding& standing) {
    return {{"", standing.colour, "colour not recorded"}};
}

std::string circuit_words(const TapFacts& facts) {
    const std::string role = spaced(word_of(facts.circuit.role));
    return facts.circuit.position ? fmt::format("{}, {}", spaced(word_of(*facts.circuit.position)), role) : role;
}

std::string place_words(const TapFacts& facts) {
    std::string text = facts.tap.place;
    add_part(text, facts.tap.connector);
    if (facts.tap.side) add_part(text, fmt::format("{} side", word_of(*facts.tap.side)));
    if (facts.tap.minutes) add_part(text, fmt::format("about {} min", *facts.tap.minutes));
    return text;
}

std::string_view circuits_heading(const Sheet& sheet) {
    return has_plan(sheet) ? "Further circuits to read in phase A"
                           : "Circuits to read, live, every air-bag connector mated";
}

std::vector<std::string> grade_lines(const TapFacts& facts) {
    if (is_power(facts.circuit.role)) return {switched_line(facts.switched)};
    if (!carries_signal(facts.circuit.role)) return {"not a tap: read nothing here, connect nothing"};
    std::vector<std::string> lines = {standing_line(facts.pair)};
    if (facts.pair.pair.grade != Grade::blank)
        if (const std::string polarity = polarity_line(facts.pair); !polarity.empty())
            lines.push_back("polarity: " + polarity);
    return lines;
}

std::string range_words(const MillivoltRange& range) {
    const auto volts = [](std::int64_t millivolts) {
        return fmt::format("{:.1f}", static_cast<double>(millivolts) / 1000);
    };
    if (range.low && range.high) return fmt::format("{} to {} V", volts(*range.low), volts(*range.high));
    if (range.low) return fmt::format("{} V or more", volts(*range.low));
    if (range.high) return fmt::format("up to {} V", volts(*range.high));
    return "not predicted";
}

std::string car_words(const Sheet& sheet) {
    const Vehicle& car = sheet.plan.vehicle;
    std::string text = fmt::format("{} {} {}", car.make, car.model, car.body);
    if (sheet.plan.job.year) return text + fmt::format(" {}", *sheet.plan.job.year);
    if (car.first_year == 0) return text;
    return text + (car.first_year == car.last_year ? fmt::format(" {}", car.first_year)
                                                   : fmt::format(" {} to {}", car.first_year, car.last_year));
}

std::string system_words(const Sheet& sheet) {
    const std::string& system = sheet.plan.job.system;
    return system.empty() ? std::string("sound system not said") : fmt::format("sound system {}", system);
}

std::vector<std::string> time_lines(const Sheet& sheet) {
    std::vector<std::string> lines;
    if (const auto& minutes = sheet.plan.plan.minutes)
        lines.push_back(fmt::format("to reach the tap: {} min", *minutes));
    for (const auto& job : sheet.earlier) {
        const auto said = [](const std::optional<int>& minutes) {
            return minutes ? fmt::format("{} min", *minutes) : std::string("not said");
        };
        lines.push_back(fmt::format("job {}, closed {}: to the tap planned {}, whole job took {}", job.number,
                                    job.closed, said(job.planned_minutes), said(job.taken_minutes)));
    }
    if (const auto& before = sheet.plan.install.plan.minutes_taken_before)
        lines.push_back(fmt::format("the same car and system took this shop {} min (median)", *before));
    return lines;
}

std::string ledger_words(const Sheet& sheet) {
    const SheetLedger& ledger = sheet.ledger;
    std::string text = ledger.notes == 0   ? std::string("no notes on this car")
                       : ledger.notes == 1 ? std::string("1 note on this car")
                                           : fmt::format("{} notes on this car", ledger.notes);
    if (!ledger.newest.empty()) text += fmt::format(", newest {}", ledger.newest);
    if (!ledger.catalog.empty()) text += fmt::format("; {}", ledger.catalog);
    return text;
}

std::string made_words(const Sheet& sheet) {
    return fmt::format("Made {} from {}.{}", sheet.date, ledger_words(sheet),
                       sheet.plan.practice ? " Invented practice data." : "");
}

std::string checked_words(const CheckEntry& entry) {
    return fmt::format("{}{}{}", word_of(entry.answer), entry.words.empty() ? "" : ": ", entry.words);
}

std::vector<Recommendation> recommendations(const Sheet& sheet) {
    std::vector<Recommendation> out;
    const auto add = [&](std::string_view about, const std::vector<Finding>& findings) {
        for (const auto& finding : findings) {
            const auto is_same = [&](const Recommendation& have) {
                return have.rule == finding.rule && have.says == finding.says;
            };
            if (!stands_beside_a_step(sheet, finding.says) && std::none_of(out.begin(), out.end(), is_same))
                out.push_back({finding.effect, std::string(about), finding.rule, finding.says});
        }
    };
    const JobPlanAnswer& plan = sheet.plan;
    if (has_plan(sheet)) {
        add("converter", plan.part.findings);
        add("tap", plan.tap.findings);
        if (const JudgedTurnOn* turn_on = planned_turn_on(plan.install)) add("turn-on", turn_on->findings);
        add("feed", plan.install.feed_findings);
        add("load", plan.install.load_findings);
        add("plan", plan.install.plan_findings);
    }
    std::stable_sort(out.begin(), out.end(),
                     [](const Recommendation& a, const Recommendation& b) { return a.effect < b.effect; });
    return out;
}

}  // namespace tapbook
