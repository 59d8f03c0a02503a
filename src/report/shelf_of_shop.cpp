// Cars that a job or the forecast speaks of are judged with all their notes; the others, of which a large catalog has
// thousands, by their entries alone, which is the more careful answer.
#include "report/shelf_of_shop.h"

#include <fmt/format.h>

#include <algorithm>
#include <chrono>
#include <map>
#include <set>
#include <thread>
#include <unordered_map>

#include "report/small_parts_of_shop.h"

namespace tapbook {
namespace {

constexpr std::size_t cars_at_once = 512;
constexpr unsigned most_threads = 8;

double seconds_since(std::chrono::steady_clock::time_point start) {
    return std::chrono::duration<double>(std::chrono::steady_clock::now() - start).count();
}

// The amplifier that most jobs had; by path among equals.
std::optional<Amplifier> usual_amplifier(const Catalog& catalog, const std::vector<ShopJob>& jobs) {
    std::map<std::string, int> counts;
    for (const auto& job : jobs)
        if (!job.plan.amplifier.empty()) ++counts[job.plan.amplifier];
    const auto most = std::max_element(counts.begin(), counts.end(),
                                       [](const auto& a, const auto& b) { return a.second < b.second; });
    if (most == counts.end()) return std::nullopt;
    for (const auto& one : catalog.amplifiers())
        if (one.path == most->first) return one;
    return std::nullopt;
}

class Filling {
  public:
    Filling(const Catalog& catalog, RuleBook& rules, const std::optional<Amplifier>& amplifier,
            const std::string& today)
        : catalog_(catalog),
          today_(*day_number(today)),
          converters_(catalog.converters()),
          judge_(converters_, amplifier, rules, std::clamp(std::thread::hardware_concurrency(), 1U, most_threads)) {
        for (const auto& converter : converters_) answer_.input.converters.push_back(model_of(converter));
    }

    ShelfAnswer run(const std::vector<ShopJob>& jobs, std::span<const ForecastLine> forecast) {
        std::set<std::string, std::less<>> expected;
        for (const auto& job : jobs) expected.insert(job.vehicle);
        for (const auto& line : forecast) expected.emplace(path_head(line.path, vehicle_depth));
        const auto start = std::chrono::steady_clock::now();
        catalog_.each_layout([&](const CarFacts& car) {
            const bool is_expected = expected.contains(car.vehicle.path) ||
                                     std::any_of(car.also.begin(), car.also.end(),
                                                 [&](const auto& path) { return expected.contains(path); });
            cars_.push_back(is_expected ? catalog_.car(car.vehicle.path, {}) : car);
            with_notes_.push_back(is_expected);
            if (cars_.size() == cars_at_once) add_cars();
        });
        add_cars();
        answer_.sources.read_seconds = seconds_since(start) - answer_.sources.rules_seconds;
        for (const auto& job : jobs) add_job(job);
        add_forecast(forecast);
        const JudgedTaps judged = judge_.judged();
        answer_.sources.taps = judged.taps;
        answer_.sources.kinds = judged.kinds;
        answer_.practice = catalog_.is_practice();
        return std::move(answer_);
    }

  private:
    static StockModel model_of(const ShelfConverter& converter) {
        StockModel model;
        model.name = converter.part.path;
        model.cost_cents = converter.terms.cost_cents;
        model.lead_days = converter.terms.lead_days;
        model.pack = converter.terms.pack.value_or(1);
        model.on_hand = converter.terms.on_hand.value_or(0);
        model.on_order = converter.terms.on_order.value_or(0);
        return model;
    }

    // Those that wait, judged all at once.
    void add_cars() {
        const auto start = std::chrono::steady_clock::now();
        const auto suited = judge_.judge(cars_);
        answer_.sources.rules_seconds += seconds_since(start);
        for (std::size_t i = 0; i < cars_.size(); ++i) add_car(cars_[i], with_notes_[i], suited[i]);
        cars_.clear();
        with_notes_.clear();
    }

    void add_car(const CarFacts& car, bool with_notes, const std::vector<SuitedSystem>& suited) {
        answer_.sources.systems_without_tap += static_cast<int>(car.systems.size() - suited.size());
        (with_notes ? answer_.sources.systems_with_notes : answer_.sources.systems_by_entries) +=
            static_cast<int>(suited.size());
        for (const auto& one : suited) {
            ShelfSystem system;
            system.id = one.system;
            system.label =
                fmt::format("{} {} {} {}, {}", car.vehicle.make, car.vehicle.model, car.vehicle.body,
                            path_tail(car.vehicle.path, vehicle_depth - 1), path_tail(one.system, vehicle_depth));
            for (const auto& choice : one.suiting)
                system.choices.push_back({.converter = static_cast<std::uint32_t>(choice.converter),
                                          .suits = choice.verdict == Verdict::fits ? Suits::fits : Suits::care});
            const std::size_t place = answer_.input.systems.size();
            places_[system.id] = place;
            systems_of_car_[car.vehicle.path].push_back(place);
            for (const auto& other : car.also) {  // jobs and forecasts may name the car by any of its paths
                places_[path_join(other, path_tail(one.system, vehicle_depth))] = place;
                systems_of_car_[other].push_back(place);
            }
            answer_.input.systems.push_back(std::move(system));
        }
    }

    // The system of a job; a car's only one when the job does not say which.
    ShelfSystem* system_of(const ShopJob& job) {
        if (const auto found = places_.find(path_join(job.vehicle, job.system)); found != places_.end())
            return &answer_.input.systems[found->second];
        const auto car = systems_of_car_.find(job.vehicle);
        const bool is_only = job.system == unrecorded_system && car != systems_of_car_.end() && car->second.size() == 1;
        return is_only ? &answer_.input.systems[car->second.front()] : nullptr;
    }

    void add_job(const ShopJob& job) {
        const auto started = day_number(job.started);
        const bool is_direct = job.plan.converter == "direct";
        ShelfSystem* system = is_direct ? nullptr : system_of(job);
        ++(is_direct             ? answer_.sources.jobs_direct
           : !system || !started ? answer_.sources.jobs_left_out
                                 : answer_.sources.jobs);
        if (!started) return;
        const int days = static_cast<int>(today_ - *started);
        const int days_ago = job.state == JobState::closed ? std::max(0, days) : std::min(0, days);
        (system == nullptr ? answer_.input.other_jobs_days_ago : system->jobs_days_ago).push_back(days_ago);
    }

    void add_forecast(std::span<const ForecastLine> forecast) {
        std::vector<Complaint> complaints;
        for (const auto& line : forecast) {
            std::vector<std::size_t> places;
            if (const auto found = places_.find(line.path); found != places_.end()) places = {found->second};
            if (const auto car = systems_of_car_.find(line.path); car != systems_of_car_.end()) places = car->second;
            if (places.empty()) complaints.push_back(unknown(line));
            for (const std::size_t place : places) {
                auto& expected = answer_.input.systems[place].forecast_per_year;
                expected = expected.value_or(0) +
                           static_cast<double>(line.thousandths) / 1000 / static_cast<double>(places.size());
            }
            ++answer_.sources.forecasts;
        }
        if (!complaints.empty()) throw InputRefused(std::move(complaints));
    }

    Complaint unknown(const ForecastLine& line) const {
        std::vector<std::string_view> known;
        for (const auto& [path, place] : places_) known.push_back(path);
        for (const auto& [path, places] : systems_of_car_) known.push_back(path);
        std::sort(known.begin(), known.end());
        const auto near = nearest(line.path, known);
        return {line.place,
                fmt::format("no car or sound system with a speaker or line tap is called \"{}\"", shown(line.path)),
                near ? fmt::format("did you mean {}?", *near) : std::string("tapbook find lists all cars")};
    }

    const Catalog& catalog_;
    std::int64_t today_;
    std::vector<ShelfConverter> converters_;
    ConverterJudge judge_;
    std::vector<CarFacts> cars_;    // read and not judged yet
    std::vector<bool> with_notes_;  // of each of them
    ShelfAnswer answer_;
    std::unordered_map<std::string, std::size_t> places_;
    std::unordered_map<std::string, std::vector<std::size_t>> systems_of_car_;
};

}  // namespace

ShelfAnswer shelf_of_shop(const Catalog& catalog, RuleBook& rules, const std::optional<Amplifier>& amplifier,
                          std::span<const ForecastLine> forecast, const std::string& today) {
    const auto jobs = catalog.jobs();
    const auto chosen = amplifier ? amplifier : usual_amplifier(catalog, jobs);
    ShelfAnswer answer = Filling(catalog, rules, chosen, today).run(jobs, forecast);
    const auto start = std::chrono::steady_clock::now();
    answer.input.small_parts = small_parts_of_shop(catalog, jobs, rules, today);
    answer.sources.rules_seconds += seconds_since(start);
    answer.sources.amplifier = chosen ? chosen->path : std::string();
    answer.sources.amplifier_is_usual = chosen && !amplifier;
    return answer;
}

}  // namespace tapbook
