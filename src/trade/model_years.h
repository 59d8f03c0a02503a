// Which model years does something hold for, and which year did the person type? Years are plain decimal: "010" is ten
// (and refused), never octal eight.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <variant>

namespace tapbook {

inline constexpr int earliest_model_year = 1950;
inline constexpr int latest_model_year = 2079;

// Two digits below this mean 20.., from it on 19..: "49" is 2049, "50" is 1950 (no car before 1950 is in the book).
inline constexpr int two_digit_pivot = 50;

// Both ends belong to the range. REQUIRES first <= last wherever it is used.
struct ModelYears {
    int first;
    int last;

    friend constexpr bool operator==(const ModelYears&, const ModelYears&) = default;
};

constexpr bool contains(const ModelYears& years, int year) {
    return years.first <= year && year <= years.last;
}

// At least one year in common.
constexpr bool overlaps(const ModelYears& a, const ModelYears& b) {
    return a.first <= b.last && b.first <= a.last;
}

std::string words(const ModelYears& years);  // "2013-2016", "2013"

enum class YearRefusalReason : std::uint8_t { empty, not_digits, wrong_length, out_of_range, backwards };

// Why a text was not taken as a year, as data; message() makes the sentence.
struct YearRefusal {
    YearRefusalReason reason;
    std::string piece;  // as typed

    // One line, safe to print: `"010" is the number 10, outside the model years 1950 to 2079; ...`.
    std::string message() const;
};

// "2018", "1998"; two digits by the pivot: "18" is 2018, "98" is 1998. Nothing but digits: no blank, no sign.
std::variant<int, YearRefusal> parse_model_year(std::string_view text);

// One year or two with "-" or ".." between them, each as above: "2013-2016", "13-16", "2013..2016", "2018".
std::variant<ModelYears, YearRefusal> parse_model_years(std::string_view text);

}  // namespace tapbook
