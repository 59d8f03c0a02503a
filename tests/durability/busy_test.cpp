// Do two processes that write at once lose anything, and is the one that waits too long told so?
#include <sys/wait.h>
#include <unistd.h>

#include <catch2/catch.hpp>
#include <chrono>

#include "catalog/a_catalog.h"
#include "durability/writers.h"

using namespace tapbook;
using namespace tapbook::disk;

namespace {

constexpr int processes = 4, notes_of_each = 40;

// A child that adds notes one by one, each in a transaction of its own. Ends with 0 when all were saved.
pid_t start_writing(const std::filesystem::path& file, int number) {
    const pid_t child = ::fork();
    if (child != 0) return child;
    int failed = 0;
    for (int i = 0; i < notes_of_each; ++i) {
        try {
            NoteDraft draft = note_at(tap_path, {{"positive", ::words("WH")}, {"negative", ::words("BK")}});
            draft.values["initials"] = ::words("P" + std::to_string(number) + "-" + std::to_string(i));
            Catalog::open(file, Access::write).take_note(draft, {"note", true, false}, today);
        } catch (const std::exception&) {
            ++failed;
        }
    }
    ::_exit(failed == 0 ? 0 : 1);
}

}  // namespace

TEST_CASE("of notes that several processes save at once none is lost and none is refused") {
    const CatalogFolder folder;
    Batch batch = one_car();
    batch.notes.clear();
    folder.create().add(batch, false, today);
    std::vector<pid_t> children;
    for (int number = 0; number < processes; ++number) children.push_back(start_writing(folder.file(), number));
    for (const pid_t child : children) {
        int status = 0;
        ::waitpid(child, &status, 0);
        CHECK(WIFEXITED(status));
        CHECK(WEXITSTATUS(status) == 0);
    }
    CHECK(folder.open().counts().notes == processes * notes_of_each);
    CHECK(soundness_of(folder.file()) == "ok");
}

TEST_CASE("who cannot write within the time-out is told that the catalog is busy, and nothing is changed") {
    const CatalogFolder folder;
    folder.create().add(one_car(), false, today);
    sqlite::Database other(folder.file());
    other.execute("BEGIN IMMEDIATE");
    const auto started = std::chrono::steady_clock::now();
    try {
        Catalog::open(folder.file(), Access::write, std::chrono::milliseconds(200))
            .take_note(note_at(tap_path, {{"positive", ::words("BN")}}), {"note", true, false}, today);
        FAIL("it was written");
    } catch (const CatalogError& error) {
        CHECK(error.trouble() == CatalogTrouble::busy);
        CHECK(error.what() == folder.file().string() + " is in use by another program");
        CHECK(error.hint() == "wait a moment and try again; nothing was changed");
    }
    CHECK(std::chrono::steady_clock::now() - started >= std::chrono::milliseconds(200));
    other.execute("ROLLBACK");
    CHECK(folder.open().counts().notes == 1);
}
