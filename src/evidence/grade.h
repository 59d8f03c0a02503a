// How far may an installer trust a fact? The grade of a value, in the words that stand on the screen.
#pragma once

#include "trade/trade.h"

namespace tapbook {

enum class Grade {
    blank,       // no live note
    paper,       // only copied notes
    one_car,     // exactly one car was looked at
    matched,     // two or more cars agree
    proven,      // agreement far beyond chance, from several shops, cars and meters
    mixed,       // notes disagree and nothing is picked
    year_split,  // the disagreement is explained by model year
    pulled,      // every note was withdrawn
};

template <>
struct NamedValues<Grade> {
    static constexpr Named<Grade> all[] = {
        {Grade::blank, "BLANK"},           {Grade::paper, "PAPER"},   {Grade::one_car, "ONE CAR"},
        {Grade::matched, "MATCHED"},       {Grade::proven, "PROVEN"}, {Grade::mixed, "MIXED"},
        {Grade::year_split, "YEAR SPLIT"}, {Grade::pulled, "PULLED"},
    };
};
static_assert(table_is_sound<Grade>());

}  // namespace tapbook
