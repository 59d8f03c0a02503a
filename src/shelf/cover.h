// Which converters cover which jobs, in as few rows and columns as say the same? Systems that the same converters suit
// are one row; a converter that another one beats in every way is no column.
//
// A job done with care counts less: its system is two rows, one that every suiting converter covers and one, weighing
// the penalty, that only the fitting ones cover. So all is plain weighted coverage.
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <span>
#include <vector>

#include "shelf/cover_model.h"
#include "shelf/shelf_input.h"

namespace tapbook {

// Weights are whole numbers, so that equal is equal: billionths of a job a year.
constexpr double weight_per_job = 1e9;

struct CoverAsk {
    double care_penalty = 0;
    std::vector<std::int64_t>
        costs;  // one for each converter: what counts when two cover the same, or against the budget
    std::vector<std::uint32_t> with, without;  // converters
};

// Columns stand in the order in which they are preferred when all else is equal: cost, what each covers alone (most
// first), name.
struct Cover {
    struct Row {
        std::int64_t weight = 0;
        std::vector<std::uint32_t> columns;  // ascending
    };

    std::vector<std::uint32_t> converters;  // one for each column
    std::vector<std::int64_t> costs;        // one for each column
    std::vector<Row> rows;                  // each with a column at least; none that a forced converter covers
    std::vector<std::vector<std::uint32_t>> rows_of;  // one for each column
    std::vector<std::uint32_t> forced;                // converters that are kept in any case
    std::int64_t forced_weight = 0;                   // what these cover
    std::int64_t forced_cost = 0;
    std::int64_t all_weight = 0;                          // of all systems, also those that nothing covers
    int masks = 0;                                        // rows before any column was left out
    std::vector<std::optional<std::uint32_t>> beaten_by;  // one for each converter: a converter

    std::int64_t coverable() const;  // weight of `rows`
};

// `weights`: one for each system, not negative. REQUIRES: checked input.
Cover collapse(const ShelfInput& input, std::span<const std::int64_t> weights, const CoverAsk& ask);

// What the columns cover together, each row once. `forced_weight` is not in it.
std::int64_t covered(const Cover& cover, std::span<const std::uint32_t> columns);

// The same as a question for a search elsewhere; limits are still to be set.
CoverModel cover_model(const Cover& cover);

}  // namespace tapbook
