// Which columns could ever be needed to cover most, were they all to cost the same? The rest only matter for ties, and
// without them there is far less to search.
#pragma once

#include <span>

#include "shelf/best_cover.h"

namespace tapbook {

// A column that covers no more rows than another one is left out, the later of two that cover the same too; rows that
// have become equal are one. Whatever can be covered with so many columns of the whole can be with as many of these.
struct ReducedCover {
    Cover cover;                         // costs as they were; nothing of its forced ones
    std::vector<std::uint32_t> columns;  // one for each of its columns: the column of the whole
    std::vector<std::uint32_t>
        instead;  // one for each column of the whole: the column here that covers all of its rows
};

ReducedCover reduced_without_costs(const Cover& cover);

// A choice there as a choice of the whole, what is not needed left out. Bound, proof and steps stay.
BestCover of_the_whole(const Cover& cover, const ReducedCover& reduced, const BestCover& choice);

}  // namespace tapbook
