// Does the estimate of how often observers err agree with the paper it is taken from, and with a slow second way?
#include "evidence/error_rates.h"

#include <rapidcheck.h>

#include <catch2/catch.hpp>
#include <cmath>
#include <string>

#include "evidence/shop_errors.h"

using namespace tapbook;

namespace {

// Dawid and Skene 1979, table 1: 45 patients judged before an operation; observer 1 three times, 2 to 5 once each. One
// patient is "111 1 1 1 1".
constexpr const char* patients[] = {
    "1111111", "3334334", "1122122", "2223121", "2223222", "2223322", "1222111", "3333433", "2222223",
    "2322223", "4444444", "2223343", "1111111", "2223212", "1211111", "1112111", "1111111", "1111111",
    "2222221", "2221322", "2222222", "2222221", "2223222", "2212222", "1111111", "1111111", "2322222",
    "1111111", "1111111", "1121121", "1111111", "3333233", "1111111", "2222222", "2223232", "4334343",
    "2212232", "2323233", "3333432", "1111111", "1111111", "1212111", "2322222", "1211111", "2222222"};

ObserverAnswers anaesthetists() {
    constexpr int observer_of_place[] = {0, 0, 0, 1, 2, 3, 4};
    ObserverAnswers given{45, 5, std::vector<int>(45, 4), {}};
    for (int patient = 0; patient < 45; ++patient)
        for (int place = 0; place < 7; ++place)
            given.answers.push_back({patient, observer_of_place[place], patients[patient][place] - '1'});
    return given;
}

// Every assignment of true values tried: the probability of each item's value, and the likelihood, for given rates.
struct Tried {
    std::vector<std::vector<double>> truth;
    double likelihood = 0;
};

Tried by_trying_everything(const ObserverAnswers& given, const std::vector<double>& wrong) {
    Tried tried;
    for (const int values : given.values_of_item) tried.truth.emplace_back(static_cast<std::size_t>(values), 0.0);
    std::vector<int> truth(static_cast<std::size_t>(given.items), 0);
    while (true) {
        double chance = 1;
        for (const int values : given.values_of_item) chance /= values;
        for (const auto& answer : given.answers) {
            const auto item = static_cast<std::size_t>(answer.item);
            const double rate = wrong[static_cast<std::size_t>(answer.observer)];
            chance *= answer.value == truth[item] ? 1 - rate : rate / (given.values_of_item[item] - 1);
        }
        tried.likelihood += chance;
        for (std::size_t i = 0; i < truth.size(); ++i) tried.truth[i][static_cast<std::size_t>(truth[i])] += chance;
        std::size_t next = 0;
        while (next < truth.size() && ++truth[next] == given.values_of_item[next]) truth[next++] = 0;
        if (next == truth.size()) break;
    }
    for (auto& values : tried.truth)
        for (double& value : values) value /= tried.likelihood;
    return tried;
}

ObserverAnswers some_answers() {
    ObserverAnswers given{*rc::gen::inRange(1, 6), *rc::gen::inRange(2, 5), {}, {}};
    for (int i = 0; i < given.items; ++i) given.values_of_item.push_back(*rc::gen::inRange(2, 4));
    for (int item = 0; item < given.items; ++item)
        for (int observer = 0; observer < given.observers; ++observer)
            if (*rc::gen::inRange(0, 4) > 0)
                given.answers.push_back(
                    {item, observer, *rc::gen::inRange(0, given.values_of_item[static_cast<std::size_t>(item)])});
    return given;
}

std::vector<FactSayings> agreeing_but_one(int facts) {
    std::vector<FactSayings> list;
    for (int i = 0; i < facts; ++i)
        list.push_back({"car/" + std::to_string(i),
                        Question::pair,
                        {{"a", "BK|WH"}, {"b", "BK|WH"}, {"c", "BK|WH"}, {"d", i % 2 == 0 ? "BN|TN" : "BK|WH"}}});
    return list;
}

}  // namespace

TEST_CASE("the anaesthetists of 1979 come out as Dawid and Skene printed them") {
    const ErrorRates rates = error_rates(anaesthetists(), ErrorModel::each_pair);
    // Table 4 of the paper: class shares .40 .42 .11 .07; log-likelihood -192.89.
    CHECK(rates.value_shares[0] == Approx(0.40).margin(0.005));
    CHECK(rates.value_shares[1] == Approx(0.42).margin(0.005));
    CHECK(rates.value_shares[2] == Approx(0.11).margin(0.005));
    CHECK(rates.value_shares[3] == Approx(0.07).margin(0.005));
    CHECK(rates.log_likelihood == Approx(-192.89).margin(0.005));
    // To 1e-3, by a separate program in Python that runs the paper's equations over counts instead of answers.
    CHECK(rates.value_shares[0] == Approx(0.3996).margin(1e-3));
    CHECK(rates.value_shares[1] == Approx(0.4220).margin(1e-3));
    CHECK(rates.value_shares[2] == Approx(0.1118).margin(1e-3));
    CHECK(rates.value_shares[3] == Approx(0.0667).margin(1e-3));
    CHECK(rates.said[0][0][0] == Approx(0.889).margin(1e-3));
    CHECK(rates.said[1][1][2] == Approx(0.314).margin(1e-3));
    CHECK(rates.said[2][2][1] == Approx(0.404).margin(1e-3));
    CHECK(rates.said[4][1][1] == Approx(0.735).margin(1e-3));
}

TEST_CASE("the truths are those of trying every assignment, and no other rates are more probable") {
    CHECK(rc::check("one rate for each observer", [] {
        const ObserverAnswers given = some_answers();
        const PriorRate prior{2, 0.1};
        const ErrorRates rates = error_rates(given, ErrorModel::one_rate, prior);
        const Tried tried = by_trying_everything(given, rates.wrong_share);
        RC_ASSERT(std::abs(std::log(tried.likelihood) - rates.log_likelihood) < 1e-6);
        for (std::size_t i = 0; i < tried.truth.size(); ++i)
            for (std::size_t j = 0; j < tried.truth[i].size(); ++j)
                RC_ASSERT(std::abs(tried.truth[i][j] - rates.truth[i][j]) < 1e-6);
        const auto worth = [&](const std::vector<double>& wrong) {
            double log = std::log(by_trying_everything(given, wrong).likelihood);
            for (const double rate : wrong)
                log +=
                    prior.answers * (prior.wrong_share * std::log(rate) + (1 - prior.wrong_share) * std::log(1 - rate));
            return log;
        };
        const double best = worth(rates.wrong_share);
        for (std::size_t i = 0; i < rates.wrong_share.size(); ++i)
            for (const double step : {-1e-4, 1e-4}) {
                auto other = rates.wrong_share;
                other[i] += step;
                if (other[i] > 0 && other[i] < 1) RC_ASSERT(worth(other) <= best + 1e-6);
            }
    }));
}

TEST_CASE("a shop that contradicts all others half the time is told from them") {
    const auto shops = shop_errors(agreeing_but_one(40));
    REQUIRE(shops.size() == 4);
    for (std::size_t i = 0; i < 3; ++i) {
        CHECK(shops[i].agreed == 40);
        CHECK(shops[i].wrong < 0.01);
    }
    CHECK(shops[3].shop == "d");
    CHECK(shops[3].answers == 40);
    CHECK(shops[3].agreed == 20);
    CHECK(shops[3].wrong == Approx(0.481).margin(0.002));  // (20 + 2 * 0.1) / (40 + 2)
    CHECK(shops[3].between.low < shops[3].wrong);
    CHECK(shops[3].between.high > shops[3].wrong);
}

TEST_CASE("fewer than eight shared answers say nothing of a shop") {
    CHECK_FALSE(shop_errors(agreeing_but_one(7)).front().is_enough);
    CHECK(shop_errors(agreeing_but_one(8)).front().is_enough);
    CHECK(shop_errors({}).empty());
}
