// The cars in as many shares as there are lanes, each of neighbours, which look alike most often.
#include "rules/shelf_eligibility.h"

#include <future>
#include <unordered_set>

#include "rules/shelf_lane.h"

namespace tapbook {

struct ConverterJudge::State {
    std::vector<std::unique_ptr<ShelfLane>> lanes;
};

ConverterJudge::ConverterJudge(const std::vector<ShelfConverter>& converters, const std::optional<Amplifier>& amplifier,
                               RuleBook& rules, std::size_t threads)
    : state_(std::make_unique<State>()) {
    auto& lanes = state_->lanes;
    do lanes.push_back(std::make_unique<ShelfLane>(converters, amplifier, rules));
    while (lanes.size() < threads && lanes.front()->works_alone());
}
ConverterJudge::~ConverterJudge() = default;
ConverterJudge::ConverterJudge(ConverterJudge&&) noexcept = default;
ConverterJudge& ConverterJudge::operator=(ConverterJudge&&) noexcept = default;

std::vector<std::vector<SuitedSystem>> ConverterJudge::judge(std::span<const CarFacts> cars) {
    std::vector<std::vector<SuitedSystem>> all(cars.size());
    const auto share = [&](std::size_t lane) {
        const std::size_t lanes = state_->lanes.size();
        for (std::size_t i = cars.size() * lane / lanes; i < cars.size() * (lane + 1) / lanes; ++i)
            all[i] = state_->lanes[lane]->judge(cars[i]);
    };
    std::vector<std::future<void>> others;
    for (std::size_t lane = 1; lane < state_->lanes.size(); ++lane)
        others.push_back(std::async(std::launch::async, share, lane));
    share(0);
    for (auto& other : others) other.get();
    return all;
}

JudgedTaps ConverterJudge::judged() const {
    JudgedTaps all;
    std::unordered_set<std::size_t> kinds;
    for (const auto& lane : state_->lanes) {
        all.taps += lane->taps_looked_at();
        kinds.insert(lane->kinds().begin(), lane->kinds().end());
    }
    all.kinds = static_cast<std::int64_t>(kinds.size());
    return all;
}

}  // namespace tapbook
