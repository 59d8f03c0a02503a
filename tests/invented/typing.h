// How do people type the name of a car? The words that tell it apart from the others, then what fingers and haste make
// of them.
#pragma once

#include <array>
#include <string>
#include <string_view>
#include <vector>

#include "catalog/search.h"
#include "invented/dice.h"

namespace invented {

enum class Typing { exact, one_typo, two_typos, make_missing, words_swapped, words_glued, two_digit_year };

struct TypingClass {
    Typing typing;
    std::string_view name;
};
inline constexpr std::array<TypingClass, 7> typing_classes = {{{Typing::exact, "exact"},
                                                               {Typing::one_typo, "one typo"},
                                                               {Typing::two_typos, "two typos"},
                                                               {Typing::make_missing, "make missing"},
                                                               {Typing::words_swapped, "words swapped"},
                                                               {Typing::words_glued, "words glued"},
                                                               {Typing::two_digit_year, "two-digit year"}}};

// What a person types who means cars[place]: make, model, the body where the model has several, a year where the body
// has several generations (and sometimes where not), changed as `typing` says.
std::string typed(const std::vector<tapbook::VehicleName>& cars, std::size_t place, Typing typing, Dice& dice);

// One letter anywhere added, left out, changed or swapped with its neighbour; the text is never the same.
std::string with_typo(std::string text, Dice& dice);

}  // namespace invented
