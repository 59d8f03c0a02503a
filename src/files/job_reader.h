// How are jobs and their lists written? [[job]] tables of a file, and items such as "camera=bad:no picture" on one
// line.
#pragma once

#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "catalog/catalog.h"

namespace tapbook {

// The list items in `typed`: ITEM=ok, ITEM=bad:words, ITEM=none; "rest" as ITEM is every item that is not filled yet.
// Throws InputRefused with a complaint for each that is none; the place is that of `file`, without a line.
JobChecks read_checks(std::span<const std::string> typed, const SourcePlace& place);

// The [[job]] tables of `text`. Throws InputRefused with all complaints, in the file's order, at most 20.
std::vector<PastJob> read_past_jobs(std::string_view text, const std::string& file);

}  // namespace tapbook
