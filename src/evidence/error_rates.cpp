// See error_rates.h: equations (2.3) to (2.5) of the paper. Products run as sums of logarithms, because a place may
// have many answers.
#include "evidence/error_rates.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace tapbook {
namespace {

constexpr double enough = 1e-10;
constexpr int most_rounds = 10000;

class Estimating {
  public:
    Estimating(const ObserverAnswers& given, ErrorModel model, const PriorRate& prior)
        : given_(given), model_(model), prior_(prior) {
        start();
    }

    ErrorRates run() {
        double moved = 1;
        while (moved > enough && rates_.rounds < most_rounds) {
            maximise();
            moved = expect();
            ++rates_.rounds;
        }
        return std::move(rates_);
    }

  private:
    int values_of(int item) const { return given_.values_of_item[static_cast<std::size_t>(item)]; }
    double& truth(int item, int value) {
        return rates_.truth[static_cast<std::size_t>(item)][static_cast<std::size_t>(value)];
    }
    std::vector<double>& said(int observer, int value) {
        return rates_.said[static_cast<std::size_t>(observer)][static_cast<std::size_t>(value)];
    }

    // Each value's share of the item's answers; an item without any leaves all values open.
    void start() {
        for (int item = 0; item < given_.items; ++item)
            rates_.truth.emplace_back(static_cast<std::size_t>(values_of(item)), 0.0);
        for (const auto& answer : given_.answers) truth(answer.item, answer.value) += 1;
        for (auto& values : rates_.truth) to_shares(values);
        rates_.wrong_share.assign(static_cast<std::size_t>(given_.observers), prior_.wrong_share);
    }

    // Divides by the sum; even shares when there is nothing.
    static void to_shares(std::vector<double>& values) {
        double sum = 0;
        for (const double value : values) sum += value;
        for (double& value : values) value = sum > 0 ? value / sum : 1.0 / static_cast<double>(values.size());
    }

    void maximise() {
        std::vector<double> wrong(rates_.wrong_share.size(), prior_.answers * prior_.wrong_share),
            all(rates_.wrong_share.size(), prior_.answers);
        for (const auto& answer : given_.answers) {
            const auto observer = static_cast<std::size_t>(answer.observer);
            wrong[observer] += 1 - truth(answer.item, answer.value);
            all[observer] += 1;
        }
        for (std::size_t i = 0; i < wrong.size(); ++i)
            if (all[i] > 0) rates_.wrong_share[i] = wrong[i] / all[i];
        if (model_ == ErrorModel::each_pair) maximise_pairs();
    }

    // REQUIRES the same number of values everywhere.
    void maximise_pairs() {
        const auto values = given_.items == 0 ? 0U : rates_.truth.front().size();
        rates_.value_shares.assign(values, 0.0);
        for (const auto& truth_of_item : rates_.truth)
            for (std::size_t j = 0; j < values; ++j) rates_.value_shares[j] += truth_of_item[j];
        to_shares(rates_.value_shares);
        rates_.said.assign(static_cast<std::size_t>(given_.observers),
                           std::vector(values, std::vector<double>(values, 0.0)));
        for (const auto& answer : given_.answers)
            for (std::size_t j = 0; j < values; ++j)
                said(answer.observer, static_cast<int>(j))[static_cast<std::size_t>(answer.value)] +=
                    truth(answer.item, static_cast<int>(j));
        for (auto& of_observer : rates_.said)
            for (auto& of_true : of_observer) to_shares(of_true);
    }

    double log_chance(const ObserverAnswer& answer, int true_value) {
        if (model_ == ErrorModel::each_pair)
            return std::log(said(answer.observer, true_value)[static_cast<std::size_t>(answer.value)]);
        const double wrong = rates_.wrong_share[static_cast<std::size_t>(answer.observer)];
        return answer.value == true_value ? std::log(1 - wrong) : std::log(wrong / (values_of(answer.item) - 1));
    }

    double log_before(int item, int value) const {
        return model_ == ErrorModel::each_pair ? std::log(rates_.value_shares[static_cast<std::size_t>(value)])
                                               : -std::log(values_of(item));
    }

    // The largest change of a truth's probability.
    double expect() {
        std::vector<std::vector<double>> logs = rates_.truth;
        for (int item = 0; item < given_.items; ++item)
            for (int j = 0; j < values_of(item); ++j)
                logs[static_cast<std::size_t>(item)][static_cast<std::size_t>(j)] = log_before(item, j);
        for (const auto& answer : given_.answers) {
            auto& of_item = logs[static_cast<std::size_t>(answer.item)];
            for (std::size_t j = 0; j < of_item.size(); ++j) of_item[j] += log_chance(answer, static_cast<int>(j));
        }
        rates_.log_likelihood = 0;
        double moved = 0;
        for (std::size_t item = 0; item < logs.size(); ++item) moved = std::max(moved, settle(logs[item], item));
        return moved;
    }

    // The logarithms of one item's values as its new truth.
    double settle(const std::vector<double>& logs, std::size_t item) {
        const double largest = *std::max_element(logs.begin(), logs.end());
        double sum = 0, moved = 0;
        for (const double log : logs) sum += std::exp(log - largest);
        rates_.log_likelihood += largest + std::log(sum);
        for (std::size_t j = 0; j < logs.size(); ++j) {
            const double now = std::exp(logs[j] - largest) / sum;
            moved = std::max(moved, std::abs(now - rates_.truth[item][j]));
            rates_.truth[item][j] = now;
        }
        return moved;
    }

    const ObserverAnswers& given_;
    ErrorModel model_;
    PriorRate prior_;
    ErrorRates rates_;
};

}  // namespace

ErrorRates error_rates(const ObserverAnswers& answers, ErrorModel model, const PriorRate& prior) {
    return Estimating(answers, model, prior).run();
}

}  // namespace tapbook
