// What survives a power cut? 25 commands of 20 notes each are recorded write by write. From the record, disks are built
// as a cut at any operation could have left them: what was synced is there; later writes of a file are dropped, kept,
// kept in part, applied in another order, or torn at a sector. Each such disk must open, be sound, hold every batch
// that was acknowledged before the cut, and hold no batch in part.
#include <catch2/catch.hpp>
#include <cstdlib>
#include <fstream>
#include <map>
#include <optional>
#include <random>
#include <sstream>

#include "catalog/a_catalog.h"
#include "durability/faulty_disk.h"
#include "durability/writers.h"

using namespace tapbook;
using namespace tapbook::disk;
namespace fs = std::filesystem;

namespace {

constexpr int batches = 25, notes_of_a_batch = 20, sector = 512;

std::string text_of(const fs::path& file) {
    std::ifstream in(file, std::ios::binary);
    std::ostringstream out;
    out << in.rdbuf();
    return out.str();
}

void put(std::string& content, std::int64_t offset, std::string_view bytes) {
    const auto end = static_cast<std::size_t>(offset) + bytes.size();
    if (content.size() < end) content.resize(end, '\0');
    content.replace(static_cast<std::size_t>(offset), bytes.size(), bytes);
}

// One file of the disk: what is surely on it, and what was written since. A removal, and the making of the next file of
// that name, last only from the next sync of that name on; until then the old file may still be there.
struct DiskFile {
    std::string durable;
    std::vector<const Event*> later;
    bool exists = false;
    std::optional<std::string> old_one;

    void meet(const Event& event) {
        if (event.operation == Operation::remove) {
            for (const Event* one : later) apply(durable, *one);
            *this = DiskFile{{}, {}, false, std::move(durable)};
            return;
        }
        exists = true;
        if (event.operation != Operation::sync) {
            later.push_back(&event);
            return;
        }
        for (const Event* one : later) apply(durable, *one);
        later.clear();
        old_one.reset();
    }

    static void apply(std::string& content, const Event& event) {
        if (event.operation == Operation::truncate)
            content.resize(static_cast<std::size_t>(event.offset), '\0');
        else
            put(content, event.offset, event.bytes);
    }
};

class CutDamage {
  public:
    explicit CutDamage(unsigned seed) : engine_(seed) {}

    // What a cut leaves of the file; absent when it is gone.
    std::optional<std::string> left_of(const DiskFile& file) {
        if (file.old_one && below(2) == 0) return file.old_one;
        if (!file.exists || (file.old_one && below(2) == 0)) return std::nullopt;
        std::string content = file.durable;
        auto later = file.later;
        const auto kind = below(5);
        if (kind == 0) return content;  // nothing of it
        if (kind >= 3) std::shuffle(later.begin(), later.end(), engine_);
        for (const Event* event : later) {
            if (kind != 1 && below(3) == 0) continue;
            if (event->operation == Operation::write && kind == 4 && below(2) == 0) {
                const auto sectors = event->bytes.size() / sector;
                put(content, event->offset, std::string_view(event->bytes).substr(0, below(sectors + 1) * sector));
                continue;
            }
            DiskFile::apply(content, *event);
        }
        return content;
    }

  private:
    std::size_t below(std::size_t end) { return engine_() % end; }
    std::mt19937 engine_;
};

struct Recording {
    std::map<std::string, DiskFile> start;
    std::vector<Event> events;
    std::vector<std::size_t> acknowledged;  // number of events when batch i had returned
};

Recording record(const CatalogFolder& folder) {
    install();
    begin(Fault::none, 0);
    make_car_with_taps(folder.file(), notes_of_a_batch);
    Recording recording;
    recording.start[folder.file().string()] = {text_of(folder.file()), {}, true, {}};
    begin(Fault::none, 0, true);
    for (int batch = 0; batch < batches; ++batch) {
        add_notes(folder.file(), notes_of_a_batch, batch);
        recording.acknowledged.push_back(events().size());
    }
    recording.events = events();
    begin(Fault::none, 0);
    return recording;
}

// Notes by batch on the disk in `folder`.
std::map<std::string, std::int64_t> notes_by_batch(const fs::path& file) {
    sqlite::Database database(file, sqlite::Open::read_only);
    std::map<std::string, std::int64_t> counts;
    auto rows = database.prepare("SELECT initials, count(*) FROM note GROUP BY initials");
    while (rows.step()) counts[std::string(rows.text(0))] = rows.integer(1);
    return counts;
}

}  // namespace

TEST_CASE("after a power cut every acknowledged note is there, no batch in part, and the file is sound") {
    const char* wanted = std::getenv("TAPBOOK_POWER_CUTS");
    const int images = wanted == nullptr ? 1000 : std::atoi(wanted);
    const CatalogFolder source;
    const Recording recording = record(source);
    REQUIRE(recording.events.size() > 100);
    const int points = static_cast<int>(recording.events.size()) + 1;
    const int cuts_of_a_point = (images + points - 1) / points;
    auto disk = recording.start;
    int played = 0, with_log = 0, damaged_log = 0;
    const CatalogFolder folder;
    for (std::size_t at = 0; at <= recording.events.size(); ++at) {
        for (int cut = 0; cut < cuts_of_a_point; ++cut) {
            INFO("cut before operation " << at << ", damage " << cut);
            CutDamage damage(static_cast<unsigned>(at * 1000 + static_cast<std::size_t>(cut)));
            for (const auto* end : {"", "-wal", "-shm"}) fs::remove(folder.file().string() + end);
            for (const auto& [name, file] : disk) {
                const auto left = damage.left_of(file);
                const bool is_log = name.ends_with("-wal");
                if (is_log && left && !left->empty()) ++with_log;
                if (is_log && !file.later.empty()) ++damaged_log;
                if (left) std::ofstream(folder.file().string() + (is_log ? "-wal" : ""), std::ios::binary) << *left;
            }
            { const Catalog opened = folder.open(); }
            REQUIRE(soundness_of(folder.file()) == "ok");
            const auto counts = notes_by_batch(folder.file());
            for (const auto& [batch, notes] : counts) REQUIRE(notes == notes_of_a_batch);
            for (std::size_t batch = 0; batch < recording.acknowledged.size(); ++batch)
                if (recording.acknowledged[batch] <= at) REQUIRE(counts.contains("B" + std::to_string(batch)));
            ++played;
        }
        if (at < recording.events.size()) disk[recording.events[at].file].meet(recording.events[at]);
    }
    INFO(played << " cuts, " << with_log << " with a log, " << damaged_log << " with unsynced writes in it");
    CHECK(played >= images);
    CHECK(damaged_log > played / 10);
}
