// How far can PROVEN be trusted? A sample of proven facts is metered again; what the meter says against them is
// counted, and the share that was right is given with the interval in which it lies with 95 % (Beta, from even odds
// over all shares).
#pragma once

#include <cstddef>
#include <cstdint>
#include <vector>

namespace tapbook {

struct ShareInterval {
    double low = 0, high = 1;  // parts of one
};

// The middle 95 % of Beta(1 + right, 1 + wrong). REQUIRES counts of 0 or more.
ShareInterval share_interval(int right, int wrong);

// `wanted` different places below `count`, in rising order; all of them when there are no more. The same seed draws the
// same places.
std::vector<std::size_t> seeded_sample(std::size_t count, std::size_t wanted, std::uint64_t seed);

}  // namespace tapbook
