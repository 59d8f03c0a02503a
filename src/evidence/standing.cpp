// Strike what a shop took back, count what is left, then decide in the order the header states.
#include "evidence/standing.h"

#include <algorithm>
#include <map>
#include <set>
#include <tuple>

#include "evidence/dated_cars.h"
#include "evidence/tally.h"

namespace tapbook {
namespace {

auto age(const Vote& vote) {
    return std::tie(vote.date, vote.turn, vote.note, vote.value);
}

// A note that only claims to be of a shop must not strike that shop's own: vouched and unvouched stay apart.
auto car_in_shop(const Vote& vote) {
    return std::tuple(std::string_view(vote.shop), vote.vouched, std::string_view(vote.car));
}

// Copied notes and cars not told apart contradict nobody.
bool may_contradict(const Vote& vote) {
    return vote.looked_at && !vote.car.empty();
}

struct Sifted {
    std::vector<const Vote*> live;
    std::vector<Strike> struck;
};

bool all_agree(std::span<const Vote> votes) {
    return std::all_of(votes.begin(), votes.end(), [&](const Vote& vote) { return vote.value == votes[0].value; });
}

Sifted sift(std::span<const Vote> votes) {
    if (all_agree(votes)) {  // as nearly always: nobody contradicts himself
        Sifted all;
        for (const Vote& vote : votes) all.live.push_back(&vote);
        return all;
    }
    std::map<std::tuple<std::string_view, bool, std::string_view>, const Vote*> newest;
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
    std::map<std::string_view, Tally> tallies;
    for (const Vote* vote : votes) {
        const bool is_known = vote->vouched && known.contains(vote->shop);
        tallies[vote->value].add(*vote, is_known ? std::string_view(vote->shop) : std::string_view());
    }
    std::vector<Claim> claims;
    for (const auto& [value, tally] : tallies) claims.push_back(tally.claim());
    std::sort(claims.begin(), claims.end(), leads);
    return claims;
}

constexpr int points_that_contest = 3;

bool is_proven(const std::vector<Claim>& claims) {
    constexpr int least_lead = 6, least_shops = 2, least_cars = 2;
    const Claim& leading = claims.front();
    int all = 0, next = 0;
    for (const Claim& claim : claims) {
        all += claim.points;
        if (&claim != &leading) next = std::max(next, claim.points);
    }
    return leading.points - next >= least_lead && leading.known_shops >= least_shops && leading.cars >= least_cars &&
           leading.measured_cars >= least_cars && 5 * leading.points >= 4 * all;
}

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

void settle_on_leading(Standing& standing, Grade grade) {
    const Claim& leading = standing.claims.front();
    standing.value = leading.value;
    standing.grade = grade;
    if (!standing.asked_year || is_among_years_seen(leading, *standing.asked_year)) return;
    standing.outside_years = true;
    standing.grade = one_lower(standing.grade);
}

// Claims in, grade and value out: one value over the years of these claims. REQUIRES claims.
void settle(Standing& standing) {
    if (is_proven(standing.claims))
        settle_on_leading(standing, Grade::proven);
    else if (is_contested(standing.claims))
        standing.grade = Grade::mixed;
    else
        settle_on_leading(standing, standing.claims.front().grade);
}

enum class Side { old_one, new_one };

std::vector<const Vote*> votes_of(const std::vector<const Vote*>& votes, const YearSplit& change, Side side) {
    const bool is_old = side == Side::old_one;
    const std::string& other = is_old ? change.new_value : change.old_value;
    std::vector<const Vote*> own;
    for (const Vote* vote : votes) {
        const bool belongs = !vote->year ? vote->value != other
                             : is_old    ? *vote->year < change.first_new_year
                                         : *vote->year > change.last_old_year;
        if (belongs) own.push_back(vote);
    }
    return own;
}

void settle_split(Standing& standing, const YearSplit& change, const std::vector<const Vote*>& live,
                  const KnownShops& known) {
    const auto settled = [&](Side side, std::optional<int> year) {
        Standing one;
        one.asked_year = year;
        one.claims = claims_of(votes_of(live, change, side), known);
        settle(one);
        return one;
    };
    const SplitStanding split{change, settled(Side::old_one, {}).grade, settled(Side::new_one, {}).grade};
    const auto year = standing.asked_year;
    if (year && (*year <= change.last_old_year || *year >= change.first_new_year)) {
        Standing side = settled(*year <= change.last_old_year ? Side::old_one : Side::new_one, year);
        side.struck = std::move(standing.struck);
        standing = std::move(side);
    } else {
        standing.grade = Grade::year_split;
        standing.outside_years = year.has_value();
    }
    standing.split = split;
}

}  // namespace

std::vector<DatedCar> dated_cars(const std::vector<const Vote*>& votes) {
    using Text = std::string_view;
    std::map<std::tuple<Text, bool, Text, Text>, const Vote*> best;
    std::set<std::tuple<Text, bool, Text>> told;
    const auto is_better = [](const Vote& a, const Vote& b) {
        return a.points != b.points ? a.points > b.points : age(b) < age(a);
    };
    for (const Vote* vote : votes) {
        if (!vote->looked_at || !vote->year) continue;
        const Vote*& kept = best[{vote->shop, vote->vouched, vote->value, vote->car}];
        if (kept == nullptr || is_better(*vote, *kept)) kept = vote;
        if (!vote->car.empty()) told.insert({vote->shop, vote->vouched, vote->value});
    }
    std::vector<DatedCar> cars;
    for (const auto& [key, vote] : best)
        if (!vote->car.empty() || !told.contains({vote->shop, vote->vouched, vote->value}))
            cars.push_back({vote->value, *vote->year, vote->points});
    return cars;
}

Standing standing_of(std::span<const Vote> votes, const KnownShops& known, std::optional<int> year, int withdrawn,
                     YearTest year_test) {
    Standing standing;
    standing.asked_year = year;
    Sifted sifted = sift(votes);
    standing.struck = std::move(sifted.struck);
    standing.claims = claims_of(sifted.live, known);
    if (standing.claims.empty()) {
        standing.grade = withdrawn > 0 ? Grade::pulled : Grade::blank;
        return standing;
    }
    const bool may_change = year_test == YearTest::on && standing.claims.size() > 1;  // one value never splits
    const auto change = may_change ? year_split_of(dated_cars(sifted.live)) : std::nullopt;
    if (change)
        settle_split(standing, *change, sifted.live, known);
    else
        settle(standing);
    return standing;
}

Standing unrecorded_standing_of(std::span<const Vote> votes, const KnownShops& known, std::optional<int> year,
                                int withdrawn, const ProvenElsewhere& proven) {
    if (proven.empty()) return standing_of(votes, known, year, withdrawn);
    Standing mixed = standing_of(votes, known, year, withdrawn, YearTest::off);
    mixed.find_system =
        mixed.grade == Grade::mixed && std::all_of(mixed.claims.begin(), mixed.claims.end(),
                                                   [&](const Claim& claim) { return proven.contains(claim.value); });
    return mixed.find_system ? mixed : standing_of(votes, known, year, withdrawn);
}

}  // namespace tapbook
