// Which files are taken for a catalog, which are refused and why, and who may read them?
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

#include <fstream>

#include "a_catalog.h"

using namespace tapbook;
namespace fs = std::filesystem;

namespace {

void write_text(const fs::path& file, const std::string& text) {
    std::ofstream(file, std::ios::binary) << text;
}

CatalogTrouble opening(const fs::path& file, Access access = Access::read) {
    return trouble_of([&] { Catalog::open(file, access); });
}

std::string bytes_of(const fs::path& file) {
    std::ifstream stream(file, std::ios::binary);
    return {std::istreambuf_iterator<char>(stream), {}};
}

// Runs `check` in a child process without root's rights; true when it returned true there.
template <class Check>
bool as_nobody(Check check) {
    const pid_t child = fork();
    if (child == 0) {
        bool good = setgid(65534) == 0 && setuid(65534) == 0;
        try {
            good = good && check();
        } catch (...) {
            good = false;
        }
        _exit(good ? 0 : 1);
    }
    int status = 1;
    waitpid(child, &status, 0);
    return WIFEXITED(status) && WEXITSTATUS(status) == 0;
}

}  // namespace

TEST_CASE("a new catalog can be read and written by its owner only, and so can the files beside it") {
    CatalogFolder folder;
    auto catalog = folder.create();
    catalog.add(one_car(), false, today);
    int files = 0;
    for (const auto& item : fs::directory_iterator(folder.path())) {
        INFO(item.path());
        struct stat status {};
        REQUIRE(stat(item.path().c_str(), &status) == 0);
        CHECK((status.st_mode & 0777) == 0600);
        ++files;
    }
    CHECK(files >= 2);  // the log beside it
}

TEST_CASE("a new catalog knows its shop and nothing else, and is found again") {
    CatalogFolder folder;
    std::string id;
    {
        const auto catalog = folder.create();
        id = catalog.own_shop().id;
        CHECK(catalog.own_shop().name == "Tarrow Car Sound");
        CHECK(id.size() == 32);
        CHECK_FALSE(catalog.is_practice());
        CHECK_FALSE(catalog.is_read_only());
        const auto counts = catalog.counts();
        CHECK(counts.vehicles + counts.systems + counts.circuits + counts.taps + counts.notes + counts.converters +
                  counts.amplifiers ==
              0);
        CHECK(counts.shops == 1);
    }
    CHECK(folder.open().own_shop().id == id);
    CHECK(folder.open(Access::read).own_shop().id == id);
}

TEST_CASE("two shops have two ids, the same seed the same") {
    CatalogFolder a, b, c;
    const auto first = a.create().own_shop().id;
    CHECK(b.create().own_shop().id == first);
    CHECK(Catalog::create(c.file(), "Tarrow Car Sound", CatalogKind::real, today, system_random()).own_shop().id !=
          first);
}

TEST_CASE("a catalog is never made over a file that is there") {
    CatalogFolder folder;
    write_text(folder.file(), "something of mine");
    CHECK(trouble_of([&] { folder.create(); }) == CatalogTrouble::already_there);
    CHECK(bytes_of(folder.file()) == "something of mine");
    CHECK(trouble_of([&] { Catalog::create(folder.path(), "x", CatalogKind::real, today, system_random()); }) ==
          CatalogTrouble::already_there);
}

TEST_CASE("folders on the way to a new catalog are made") {
    CatalogFolder folder;
    Catalog::create(folder / "a/b/shop.sqlite", "x", CatalogKind::real, today, repeatable_random("x"));
    CHECK(fs::exists(folder / "a/b/shop.sqlite"));
    write_text(folder / "file", "");
    CHECK(trouble_of([&] {
              Catalog::create(folder / "file/shop.sqlite", "x", CatalogKind::real, today, repeatable_random("x"));
          }) == CatalogTrouble::input_output);
}

TEST_CASE("what is no catalog is refused and left as it is") {
    CatalogFolder folder;
    {
        sqlite::Database foreign(folder / "foreign", sqlite::Open::create);
        foreign.execute("CREATE TABLE t (x INTEGER) STRICT; INSERT INTO t VALUES (1)");
        foreign.set_user_version(1);
    }
    write_text(folder / "text", "make = \"Orrery\"\n" + std::string(2000, 'x'));
    write_text(folder / "empty", "");
    write_text(folder / "short", "SQLite format 3");
    for (const char* name : {"foreign", "text", "empty", "short"}) {
        INFO(name);
        const auto before = bytes_of(folder / name);
        CHECK(opening(folder / name) == CatalogTrouble::not_ours);
        CHECK(opening(folder / name, Access::write) == CatalogTrouble::not_ours);
        CHECK(bytes_of(folder / name) == before);
    }
    CHECK(opening(folder.path()) == CatalogTrouble::not_ours);
}

TEST_CASE("a missing catalog is told as missing and not made") {
    CatalogFolder folder;
    CHECK(opening(folder.file()) == CatalogTrouble::missing);
    CHECK(opening(folder.file(), Access::write) == CatalogTrouble::missing);
    CHECK(opening(folder / "no/such/folder") == CatalogTrouble::missing);
    CHECK(fs::is_empty(folder.path()));
}

TEST_CASE("a catalog of a newer program is refused and left as it is") {
    CatalogFolder folder;
    folder.create();
    {
        sqlite::Database database(folder.file());
        database.set_user_version(database.user_version() + 1);
    }
    const auto before = bytes_of(folder.file());
    CHECK(opening(folder.file()) == CatalogTrouble::newer);
    CHECK(opening(folder.file(), Access::write) == CatalogTrouble::newer);
    CHECK(bytes_of(folder.file()) == before);
}

TEST_CASE("a damaged catalog is told as damaged or as none, never used") {
    CatalogFolder folder;
    folder.create().add(one_car(), false, today);
    auto bytes = bytes_of(folder.file());
    REQUIRE(bytes.size() > 8192);
    write_text(folder / "cut", bytes.substr(0, 5000));
    CHECK(opening(folder / "cut") == CatalogTrouble::damaged);
    for (std::size_t i = 100; i < 4096; ++i) bytes[i] = 'x';  // the schema's page
    write_text(folder / "overwritten", bytes);
    CHECK(opening(folder / "overwritten") == CatalogTrouble::damaged);
}

TEST_CASE("where file and folder may only be read the catalog opens read-only and refuses to be written") {
    if (geteuid() != 0) {
        WARN("not run: changing to another account needs root");
        return;
    }
    CatalogFolder folder;
    folder.create().add(one_car(), false, today);
    fs::permissions(folder.file(), fs::perms(0444));
    fs::permissions(folder.path(), fs::perms(0555));
    CHECK(as_nobody([&] {
        const auto catalog = folder.open(Access::read);
        return catalog.is_read_only() && catalog.counts().notes == 1 && catalog.car(car, {}).taps.size() == 1;
    }));
    CHECK(as_nobody([&] {
        try {
            folder.open(Access::write);
        } catch (const CatalogError& error) {
            return error.trouble() == CatalogTrouble::not_permitted;
        }
        return false;
    }));
    CHECK(as_nobody([&] {
        auto catalog = folder.open(Access::read);
        try {
            catalog.add(one_car(), false, today);
        } catch (const CatalogError& error) {
            return error.trouble() == CatalogTrouble::not_permitted;
        }
        return false;
    }));
    CHECK(as_nobody([&] {
        try {
            Catalog::create(folder / "new", "x", CatalogKind::real, today, repeatable_random("x"));
        } catch (const CatalogError& error) {
            return error.trouble() == CatalogTrouble::not_permitted;
        }
        return false;
    }));
    fs::permissions(folder.file(), fs::perms(0000));
    CHECK(as_nobody([&] {
        try {
            folder.open(Access::read);
        } catch (const CatalogError& error) {
            return error.trouble() == CatalogTrouble::not_permitted;
        }
        return false;
    }));
}

TEST_CASE("while another program writes, adding gives up after its time-out and changes nothing") {
    CatalogFolder folder;
    folder.create();
    auto catalog = Catalog::open(folder.file(), Access::write, std::chrono::milliseconds(50));
    {
        sqlite::Database other(folder.file());
        sqlite::Transaction writing(other);
        other.execute("INSERT INTO setting (name, value) VALUES ('x', 'y')");
        const auto start = std::chrono::steady_clock::now();
        CHECK(trouble_of([&] { catalog.add(one_car(), false, today); }) == CatalogTrouble::busy);
        CHECK(std::chrono::steady_clock::now() - start < std::chrono::seconds(3));
        CHECK(catalog.counts().notes == 0);
    }
    catalog.add(one_car(), false, today);
    CHECK(catalog.counts().notes == 1);
}
