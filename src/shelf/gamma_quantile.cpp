// Below which value does a gamma distributed one lie with a given chance? By halving on the series of the incomplete
// gamma function (DLMF 8.7.1 divided by the gamma function): all its terms are positive, so nothing cancels.
#include <cmath>

#include "shelf/distributions.h"

namespace tapbook {

namespace {

// The chance that a gamma distributed value of that shape and rate 1 lies below `x`.
double chance_below(double shape, double x) {
    if (x <= 0) return 0;
    double term = std::exp(shape * std::log(x) - x - std::lgamma(shape + 1)), sum = term;
    for (int n = 1; term > sum * 1e-17 || n < x - shape; ++n) {
        term *= x / (shape + n);
        sum += term;
    }
    return sum;
}

}  // namespace

double gamma_quantile(double shape, double rate, double chance) {
    double low = 0, high = shape + 10 * std::sqrt(shape) + 40;
    for (int halvings = 0; halvings < 200 && low < high; ++halvings) {
        const double middle = low + (high - low) / 2;
        if (middle == low || middle == high) break;
        (chance_below(shape, middle) < chance ? low : high) = middle;
    }
    return high / rate;
}

}  // namespace tapbook
