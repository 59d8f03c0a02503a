// Table 5 of 33 CFR 183.425, every row, and the sizes marked by SAE. See ampacity.h.
#include "electrical/ampacity.h"

#include <algorithm>
#include <array>
#include <cstddef>
#include <iterator>

namespace tapbook {

static_assert(table_is_sound<Insulation>());
static_assert(table_is_sound<CablePlace>());

namespace {

constexpr std::size_t columns = std::size(NamedValues<Insulation>::all);

struct Row {
    Awg size;
    Amps allowed[columns];
};

constexpr Row row(int size, double c60, double c75, double c80, double c90, double c105, double c125, double c200) {
    return {Awg{size}, {amps(c60), amps(c75), amps(c80), amps(c90), amps(c105), amps(c125), amps(c200)}};
}

constexpr Row table[] = {
    row(18, 10, 10, 15, 20, 20, 25, 25),        row(16, 15, 15, 20, 25, 25, 30, 35),
    row(14, 20, 20, 25, 30, 35, 40, 45),        row(12, 25, 25, 35, 40, 45, 50, 55),
    row(10, 40, 40, 50, 55, 60, 70, 70),        row(8, 55, 65, 70, 70, 80, 90, 100),
    row(6, 80, 95, 100, 100, 120, 125, 135),    row(4, 105, 125, 130, 135, 160, 170, 180),
    row(3, 120, 145, 150, 155, 180, 195, 210),  row(2, 140, 170, 175, 180, 210, 225, 240),
    row(1, 165, 195, 210, 210, 245, 265, 280),  row(0, 195, 230, 245, 245, 285, 305, 325),
    row(-1, 225, 265, 285, 285, 330, 355, 370), row(-2, 260, 310, 330, 330, 385, 410, 430),
    row(-3, 300, 360, 385, 385, 445, 475, 510),
};

struct EngineFactor {
    Ratio factor;
    bool from_memory;
};

// Note 1 of the table, 50 C around the cable. At 105 C confirmed by a printed column of products; the others from
// memory.
constexpr EngineFactor engine_factors[columns] = {
    {ratio(0.58), true},  {ratio(0.75), true}, {ratio(0.78), true}, {ratio(0.82), true},
    {ratio(0.85), false}, {ratio(0.89), true}, {ratio(1.00), true},
};

constexpr SquareMillimetres circular_mils(int count) {
    return square_millimetres(count * 5.067075e-4);
}

constexpr SaeSize sae_table[] = {
    {"18", circular_mils(1537), true},     {"16", circular_mils(2336), true},     {"14", circular_mils(3702), true},
    {"12", circular_mils(5833), true},     {"10", circular_mils(9343), true},     {"8", circular_mils(14810), true},
    {"4", circular_mils(37360), false},    {"2", circular_mils(62450), false},    {"1/0", circular_mils(98980), false},
    {"2/0", circular_mils(125100), false}, {"4/0", circular_mils(205500), false},
};

constexpr auto rows_only = [] {
    std::array<Awg, std::size(table)> sizes{};
    std::ranges::transform(table, sizes.begin(), &Row::size);
    return sizes;
}();

Ampacity of_row(const Row& row, bool rounded_down, const CableConditions& conditions) {
    const Insulation column = conditions.insulation.value_or(Insulation::rated_60);
    const auto index = static_cast<std::size_t>(column);
    const bool hot = conditions.place == CablePlace::engine_space;
    const Ratio around = hot ? engine_factors[index].factor : ratio(1);
    const Amps copper = row.allowed[index] * around;
    return {conditions.metal == Metal::copper_clad ? copper * copper_clad_ampacity : copper,
            row.size,
            rounded_down,
            column,
            !conditions.insulation.has_value(),
            conditions.place,
            hot && engine_factors[index].from_memory,
            conditions.metal};
}

}  // namespace

std::optional<Ampacity> ampacity(Awg size, const CableConditions& conditions) {
    const auto row = std::find_if(std::rbegin(table), std::rend(table),
                                  [&](const Row& one) { return one.size.number >= size.number; });
    if (row == std::rend(table)) return std::nullopt;
    return of_row(*row, row->size.number != size.number, conditions);
}

std::optional<Ampacity> ampacity(SquareMillimetres nominal, const CableConditions& conditions) {
    const auto row =
        std::find_if(std::rbegin(table), std::rend(table), [&](const Row& one) { return area(one.size) <= nominal; });
    if (row == std::rend(table)) return std::nullopt;
    return of_row(*row, area(row->size) < nominal, conditions);
}

std::optional<Awg> thinnest_for(Amps current, const CableConditions& conditions) {
    const auto row =
        std::ranges::find_if(table, [&](const Row& one) { return of_row(one, false, conditions).allowed >= current; });
    return row == std::end(table) ? std::nullopt : std::optional(row->size);
}

std::span<const Awg> ampacity_rows() {
    return rows_only;
}

std::span<const SaeSize> sae_sizes() {
    return sae_table;
}

const SaeSize* find_sae_size(std::string_view marked) {
    const auto found = std::ranges::find(sae_table, marked, &SaeSize::marked);
    return found == std::end(sae_table) ? nullptr : &*found;
}

}  // namespace tapbook
