// How likely is it that 0, 1, 2 ... parts are asked for while a delivery is on its way?
#pragma once

#include <vector>

namespace tapbook {

// Probabilities of the counts 0, 1, 2 ...; what lies beyond the last one is below 1e-15 in all, or impossible.
class Counts {
  public:
    // `chances` sum to 1 (a sum that is off by rounding is set right). REQUIRES: not empty, none below zero.
    explicit Counts(std::vector<double> chances);

    double exactly(int count) const;
    double at_most(int count) const;  // F(count); 0 below zero
    double mean() const { return mean_; }
    double short_of(int count) const;  // E[(X - count)+]: how many are asked for beyond `count`, on average
    int least_holding(
        double chance) const;  // the smallest count with F(count) >= chance; the last one when none reaches it

  private:
    std::vector<double> chances_, at_most_;
    double mean_ = 0;
};

// Poisson with that mean; mean 0: certainly none. REQUIRES: mean >= 0.
Counts poisson_counts(double mean);

// Poisson whose mean is itself gamma distributed with `shape` and mean `mean`: negative binomial. REQUIRES: shape > 0,
// mean >= 0.
Counts gamma_poisson_counts(double shape, double mean);

// The value below which a gamma distributed one lies with that chance. REQUIRES: shape, rate > 0, 0 < chance < 1.
double gamma_quantile(double shape, double rate, double chance);

}  // namespace tapbook
