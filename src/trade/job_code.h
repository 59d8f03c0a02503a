// What stands on a job's label? Six characters out of 32, five bits each, that nobody misreads: no 0, O, 1 and I. At
// least one is a letter, so that a code is never taken for a job's number.
#pragma once

#include <array>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace tapbook {

inline constexpr std::size_t job_code_length = 6;

// The code of these random bytes (their low five bits); absent when no letter is among its characters: draw again.
std::optional<std::string> job_code(const std::array<unsigned char, job_code_length>& bytes);

// The code that was typed, in capital letters; absent when it cannot be one.
std::optional<std::string> parse_job_code(std::string_view typed);

}  // namespace tapbook
