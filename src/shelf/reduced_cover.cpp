// See reduced_cover.h. Columns are bit sets over the rows; most rows first, so that one look back is enough.
#include "shelf/reduced_cover.h"

#include <algorithm>
#include <bit>
#include <numeric>

#include "shelf/mask_set.h"

namespace tapbook {

namespace {

using Word = MaskSet::Word;
using Rows = std::vector<Word>;

std::vector<Rows> rows_by_column(const Cover& cover) {
    std::vector<Rows> all(cover.rows_of.size(), Rows((cover.rows.size() + 63) / 64));
    for (std::size_t column = 0; column < all.size(); ++column)
        for (const std::uint32_t row : cover.rows_of[column]) all[column][row / 64] |= Word{1} << (row % 64);
    return all;
}

bool within(const Rows& inner, const Rows& outer) {
    for (std::size_t w = 0; w < inner.size(); ++w)
        if ((inner[w] & ~outer[w]) != 0) return false;
    return true;
}

void take_columns(ReducedCover& reduced, const Cover& cover) {
    const std::vector<Rows> rows = rows_by_column(cover);
    std::vector<std::uint32_t> order(rows.size()), kept;
    std::iota(order.begin(), order.end(), 0u);
    std::ranges::stable_sort(order, std::greater<>(),
                             [&](std::uint32_t column) { return cover.rows_of[column].size(); });
    std::vector<std::uint32_t> beaten_by(rows.size());
    for (const std::uint32_t column : order) {
        const auto better =
            std::ranges::find_if(kept, [&](std::uint32_t one) { return within(rows[column], rows[one]); });
        beaten_by[column] = better == kept.end() ? column : *better;
        if (better == kept.end()) kept.push_back(column);
    }
    std::ranges::sort(kept);
    reduced.columns = kept;
    for (const std::uint32_t column : beaten_by)
        reduced.instead.push_back(static_cast<std::uint32_t>(std::ranges::lower_bound(kept, column) - kept.begin()));
}

void take_rows(Cover& small, const Cover& cover, const ReducedCover& reduced) {
    MaskSet masks(reduced.columns.size());
    std::vector<Word> mask(masks.words());
    for (const Cover::Row& row : cover.rows) {
        std::ranges::fill(mask, 0);
        for (const std::uint32_t column : row.columns) {
            const std::uint32_t place = reduced.instead[column];
            if (reduced.columns[place] == column) mask[place / 64] |= Word{1} << (place % 64);
        }
        masks.add(mask, row.weight);
    }
    for (std::size_t r = 0; r < masks.size(); ++r) {
        Cover::Row& row = small.rows.emplace_back();
        row.weight = masks.weight(r);
        for (std::size_t w = 0; w < masks.words(); ++w)
            for (Word left = masks.mask(r)[w]; left != 0; left &= left - 1) {
                const auto column =
                    static_cast<std::uint32_t>(w * 64 + static_cast<std::size_t>(std::countr_zero(left)));
                row.columns.push_back(column);
                small.rows_of[column].push_back(static_cast<std::uint32_t>(r));
            }
    }
}

}  // namespace

ReducedCover reduced_without_costs(const Cover& cover) {
    ReducedCover reduced;
    take_columns(reduced, cover);
    Cover& small = reduced.cover;
    for (const std::uint32_t column : reduced.columns) {
        small.converters.push_back(cover.converters[column]);
        small.costs.push_back(cover.costs[column]);
    }
    small.rows_of.resize(reduced.columns.size());
    small.all_weight = cover.all_weight;
    take_rows(small, cover, reduced);
    return reduced;
}

BestCover of_the_whole(const Cover& cover, const ReducedCover& reduced, const BestCover& choice) {
    std::vector<std::uint32_t> columns;
    for (const std::uint32_t column : choice.columns) columns.push_back(reduced.columns[column]);
    BestCover whole = trimmed(cover, std::move(columns));
    whole.bound = choice.bound;
    whole.proved = choice.proved;
    whole.steps = choice.steps;
    return whole;
}

}  // namespace tapbook
