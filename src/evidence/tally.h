// How many points, cars and shops stand behind one value? The count of independent witnesses, for this folder only.
#pragma once

#include <map>
#include <span>
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
    // One vote of somebody who looked; a car "" is one that nobody told apart.
    struct Look {
        std::string_view witness, car, method_word;
        int points;
        bool measured;
    };

    void keep_best(const Vote& vote);
    void add_shop(std::span<const Look> looks, Claim& claim) const;

    std::string_view value_;
    std::vector<Look> looks_;
    std::map<std::string_view, int> paper_;  // points by source
    std::vector<RecordId> notes_;            // one may come several times
    std::optional<int> first_year_, last_year_;
    int best_points_ = 0;
    std::string_view best_method_;
};

}  // namespace tapbook
