// Writes an invented practice catalog of a given size: `tapbook-invent SEED VEHICLES NOTES FILE [CONVERTERS]`. Real
// records, through the catalog's own checks; the same seed gives the same record ids. Started by tools/invent.
#include <fmt/format.h>

#include <chrono>
#include <cstdio>
#include <exception>

#include "embedded.h"
#include "files/files.h"
#include "invented/cars.h"
#include "invented/catalog.h"

namespace {

using namespace tapbook;

constexpr std::size_t batches_together = 500;  // cars in one transaction
constexpr std::size_t usual_converters = 40;
const std::string day = "2026-01-15";

Batch parts(std::uint64_t seed, std::size_t converters) {
    for (const auto& file : embedded_texts())
        if (file.name == "data/parts.toml")
            return invented::parts_like(read_batch(file.text, std::string(file.name)), seed, converters);
    return {};
}

void invent(std::uint64_t seed, std::size_t vehicles, std::int64_t notes, const std::string& file,
            std::size_t converters) {
    const auto started = std::chrono::steady_clock::now();
    const auto cars = invented::cars(seed, vehicles);
    const auto counts = invented::note_counts(seed, cars.size(), notes);
    Catalog catalog = Catalog::create(file, "Ambrel", CatalogKind::practice, day, repeatable_random("invented"));
    catalog.add(invented::shops(), false, day);
    catalog.add(parts(seed, converters), false, day);
    std::size_t next = 0;
    std::int64_t added = 0;
    const AddReport report = catalog.add_many(
        [&]() -> std::optional<Batch> {
            if (next == cars.size()) return std::nullopt;
            if (next > 0 && next % 1000 == 0) fmt::print(stderr, "{} of {} cars, {} notes\n", next, cars.size(), added);
            added += counts[next];
            Batch batch = invented::car_batch(seed, cars[next], counts[next]);
            ++next;
            return batch;
        },
        batches_together, day);
    const std::chrono::duration<double> seconds = std::chrono::steady_clock::now() - started;
    fmt::print("{}: {} cars, {} entries, {} notes in {:.1f} s\n", file, cars.size(), report.entries_new,
               report.notes_new, seconds.count());
}

}  // namespace

int main(int count, char** words) {
    try {
        if (count != 5 && count != 6) throw std::runtime_error("tapbook-invent SEED VEHICLES NOTES FILE [CONVERTERS]");
        invent(std::stoull(words[1]), std::stoull(words[2]), std::stoll(words[3]), words[4],
               count == 6 ? std::stoull(words[5]) : usual_converters);
        return 0;
    } catch (const std::exception& error) {
        fmt::print(stderr, "tapbook-invent: {}\n", error.what());
        return 1;
    }
}
