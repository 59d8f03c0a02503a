// What does CBC say to a question about coverage? Columns are yes or no; a row is a share from 0 to 1 that is no more
// than the sum of its chosen columns. Cuts are off: they cost more than they save here.
#include "solve/cbc_search.h"

#include <coin/Cbc_C_Interface.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <memory>
#include <vector>

namespace tapbook {

namespace {

// Weights are brought to this sum, so that the solver's absolute tolerances are far below what counts.
constexpr double largest_sum = 1e6;
constexpr double chosen_from = 0.5;

// Sparse columns, as the solver takes them.
struct Problem {
    std::vector<CoinBigIndex> starts{0};
    std::vector<int> rows;
    std::vector<double> values, lower, upper, objective, row_lower, row_upper;

    void begin_column(double gain) {
        lower.push_back(0);
        upper.push_back(1);
        objective.push_back(gain);
        starts.push_back(starts.back());
    }
    void entry(int row, double value) {
        rows.push_back(row);
        values.push_back(value);
        ++starts.back();
    }
};

class Question {
  public:
    explicit Question(const CoverModel& model) : model_(model) {
        double sum = 0;
        for (const CoverModel::Row& row : model.rows) sum += static_cast<double>(row.weight);
        scale_ = std::max(1.0, sum / largest_sum);
        const double endless = std::numeric_limits<double>::max();
        for (std::size_t i = 0; i < model.rows.size(); ++i) limit(-endless, 0);
        if (model.at_most) number_ = limit(-endless, *model.at_most);
        if (model.budget) money_ = limit(-endless, static_cast<double>(*model.budget));
        if (model.at_least_covered)
            weight_ = limit((static_cast<double>(*model.at_least_covered) - 0.5) / scale_, endless);
        add_columns();
        add_shares();
    }

    const Problem& problem() const { return problem_; }
    double scale() const { return scale_; }

  private:
    int limit(double low, double high) {
        problem_.row_lower.push_back(low);
        problem_.row_upper.push_back(high);
        return static_cast<int>(problem_.row_lower.size()) - 1;
    }

    void add_columns() {
        std::vector<std::vector<int>> rows_of(model_.costs.size());
        for (std::size_t row = 0; row < model_.rows.size(); ++row)
            for (const std::uint32_t column : model_.rows[row].columns)
                if (rows_of[column].empty() || rows_of[column].back() != static_cast<int>(row))
                    rows_of[column].push_back(static_cast<int>(row));
        for (std::size_t column = 0; column < rows_of.size(); ++column) {
            problem_.begin_column(model_.seek == CoverModel::Seek::fewest_columns ? 1 : 0);
            for (const int row : rows_of[column]) problem_.entry(row, -1);
            if (number_ >= 0) problem_.entry(number_, 1);
            if (money_ >= 0) problem_.entry(money_, static_cast<double>(model_.costs[column]));
        }
    }

    void add_shares() {
        for (std::size_t row = 0; row < model_.rows.size(); ++row) {
            const double weight = static_cast<double>(model_.rows[row].weight) / scale_;
            problem_.begin_column(model_.seek == CoverModel::Seek::most_covered ? -weight : 0);
            problem_.entry(static_cast<int>(row), 1);
            if (weight_ >= 0) problem_.entry(weight_, weight);
        }
    }

    const CoverModel& model_;
    Problem problem_;
    double scale_ = 1;
    int number_ = -1, money_ = -1, weight_ = -1;
};

}  // namespace

SearchAnswer search_with_cbc(const CoverQuestion& question) {
    const Question asked(question.model);
    const Problem& problem = asked.problem();
    const std::unique_ptr<Cbc_Model, decltype(&Cbc_deleteModel)> owned(Cbc_newModel(), &Cbc_deleteModel);
    Cbc_Model* const cbc = owned.get();
    Cbc_loadProblem(cbc, static_cast<int>(problem.objective.size()), static_cast<int>(problem.row_lower.size()),
                    problem.starts.data(), problem.rows.data(), problem.values.data(), problem.lower.data(),
                    problem.upper.data(), problem.objective.data(), problem.row_lower.data(), problem.row_upper.data());
    const int columns = static_cast<int>(question.model.costs.size());
    for (int column = 0; column < columns; ++column) Cbc_setInteger(cbc, column);
    Cbc_setParameter(cbc, "log", "0");
    Cbc_setParameter(cbc, "cuts", "off");
    Cbc_setParameter(cbc, "ratio", "0");
    Cbc_setParameter(cbc, "sec", std::to_string(question.seconds).c_str());
    Cbc_solve(cbc);
    SearchAnswer answer;
    if (Cbc_isProvenInfeasible(cbc) != 0) {
        answer.end = SearchEnd::infeasible;
        return answer;
    }
    answer.end = Cbc_isProvenOptimal(cbc) != 0 ? SearchEnd::optimal : SearchEnd::stopped;
    const bool most = question.model.seek == CoverModel::Seek::most_covered;
    const double bound = Cbc_getBestPossibleObjValue(cbc);
    if (std::abs(bound) < 1e30) answer.bound = most ? -bound * asked.scale() : bound;
    const double* const values = Cbc_getColSolution(cbc);
    for (int column = 0; values != nullptr && column < columns; ++column)
        if (values[column] > chosen_from) answer.chosen.push_back(static_cast<std::uint32_t>(column));
    return answer;
}

}  // namespace tapbook
