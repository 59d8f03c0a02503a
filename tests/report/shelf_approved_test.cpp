// Every text of the shelf as somebody has read and accepted it: what to order and why, small parts, why there is no
// plan, one model explained, a change, the curve as a drawing, the list for counting.
#include <fmt/format.h>

#include <algorithm>

#include "approved.h"
#include "report/report.h"
#include "report/shelf_report.h"
#include "report/stock_report.h"

using namespace tapbook;
using approval::approve;

namespace {

ShelfSystem system_of(const std::string& id, double jobs, std::vector<Choice> choices) {
    ShelfSystem one;
    one.id = id;
    one.label = id;
    std::replace(one.label.begin(), one.label.end(), '/', ' ');
    one.forecast_per_year = jobs;
    one.choices = std::move(choices);
    return one;
}

StockModel model_of(const std::string& name, std::optional<std::int64_t> cents, int lead_days, int pack, int on_hand) {
    return {.name = name, .cost_cents = cents, .lead_days = lead_days, .pack = pack, .on_hand = on_hand, .on_order = 0};
}

SmallPart small(const std::string& name, const std::string& label, int on_hand) {
    SmallPart part;
    part.name = name;
    part.label = label;
    part.on_hand = on_hand;
    part.lead_days = 5;
    part.cost_cents = 95;
    return part;
}

std::vector<SmallPart> small_parts() {
    SmallPart tap = small("tap-mini", "fuse tap, mini blade", 1), cable = small("cable-21", "main cable 21 mm2", 40),
              relay = small("relay", "relay with diode", 2), lead = small("lead", "plug-in lead", 0);
    tap.per_job = 1;
    tap.pack = 10;
    tap.known_by = UseKnownBy::stated;
    cable.unit = "m";
    cable.known_by = UseKnownBy::plans;
    cable.recorded_days = 365;
    cable.pack = 25;
    for (int day = 20; day < 365; day += 40) cable.used.push_back({day, 6});
    relay.known_by = UseKnownBy::plans;
    lead.known_by = UseKnownBy::bookings;
    lead.cost_cents.reset();
    lead.recorded_days = 365;
    lead.on_order = 1;
    for (int day = 5; day < 365; day += 30) lead.used.push_back({day, 1});
    return {tap, cable, relay, lead};
}

ShelfInput shop() {
    ShelfInput input;
    input.converters = {model_of("tarrow-two", 2450, 3, 1, 1), model_of("tarrow-four", 4600, 3, 2, 0),
                        model_of("ostrin-strong-four", 9800, 14, 1, 0), model_of("ostrin-odd", std::nullopt, 7, 1, 3)};
    const auto fits = [](std::uint32_t converter) { return Choice{converter, Suits::fits}; };
    const auto care = [](std::uint32_t converter) { return Choice{converter, Suits::care}; };
    input.systems = {system_of("merrow/tallis/sedan/2014/base", 14, {fits(0), fits(1), care(2)}),
                     system_of("merrow/tallis/sedan/2014/premium", 9, {care(2)}),
                     system_of("merrow/vessel/wagon/2018/base", 11, {fits(1), fits(2)}),
                     system_of("pellan/brisk/hatchback/2011/base", 6, {fits(1)}),
                     system_of("pellan/brisk/hatchback/2011/premium", 4, {fits(3)}),
                     system_of("pellan/corvel/van/2020/base", 2, {})};
    input.small_parts = small_parts();
    return input;
}

ShelfAnswer answer_for(const ShelfInput& input, const ModelsAsk& models) {
    ShelfAnswer answer;
    answer.input = input;
    answer.ask.models = models;
    answer.plan = plan_shelf(input, answer.ask);
    answer.sources.forecasts = 6;
    answer.sources.systems_with_notes = 6;
    return answer;
}

ModelsAsk share(double wanted) {
    ModelsAsk models;
    models.share = wanted;
    return models;
}

ModelsAsk number(int wanted) {
    ModelsAsk models;
    models.at_most = wanted;
    return models;
}

// At the width of a plain terminal and of a wide one.
void approve_text(const std::string& name, const ShelfAnswer& answer) {
    for (const int width : {80, 120})
        approve(fmt::format("{}-{}", name, width), shelf_text(answer, {Colours::none, width}));
}

StockRow row_of(const std::string& part, const Terms& terms) {
    StockRow row;
    row.part = part;
    row.maker = terms.small ? "" : "Tarrow";
    row.name = terms.small ? terms.small->name : "Two";
    row.terms = terms;
    row.movements = {{1, part, MovementKind::filed, 6, 0, "2026-04-02", {}, false, {}},
                     {2, part, MovementKind::used, -1, 0, "2026-05-02", 5, false, "for the bay"}};
    return row;
}

}  // namespace

TEST_CASE("what to order today stands first, then why, then on what it rests") {
    ShelfAnswer answer = answer_for(shop(), share(0.9));
    answer.practice = true;
    answer.sources.systems_by_entries = 1240;
    answer.sources.systems_without_tap = 2;
    answer.sources.jobs_direct = 3;
    answer.sources.jobs_left_out = 1;
    answer.sources.amplifier = "merrow-floor-four";
    answer.sources.amplifier_is_usual = true;
    answer.sources.read_seconds = 3.2;
    answer.sources.rules_seconds = 16.1;
    answer.sources.plan_seconds = 0.7;
    approve_text("shelf-orders", answer);
    approve("shelf-json", shelf_json(answer));
}

TEST_CASE("a share that cannot be reached is said, and so is money that ends") {
    ShelfInput input = shop();
    approve_text("shelf-share-not-reached", answer_for(input, share(1)));
    ModelsAsk budget;
    budget.budget_cents = 12'000;
    approve_text("shelf-budget", answer_for(input, budget));
}

TEST_CASE("a choice that is not proved says by how much another one might be better") {
    ShelfAnswer answer = answer_for(shop(), number(2));
    answer.plan.proved = false;
    answer.plan.gap = 0.0123;
    answer.plan.other_search = SearchEnd::killed;
    answer.plan.other_search_says = "tapbook-solve was ended by signal 9";
    answer.plan.curve[2].proved = false;
    answer.plan.curve[2].bound_share += 0.0123;
    approve_text("shelf-not-proved", answer);
    approve("shelf-curve-not-proved-svg", shelf_curve_svg(answer));
}

TEST_CASE("the curve as a drawing") {
    approve("shelf-curve-svg", shelf_curve_svg(answer_for(shop(), share(0.9))));
    approve("shelf-curve-empty-svg", shelf_curve_svg(ShelfAnswer()));
}

TEST_CASE("without a plan the shelf says why, and small parts are answered all the same") {
    std::string text;
    for (const auto& state : words_of<ShelfState>()) {
        if (state.value == ShelfState::planned) continue;
        ShelfAnswer answer = answer_for(shop(), number(1));
        answer.plan.state = state.value;
        text += shelf_text(answer, {Colours::none, 80}) + "\n";
    }
    approve("shelf-no-plan-80", text);
}

TEST_CASE("of a model it is told why it is kept, beaten or left out") {
    for (const std::string name : {"tarrow-four", "tarrow-two", "ostrin-odd"}) {
        ShelfAnswer answer = answer_for(shop(), number(2));
        answer.explained = explain_model(answer.input, answer.ask, answer.plan, name);
        approve_text("shelf-explained-" + name, answer);
    }
}

TEST_CASE("a change shows what is gained, lost and paid") {
    ShelfAnswer answer = answer_for(shop(), number(2));
    PlanAsk changed = answer.ask;
    changed.models.without = {"tarrow-four"};
    answer.change_words = "without=tarrow-four";
    answer.change = plan_change(answer.input, answer.ask, answer.input, changed);
    approve_text("shelf-changed", answer);
}

TEST_CASE("the list for counting shows small parts by their names, and cable in metres") {
    const Terms counted{2450, 3, 1, 5, 2},
        cable{310, 6, 25, 18, {}, SmallTerms{SmallKind::main_cable, "main cable 21 mm2", {}, {}, "21mm2"}};
    const std::vector<StockRow> rows = {row_of("cable-21", cable), row_of("tarrow-two", counted),
                                        row_of("tarrow-four", Terms())};
    for (const int width : {80, 120})
        approve(fmt::format("stock-list-{}", width), stock_text(rows, true, {Colours::none, width}));
    approve("stock-part-80", stock_part_text(rows[0], {Colours::none, 80}));
    approve("stock-json", stock_json(rows));
    StockReport report{rows[0], rows[0].terms, rows[0].movements.back(), true};
    report.before.on_hand = 19;
    approve("stock-booking-80", booking_text(report, {Colours::none, 80}));
    report.movement.reset();
    approve("stock-booking-nothing-80", booking_text(report, {Colours::none, 80}));
}
