// How does a question about coverage travel to the solver, and the answer back? As lines of words and whole numbers,
// one thing a line:
//
//     cover 1                      the form and its version
//     seek most_covered            or fewest_columns
//     cost 3000 4500 1250          of each column
//     at_most 2                    columns; where there is such a limit
//     budget 7000                  sum of costs; where there is one
//     at_least 64                  weight; where so much has to be covered
//     row 40 0 2                   weight 40, covered by column 0 or 2
//     seconds 10
//     done
//
// and back:
//
//     answer 1
//     end optimal                  or stopped, infeasible
//     bound 64                     where one is known: nothing is better
//     chosen 0 2
//     done
//
// Without its last line a text is cut off and is refused.
#pragma once

#include <optional>
#include <stdexcept>
#include <string>
#include <string_view>

#include "shelf/shelf.h"

namespace tapbook {

// Says which line, and what was wanted there.
class ModelTextRefused : public std::runtime_error {
  public:
    using std::runtime_error::runtime_error;
};

struct CoverQuestion {
    CoverModel model;
    double seconds = 0;
};

std::string question_text(const CoverModel& model, double within_seconds);

// Throws ModelTextRefused for anything that question_text does not write: an unknown word, a row that names no column
// there is, a number that is none or below zero, two of one thing, no end.
CoverQuestion question_from(std::string_view text);

std::string answer_text(const SearchAnswer& answer);

// Throws ModelTextRefused, as above. The end is optimal, stopped or infeasible.
SearchAnswer answer_from(std::string_view text);

}  // namespace tapbook
