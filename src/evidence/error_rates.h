// How often does each observer err, when nobody knows the truth and all that is there is who said what? Maximum
// likelihood by expectation and maximisation, after A. P. Dawid and A. M. Skene, "Maximum Likelihood Estimation of
// Observer Error-Rates Using the EM Algorithm", Applied Statistics 28 (1979), 20-28.
#pragma once

#include <vector>

namespace tapbook {

struct ObserverAnswer {
    int item, observer, value;  // each counts from 0
};

// Who said what. An observer may have said something on an item once, more often, or never.
struct ObserverAnswers {
    int items = 0, observers = 0;
    std::vector<int> values_of_item;  // how many values each item may have, 2 or more
    std::vector<ObserverAnswer> answers;
};

// What an observer's errors look like. each_pair: any true value may be taken for any other, each with its own share
// (the model of 1979); all items have the same values then, and how common each is, is estimated too. one_rate: one
// share of errors for each observer, spread evenly over the wrong values; every value is as likely beforehand.
enum class ErrorModel { each_pair, one_rate };

// What is thought of an observer's rate beforehand: as much as `answers` of which `wrong_share` were wrong. One_rate
// only; the estimate is then no longer that of the greatest likelihood but of the greatest posterior.
struct PriorRate {
    double answers = 0, wrong_share = 0;
};

struct ErrorRates {
    std::vector<std::vector<double>> truth;              // by item and value: how probable it is
    std::vector<double> value_shares;                    // each_pair: how common each value is
    std::vector<std::vector<std::vector<double>>> said;  // each_pair: by observer, true value, said value
    std::vector<double> wrong_share;                     // by observer, over its own answers
    double log_likelihood = 0;                           // natural; multinomial coefficients left out
    int rounds = 0;
};

// Starts from the share of each item's answers that each value has, ends when no probability of a truth moves by more
// than 1e-10, or after 10,000 rounds. REQUIRES values within their items' bounds, and for each_pair the same number of
// values everywhere. An observer without answers has the prior's share.
ErrorRates error_rates(const ObserverAnswers& answers, ErrorModel model, const PriorRate& prior = {});

}  // namespace tapbook
