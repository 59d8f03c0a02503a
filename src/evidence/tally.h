// How many points, cars and shops stand behind one value? The count of independent witnesses, for this folder only.
#pragma once

#include <map>
#include <set>
#include <string>

#include "evidence/standing.h"

namespace tapbook {

inline constexpr int most_points_of_a_shop = 5;
inline constexpr int most_points_of_paper = 2;

class Tally {
  public:
    // Counts one vote of `witness`: the shop's id, or "" for all unknown shops together. REQUIRES votes of one value,
    // none of them struck.
    void add(const Vote& vote, const std::string& witness);

    Claim claim() const;

  private:
    // Cars of one shop; "" among them is the car nobody told apart.
    using Cars = std::set<std::string>;
    struct Shop {
        int best = 0;
        Cars cars, measured_cars;
        std::map<std::string, Cars> cars_by_method;
    };

    void keep_best(const Vote& vote);

    std::string value_;
    std::map<std::string, Shop> shops_;
    std::map<std::string, int> paper_;  // points by source
    std::set<RecordId> notes_;
    std::optional<int> first_year_, last_year_;
    int best_points_ = 0;
    std::string best_method_;
};

}  // namespace tapbook
