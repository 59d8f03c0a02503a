// Sums with caps: a thousand notes of one shop or from one sheet weigh no more than a few.
#include "evidence/tally.h"

#include <algorithm>
#include <tuple>

namespace tapbook {
namespace {

// How many cars the looks that count are of. The car that was not told apart may be any of the told ones, so it counts
// only where there is none. REQUIRES looks in the order of their cars, "" first.
template <class Looks, class Counts>
int cars_in(const Looks& looks, Counts counts) {
    int told = 0;
    bool is_any_untold = false;
    std::string_view last;
    for (const auto& look : looks) {
        if (!counts(look)) continue;
        if (look.car.empty()) {
            is_any_untold = true;
        } else if (look.car != last) {
            last = look.car;
            ++told;
        }
    }
    return told == 0 && is_any_untold ? 1 : told;
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
    looks_.push_back({witness, vote.car, vote.method_word, vote.points, vote.measured});
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

// Adds what one shop saw. REQUIRES its looks, in the order of their cars; one at least.
void Tally::add_shop(std::span<const Look> looks, Claim& claim) const {
    int best = 0;
    for (const Look& look : looks) best = std::max(best, look.points);
    const int cars = cars_in(looks, [](const Look&) { return true; });
    const int by_best = cars_in(looks, [&](const Look& look) { return look.method_word == best_method_; });
    ++claim.shops;
    if (!looks.front().witness.empty()) ++claim.known_shops;
    claim.cars += cars;
    claim.measured_cars += cars_in(looks, [](const Look& look) { return look.measured; });
    claim.best_method_cars += by_best;
    if (by_best > 0) ++claim.best_method_shops;
    claim.points += std::min(most_points_of_a_shop, best + cars - 1);
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
    std::vector<Look> looks = looks_;
    std::sort(looks.begin(), looks.end(),
              [](const Look& a, const Look& b) { return std::tie(a.witness, a.car) < std::tie(b.witness, b.car); });
    for (auto first = looks.begin(); first != looks.end();) {
        const auto end =
            std::find_if(first, looks.end(), [&](const Look& look) { return look.witness != first->witness; });
        add_shop({first, end}, claim);
        first = end;
    }
    int paper = 0;
    for (const auto& [source, points] : paper_) paper += points;
    claim.points += std::min(most_points_of_paper, paper);
    claim.grade = claim.cars == 0 ? Grade::paper : claim.cars == 1 ? Grade::one_car : Grade::matched;
    return claim;
}

}  // namespace tapbook
