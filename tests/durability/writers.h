// What writes to a catalog? Each writer with what it starts from, so that every one meets the same faults.
#pragma once

#include <cstdint>
#include <filesystem>
#include <functional>
#include <string>
#include <vector>

namespace tapbook::disk {

struct Writer {
    std::string name;
    // Makes the catalog `file` that act() starts from. Runs on a sound disk.
    std::function<void(const std::filesystem::path& file)> prepare;
    // The writing itself, as one command does it. Throws what the catalog throws.
    std::function<void(const std::filesystem::path& file)> act;
};

const std::vector<Writer>& writers();

// At most `most` of the operations 0 to count - 1, spread evenly, the first and the last among them.
std::vector<std::int64_t> spread(std::int64_t count, std::int64_t most);

// A car with `count` tap points, and batch number `number` of one note at each of them.
void make_car_with_taps(const std::filesystem::path& file, int count);
void add_notes(const std::filesystem::path& file, int count, int number);

// All rows of all tables in order of their columns, as text: equal texts are equal contents. Throws on a damaged file;
// "damaged: ..." is never returned.
std::string contents_of(const std::filesystem::path& file);

// "ok" or what SQLite's integrity and foreign key checks say.
std::string soundness_of(const std::filesystem::path& file);

}  // namespace tapbook::disk
