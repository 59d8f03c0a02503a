// Largest type with which the sheet still takes one page: its words counted as lines of half a page's width, held
// against what a page of each setting took when sheets were printed. The drawing has a page of its own.
#include "report/sheet_chain.h"
#include "report/sheet_html.h"

namespace tapbook {
namespace {

constexpr std::size_t half_width = 58;  // characters on a line of half the page
constexpr std::size_t list_lines = 20;

// How many lines a page takes in each setting. Letter is 18 mm shorter than A4.
struct Room {
    std::size_t roomy, plain, dense;
};

std::size_t lines(std::string_view text) {
    return 1 + text.size() / half_width;
}

std::size_t lines_of_facts(const Sheet& sheet) {
    std::size_t sum = 0;
    for (const auto& fact : sheet_facts(sheet)) {
        sum += 1 + fact.conductors.size();
        for (const auto& line : fact.rests_on) sum += lines(line);
    }
    return sum;
}

std::size_t lines_of_steps(const Sheet& sheet) {
    std::size_t sum = 0;
    for (const auto& step : sheet.plan.steps) {
        sum += lines(step.what) + 2 * step.readings.size();
        for (const auto& caution : step.cautions) sum += lines(caution.title + caution.text);
    }
    return sum;
}

std::size_t lines_of_circuits(const Sheet& sheet) {
    std::size_t sum = 0;
    for (const auto& facts : sheet.circuits) sum += 8 + 3 * facts.tap.hazards.size();
    return sum;
}

}  // namespace

Setting setting_of(const Sheet& sheet, SheetPaper paper) {
    std::size_t sum = lines_of_facts(sheet) + lines_of_steps(sheet) + lines_of_circuits(sheet) + list_lines;
    for (const auto& one : recommendations(sheet)) sum += lines(one.says);
    sum += 2 * chain_stages(sheet.plan.install).size();
    const Room room = paper == SheetPaper::letter ? Room{88, 108, 128} : Room{97, 118, 146};
    if (sum <= room.roomy) return Setting::roomy;
    if (sum <= room.plain) return Setting::plain;
    return sum <= room.dense ? Setting::dense : Setting::finest;
}

}  // namespace tapbook
