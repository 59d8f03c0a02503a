// Did the wiring change in the middle of a model's life? "Old until b, new from b" against "one value all along".
//
// Each car scores its own best note in full. Gain = points explained by the best split minus points explained by the
// best single value. Prior odds: a single value 90 % (shared over the values seen), a split 10 % (shared over the break
// years and ordered pairs of values). A point triples the odds, so a split is 27 times as probable as one value, or
// more, when 3^(gain - 3) >= 9 B (V - 1), with B break years and V values seen.
#pragma once

#include <optional>
#include <span>
#include <string>

namespace tapbook {

// One car that was looked at, with its model year and the points of its best note for the value it shows.
struct DatedCar {
    std::string value;
    int year = 0;
    int points = 0;
};

struct YearSplit {
    std::string old_value, new_value;
    int last_old_year = 0, first_new_year = 0;  // the change lies after the first and not after the second
    int old_cars = 0, new_cars = 0;             // that show the value of their side
    int gain = 0;                               // points that the split explains beyond the best single value
    int breaks = 0, values = 0;                 // B and V
    bool is_only_pair = false;                  // no other old and new value explain as many points
};

// The split that explains most points, whatever its odds; of equal ones the first in order of the two values. Absent
// when fewer than two values or two calendar years were seen. O(cars + years x values).
std::optional<YearSplit> best_year_split(std::span<const DatedCar> cars);

// Is the split at least 27 times as probable as the best single value?
bool is_far_likelier(const YearSplit& split);

// The split to report: far likelier, two cars or more on each side, and no other pair of values explains as much.
std::optional<YearSplit> year_split_of(std::span<const DatedCar> cars);

}  // namespace tapbook
