// Which sentences explain a grade? Said once here; the terminal and the page lay them out.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "rules/rules.h"

namespace tapbook {

// The grade line of a question, for all years or for the year that was asked for; the bare grade where none is written.
std::string why_standing_words(const WhyQuestion& why);
std::string why_year_words(const WhyQuestion& why);  // REQUIRES: why.asked_year

// One value with its points, and who gives them.
std::string why_value_words(Question question, const ValueSum& value);
std::vector<std::string> why_shares(const WhyAnswer& answer, const ValueSum& value);

// What the rules ask for and how far the leading value is; a name before each. Empty without any value.
struct WhyDemand {
    std::string_view name;  // "lead", "share", "behind", "years", "change"
    std::string words;
};
std::vector<WhyDemand> why_demands(const WhyQuestion& why);

// What one note says, by whom and how, and what became of it.
std::string why_note_words(const WhyAnswer& answer, const WhyNote& note);

inline constexpr std::string_view why_cars_words =
    "one car at one shop counts once, with its best note. Plates never leave a shop, so the same car seen at two shops "
    "counts as two.";

}  // namespace tapbook
