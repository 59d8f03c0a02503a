// Which words stand on each line, and which number is meant? (text_lines.h)
#include "solver/text_lines.h"

#include <fmt/format.h>

#include <charconv>
#include <cmath>

#include "solver/model_text.h"

namespace tapbook {

namespace {

TextLine split(std::string_view text, int number) {
    TextLine line{.number = number, .words = {}};
    while (!text.empty()) {
        const std::size_t end = std::min(text.find(' '), text.size());
        if (end > 0) line.words.push_back(text.substr(0, end));
        text.remove_prefix(std::min(end + 1, text.size()));
    }
    return line;
}

template <class Number>
Number number_at(const TextLine& line, std::size_t i, std::string_view wanted) {
    Number value{};
    if (i >= line.words.size()) refuse_line(line, fmt::format("{} is missing", wanted));
    const std::string_view word = line.words[i];
    const auto [end, error] = std::from_chars(word.data(), word.data() + word.size(), value);
    if (error != std::errc() || end != word.data() + word.size())
        refuse_line(line, fmt::format("\"{}\" is not {}", word.substr(0, 40), wanted));
    return value;
}

}  // namespace

void refuse_line(const TextLine& line, std::string_view why) {
    throw ModelTextRefused(fmt::format("line {}: {}", line.number, why));
}

std::int64_t whole(const TextLine& line, std::size_t i, std::int64_t most) {
    const auto value = number_at<std::int64_t>(line, i, "a whole number");
    if (value < 0 || value > most) refuse_line(line, fmt::format("{} is not from 0 to {}", value, most));
    return value;
}

double decimal(const TextLine& line, std::size_t i) {
    const auto value = number_at<double>(line, i, "a number");
    if (!std::isfinite(value)) refuse_line(line, "a number without end");
    return value;
}

void want_one(const TextLine& line) {
    if (line.words.size() != 2) refuse_line(line, fmt::format("one value belongs behind \"{}\"", line.words.front()));
}

std::vector<TextLine> lines_of(std::string_view text, std::string_view first_line) {
    std::vector<TextLine> lines;
    bool done = false;
    for (int number = 1; !text.empty(); ++number) {
        const std::size_t end = std::min(text.find('\n'), text.size());
        const std::string_view here = text.substr(0, end);
        text.remove_prefix(std::min(end + 1, text.size()));
        if (number == 1) {
            if (here != first_line) throw ModelTextRefused(fmt::format("line 1: has to be \"{}\"", first_line));
            continue;
        }
        TextLine line = split(here, number);
        if (done) refuse_line(line, "stands behind \"done\"");
        if (line.words.empty()) refuse_line(line, "is empty");
        done = line.words.front() == "done";
        if (done && line.words.size() > 1) refuse_line(line, "nothing belongs behind \"done\"");
        if (!done) lines.push_back(std::move(line));
    }
    if (!done) throw ModelTextRefused("cut off: the last line has to be \"done\"");
    return lines;
}

}  // namespace tapbook
