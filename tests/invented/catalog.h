// What is recorded of an invented car? Entries and notes as a vehicle file would give them: about two sound systems, 22
// circuits and 33 tap points a car; most notes agree, some are swapped, some name another colour, some are copied.
#pragma once

#include <cstdint>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "catalog/catalog.h"

namespace invented {

// How many notes each car has: `total` in all, few cars with many (half of them below 0.8 of the average, one in a
// hundred above 3.6 times, none above 5 times).
std::vector<int> note_counts(std::uint64_t seed, std::size_t cars, std::int64_t total);

// The shops that wrote them, for the first batch of a catalog.
tapbook::Batch shops();

// One car with its entries and notes. The same for the same seed and path, whatever the other cars are.
tapbook::Batch car_batch(std::uint64_t seed, const tapbook::VehicleName& car, int notes);

// `count` converters, and every amplifier, made from these parts (as read from a parts file) by varying what they take
// and give.
tapbook::Batch parts_like(const tapbook::Batch& models, std::uint64_t seed, std::size_t count);

}  // namespace invented
