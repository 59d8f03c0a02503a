// Strike what a shop took back, count what is left, then decide in the order the header states.
#include "evidence/standing.h"

#include <algorithm>
#include <map>
#include <tuple>

#include "evidence/tally.h"

namespace tapbook {
namespace {

auto age(const Vote& vote) {
    return std::tie(vote.date, vote.turn, vote.note, vote.value);
}

// A note that only claims to be of a shop must not strike that shop's own: vouched and unvouched stay apart.
auto car_in_shop(const Vote& vote) {
    return std::tuple(vote.shop, vote.vouched, vote.car);
}

// Copied notes and cars not told apart contradict nobody.
bool may_contradict(const Vote& vote) {
    return vote.looked_at && !vote.car.empty();
}

struct Sifted {
    std::vector<const Vote*> live;
    std::vector<Strike> struck;
};

Sifted sift(std::span<const Vote> votes) {
    std::map<std::tuple<std::string, bool, std::string>, const Vote*> newest;
    for (const Vote& vote : votes) {
        if (!may_contradict(vote)) continue;
        const Vote*& last = newest[car_in_shop(vote)];
        if (last == nullptr || age(*last) < age(vote)) last = &vote;
    }
    Sifted sifted;
    for (const Vote& vote : votes) {
        const Vote* last = may_contradict(vote) ? newest.at(car_in_shop(vote)) : nullptr;
        if (last != nullptr && last->value != vote.value)
            sifted.struck.push_back({vote.note, vote.value, last->note, vote.date});
        else
            sifted.live.push_back(&vote);
    }
    std::sort(sifted.struck.begin(), sifted.struck.end(), [](const Strike& a, const Strike& b) {
        return std::tie(a.date, a.note, a.value) < std::tie(b.date, b.note, b.value);
    });
    const auto same = [](const Strike& a, const Strike& b) { return a.note == b.note && a.value == b.value; };
    sifted.struck.erase(std::unique(sifted.struck.begin(), sifted.struck.end(), same), sifted.struck.end());
    return sifted;
}

bool was_looked_at(const Claim& claim) {
    return claim.cars > 0;
}

bool leads(const Claim& a, const Claim& b) {
    return std::tuple(!was_looked_at(a), -a.points, -a.cars, -a.shops, std::string_view(a.value)) <
           std::tuple(!was_looked_at(b), -b.points, -b.cars, -b.shops, std::string_view(b.value));
}

std::vector<Claim> claims_of(const std::vector<const Vote*>& votes, const KnownShops& known) {
    std::map<std::string, Tally> tallies;
    for (const Vote* vote : votes) {
        const bool is_known = vote->vouched && known.contains(vote->shop);
        tallies[vote->value].add(*vote, is_known ? vote->shop : std::string());
    }
    std::vector<Claim> claims;
    for (const auto& [value, tally] : tallies) claims.push_back(tally.claim());
    std::sort(claims.begin(), claims.end(), leads);
    return claims;
}

constexpr int points_that_contest = 3;

// Does the next value leave the leading one open?
bool is_contested(const std::vector<Claim>& claims) {
    if (claims.size() < 2) return false;
    const Claim &leading = claims[0], &next = claims[1];
    const bool ties = next.points == leading.points && was_looked_at(next) == was_looked_at(leading);
    return ties || next.points >= points_that_contest;
}

bool is_among_years_seen(const Claim& claim, int year) {
    return claim.first_year && *claim.first_year <= year && year <= *claim.last_year;
}

Grade one_lower(Grade grade) {
    switch (grade) {
        case Grade::proven:
            return Grade::matched;
        case Grade::matched:
            return Grade::one_car;
        case Grade::one_car:
            return Grade::paper;
        case Grade::blank:
        case Grade::paper:
        case Grade::mixed:
        case Grade::year_split:
        case Grade::pulled:
            break;
    }
    return grade;
}

void settle_on_leading(Standing& standing) {
    const Claim& leading = standing.claims.front();
    standing.value = leading.value;
    standing.grade = leading.grade;
    if (!standing.asked_year || is_among_years_seen(leading, *standing.asked_year)) return;
    standing.outside_years = true;
    standing.grade = one_lower(standing.grade);
}

}  // namespace

Standing standing_of(std::span<const Vote> votes, const KnownShops& known, std::optional<int> year, int withdrawn) {
    Standing standing;
    standing.asked_year = year;
    Sifted sifted = sift(votes);
    standing.struck = std::move(sifted.struck);
    standing.claims = claims_of(sifted.live, known);
    if (standing.claims.empty())
        standing.grade = withdrawn > 0 ? Grade::pulled : Grade::blank;
    else if (is_contested(standing.claims))
        standing.grade = Grade::mixed;
    else
        settle_on_leading(standing);
    return standing;
}

}  // namespace tapbook
