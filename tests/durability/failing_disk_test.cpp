// What when the k-th operation fails, once or for ever, with an I/O error or a full disk? The command says so (the exit
// code for disk and I/O), the catalog is sound, as before or as after, and the same command again completes it.
#include <catch2/catch.hpp>
#include <cstdlib>

#include "catalog/a_catalog.h"
#include "durability/faulty_disk.h"
#include "durability/writers.h"

using namespace tapbook;
using namespace tapbook::disk;

namespace {

enum class Outcome { done, disk_trouble };

// In the normal run 6 of each fault and writer; TAPBOOK_DISK_FAULTS says how many instead.
std::int64_t points_of_a_fault() {
    const char* wanted = std::getenv("TAPBOOK_DISK_FAULTS");
    return wanted == nullptr ? 6 : std::atoi(wanted);
}

// Anything but success and trouble with the disk fails the test.
Outcome outcome_of(const Writer& writer, const std::filesystem::path& file) {
    try {
        writer.act(file);
        return Outcome::done;
    } catch (const CatalogError& error) {
        INFO(error.what());
        REQUIRE(error.trouble() == CatalogTrouble::input_output);
        return Outcome::disk_trouble;
    }
}

}  // namespace

TEST_CASE("a disk that fails at any operation, once or for ever, is told and leaves the catalog sound") {
    install();
    int points = 0, told = 0;
    for (const auto& writer : writers()) {
        const CatalogFolder reference;
        begin(Fault::none, 0);
        writer.prepare(reference.file());
        if (!std::filesystem::exists(reference.file())) continue;  // making a catalog: see below
        const std::string before = contents_of(reference.file());
        begin(Fault::none, 0);
        writer.act(reference.file());
        const std::int64_t operations = count();
        const std::string after = contents_of(reference.file());
        for (const Fault fault : {Fault::error_once, Fault::error_for_ever, Fault::full_once, Fault::full_for_ever})
            for (const std::int64_t at : spread(operations, points_of_a_fault())) {
                INFO(writer.name << ", fault " << static_cast<int>(fault) << " at " << at << " of " << operations);
                const CatalogFolder folder;
                begin(Fault::none, 0);
                writer.prepare(folder.file());
                begin(fault, at);
                const Outcome outcome = outcome_of(writer, folder.file());
                REQUIRE(has_struck());
                ++points;
                told += outcome == Outcome::disk_trouble ? 1 : 0;
                begin(Fault::none, 0);
                REQUIRE(soundness_of(folder.file()) == "ok");
                const std::string left = contents_of(folder.file());
                if (outcome == Outcome::done)
                    REQUIRE(left == after);
                else
                    REQUIRE((left == before || left == after));
                writer.act(folder.file());
                REQUIRE(contents_of(folder.file()) == after);
            }
    }
    INFO(points << " points, " << told << " told");
    CHECK(points > 200);
    CHECK(told > points / 4);
}

TEST_CASE("a disk that fails while a catalog is made leaves none behind, so that init can be said again") {
    install();
    const Writer& making = writers().front();
    REQUIRE(making.name == "make a catalog");
    begin(Fault::none, 0);
    const CatalogFolder reference;
    making.act(reference.file());
    const std::int64_t operations = count();
    for (const Fault fault : {Fault::error_once, Fault::error_for_ever, Fault::full_once, Fault::full_for_ever})
        for (const std::int64_t at : spread(operations, points_of_a_fault())) {
            INFO("fault " << static_cast<int>(fault) << " at " << at << " of " << operations);
            const CatalogFolder folder;
            begin(fault, at);
            const Outcome outcome = outcome_of(making, folder.file());
            begin(Fault::none, 0);
            if (outcome == Outcome::disk_trouble) {
                REQUIRE_FALSE(std::filesystem::exists(folder.file()));
                making.act(folder.file());
            }
            REQUIRE(soundness_of(folder.file()) == "ok");
            REQUIRE(contents_of(folder.file()) == contents_of(reference.file()));
        }
}
