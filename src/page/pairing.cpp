// See pairing.h.
#include "page/pairing.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cstdint>

namespace tapbook {
namespace {

// 130 bits in letters and digits that a QR symbol holds at its smallest: RFC 4648, base 32.
std::string drawn_token(const RandomSource& random) {
    constexpr std::string_view letters = "ABCDEFGHIJKLMNOPQRSTUVWXYZ234567";
    std::array<unsigned char, 26> bytes{};
    random(bytes.data(), bytes.size());
    std::string token;
    for (const auto byte : bytes) token += letters[byte % letters.size()];
    return token;
}

// Every number as likely: what lies above the last whole million is drawn again.
std::string drawn_pin(const RandomSource& random) {
    constexpr std::uint32_t million = 1'000'000, fair = UINT32_MAX / million * million;
    while (true) {
        std::array<unsigned char, 4> bytes{};
        random(bytes.data(), bytes.size());
        std::uint32_t number = 0;
        for (const auto byte : bytes) number = number << 8U | byte;
        if (number < fair) return fmt::format("{:06}", number % million);
    }
}

}  // namespace

PairingCodes::PairingCodes(PageClock clock, RandomSource random)
    : clock_(std::move(clock)), random_(std::move(random)) {
    renew();
}

void PairingCodes::renew() {
    const std::lock_guard lock(mutex_);
    token_ = drawn_token(random_);
    pin_ = drawn_pin(random_);
    made_ = clock_();
    token_used_ = false;
    wrong_ = compared_ = 0;
}

bool PairingCodes::token_lives() const {
    return !token_used_ && clock_() - made_ < token_life;
}

PairingCodes::Shown PairingCodes::shown() const {
    const std::lock_guard lock(mutex_);
    return {token_lives() ? token_ : "", wrong_ < most_wrong_tries ? pin_ : ""};
}

bool PairingCodes::is_open(std::string_view token) const {
    const std::lock_guard lock(mutex_);
    return token_lives() && equal_in_constant_time(token, token_);
}

PairingTry PairingCodes::try_token(std::string_view token) {
    const std::lock_guard lock(mutex_);
    if (!token_lives()) return PairingTry::spent;
    if (!equal_in_constant_time(token, token_)) return PairingTry::wrong;
    token_used_ = true;
    return PairingTry::right;
}

PairingTry PairingCodes::try_pin(std::string_view typed) {
    std::string digits(typed);
    std::erase(digits, ' ');
    const bool is_pin =
        digits.size() == 6 && std::all_of(digits.begin(), digits.end(), [](char c) { return c >= '0' && c <= '9'; });
    if (!is_pin) return PairingTry::not_six_digits;
    const std::lock_guard lock(mutex_);
    if (wrong_ >= most_wrong_tries) return PairingTry::spent;
    ++compared_;
    if (equal_in_constant_time(digits, pin_)) return PairingTry::right;
    ++wrong_;
    return PairingTry::wrong;
}

int PairingCodes::compared() const {
    const std::lock_guard lock(mutex_);
    return compared_;
}

}  // namespace tapbook
