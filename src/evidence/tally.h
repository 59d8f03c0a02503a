// How many points, cars and shops stand behind one value? The count of independent witnesses, for this folder only.
#pragma once

#include <map>
#include <set>
#include <string_view>
#include <vector>

#include "evidence/standing.h"

namespace tapbook {

inline constexpr int most_points_of_a_shop = 5;
inline constexpr int most_points_of_paper = 2;

// Looks at the votes' texts where they lie: the votes must outlive it.
class Tally {
  public:
    // Counts one vote of `witness`: the shop's id, or "" for all unknown shops together. REQUIRES votes of one value,
    // none of them struck.
    void add(const Vote& vote, std::string_view witness);

    Claim claim() const;

  private:
    // Cars of one shop; "" among them is the car nobody told apart.
    using Cars = std::set<std::string_view>;
    struct Shop {
        int best = 0;
        Cars cars, measured_cars;
        std::map<std::string_view, Cars> cars_by_method;
    };

    void keep_best(const Vote& vote);

    std::string_view value_;
    std::map<std::string_view, Shop> shops_;
    std::map<std::string_view, int> paper_;  // points by source
    std::vector<RecordId> notes_;            // one may come several times
    std::optional<int> first_year_, last_year_;
    int best_points_ = 0;
    std::string_view best_method_;
};

}  // namespace tapbook
