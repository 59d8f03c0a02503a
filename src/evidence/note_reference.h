// Which notes does a standing rest on? Enough of each to find it again and to show who saw what, how.
#pragma once

#include <optional>
#include <string>

#include "trade/trade.h"

namespace tapbook {

struct NoteReference {
    RecordId id{};
    std::string shop, car;
    std::string method;  // "metered, polarity phase-checked"
    std::string date;
    std::optional<int> year;
};

NoteReference reference_to(const Note& note);

// Is `a` the newer note: later date, then higher turn, then higher id?
bool is_newer(const Note& a, const Note& b);

}  // namespace tapbook
