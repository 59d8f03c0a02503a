// The sheet on a screen: the same lists as on paper, in the same order, with lines to write on.
#include <fmt/format.h>

#include "report/sheet_chain.h"
#include "report/sheet_words.h"

namespace tapbook {
namespace {

constexpr int label_width = 11;

std::string label(std::string_view words) {
    return fmt::format("{:<{}}", words, label_width);
}

void print_heading(Paper& paper, std::string_view words) {
    paper.blank();
    paper.heading(words);
}

void print_conductors(Paper& paper, std::string_view first, const std::vector<SheetConductor>& conductors) {
    for (std::size_t i = 0; i < conductors.size(); ++i) {
        const SheetConductor& one = conductors[i];
        const std::string before = i == 0 ? std::string(first) : label("");
        if (!one.colour) {
            paper.line(2, before, conductor_text(one));
            continue;
        }
        std::string where = one.cavity.empty() ? "" : "cavity " + one.cavity;
        if (!one.mark.empty()) where += fmt::format("{}with {}", where.empty() ? "" : ", ", one.mark);
        const std::vector<Conductor> printed = {{one.sign, *one.colour, where}};
        paper.conductors(2, before, printed);
    }
}

void print_head(Paper& paper, const Sheet& sheet) {
    const ShopJob& job = sheet.plan.job;
    paper.heading(fmt::format("Sheet  {}, {}{}{}", car_words(sheet), system_words(sheet),
                              job.number == 0 ? "" : fmt::format("   {}  job {}", job.code, job.number),
                              sheet.plan.practice ? "   [practice]" : ""));
    if (sheet.plan.practice) paper.notice(practice_words);
    if (const std::string link = sheet_link(sheet); link != job.code) paper.line(2, label("link"), link);
    if (job.number == 0)
        paper.line(2, label("job"), fmt::format("none yet: `tapbook job start {}`", sheet.plan.vehicle.path));
}

void print_facts(Paper& paper, const Sheet& sheet) {
    for (const auto& fact : sheet_facts(sheet)) {
        std::string value = fact.value;
        if (fact.verdict) value += fmt::format(" ({})", word_of(*fact.verdict));
        paper.line(2, label(fact.label), value, Weight::strong);
        if (!fact.conductors.empty()) print_conductors(paper, label(""), fact.conductors);
        for (const auto& line : fact.rests_on) paper.line(2, label(""), line);
    }
}

std::string box_words(const Sheet& sheet, std::string_view path, const ReadingBox& box) {
    const std::string before = read_before(sheet, path, box);
    return fmt::format("{} [{}]{}", box.label, before.empty() ? "______" : before,
                       box.unit.empty() ? "" : " " + box.unit);
}

void print_step(Paper& paper, const Sheet& sheet, const PlanStep& step, int number) {
    paper.line(2, fmt::format("{:>2}. [ ]", number), step.what);
    for (const auto& caution : step.cautions) paper.caution(9, caution.title, caution.text);
    for (const auto& reading : step.readings) {
        const std::string why = reading.why.empty() ? std::string() : fmt::format(" ({})", reading.why);
        paper.line(9, box_words(sheet, read_at(sheet, reading), box_of(reading)),
                   fmt::format(" {}: {}{}", range_words(reading.range), reading.what, why));
    }
}

void print_steps(Paper& paper, const Sheet& sheet) {
    std::optional<PowerPhase> phase;
    int number = 0;
    for (const auto& step : sheet.plan.steps) {
        if (phase != step.phase) print_heading(paper, word_of(step.phase));
        phase = step.phase;
        print_step(paper, sheet, step, ++number);
    }
}

void print_circuit(Paper& paper, const Sheet& sheet, const TapFacts& facts) {
    const std::string place = place_words(facts);
    paper.line(
        2, "[ ]",
        fmt::format(" {}   {}{}", circuit_words(facts), place_in_job(facts.code), place.empty() ? "" : "   " + place));
    if (carries_signal(facts.circuit.role)) print_conductors(paper, label(""), conductors_of(facts.pair));
    if (is_power(facts.circuit.role)) print_conductors(paper, label(""), conductor_of(facts.switched));
    std::string boxes;
    for (const auto& box : boxes_of(sheet, facts))
        boxes += fmt::format("{}{}", boxes.empty() ? "" : "  ", box_words(sheet, facts.code, box));
    if (!boxes.empty()) paper.line(2, label(""), boxes);
    for (const auto& line : grade_lines(facts)) paper.line(2, label(""), line);
    for (const Hazard hazard : facts.tap.hazards) {
        const auto text = hazard_text(hazard);
        paper.caution(9, text.title, text.caution);
    }
}

std::string volts(const std::optional<RmsVolts>& volts) {
    return volts ? fmt::format("{:.1f}", volts->in(rms_volts)) : std::string("-");
}

void print_chain(Paper& paper, const Sheet& sheet) {
    const auto stages = chain_stages(sheet.plan.install);
    if (stages.empty()) return;
    print_heading(paper, "Level, volts RMS");
    for (const auto& stage : stages) {
        std::string text =
            fmt::format("{} / {} / {} V", volts(stage.volts.low), volts(stage.volts.likely), volts(stage.volts.high));
        if (stage.limit) text += fmt::format(", limit {} V", volts(stage.limit));
        if (stage.left) text += fmt::format(", {:+.1f} dB left", stage.left->in(decibels));
        if (!stage.remark.empty()) text += fmt::format(" ({})", stage.remark);
        paper.line(2, fmt::format("{:<24}", stage.name), text + (stage.clips_first ? "; clips first" : ""));
    }
    paper.line(2, "", clip_words(sheet.plan.install));
}

const CheckEntry* entry_of(const std::vector<CheckEntry>& list, CheckItem item) {
    for (const auto& entry : list)
        if (entry.item == item) return &entry;
    return nullptr;
}

void print_lists(Paper& paper, const ShopJob& job) {
    print_heading(paper, "The car, as it came / as it left");
    for (const auto& named : words_of<CheckItem>()) {
        const CheckEntry *came = entry_of(job.came, named.value), *left = entry_of(job.left, named.value);
        paper.line(2, fmt::format("{:<13}", spaced(named.word)),
                   fmt::format("[{}] / [{}]   {}", came == nullptr ? "      " : checked_words(*came),
                               left == nullptr ? "      " : checked_words(*left), check_question(named.value)));
    }
    paper.line(2, "initials     ",
               fmt::format("before work [{}]   as it left [      ]", job.agreed.empty() ? "      " : job.agreed));
    for (const auto& difference : differences(job))
        paper.line(2, fmt::format("{:<13}", spaced(word_of(difference.item))),
                   fmt::format("came {}; left {}", checked_words(*difference.came), checked_words(*difference.left)),
                   Weight::strong);
    for (const auto& action : job.actions)
        paper.line(2, "put back     ", fmt::format("[{}] {}", action.closed.empty() ? " " : "x", action.words));
}

void print_end(Paper& paper, const Sheet& sheet) {
    const auto list = recommendations(sheet);
    if (!list.empty()) print_heading(paper, "Keep in mind");
    for (const auto& one : list)
        paper.line(2, fmt::format("{:<5}", word_of(one.effect)), fmt::format(" {}: {}", one.about, one.says));
    const auto times = time_lines(sheet);
    if (!times.empty()) print_heading(paper, "Time");
    for (const auto& line : times) paper.line(2, "", line);
    paper.blank();
    paper.line(0, "", std::string(vehicle_first));
    paper.line(0, "", made_words(sheet));
}

}  // namespace

std::string sheet_text(const Sheet& sheet, const Screen& screen) {
    Paper paper(screen);
    print_head(paper, sheet);
    print_facts(paper, sheet);
    print_steps(paper, sheet);
    if (!sheet.circuits.empty()) print_heading(paper, circuits_heading(sheet));
    for (const auto& facts : sheet.circuits) print_circuit(paper, sheet, facts);
    print_chain(paper, sheet);
    print_lists(paper, sheet.plan.job);
    print_end(paper, sheet);
    return paper.take();
}

}  // namespace tapbook
