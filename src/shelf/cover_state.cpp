// What do the chosen columns cover, and what would each further one add? Only rows that come or go are looked at.
#include "shelf/cover_state.h"

namespace tapbook {

CoverState::CoverState(const Cover& cover) : cover_(cover), gains_(cover.rows_of.size()), times_(cover.rows.size()) {
    for (const Cover::Row& row : cover.rows)
        for (const std::uint32_t column : row.columns) gains_[column] += row.weight;
}

void CoverState::choose(std::uint32_t column) {
    for (const std::uint32_t r : cover_.rows_of[column]) {
        if (times_[r]++ != 0) continue;
        const Cover::Row& row = cover_.rows[r];
        weight_ += row.weight;
        for (const std::uint32_t other : row.columns) gains_[other] -= row.weight;
        steps_ += static_cast<std::int64_t>(row.columns.size());
    }
    steps_ += static_cast<std::int64_t>(cover_.rows_of[column].size());
}

void CoverState::drop(std::uint32_t column) {
    for (const std::uint32_t r : cover_.rows_of[column]) {
        if (--times_[r] != 0) continue;
        const Cover::Row& row = cover_.rows[r];
        weight_ -= row.weight;
        for (const std::uint32_t other : row.columns) gains_[other] += row.weight;
        steps_ += static_cast<std::int64_t>(row.columns.size());
    }
    steps_ += static_cast<std::int64_t>(cover_.rows_of[column].size());
}

}  // namespace tapbook
