// Is this a vehicle identification number, does its check digit fit, and of which model year is the car? 17 characters
// by ISO 3779; check digit, weights and year codes by 49 CFR 565.15, Tables III to VII. Outside North America and China
// a VIN need not carry a check digit: one that does not fit is unknown there, never wrong.
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <variant>

#include "electrical/electrical.h"

namespace tapbook {

inline constexpr int vin_length = 17;

enum class VinRefusalReason : std::uint8_t {
    empty,
    wrong_length,
    confusable_letter,  // I, O and Q are in no VIN
    foreign_character,  // neither digit nor ASCII letter
    no_year_code,       // position 10 must be a model-year code and is none
    names_nothing,      // a pattern of nothing but ?
};

// Why a text was not taken, as data; message() makes the sentence.
struct VinRefusal {
    VinRefusalReason reason;
    std::string piece;  // the character at fault as typed; empty when it is none
    int position = 0;   // of that character among those that count, from 1; 0 when it is none
    int length = 0;     // for wrong_length: how many characters count

    // One line, safe to print: `"O" at position 3 is in no VIN; it may be the digit 0`.
    std::string message() const;
};

// 17 characters, capital letters (without I, O, Q) and digits. Made by parse_vin() only.
class Vin {
  public:
    const std::string& text() const { return text_; }
    char at(int position) const { return text_[static_cast<std::size_t>(position - 1)]; }  // REQUIRES 1 to vin_length

    friend bool operator==(const Vin&, const Vin&) = default;

  private:
    explicit Vin(std::string text) : text_(std::move(text)) {}
    friend std::variant<Vin, VinRefusal> parse_vin(std::string_view text);

    std::string text_;
};

// The VIN that `text` spells, or the first reason against it. Blanks and hyphens are dropped, small letters taken as
// capitals. A North American VIN, and one whose first character is the 0 of no region, must have a model-year code at
// position 10: all zeros would pass the arithmetic. A check digit that does not fit is no refusal: check_verdict()
// says.
std::variant<Vin, VinRefusal> parse_vin(std::string_view text);

// Values of the characters times the weights of their positions. From 0 to 89 x 9.
int weighted_sum(const Vin& vin);

// The character that fits at position 9, whatever stands there: '0' to '9' or 'X'.
char check_digit(const Vin& vin);

enum class CheckVerdict : std::uint8_t {
    matches,   // position 9 is the check digit; by chance so in one of eleven where none is used
    mismatch,  // it is not, and the maker's region uses one: mistyped or misread
    not_used,  // it is not, and the maker's region need not use one: nothing is known
};

template <>
struct NamedValues<CheckVerdict> {
    static constexpr Named<CheckVerdict> all[] = {
        {CheckVerdict::matches, "matches"}, {CheckVerdict::mismatch, "mismatch"}, {CheckVerdict::not_used, "not_used"}};
};

// Regions with a check digit: North America (first character 1 to 5: 49 CFR 565.15; 7F to 70 likewise, assigned to the
// United States later: from memory) and China (L: GB 16735, from memory).
CheckVerdict check_verdict(const Vin& vin);

// Model year from position 10: 1980 to 2009 where position 7 is a digit, 2010 to 2039 where it is a letter (note to
// Table VII of 49 CFR 565.15). Absent outside North America, where neither position need say so. The note holds for
// cars and vans up to 4536 kg: of a bus, a lorry or a trailer the year may be 30 years off.
std::optional<int> model_year(const Vin& vin);

// A VIN with ? for any character, as a shop enters it to find a car. Made by parse_vin_pattern() only.
class VinPattern {
  public:
    const std::string& text() const { return text_; }

  private:
    explicit VinPattern(std::string text) : text_(std::move(text)) {}
    friend std::variant<VinPattern, VinRefusal> parse_vin_pattern(std::string_view text);

    std::string text_;
};

// The pattern that `text` spells, read like a VIN; position 10 may be anything. Nothing but ? is refused.
std::variant<VinPattern, VinRefusal> parse_vin_pattern(std::string_view text);

// Does every character of the pattern that is not ? stand in the VIN at the same position?
bool vin_matches(const VinPattern& pattern, const Vin& vin);

// The same for a pattern as stored; a text that is no pattern matches no VIN.
bool vin_matches(std::string_view pattern, const Vin& vin);

}  // namespace tapbook
