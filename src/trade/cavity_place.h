// Where on the connector's face does a cavity lie? By its number and the count of rows; nothing is guessed where the
// catalog does not say how the face is numbered.
#pragma once

#include <optional>
#include <string_view>

#include "trade/vehicle.h"

namespace tapbook {

// Row from the top, column from the left of the view face, both from 1.
struct CavityPlace {
    int row = 1;
    int column = 1;

    friend bool operator==(const CavityPlace&, const CavityPlace&) = default;
};

// Cavities in a row; absent when count or rows are not known, or there are more rows than cavities.
std::optional<int> cavity_columns(const TapPoint& tap);

// Of "4", "B12" or "b 12": the number counts, letters before it name the block. Absent for any other name, for a number
// beyond the last cavity, and where cavity_columns() is.
std::optional<CavityPlace> cavity_place(const TapPoint& tap, std::string_view cavity);

}  // namespace tapbook
