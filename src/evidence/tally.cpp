// Sums with caps: a thousand notes of one shop or from one sheet weigh no more than a few.
#include "evidence/tally.h"

#include <algorithm>

namespace tapbook {
namespace {

// The car that was not told apart may be any of the told ones, so it counts only where there is none.
int count_of(const std::set<std::string_view>& cars) {
    const int all = static_cast<int>(cars.size());
    return cars.contains("") ? std::max(1, all - 1) : all;
}

}  // namespace

void Tally::add(const Vote& vote, std::string_view witness) {
    value_ = vote.value;
    notes_.push_back(vote.note);
    keep_best(vote);
    if (!vote.looked_at) {
        int& points = paper_[vote.source];
        points = std::max(points, vote.points);
        return;
    }
    Shop& shop = shops_[witness];
    shop.best = std::max(shop.best, vote.points);
    shop.cars.insert(vote.car);
    if (vote.measured) shop.measured_cars.insert(vote.car);
    shop.cars_by_method[vote.method_word].insert(vote.car);
    if (!vote.year) return;
    first_year_ = std::min(*vote.year, first_year_.value_or(*vote.year));
    last_year_ = std::max(*vote.year, last_year_.value_or(*vote.year));
}

// Among equal points the word that comes first in the alphabet, so that order does not matter; looked at before paper.
void Tally::keep_best(const Vote& vote) {
    const int rank = 2 * vote.points + (vote.looked_at ? 1 : 0);
    if (rank < best_points_ || (rank == best_points_ && vote.method_word >= best_method_)) return;
    best_points_ = rank;
    best_method_ = vote.method_word;
}

Claim Tally::claim() const {
    Claim claim;
    claim.value = value_;
    std::vector<RecordId> notes = notes_;
    std::sort(notes.begin(), notes.end());
    claim.notes = static_cast<int>(std::unique(notes.begin(), notes.end()) - notes.begin());
    claim.first_year = first_year_;
    claim.last_year = last_year_;
    claim.best_method = best_method_;
    for (const auto& [id, shop] : shops_) {
        const int cars = count_of(shop.cars);
        ++claim.shops;
        if (!id.empty()) ++claim.known_shops;
        claim.cars += cars;
        claim.measured_cars += count_of(shop.measured_cars);
        if (const auto found = shop.cars_by_method.find(best_method_); found != shop.cars_by_method.end()) {
            claim.best_method_cars += count_of(found->second);
            ++claim.best_method_shops;
        }
        claim.points += std::min(most_points_of_a_shop, shop.best + cars - 1);
    }
    int paper = 0;
    for (const auto& [source, points] : paper_) paper += points;
    claim.points += std::min(most_points_of_paper, paper);
    claim.grade = claim.cars == 0 ? Grade::paper : claim.cars == 1 ? Grade::one_car : Grade::matched;
    return claim;
}

}  // namespace tapbook
