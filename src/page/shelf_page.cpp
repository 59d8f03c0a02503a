// Which converters are kept, how many of each, what is ordered today, and what is lost without one? The same answer and
// the same sentences as `tapbook shelf`, with the curve as a drawing.
#include <fmt/format.h>

#include <algorithm>
#include <atomic>

#include "page/page_html.h"
#include "page/pages.h"
#include "solver/solver.h"

namespace tapbook {
namespace {

// The solver is asked only where the own search ends without a proof; whoever waits at a page waits no longer.
constexpr double page_time_limit_seconds = 2;
constexpr double usual_share = 0.95;
constexpr int most_models_asked = 10;

PlanAsk asked_plan(const PageRequest& request) {
    PlanAsk ask;
    ask.time_limit_seconds = page_time_limit_seconds;
    const std::string typed = request.query.text("models").value_or("");
    if (typed.empty()) {
        ask.models.share = usual_share;
        return ask;
    }
    const auto number = scaled(typed, 0);
    const auto* models = std::get_if<std::int64_t>(&number);
    if (models == nullptr || *models < 1 || *models > most_models_asked)
        throw PageRefused(400, fmt::format("models: \"{}\" is not from 1 to {}", shown(typed), most_models_asked),
                          "choose one of the list");
    ask.models.at_most = static_cast<int>(*models);
    return ask;
}

// One plan at a time: with thousands of cars it takes half a minute, and the other threads are for everybody else.
class Turn {
  public:
    Turn() {
        if (taken_.test_and_set())
            throw PageRefused(503, "The shelf is being worked out for another phone.", "Look again in a minute.");
    }
    ~Turn() { taken_.clear(); }
    Turn(const Turn&) = delete;
    Turn& operator=(const Turn&) = delete;

  private:
    static inline std::atomic_flag taken_;
};

ShelfAnswer shelf_answer(PageDesk& desk, const PageRequest& request) {
    const PlanAsk ask = asked_plan(request);
    const Turn turn;
    ShelfAnswer answer = shelf_of_shop(desk.catalog(), desk.rules(), {}, {}, request.today);
    answer.ask = ask;
    try {
        answer.plan = plan_shelf(answer.input, answer.ask, solver_search(installed_solver()));
    } catch (const ShelfRefused& refused) {
        throw PageRefused(409, upper_first(refused.what()), "The stock file says how many lie there.");
    }
    return answer;
}

void write_question(Html& html, const PageRequest& request) {
    FormChoices choices = {{"", "the fewest for 95 % of the jobs"}};
    for (int models = 1; models <= most_models_asked; ++models)
        choices.emplace_back(std::to_string(models), models == 1 ? "the best one" : fmt::format("the best {}", models));
    html.begin("form", {{"method", "get"}, {"action", "/shelf"}, {"class", "narrow long"}});
    write_select(html, "models", "Models", choices, request.query.text("models").value_or(""));
    html.element("button", "Show", {{"type", "submit"}}).end().line();
}

void write_model(Html& html, const ShelfAnswer& answer, std::size_t place) {
    const KeptModel& model = answer.plan.models[place];
    html.begin("article", {{"class", "card stacked"}}).begin("div", {{"class", "head"}});
    html.element("h3", fmt::format("{} x {}", model.order, model.name));
    if (model.order > 0) html.element("b", "ORDER", {{"class", "verdict care"}});
    html.end();
    html.element("p", order_words(model), {{"class", "line"}});
    html.element("p", suits_words(model), {{"class", "quiet"}});
    if (place < answer.plan.lost.size()) write_fact(html, "without it", without_words(answer, answer.plan.lost[place]));
    const std::string book = model.order > 0 ? "order" : "";
    const std::string pieces = model.order > 0 ? std::to_string(model.order) : std::string();
    write_link(html, address("/shelf/count/" + encoded_path(model.name), {{"booking", book}, {"pieces", pieces}}),
               model.order > 0 ? "Book the order" : "Book", "more");
    html.end().line();
}

void write_models(Page& page, const ShelfAnswer& answer) {
    Html& html = page.html();
    html.begin("section").element("h2", orders_words(answer.plan));
    std::size_t place = 0;
    for (; place < answer.plan.models.size() && !page.is_full(); ++place) write_model(html, answer, place);
    if (place < answer.plan.models.size())
        html.element("p", fmt::format("{} more do not fit here.", answer.plan.models.size() - place),
                     {{"class", "quiet"}});
    html.end().line();
}

void write_small_parts(Page& page, const ShelfAnswer& answer) {
    if (answer.plan.small_parts.empty()) return;
    Html& html = page.html();
    html.begin("section").element("h2", small_orders_words(answer.plan));
    for (const auto& part : ordered_first(answer.plan)) {
        if (page.is_full()) break;
        html.begin("article", {{"class", "card stacked"}}).begin("div", {{"class", "head"}});
        html.element("h3", fmt::format("{} x {}", part.order, part.label));
        if (part.order > 0) html.element("b", "ORDER", {{"class", "verdict care"}});
        html.end().element("p", small_part_words(part), {{"class", "line"}});
        write_link(html, address("/shelf/count/" + encoded_path(part.name)), "Book", "more");
        html.end().line();
    }
    html.end().line();
}

void write_cover(Html& html, const ShelfAnswer& answer) {
    html.begin("section", {{"class", "card stacked"}});
    const auto lines = covered_lines(answer);
    for (std::size_t i = 0; i < lines.size(); ++i) write_fact(html, i == 0 ? "covered" : "", lines[i]);
    write_fact(html, "lost", lost_jobs_words(answer.plan));
    write_fact(html, "solver", solver_words(answer.plan));
    html.end().line();
}

void write_curve(Page& page, const ShelfAnswer& answer) {
    Html& html = page.html();
    html.begin("section").element("h2", "So many models cover:");
    html.begin("div", {{"class", "drawing curve"}}).raw(shelf_curve_svg(answer)).end().line();
    html.begin("ol", {{"class", "plain points"}}).line();
    for (const CurvePoint& point : answer.plan.curve) {
        if (page.is_full()) break;
        if (point.converters.empty()) continue;
        html.begin("li").element("b", fmt::format("{}: {}", point.models, share_words(point.covered_share)));
        html.text(" ").element("span", curve_words(answer, point), {{"class", "quiet"}}).end().line();
    }
    html.end().end().line();
}

PageAnswer shelf_page(PageDesk& desk, const PageRequest& request) {
    const ShelfAnswer answer = shelf_answer(desk, request);
    Page page(request, answer.practice, "What to keep on the shelf", PagePart::shelf);
    Html& html = page.html();
    html.element("h1", "What to keep on the shelf").line();
    html.begin("p", {{"class", "ways"}});
    write_link(html, "/shelf/count", "Count the shelf", "way");
    html.end().line();
    if (answer.plan.state != ShelfState::planned) {
        write_telling(html, Telling::wrong, upper_first(shelf_state_words(answer.plan.state)));
        write_small_parts(page, answer);
        return page.answer();
    }
    write_models(page, answer);
    write_small_parts(page, answer);
    write_cover(html, answer);
    write_question(html, request);
    write_curve(page, answer);
    html.begin("section", {{"class", "stacked"}});
    write_fact(html, "rests on", rests_on_words(answer));
    write_fact(html, "judged", judged_words(answer.sources));
    if (const std::string time = time_words(answer.sources); !time.empty()) write_fact(html, "took", time);
    for (const auto& name : answer.plan.without_cost) write_fact(html, "care", no_cost_words(name));
    html.end().line();
    return page.answer();
}

constexpr Route list[] = {{PageMethod::get, "/shelf", RouteFor::reader, shelf_page}};

}  // namespace

std::span<const Route> shelf_routes() {
    return list;
}

}  // namespace tapbook
