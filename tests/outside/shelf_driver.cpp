// What does the core of the shelf say to questions that scripts ask beside other programs? Three kinds, by the first
// word:
//   counts   one question a line on standard input, one answer a line: see answer_counts
//   cover EFFORT   a question in the solver's form on standard input; the own search's answer in the same form
//   time SYSTEMS MODELS KIND SEED   how long a whole plan takes on an invented shop, in ms, and how much of it the
//   choice takes
//   question SYSTEMS MODELS KIND SEED KEEP   the collapsed instance of that shop in the solver's form
#include <fmt/format.h>

#include <chrono>
#include <iostream>
#include <iterator>
#include <random>
#include <sstream>

#include "shelf/distributions.h"
#include "shelf/levels.h"
#include "shelf/planned.h"
#include "solver/solver.h"

using namespace tapbook;

namespace {

// poisson MEAN N | gamma_poisson SHAPE MEAN N: chance, F(N), E[(X - N)+]
// holding CHANCE MEAN | level FILL MEAN: the smallest count, the smallest level, Poisson
// seen SHAPE RATE YEARS LEVEL: fill rate as jobs see it;  gamma SHAPE RATE CHANCE: the value below which it lies
std::string answer_counts(const std::string& line) {
    std::istringstream in(line);
    std::string what;
    double a = 0, b = 0, c = 0, d = 0;
    in >> what >> a >> b >> c >> d;
    const auto told = [](const Counts& counts, double n) {
        const int count = static_cast<int>(n);
        return fmt::format("{} {} {}", counts.exactly(count), counts.at_most(count), counts.short_of(count));
    };
    if (what == "poisson") return told(poisson_counts(a), b);
    if (what == "gamma_poisson") return told(gamma_poisson_counts(a, b), c);
    if (what == "holding") return fmt::format("{}", poisson_counts(b).least_holding(a));
    if (what == "level") return fmt::format("{}", fill_level(poisson_counts(b), a));
    if (what == "seen")
        return fmt::format(
            "{}", fill_rate(DeliveryDemand{.shape = a, .rate = b, .years = c}.as_jobs_see(), static_cast<int>(d)));
    if (what == "gamma") return fmt::format("{}", gamma_quantile(a, b, c));
    return "unknown question";
}

// The question as a shop: a row is a system, its weight the jobs a year.
ShelfInput shop_of(const CoverModel& model) {
    ShelfInput input;
    for (std::size_t c = 0; c < model.costs.size(); ++c) {
        StockModel& one = input.converters.emplace_back();
        one.name = fmt::format("m{:04}", c);
        one.cost_cents = model.costs[c];
    }
    for (const CoverModel::Row& row : model.rows) {
        ShelfSystem& one = input.systems.emplace_back();
        one.label = one.id = fmt::format("s{}", input.systems.size());
        one.forecast_per_year = static_cast<double>(row.weight);
        for (const std::uint32_t column : row.columns)
            one.choices.push_back({.converter = column, .suits = Suits::fits});
    }
    return input;
}

std::string answer_cover(const std::string& text, std::int64_t effort) {
    const CoverQuestion question = question_from(text);
    PlanAsk ask;
    ask.effort = effort;
    ask.models.at_most = question.model.at_most;
    ask.models.budget_cents = question.model.budget;
    if (question.model.at_least_covered) {
        double all = 0;
        for (const CoverModel::Row& row : question.model.rows) all += static_cast<double>(row.weight);
        ask.models.share = static_cast<double>(*question.model.at_least_covered) / all;
    }
    const Groundwork ground = groundwork_of(shop_of(question.model), ask);
    const ChosenModels chosen = choose_models(ground.cover, ask, {});
    SearchAnswer answer{
        .end = chosen.best.proved ? SearchEnd::optimal : SearchEnd::stopped, .chosen = {}, .bound = {}, .says = {}};
    answer.bound = static_cast<double>(chosen.best.bound) / weight_per_job;
    for (const std::uint32_t column : chosen.best.columns) answer.chosen.push_back(ground.cover.converters[column]);
    return answer_text(answer);
}

// Converters and systems with limits of eight kinds, in few standard values or without any order.
ShelfInput invented_shop(int systems, int models, const std::string& kind, std::uint64_t seed) {
    std::mt19937_64 random(seed);
    const auto draw = [&](double most) { return std::uniform_real_distribution<double>(0, most)(random); };
    const bool standard = kind == "standard";
    const auto value = [&] { return standard ? std::floor(draw(5)) : draw(5); };
    ShelfInput input;
    input.recorded_days = 700;
    std::vector<std::vector<double>> offers;
    for (int m = 0; m < models; ++m) {
        StockModel& one = input.converters.emplace_back();
        one.name = fmt::format("model-{:03}", m);
        one.cost_cents = 1500 + static_cast<int>(draw(90)) * 100;
        one.lead_days = 2 + static_cast<int>(draw(10));
        one.pack = 1 + static_cast<int>(draw(2));
        auto& offer = offers.emplace_back();
        for (int limit = 0; limit < 8; ++limit) offer.push_back(value() + 1);
    }
    for (int s = 0; s < systems; ++s) {
        ShelfSystem& one = input.systems.emplace_back();
        one.label = one.id = fmt::format("make/model-{:05}/body/2015/system-{}", s / 2, s % 2);
        const int jobs = static_cast<int>(0.05 / (draw(1) + 0.01));
        for (int job = 0; job < jobs; ++job) one.jobs_days_ago.push_back(static_cast<int>(draw(700)));
        std::vector<double> wants;
        for (int limit = 0; limit < 8; ++limit) wants.push_back(draw(1) < 0.5 ? 0 : value());
        for (std::uint32_t m = 0; m < input.converters.size(); ++m) {
            int short_of = 0;
            for (std::size_t limit = 0; limit < 8; ++limit) short_of += offers[m][limit] < wants[limit] ? 1 : 0;
            if (kind == "random" ? draw(1) < 0.03 : short_of == 0)
                one.choices.push_back(
                    {.converter = m, .suits = draw(1) < 0.1 && kind == "random" ? Suits::care : Suits::fits});
        }
    }
    return input;
}

std::string answer_time(int systems, int models, const std::string& kind, std::uint64_t seed, int keep) {
    const ShelfInput input = invented_shop(systems, models, kind, seed);
    PlanAsk ask;
    ask.models.at_most = keep;
    const auto now = [] { return std::chrono::steady_clock::now(); };
    const auto ms = [](auto from, auto to) { return std::chrono::duration<double, std::milli>(to - from).count(); };
    const auto begin = now();
    const Groundwork ground = groundwork_of(input, ask);
    const auto collapsed = now();
    const ChosenModels chosen = choose_models(ground.cover, ask, {});
    const auto chose = now();
    const ShelfPlan plan = plan_shelf(input, ask);
    const auto end = now();
    return fmt::format(
        "{} masks, {} rows, {} models left; demand and collapse {:.1f} ms, choice with curve {:.1f} ms ({} steps), "
        "whole plan {:.1f} ms; "
        "covers {:.4f}, proved {}, gap {:.5f}, curve proved {}",
        ground.cover.masks, ground.cover.rows.size(), ground.cover.converters.size(), ms(begin, collapsed),
        ms(collapsed, chose), chosen.steps, ms(chose, end), plan.covered_share, plan.proved, plan.gap,
        std::count_if(plan.curve.begin(), plan.curve.end(), [](const CurvePoint& p) { return p.proved; }));
}

// A weight of the cover is brought to thousandths of a job, which answer_cover() can take for jobs.
constexpr std::int64_t weight_unit = 1'000'000;

std::string question_of(int systems, int models, const std::string& kind, std::uint64_t seed, int keep) {
    PlanAsk ask;
    ask.models.at_most = keep;
    CoverModel model = cover_model(groundwork_of(invented_shop(systems, models, kind, seed), ask).cover);
    model.at_most = keep;
    for (CoverModel::Row& row : model.rows) row.weight = std::max<std::int64_t>(1, row.weight / weight_unit);
    return question_text(model, 600);
}

}  // namespace

int main(int count, char** words) {
    const std::vector<std::string> asked(words + 1, words + count);
    if (asked == std::vector<std::string>{"counts"}) {
        for (std::string line; std::getline(std::cin, line);) std::cout << answer_counts(line) << '\n';
    } else if (asked.size() == 2 && asked[0] == "cover") {
        std::cout << answer_cover({std::istreambuf_iterator<char>(std::cin), {}}, std::stoll(asked[1]));
    } else if (asked.size() == 6 && asked[0] == "time") {
        std::cout << answer_time(std::stoi(asked[1]), std::stoi(asked[2]), asked[3], std::stoull(asked[4]),
                                 std::stoi(asked[5]))
                  << '\n';
    } else if (asked.size() == 6 && asked[0] == "question") {
        std::cout << question_of(std::stoi(asked[1]), std::stoi(asked[2]), asked[3], std::stoull(asked[4]),
                                 std::stoi(asked[5]));
    } else {
        std::cerr << "counts | cover EFFORT | time or question SYSTEMS MODELS standard|continuous|random SEED KEEP\n";
        return 2;
    }
}
