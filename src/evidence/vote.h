// What does one note say on one question? The value it names and what the count needs to know of who looked, at which
// car and how. The same vote serves every question: the pair, the polarity, a cavity, the drive, the premium flag.
#pragma once

#include <optional>
#include <string>

#include "trade/trade.h"

namespace tapbook {

struct Vote {
    std::string value;
    int points = 1;
    bool looked_at = false;  // false: paper, which is never a car or a shop
    bool measured = false;   // metered or scoped
    std::string shop;        // shop id
    std::string car;         // salted token; "" when the car was not told apart
    std::string source;      // of paper; "" for the unnamed one
    std::optional<int> year;
    std::string date;  // YYYY-MM-DD
    int turn = 0;
    RecordId note{};
    std::string method_word;
    bool vouched = true;  // false: counts with the unknown shops, whatever shop it names
};

// The vote of `note` for `value` with the points of its own method.
Vote vote_of(const Note& note, std::string value);

// The vote of `note` for `value` on the polarity scale. Without a stated polarity method, and on a copied note, it is
// paper with 1 point.
Vote polarity_vote_of(const Note& note, std::string value);

}  // namespace tapbook
