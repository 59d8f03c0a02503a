// shelf: what to keep, how many, what to order today and why.
#include <fmt/format.h>

#include "cli/install_options.h"
#include "cli/progress_line.h"
#include "solver/solver.h"

namespace tapbook {
namespace {

constexpr std::int64_t most_cents = 100'000'000'00;
constexpr std::int64_t usual_share = 95'000;  // thousandths of a percent

double share_of(std::int64_t thousandths_of_percent) {
    return static_cast<double>(thousandths_of_percent) / 100'000;
}

ModelsAsk models_of(const Parsed& parsed) {
    const auto models = parsed.number("--models", 0, 1, 100);
    const auto share = parsed.number("--share", 3, 1, 100'000);
    const auto budget = parsed.number("--budget", 2, 1, most_cents);
    if ((models ? 1 : 0) + (share ? 1 : 0) + (budget ? 1 : 0) > 1)
        throw UsageError("--models, --share and --budget are three different questions", "ask one of them");
    ModelsAsk ask;
    if (models) ask.at_most = static_cast<int>(*models);
    if (budget) ask.budget_cents = *budget;
    if (!models && !budget) ask.share = share_of(share.value_or(usual_share));
    return ask;
}

PlanAsk ask_of(const Parsed& parsed) {
    PlanAsk ask;
    ask.models = models_of(parsed);
    if (const auto fill = parsed.number("--fill", 3, 1, 99'999)) ask.levels.fill_rate = share_of(*fill);
    ask.levels.lost_job_cents = parsed.number("--lost-job", 2, 1, most_cents);
    if (ask.levels.lost_job_cents && parsed.text("--fill"))
        throw UsageError("--fill and --lost-job are two ways to say how many", "use one of them");
    if (const auto days = parsed.number("--half-life", 0, 1, 36'500))
        ask.demand.half_life_days = static_cast<double>(*days);
    if (parsed.flag("--forecast-adds")) {
        if (!parsed.text("--forecast")) throw UsageError("--forecast-adds needs --forecast FILE");
        ask.demand.forecast = ForecastUse::adds;
    }
    if (const auto seed = parsed.number("--seed", 0, 0, 1'000'000'000)) ask.seed = static_cast<std::uint64_t>(*seed);
    if (const auto limit = parsed.number("--time-limit", 3, 1, 3'600'000))
        ask.time_limit_seconds = static_cast<double>(*limit) / 1000;
    return ask;
}

std::string known_model(const ShelfInput& input, const std::string& typed) {
    std::vector<std::string_view> names;
    for (const auto& converter : input.converters) names.push_back(converter.name);
    for (const auto name : names)
        if (name == typed) return typed;
    const auto near = nearest(typed, names);
    throw NoAnswer(fmt::format("there is no converter \"{}\"", shown(typed)),
                   near ? fmt::format("did you mean {}?", *near) : "tapbook shelf count lists them");
}

// "without=MODEL" or "with=MODEL" put into the ask.
PlanAsk changed_ask(const ShelfInput& input, PlanAsk ask, const std::string& change) {
    const auto sign = change.find('=');
    const std::string word = change.substr(0, sign);
    if (sign == std::string::npos || (word != "with" && word != "without"))
        throw UsageError(fmt::format("--what-if does not know \"{}\"", shown(change)), "without=MODEL or with=MODEL");
    (word == "with" ? ask.models.with : ask.models.without).push_back(known_model(input, change.substr(sign + 1)));
    return ask;
}

void plan(ShelfAnswer& answer, const Parsed& parsed) {
    const auto explain = parsed.text("--explain"), change = parsed.text("--what-if");
    if (explain) known_model(answer.input, *explain);
    const PlanAsk changed = change ? changed_ask(answer.input, answer.ask, *change) : answer.ask;
    const OtherSearch search = solver_search(installed_solver());
    answer.plan = plan_shelf(answer.input, answer.ask, search);
    if (answer.plan.state != ShelfState::planned) return;
    if (explain) answer.explained = explain_model(answer.input, answer.ask, answer.plan, *explain, search);
    if (change) {
        answer.change_words = *change;
        answer.change = plan_change(answer.input, answer.ask, answer.input, changed, search);
    }
}

}  // namespace

Exit run_shelf(Session& session, const Parsed& parsed) {
    const PlanAsk ask = ask_of(parsed);
    std::vector<ForecastLine> forecast;
    if (const auto file = parsed.text("--forecast")) forecast = read_forecast(read_file(*file), *file);
    session.database = reading_place(session);
    Catalog catalog = Catalog::open(session.database, Access::read);
    ProgressLine line("judged");
    catalog.tell_progress(line.listener());
    RuleBook rules = rules_beside(session.database, RuleCases::left_out);
    std::optional<Amplifier> amplifier;
    if (const auto words = parsed.text("--amp")) amplifier = known_amplifier(catalog, *words);
    ShelfAnswer answer = shelf_of_shop(catalog, rules, amplifier, forecast, session.today);
    answer.ask = ask;
    const auto start = std::chrono::steady_clock::now();
    try {
        plan(answer, parsed);
    } catch (const ShelfRefused& refused) {
        throw UsageError(refused.what());
    }
    answer.sources.plan_seconds = std::chrono::duration<double>(std::chrono::steady_clock::now() - start).count();
    if (const auto file = parsed.text("--svg")) {
        const std::string drawing = shelf_curve_svg(answer);
        const FileToWrite one{*file, drawing};
        write_files({&one, 1}, Existing::replace);
    }
    session.answer([&] { return shelf_text(answer, session.screen); }, [&] { return shelf_json(answer); });
    const bool is_good = answer.plan.state == ShelfState::planned && answer.plan.reached.value_or(true);
    return is_good ? Exit::done : Exit::answer_is_no;
}

}  // namespace tapbook
