// How does a grade come about? The sum behind a standing, shop by shop, for somebody who wants to check it by hand. It
// is counted here a second time from the votes; that both counts agree is tested.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <vector>

#include "evidence/standing.h"

namespace tapbook {

inline constexpr int lead_to_prove = 6;

// What one shop gives to one value.
struct ShopShare {
    std::string shop;  // shop id; "" for all unknown shops together
    int shops = 1;     // how many that are
    int best = 0;      // points of its best note
    std::string best_method;
    int cars = 0;
    int points = 0;  // best + one for each further car, at most 5
    bool capped = false;
};

struct ValueSum {
    std::string value;
    int points = 0;
    std::vector<ShopShare> shops;  // most points first
    int paper_sources = 0;         // copied from so many sources
    int paper_points = 0;          // at most 2
    bool paper_capped = false;
};

// The best split that the years allow, held against one value all along; in points.
struct YearTestSum {
    YearSplit best;
    double penalty = 0;  // log3 of the prior odds
    bool splits = false;
};

struct Reckoning {
    Standing standing;
    std::vector<ValueSum> values;  // in the order of the standing's claims
    int lead = 0;                  // over the next value
    int all_points = 0;
    bool has_share = false;                // the leading value has four fifths of all points
    std::optional<YearTestSum> year_test;  // absent: one value, or one calendar year only
};

// Over all years; where `standing` is split by year the sums are of all its notes. `standing` is what standing_of()
// says of these votes without a year.
Reckoning reckoning_of(std::span<const Vote> votes, const KnownShops& known, Standing standing);

}  // namespace tapbook
