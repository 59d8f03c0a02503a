// What do the chosen columns cover, and what would each further one add? Only rows that come or go are looked at.
#include "shelf/cover_state.h"

namespace tapbook {

CoverState::CoverState(const Cover& cover, std::vector<std::int64_t> prices)
    : cover_(cover), prices_(std::move(prices)), gains_(cover.rows_of.size()), times_(cover.rows.size()) {
    if (!prices_.empty()) priced_gains_.resize(gains_.size());
    for (std::uint32_t r = 0; r < cover.rows.size(); ++r) turn(r, 1);
    weight_ = steps_ = 0;
}

void CoverState::turn(std::uint32_t r, std::int64_t sign) {
    const Cover::Row& row = cover_.rows[r];
    const std::int64_t weight = sign * row.weight;
    weight_ -= weight;
    for (const std::uint32_t column : row.columns) gains_[column] += weight;
    steps_ += static_cast<std::int64_t>(row.columns.size());
    if (prices_.empty()) return;
    const std::int64_t price = sign * prices_[r];
    above_prices_ += weight - price;
    for (const std::uint32_t column : row.columns) priced_gains_[column] += price;
    steps_ += static_cast<std::int64_t>(row.columns.size());
}

void CoverState::choose(std::uint32_t column) {
    for (const std::uint32_t r : cover_.rows_of[column])
        if (times_[r]++ == 0) turn(r, -1);
    steps_ += static_cast<std::int64_t>(cover_.rows_of[column].size());
}

void CoverState::drop(std::uint32_t column) {
    for (const std::uint32_t r : cover_.rows_of[column])
        if (--times_[r] == 0) turn(r, 1);
    steps_ += static_cast<std::int64_t>(cover_.rows_of[column].size());
}

}  // namespace tapbook
