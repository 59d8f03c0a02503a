// Which words stand on each line, and which number is meant? Reading what the two texts of this folder are made of.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

namespace tapbook {

struct TextLine {
    int number = 0;                       // from 1
    std::vector<std::string_view> words;  // the first says what the line is
};

// The lines before `done`. Throws ModelTextRefused when the first line is not `first_line`, when `done` is missing or
// not last.
std::vector<TextLine> lines_of(std::string_view text, std::string_view first_line);

[[noreturn]] void refuse_line(const TextLine& line, std::string_view why);

// Word `i` as a whole number from 0 to `most`, or as a decimal. Throws ModelTextRefused.
std::int64_t whole(const TextLine& line, std::size_t i, std::int64_t most = INT64_MAX);
double decimal(const TextLine& line, std::size_t i);

// Throws ModelTextRefused unless the line has one word after its first.
void want_one(const TextLine& line);

}  // namespace tapbook
