// Which models are kept? The best of a number, the fewest for a share, or the best for a budget; with what is proved
// about it, and the curve that shows what one more would bring.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "shelf/best_cover.h"
#include "shelf/plan_ask.h"

namespace tapbook {

struct ChosenModels {
    BestCover best;  // beside the forced ones
    std::vector<BestCover>
        curve;  // by number of models beside the forced ones, from none on, until all that can be is covered
    std::optional<bool> reached;  // with a wanted share
    std::int64_t steps = 0;
    std::optional<SearchEnd> other_search;
    std::string other_search_says;
};

// REQUIRES: checked ask; the forced models keep within its number and budget.
ChosenModels choose_models(const Cover& cover, const PlanAsk& ask, const OtherSearch& other_search);

}  // namespace tapbook
