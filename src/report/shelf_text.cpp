// What to order stands first, then why: each model with what it covers, what is lost without it, and on what it rests.
#include <fmt/format.h>

#include <algorithm>

#include "report/shelf_words.h"
#include "report/small_parts_words.h"

namespace tapbook {

static_assert(table_is_sound<ShelfState>());
static_assert(table_is_sound<ModelPlace>());

namespace {

constexpr int bar_width = 30;

void print_order(Paper& paper, const KeptModel& model) {
    paper.line(2, fmt::format("{:>3} x {:<24} ", model.order, model.name), order_words(model), Weight::strong);
}

void print_orders(Paper& paper, const ShelfAnswer& answer) {
    paper.line(0, "", orders_words(answer.plan));
    for (const auto& model : answer.plan.models) print_order(paper, model);
}

void print_small_part(Paper& paper, const Reorder& part) {
    paper.line(2, fmt::format("{:>3} x {:<24} ", part.order, part.label), small_part_words(part), Weight::strong);
}

void print_small_orders(Paper& paper, const ShelfPlan& plan) {
    if (plan.small_parts.empty()) return;
    paper.line(0, "", small_orders_words(plan));
    for (const auto& part : ordered_first(plan))
        if (is_ordered(part)) print_small_part(paper, part);
}

// Below what is ordered and why: nobody has to do anything about these.
void print_small_parts_enough(Paper& paper, const ShelfPlan& plan) {
    if (std::ranges::all_of(plan.small_parts, is_ordered)) return;
    paper.line(0, "", "Small parts that need no order:");
    for (const auto& part : plan.small_parts)
        if (!is_ordered(part))
            paper.line(2, fmt::format("{:<24} ", part.label), small_part_words(part), Weight::strong);
}

void print_models(Paper& paper, const ShelfAnswer& answer) {
    paper.line(0, "", "Why:");
    for (std::size_t i = 0; i < answer.plan.models.size(); ++i) {
        const KeptModel& model = answer.plan.models[i];
        paper.line(2, fmt::format("{:<24} ", model.name), suits_words(model), Weight::strong);
        if (i >= answer.plan.lost.size()) continue;
        paper.line(4, "without it ", without_words(answer, answer.plan.lost[i]));
    }
}

void print_cover(Paper& paper, const ShelfAnswer& answer) {
    const auto lines = covered_lines(answer);
    for (std::size_t i = 0; i < lines.size(); ++i)
        paper.line(0, i == 0 ? "covered " : "        ", lines[i], i == 0 ? Weight::strong : Weight::plain);
    paper.line(0, "lost    ", lost_jobs_words(answer.plan));
    if (const std::string words = solver_words(answer.plan); !words.empty()) paper.line(0, "solver  ", words);
}

void print_curve(Paper& paper, const ShelfAnswer& answer) {
    paper.line(0, "", "So many models cover:");
    for (const CurvePoint& point : answer.plan.curve) {
        if (point.converters.empty()) continue;
        const auto filled = static_cast<std::size_t>(std::clamp(point.covered_share, 0.0, 1.0) * bar_width + 0.5);
        paper.line(2,
                   fmt::format("{:>2} {:<{}} {:>7} ", point.models, std::string(filled, '#'), bar_width,
                               share_words(point.covered_share)),
                   curve_words(answer, point));
    }
}

void print_explained(Paper& paper, const ShelfAnswer& answer, const ModelExplained& model) {
    const auto name_of = [&](std::size_t converter) { return answer.input.converters[converter].name; };
    paper.line(0, fmt::format("{}  ", model.name), spaced(word_of(model.place)), Weight::strong);
    paper.line(2, "suits    ",
               fmt::format("{} of the jobs, {} that nothing else here does", share_words(model.covers_share),
                           share_words(model.only_share)));
    if (model.place == ModelPlace::kept)
        paper.line(2, "without  ", fmt::format("{} lost", share_words(model.adds_share)));
    else if (model.place != ModelPlace::suits_nothing)
        paper.line(2, "with it  ",
                   fmt::format("{} more beside the kept ones; {} covered by the best plan of this size that has it",
                               share_words(model.adds_share), share_words(model.forced_share)));
    if (model.beaten_by)
        paper.line(2, "beaten by", fmt::format(" {}: does all it does and costs no more", name_of(*model.beaten_by)));
    std::string instead;
    for (const std::size_t one : model.instead)
        instead += fmt::format("{}{}", instead.empty() ? "" : ", ", name_of(one));
    if (!instead.empty()) paper.line(2, "instead  ", instead);
    if (model.joins_at) paper.line(2, "joins at ", fmt::format("{} models", *model.joins_at));
    if (!model.systems.empty()) paper.line(2, "cars     ", systems_words(answer, model.systems));
}

void print_change(Paper& paper, const ShelfAnswer& answer, const PlanChange& change) {
    paper.line(0, fmt::format("what if {}  ", answer.change_words),
               fmt::format("{} -> {} covered, order {} -> {}", share_words(change.before.covered_share),
                           share_words(change.after.covered_share), cents_words(change.before.order_cents),
                           cents_words(change.after.order_cents)),
               Weight::strong);
    for (const ModelChange& model : change.models)
        paper.line(2, fmt::format("{:<24} ", model.name),
                   fmt::format("keep {} -> {}, order {} -> {}", model.keep_before, model.keep_after, model.order_before,
                               model.order_after));
    if (!change.lost.empty()) paper.line(2, "lost  ", systems_words(answer, change.lost));
    if (!change.gained.empty()) paper.line(2, "gained", fmt::format(" {}", systems_words(answer, change.gained)));
}

}  // namespace

std::string shelf_text(const ShelfAnswer& answer, const Screen& screen) {
    Paper paper(screen);
    paper.heading(fmt::format("What to keep on the shelf{}", answer.practice ? "   [practice]" : ""));
    if (answer.plan.state != ShelfState::planned) {
        paper.line(0, "", shelf_state_words(answer.plan.state));
        print_small_orders(paper, answer.plan);
        print_small_parts_enough(paper, answer.plan);
        return paper.take();
    }
    print_orders(paper, answer);
    print_small_orders(paper, answer.plan);
    print_models(paper, answer);
    print_cover(paper, answer);
    if (answer.explained) print_explained(paper, answer, *answer.explained);
    if (answer.change) print_change(paper, answer, *answer.change);
    print_curve(paper, answer);
    print_small_parts_enough(paper, answer.plan);
    paper.line(0, "rests on ", rests_on_words(answer));
    paper.line(0, "judged  ", judged_words(answer.sources));
    if (const std::string time = time_words(answer.sources); !time.empty()) paper.line(0, "took    ", time);
    for (const auto& name : answer.plan.without_cost) paper.line(0, "care    ", no_cost_words(name));
    return paper.take();
}

}  // namespace tapbook
