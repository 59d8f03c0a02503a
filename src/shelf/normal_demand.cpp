// The normal distribution by the error function of the standard library; its inverse by halving, which needs no table.
#include "shelf/normal_demand.h"

#include <cmath>
#include <numbers>

namespace tapbook {

namespace {

constexpr double farthest = 40;  // standard deviations: beyond, F is 0 or 1 to the last bit
constexpr int halvings = 70;     // until no bit of the answer moves

// P(Z > z): exact far out on both sides.
double above(double z) {
    return std::erfc(z / std::numbers::sqrt2) / 2;
}

double density(double z) {
    return std::exp(-z * z / 2) * std::numbers::inv_sqrtpi / std::numbers::sqrt2;
}

}  // namespace

double NormalDemand::at_most(double quantity) const {
    return above(-(quantity - mean_) / spread_);
}

double NormalDemand::short_of(double quantity) const {
    const double z = (quantity - mean_) / spread_;
    return spread_ * (density(z) - z * above(z));
}

double NormalDemand::least_holding(double chance) const {
    double low = -farthest, high = farthest;
    for (int i = 0; i < halvings; ++i) {
        const double middle = (low + high) / 2;
        (above(-middle) < chance ? low : high) = middle;
    }
    return mean_ + spread_ * (low + high) / 2;
}

}  // namespace tapbook
