// What is left when the process is killed at the n-th write or sync? Nothing half-written: the catalog is as before or
// as after, and the same command again completes it. 200 points or more over all writers.
#include <sys/wait.h>
#include <unistd.h>

#include <catch2/catch.hpp>
#include <cstdlib>
#include <map>

#include "catalog/a_catalog.h"
#include "durability/faulty_disk.h"
#include "durability/writers.h"

using namespace tapbook;
using namespace tapbook::disk;

namespace {

// In the normal run 16 of each writer; TAPBOOK_KILLS says how many of each instead.
std::int64_t points_of_a_writer() {
    const char* wanted = std::getenv("TAPBOOK_KILLS");
    return wanted == nullptr ? 16 : std::atoi(wanted);
}

// "write of the log", "sync of the file": what was going on at an event.
std::string phase_of(const Event& event) {
    const char* what = event.operation == Operation::write      ? "write"
                       : event.operation == Operation::truncate ? "truncate"
                       : event.operation == Operation::sync     ? "sync"
                                                                : "delete";
    const bool is_log = event.file.ends_with("-wal") || event.file.ends_with("-journal");
    return std::string(what) + (is_log ? " of the log" : " of the file");
}

// Runs the writer in a child that ends at operation `at`. True when it ended there.
bool is_killed_at(const Writer& writer, const std::filesystem::path& file, std::int64_t at) {
    const pid_t child = ::fork();
    if (child == 0) {
        begin(Fault::end_process, at);
        try {
            writer.act(file);
        } catch (...) {
            ::_exit(1);
        }
        ::_exit(0);
    }
    int status = 0;
    ::waitpid(child, &status, 0);
    return WIFEXITED(status) && WEXITSTATUS(status) == 137;
}

}  // namespace

TEST_CASE("a process killed at any write or sync leaves the catalog as before or as after, and again completes it") {
    install();
    std::map<std::string, int> hits;
    int points = 0;
    for (const auto& writer : writers()) {
        const CatalogFolder reference;
        begin(Fault::none, 0);
        writer.prepare(reference.file());
        const bool starts_from_a_file = std::filesystem::exists(reference.file());
        const std::string before = starts_from_a_file ? contents_of(reference.file()) : "";
        begin(Fault::none, 0);
        writer.act(reference.file());
        const auto all = events();
        const std::string after = contents_of(reference.file());
        REQUIRE(before != after);
        const std::int64_t count = static_cast<std::int64_t>(all.size());
        for (const std::int64_t at : spread(count, points_of_a_writer())) {
            INFO(writer.name << ", killed at " << at << " of " << count);
            const CatalogFolder folder;
            begin(Fault::none, 0);
            writer.prepare(folder.file());
            REQUIRE(is_killed_at(writer, folder.file(), at));
            ++hits[phase_of(all[static_cast<std::size_t>(at)])];
            ++points;
            if (starts_from_a_file) {
                REQUIRE(soundness_of(folder.file()) == "ok");
                const std::string left = contents_of(folder.file());
                REQUIRE((left == before || left == after));
                writer.act(folder.file());
            } else {
                std::filesystem::remove(folder.file());  // half a new catalog is thrown away, not mended
                std::filesystem::remove(folder.file().string() + "-wal");
                std::filesystem::remove(folder.file().string() + "-journal");
                writer.act(folder.file());
            }
            REQUIRE(contents_of(folder.file()) == after);
        }
    }
    std::string told;
    for (const auto& [phase, number] : hits) told += phase + " " + std::to_string(number) + ", ";
    INFO(points << " points: " << told);
    CHECK(points >= 200);
    for (const auto* phase : {"write of the log", "sync of the log", "write of the file", "sync of the file"})
        CHECK(hits[phase] > 0);
}
