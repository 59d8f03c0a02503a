// Beta quantiles by Boost.Math (the inverse of the regularised incomplete beta function); the draw by Floyd's method
// over SplitMix64, so that it is the same on every machine.
#include "evidence/audit.h"

#include <algorithm>
#include <boost/math/special_functions/beta.hpp>
#include <set>

namespace tapbook {
namespace {

constexpr double tail = 0.025;

// Steele, Lea, Flood: Fast splittable pseudorandom number generators (2014).
class SplitMix {
  public:
    explicit SplitMix(std::uint64_t seed) : state_(seed) {}
    std::uint64_t next() {
        std::uint64_t mixed = state_ += 0x9e3779b97f4a7c15;
        mixed = (mixed ^ (mixed >> 30)) * 0xbf58476d1ce4e5b9;
        mixed = (mixed ^ (mixed >> 27)) * 0x94d049bb133111eb;
        return mixed ^ (mixed >> 31);
    }
    // Even over [0, end): what would favour small numbers is drawn again. REQUIRES end > 0.
    std::size_t below(std::size_t end) {
        const std::uint64_t uneven = (~std::uint64_t{0} - end + 1) % end;
        std::uint64_t drawn = next();
        while (drawn < uneven) drawn = next();
        return drawn % end;
    }

  private:
    std::uint64_t state_;
};

}  // namespace

ShareInterval share_interval(int right, int wrong) {
    const double for_right = 1.0 + right, for_wrong = 1.0 + wrong;
    return {boost::math::ibeta_inv(for_right, for_wrong, tail), boost::math::ibeta_inv(for_right, for_wrong, 1 - tail)};
}

std::vector<std::size_t> seeded_sample(std::size_t count, std::size_t wanted, std::uint64_t seed) {
    SplitMix random(seed);
    std::set<std::size_t> drawn;
    for (std::size_t last = count - std::min(count, wanted); last < count; ++last)
        if (!drawn.insert(random.below(last + 1)).second) drawn.insert(last);
    return {drawn.begin(), drawn.end()};
}

}  // namespace tapbook
