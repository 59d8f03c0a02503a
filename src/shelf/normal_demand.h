// How much is asked for while a delivery is on its way, where that is a quantity and not a count: normal with a mean
// and a spread. It answers what Counts answers, so that a level is found on the same path.
#pragma once

namespace tapbook {

class NormalDemand {
  public:
    // REQUIRES: spread (standard deviation) above zero.
    NormalDemand(double mean, double spread) : mean_(mean), spread_(spread) {}

    double at_most(double quantity) const;  // F(quantity)
    double mean() const { return mean_; }
    double short_of(double quantity) const;     // E[(X - quantity)+]
    double least_holding(double chance) const;  // the quantity with F(quantity) = chance; REQUIRES: 0 < chance < 1

  private:
    double mean_, spread_;
};

}  // namespace tapbook
