// Which small pieces of HTML stand on the sheet and on the pages alike?
#pragma once

#include <string_view>
#include <vector>

#include "report/html.h"
#include "report/sheet_words.h"

namespace tapbook {

// One line: sign, outlined swatch, code, words, cavity.
void write_conductors(const std::vector<SheetConductor>& conductors, Html& page);
// A warning triangle, the title and the caution.
void write_caution(std::string_view title, std::string_view text, Html& page);

}  // namespace tapbook
