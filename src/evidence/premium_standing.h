// Has this sound system a separate amplifier? What its system notes say together.
#pragma once

#include <span>

#include "evidence/standing.h"

namespace tapbook {

// Values "true" and "false". Notes of another kind than `system`, and those that do not say, are left out.
Standing premium_standing(std::span<const Note> notes, const KnownShops& known, std::optional<int> year = {},
                          int withdrawn = 0);

}  // namespace tapbook
