// Which question about coverage does a catalog's shelf come to? `shelf_question CATALOG KEEP TODAY`: the collapsed
// instance for the best KEEP models, in the solver's form on standard output, for scripts that ask other programs; how
// long the own search takes for it on standard error, in seconds, and whether it proves its answer.
#include <fmt/format.h>

#include <algorithm>
#include <chrono>
#include <cstdio>
#include <string>

#include "report/shelf_of_shop.h"
#include "shelf/planned.h"
#include "solver/solver.h"

using namespace tapbook;

int main(int count, char** words) {
    if (count != 4) {
        fmt::print(stderr, "shelf_question CATALOG KEEP TODAY\n");
        return 2;
    }
    try {
        const Catalog catalog = Catalog::open(words[1], Access::read);
        RuleBook rules = RuleBook::shipped(RuleCases::left_out);
        const ShelfAnswer answer = shelf_of_shop(catalog, rules, std::nullopt, {}, words[3]);
        PlanAsk ask;
        ask.models.at_most = std::stoi(words[2]);
        const auto start = std::chrono::steady_clock::now();
        const Groundwork ground = groundwork_of(answer.input, ask);
        const auto collapsed = std::chrono::steady_clock::now();
        const ChosenModels chosen = choose_models(ground.cover, ask, {});
        const auto end = std::chrono::steady_clock::now();
        CoverModel model = cover_model(ground.cover);
        model.at_most = ask.models.at_most;
        // Thousandths of a job, so that other programs need not reckon with billions.
        for (CoverModel::Row& row : model.rows) row.weight = std::max<std::int64_t>(1, row.weight / 1'000'000);
        fmt::print("{}", question_text(model, 600));
        const auto seconds = [](auto from, auto to) { return std::chrono::duration<double>(to - from).count(); };
        fmt::print(stderr,
                   "{{\"systems\": {}, \"converters\": {}, \"masks\": {}, \"rows\": {}, \"columns\": {}, \"taps\": {}, "
                   "\"kinds\": {}, \"reading\": {:.3f}, \"rules\": {:.3f}, \"collapse\": {:.4f}, \"choice\": {:.4f}, "
                   "\"proved\": {}, \"weight\": {}}}\n",
                   answer.input.systems.size(), answer.input.converters.size(), ground.cover.masks,
                   ground.cover.rows.size(), ground.cover.costs.size(), answer.sources.taps, answer.sources.kinds,
                   answer.sources.read_seconds, answer.sources.rules_seconds, seconds(start, collapsed),
                   seconds(collapsed, end), chosen.best.proved, chosen.best.weight);
    } catch (const std::exception& error) {
        fmt::print(stderr, "shelf_question: {}\n", error.what());
        return 1;
    }
}
