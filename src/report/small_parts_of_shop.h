// Which small parts has this shop, and what has been used of them? Stated in the stock file, asked for by the plans of
// its jobs, or booked.
#pragma once

#include <span>
#include <string>
#include <vector>

#include "rules/rules.h"
#include "shelf/shelf.h"

namespace tapbook {

// How many plans are worked out again, the newest jobs first: what is older counts little.
constexpr std::size_t most_plans_for_parts = 300;

// By path. A main fuse, main cable, a relay and a resistor go by the plans where nothing is stated; everything else by
// what was booked as used. Throws CatalogError.
std::vector<SmallPart> small_parts_of_shop(const Catalog& catalog, std::span<const ShopJob> jobs, RuleBook& rules,
                                           const std::string& today);

}  // namespace tapbook
