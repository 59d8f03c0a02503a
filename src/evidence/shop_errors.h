// How often does each shop err, told from nothing but what the shops say of the same places? For the shops themselves,
// so that they look at their meters and habits. It is never used for a grade: points and grades do not know these
// numbers.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <vector>

#include "evidence/audit.h"
#include "evidence/questions.h"

namespace tapbook {

struct ShopSaying {
    std::string shop;   // 32 hexadecimal digits
    std::string value;  // as votes_on() has it
};

// What the shops say on one question about one place.
struct FactSayings {
    std::string path;
    Question question = Question::pair;
    std::vector<ShopSaying> sayings;  // of cars that were looked at
};

struct ShopErrors {
    std::string shop;
    int answers = 0;         // on questions that another shop has looked at too
    int agreed = 0;          // of these, what is probably true after all shops are heard
    double wrong = 0;        // share that is probably wrong
    ShareInterval between;   // 95 %, from even odds over all shares
    bool is_enough = false;  // answers are enough to say anything: least_answers or more
};

inline constexpr int least_answers = 8;

// Shops by id. An error is as likely to name any other value that anybody named there; of a shop nothing is thought
// beforehand but what points() think of a note that was seen, not measured: wrong once in ten, worth two answers.
std::vector<ShopErrors> shop_errors(std::span<const FactSayings> facts);

}  // namespace tapbook
