// Did the person type a VIN, and whose is it? A shop enters VIN patterns with its cars (? for any character); the VIN
// itself is compared and forgotten.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "trade/trade.h"

namespace tapbook {

// What `words` say when they are a VIN: 17 letters and digits, blanks and hyphens apart. Absent for anything else, and
// for letters with nothing but up to four digits behind them: that is a name with a year ("dastrel mallen 2012").
std::optional<std::variant<Vin, VinRefusal>> vin_in(std::string_view words);

// A pattern that a shop may enter so that this VIN and those of like cars find theirs: the first eight characters,
// which describe the car (49 CFR 565.15: maker in 1 to 3, make-up in 4 to 8), then anything.
std::string suggested_pattern(const Vin& vin);

// The patterns of all cars as one value: "TBV1"; for each pattern its 17 characters and its car's place (4 bytes).
std::string pack_vin_patterns(std::span<const std::vector<std::string>> patterns_of_cars);

// Places of the cars with a pattern that matches, each once, in order. Absent when the bytes are not of this layout or
// name a car that is not there.
std::optional<std::vector<std::size_t>> cars_of_vin(std::string_view packed, const Vin& vin, std::size_t cars);

}  // namespace tapbook
