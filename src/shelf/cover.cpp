// Which converters cover which jobs, in as few rows and columns as say the same? (cover.h says why that loses nothing.)
#include "shelf/cover.h"

#include <algorithm>
#include <bit>
#include <cmath>
#include <numeric>

#include "shelf/mask_set.h"

namespace tapbook {

namespace {

using Word = MaskSet::Word;

void set_bit(std::vector<Word>& mask, std::uint32_t bit) {
    mask[bit / 64] |= Word{1} << (bit % 64);
}
bool has_bit(std::span<const Word> mask, std::uint32_t bit) {
    return (mask[bit / 64] >> (bit % 64) & 1) != 0;
}

// Masks over the converters that may be kept, with what each weighs.
MaskSet masks_of(const ShelfInput& input, std::span<const std::int64_t> weights, const CoverAsk& ask) {
    MaskSet masks(input.converters.size());
    std::vector<Word> left_out(masks.words()), suiting(masks.words()), fitting(masks.words());
    for (const std::uint32_t converter : ask.without) set_bit(left_out, converter);
    for (std::size_t i = 0; i < input.systems.size(); ++i) {
        std::ranges::fill(suiting, 0);
        std::ranges::fill(fitting, 0);
        for (const Choice& choice : input.systems[i].choices) {
            if (has_bit(left_out, choice.converter)) continue;
            set_bit(suiting, choice.converter);
            if (choice.suits == Suits::fits) set_bit(fitting, choice.converter);
        }
        const auto penalty =
            static_cast<std::int64_t>(std::llround(static_cast<double>(weights[i]) * ask.care_penalty));
        if (weights[i] > penalty) masks.add(suiting, weights[i] - penalty);
        if (penalty > 0) masks.add(fitting, penalty);
    }
    return masks;
}

// Every converter as a bit set over the rows.
std::vector<std::vector<Word>> rows_by_converter(const MaskSet& masks, std::size_t converters) {
    std::vector<std::vector<Word>> rows(converters, std::vector<Word>((masks.size() + 63) / 64));
    for (std::size_t row = 0; row < masks.size(); ++row)
        for (std::size_t w = 0; w < masks.words(); ++w)
            for (Word left = masks.mask(row)[w]; left != 0; left &= left - 1)
                set_bit(rows[w * 64 + static_cast<std::size_t>(std::countr_zero(left))],
                        static_cast<std::uint32_t>(row));
    return rows;
}

bool within(const std::vector<Word>& inner, const std::vector<Word>& outer) {
    for (std::size_t w = 0; w < inner.size(); ++w)
        if ((inner[w] & ~outer[w]) != 0) return false;
    return true;
}

std::int64_t weight_of(const std::vector<Word>& rows, const MaskSet& masks) {
    std::int64_t weight = 0;
    for (std::size_t w = 0; w < rows.size(); ++w)
        for (Word left = rows[w]; left != 0; left &= left - 1)
            weight += masks.weight(w * 64 + static_cast<std::size_t>(std::countr_zero(left)));
    return weight;
}

// Rows that a forced converter covers are done with.
void take_forced(Cover& cover, const MaskSet& masks, std::vector<std::vector<Word>>& rows, const CoverAsk& ask) {
    std::vector<Word> done((masks.size() + 63) / 64);
    for (const std::uint32_t converter : ask.with) {
        for (std::size_t w = 0; w < done.size(); ++w) done[w] |= rows[converter][w];
        cover.forced.push_back(converter);
        cover.forced_cost += ask.costs[converter];
    }
    cover.forced_weight = weight_of(done, masks);
    for (auto& one : rows)
        for (std::size_t w = 0; w < done.size(); ++w) one[w] &= ~done[w];
}

// The columns: what still covers something, in order of preference, without those that an earlier one beats. Who covers
// no more and costs no less stands later, so that one look back is enough.
void take_columns(Cover& cover, const MaskSet& masks, const std::vector<std::vector<Word>>& rows,
                  const ShelfInput& input, const CoverAsk& ask) {
    std::vector<std::int64_t> alone;
    for (const auto& one : rows) alone.push_back(weight_of(one, masks));
    std::vector<std::uint32_t> order(rows.size());
    std::iota(order.begin(), order.end(), 0u);
    std::erase_if(order, [&](std::uint32_t c) { return alone[c] == 0; });
    std::ranges::sort(order, [&](std::uint32_t a, std::uint32_t b) {
        if (ask.costs[a] != ask.costs[b]) return ask.costs[a] < ask.costs[b];
        if (alone[a] != alone[b]) return alone[a] > alone[b];
        return input.converters[a].name < input.converters[b].name;
    });
    for (const std::uint32_t converter : order) {
        const auto better = std::ranges::find_if(
            cover.converters, [&](std::uint32_t kept) { return within(rows[converter], rows[kept]); });
        if (better != cover.converters.end()) {
            cover.beaten_by[converter] = *better;
            continue;
        }
        cover.converters.push_back(converter);
        cover.costs.push_back(ask.costs[converter]);
    }
    cover.rows_of.resize(cover.converters.size());
}

// Rows over the columns that are left: many have become equal.
void take_rows(Cover& cover, const MaskSet& masks, const std::vector<std::vector<Word>>& rows) {
    MaskSet left(cover.converters.size());
    std::vector<Word> mask(left.words());
    for (std::size_t row = 0; row < masks.size(); ++row) {
        std::ranges::fill(mask, 0);
        for (std::uint32_t column = 0; column < cover.converters.size(); ++column)
            if (has_bit(rows[cover.converters[column]], static_cast<std::uint32_t>(row))) set_bit(mask, column);
        if (std::ranges::any_of(mask, [](Word word) { return word != 0; })) left.add(mask, masks.weight(row));
    }
    for (std::size_t row = 0; row < left.size(); ++row) {
        Cover::Row one{.weight = left.weight(row), .columns = {}};
        for (std::uint32_t column = 0; column < cover.converters.size(); ++column)
            if (has_bit(left.mask(row), column)) {
                one.columns.push_back(column);
                cover.rows_of[column].push_back(static_cast<std::uint32_t>(row));
            }
        cover.rows.push_back(std::move(one));
    }
}

}  // namespace

std::int64_t Cover::coverable() const {
    std::int64_t weight = 0;
    for (const Row& row : rows) weight += row.weight;
    return weight;
}

Cover collapse(const ShelfInput& input, std::span<const std::int64_t> weights, const CoverAsk& ask) {
    Cover cover;
    cover.beaten_by.resize(input.converters.size());
    cover.all_weight = std::accumulate(weights.begin(), weights.end(), std::int64_t{0});
    const MaskSet masks = masks_of(input, weights, ask);
    cover.masks = static_cast<int>(masks.size());
    std::vector<std::vector<Word>> rows = rows_by_converter(masks, input.converters.size());
    take_forced(cover, masks, rows, ask);
    take_columns(cover, masks, rows, input, ask);
    take_rows(cover, masks, rows);
    return cover;
}

std::int64_t covered(const Cover& cover, std::span<const std::uint32_t> columns) {
    std::vector<bool> done(cover.rows.size());
    std::int64_t weight = 0;
    for (const std::uint32_t column : columns)
        for (const std::uint32_t row : cover.rows_of[column])
            if (!done[row]) {
                done[row] = true;
                weight += cover.rows[row].weight;
            }
    return weight;
}

CoverModel cover_model(const Cover& cover) {
    CoverModel model;
    model.costs = cover.costs;
    for (const Cover::Row& row : cover.rows) model.rows.push_back({.weight = row.weight, .columns = row.columns});
    return model;
}

}  // namespace tapbook
