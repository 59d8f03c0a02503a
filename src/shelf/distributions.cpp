// How likely is each count? From the most likely one outwards by the ratio of neighbours, so that no factorial
// overflows and nothing that matters is lost; then all are set to sum to 1.
#include "shelf/distributions.h"

#include <algorithm>
#include <cmath>

namespace tapbook {

namespace {

constexpr double too_small = 1e-20;  // against the most likely count

// `up(n)` is chance(n + 1) / chance(n), falling in n beyond the mode.
template <class Ratio>
Counts from_mode(int mode, Ratio up) {
    std::vector<double> chances(static_cast<std::size_t>(mode) + 1, 0.0);
    chances.back() = 1;
    for (int n = mode - 1; n >= 0; --n)
        chances[static_cast<std::size_t>(n)] = chances[static_cast<std::size_t>(n) + 1] / up(n);
    for (int n = mode; chances.back() > too_small; ++n) chances.push_back(chances.back() * up(n));
    return Counts(std::move(chances));
}

}  // namespace

Counts::Counts(std::vector<double> chances) : chances_(std::move(chances)) {
    double all = 0;
    for (const double chance : chances_) all += chance;
    double below = 0;
    for (std::size_t n = 0; n < chances_.size(); ++n) {
        chances_[n] /= all;
        below += chances_[n];
        at_most_.push_back(std::min(below, 1.0));
        mean_ += static_cast<double>(n) * chances_[n];
    }
}

double Counts::exactly(int count) const {
    return count < 0 || count >= static_cast<int>(chances_.size()) ? 0 : chances_[static_cast<std::size_t>(count)];
}

double Counts::at_most(int count) const {
    if (count < 0) return 0;
    return count >= static_cast<int>(at_most_.size()) ? 1 : at_most_[static_cast<std::size_t>(count)];
}

double Counts::short_of(int count) const {
    double beyond = 0;
    for (std::size_t n = static_cast<std::size_t>(std::max(count, 0)); n < chances_.size(); ++n)
        beyond += (static_cast<double>(n) - count) * chances_[n];
    return count < 0 ? mean_ - count : beyond;
}

int Counts::least_holding(double chance) const {
    const auto found = std::lower_bound(at_most_.begin(), at_most_.end(), chance);
    return static_cast<int>(std::min(found, at_most_.end() - 1) - at_most_.begin());
}

Counts poisson_counts(double mean) {
    if (mean <= 0) return Counts({1.0});
    return from_mode(static_cast<int>(mean), [mean](int n) { return mean / (n + 1); });
}

Counts gamma_poisson_counts(double shape, double mean) {
    if (mean <= 0) return Counts({1.0});
    const double part = mean / (shape + mean);
    const int mode = shape <= 1 ? 0 : static_cast<int>((shape - 1) * mean / shape);
    return from_mode(mode, [shape, part](int n) { return (shape + n) / (n + 1) * part; });
}

}  // namespace tapbook
