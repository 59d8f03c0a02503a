// Which phones may write? Those that were paired and used in the last twelve hours. The list lives as long as the
// server runs; the cookie itself is not in it, only its hash.
#pragma once

#include <chrono>
#include <cstdint>
#include <functional>
#include <map>
#include <mutex>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "rules/rules.h"

namespace tapbook {

using PageTime = std::chrono::sys_seconds;
using PageClock = std::function<PageTime()>;

inline constexpr std::chrono::hours session_idle{12};
inline constexpr std::size_t most_phones = 32, most_kept = 16, longest_kept = 200, longest_phone_name = 40;

// 128 random bits as 32 hexadecimal digits.
std::string random_name(const RandomSource& random);

struct PairedPhone {
    int number = 0;  // from 1, never given twice
    std::string name;
    PageTime paired, last_used;
    std::vector<std::pair<std::string, std::string>> kept;
};

// Safe to use from several threads.
class SessionList {
  public:
    SessionList(PageClock clock, RandomSource random) : clock_(std::move(clock)), random_(std::move(random)) {}

    // A new session; its cookie. A phone without a name is called by its number. With most_phones paired the one used
    // longest ago goes.
    std::string pair(std::string_view name);

    // The phone of this cookie, which counts as used now; absent when there is none, or it was idle too long.
    std::optional<PairedPhone> use(std::string_view cookie);

    // Ends a session. False when there is none of this number.
    bool end(int number);

    // Those that may write now, by number.
    std::vector<PairedPhone> phones();

    // Keeps a text for the phone; over the limits nothing is kept.
    void keep(std::string_view cookie, const std::string& name, const std::string& text);

  private:
    void forget_idle(PageTime now);

    PageClock clock_;
    RandomSource random_;
    std::mutex mutex_;
    std::map<RecordId, PairedPhone> by_hash_;
    int last_number_ = 0;
};

// The hidden token of a form: only who holds the cookie's page can know it. A keyed hash, so nothing is stored.
class FormTokens {
  public:
    explicit FormTokens(const RandomSource& random) : key_(random_name(random)) {}
    std::string of(std::string_view cookie) const;
    // Compared in constant time.
    bool fits(std::string_view token, std::string_view cookie) const;

  private:
    std::string key_;
};

// Are they equal? Takes as long whatever they hold.
bool equal_in_constant_time(std::string_view a, std::string_view b);

}  // namespace tapbook
