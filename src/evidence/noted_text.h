// How do texts such as "C 12" and "c-12" vote for one thing? For this folder only.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <utility>
#include <vector>

#include "evidence/standing.h"

namespace tapbook {

struct NotedText {
    const Note* note;
    std::string text;
};

// The standing of what notes wrote: texts equal but for case, blanks and punctuation are one value, spelled as its
// newest note does. Empty texts have no vote.
Standing text_standing(std::span<const NotedText> texts, const KnownShops& known, std::optional<int> year);

}  // namespace tapbook
