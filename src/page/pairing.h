// How does a phone show that it stands in the shop? By the symbol on the shop's screen (a one-time token, ten minutes)
// or by six digits read there, which are dead after five wrong tries in all, whoever made them.
#pragma once

#include <mutex>
#include <string>
#include <string_view>

#include "page/session.h"

namespace tapbook {

inline constexpr std::chrono::minutes token_life{10};
inline constexpr int most_wrong_tries = 5;

// `spent`: dead, used or too old; nothing was compared.
enum class PairingTry { right, wrong, not_six_digits, spent };

// Safe to use from several threads.
class PairingCodes {
  public:
    PairingCodes(PageClock clock, RandomSource random);

    // New token and new digits, with all tries; what was before is dead.
    void renew();

    struct Shown {
        std::string token;  // 26 capitals and digits; "" when used or too old
        std::string pin;    // "482913"; "" when dead
    };
    Shown shown() const;

    // Would try_token() be right? Uses nothing up.
    bool is_open(std::string_view token) const;
    // `right` once.
    PairingTry try_token(std::string_view token);
    // Spaces between the digits do not matter. A right one may be used again: several phones are paired in a row.
    PairingTry try_pin(std::string_view typed);

    // How many digits were ever compared since the last renew().
    int compared() const;

  private:
    bool token_lives() const;

    PageClock clock_;
    RandomSource random_;
    mutable std::mutex mutex_;
    std::string token_, pin_;
    PageTime made_;
    bool token_used_ = false;
    int wrong_ = 0, compared_ = 0;
};

}  // namespace tapbook
