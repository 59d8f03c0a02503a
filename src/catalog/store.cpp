// How is a catalog file made, opened, brought up to date and refused? application_id "TAPB"; user_version counts the
// schema files applied; WAL with synchronous FULL, so "saved" survives a power cut.
#include <fcntl.h>
#include <fmt/format.h>
#include <sodium.h>
#include <unistd.h>

#include <cerrno>
#include <cstring>

#include "catalog/kept_records.h"
#include "catalog/state.h"
#include "embedded.h"

namespace tapbook {
namespace {

namespace fs = std::filesystem;

std::vector<EmbeddedText> schema_files() {
    std::vector<EmbeddedText> files;
    for (const auto& text : embedded_texts())
        if (text.name.starts_with("schema/")) files.push_back(text);
    return files;
}

void apply_schema(sqlite::Database& database, const fs::path& file) {
    const auto files = schema_files();
    const auto version = static_cast<std::size_t>(database.user_version());
    if (version > 0 && version < files.size())
        database.backup_to(fmt::format("{}.before-{}", file.string(), files.size()));
    for (std::size_t next = version; next < files.size(); ++next) {
        sqlite::Transaction transaction(database);
        database.execute(files[next].text);
        database.set_user_version(static_cast<std::int32_t>(next + 1));
        transaction.commit();
    }
    if (version == 0 || version == files.size()) return;
    sqlite::Transaction transaction(database);
    if (read_kept_records(database) > 0) transaction.commit();
}

void put_setting(sqlite::Database& database, std::string_view name, std::string_view value) {
    auto insert = database.prepare("INSERT INTO setting (name, value) VALUES (?1, ?2)");
    insert.bind_all(name, value);
    insert.run();
}

// What open() wants to know of the catalog itself.
struct Settings {
    OwnShop own;
    bool practice = false;
};

Settings read_settings(sqlite::Database& database) {
    Settings settings;
    auto rows = database.prepare("SELECT name, value FROM setting");
    while (rows.step()) {
        const auto name = rows.text(0);
        if (name == "shop_id") settings.own.id = rows.text(1);
        if (name == "shop_name") settings.own.name = rows.text(1);
        if (name == "practice") settings.practice = rows.text(1) == "1";
    }
    return settings;
}

void make_shop(sqlite::Database& database, const std::string& name, CatalogKind kind, const std::string& today,
               const RandomSource& random) {
    std::array<unsigned char, crypto_sign_SEEDBYTES> seed{};
    std::array<unsigned char, crypto_sign_PUBLICKEYBYTES> public_key{};
    std::array<unsigned char, crypto_sign_SECRETKEYBYTES> secret_key{};
    std::array<unsigned char, 16> salt{};
    random(seed.data(), seed.size());
    random(salt.data(), salt.size());
    crypto_sign_seed_keypair(public_key.data(), secret_key.data(), seed.data());
    const auto bytes = [](const auto& array) {
        return std::string_view(reinterpret_cast<const char*>(array.data()), array.size());
    };
    const RecordId id = short_hash(bytes(public_key));
    auto secret = database.prepare("INSERT INTO secret (only, public_key, secret_key, salt) VALUES (1, ?1, ?2, ?3)");
    secret.bind_all(sqlite::BlobView{bytes(public_key)}, sqlite::BlobView{bytes(secret_key)},
                    sqlite::BlobView{bytes(salt)});
    secret.run();
    auto shop = database.prepare("INSERT INTO shop (id, name, known, public_key) VALUES (?1, ?2, 1, ?3)");
    shop.bind_all(sqlite::BlobView{bytes(id)}, name, sqlite::BlobView{bytes(public_key)});
    shop.run();
    put_setting(database, "shop_id", to_hex(id));
    put_setting(database, "shop_name", name);
    put_setting(database, "practice", kind == CatalogKind::practice ? "1" : "0");
    put_setting(database, "created", today);
    sodium_memzero(seed.data(), seed.size());
    sodium_memzero(secret_key.data(), secret_key.size());
}

[[noreturn]] void refuse_place(const fs::path& file, int reason) {
    if (reason == EEXIST)
        throw CatalogError(CatalogTrouble::already_there, fmt::format("{} is there already", file.string()),
                           "open it with --db, or choose another place");
    if (reason == EACCES || reason == EPERM || reason == EROFS)
        throw CatalogError(CatalogTrouble::not_permitted, fmt::format("may not write {}", file.string()),
                           "choose another place with --db FILE");
    throw CatalogError(CatalogTrouble::input_output,
                       fmt::format("cannot make {}: {}", file.string(), std::strerror(reason)),
                       "choose another place with --db FILE");
}

// A catalog is made beside its place and put there when it is whole: whoever is interrupted leaves no half of one.
class Unfinished {
  public:
    explicit Unfinished(const fs::path& place)
        : place_(place), file_(fmt::format("{}.{}.new", place.string(), ::getpid())) {
        std::error_code ignored;
        if (fs::exists(fs::symlink_status(place, ignored))) refuse_place(place, EEXIST);
        fs::remove(file_, ignored);
        // only its owner may read it, before the store writes a key into it
        const int handle = ::open(file_.c_str(), O_CREAT | O_EXCL | O_WRONLY | O_CLOEXEC, 0600);
        if (handle < 0) refuse_place(place, errno);
        ::close(handle);
    }
    ~Unfinished() {
        std::error_code ignored;
        for (const char* part : {"", "-wal", "-shm"}) fs::remove(fs::path(file_.string() + part), ignored);
    }
    Unfinished(const Unfinished&) = delete;
    Unfinished& operator=(const Unfinished&) = delete;

    const fs::path& file() const { return file_; }

    // REQUIRES that no connection is open on it. A place that was taken in the meantime is left alone; where the disk
    // knows no second name for a file, the two steps are not one.
    void put_in_place() const {
        if (::link(file_.c_str(), place_.c_str()) == 0) return;
        const bool no_links = errno == EPERM || errno == EOPNOTSUPP || errno == ENOSYS || errno == EMLINK;
        std::error_code ignored;
        if (!no_links || fs::exists(fs::symlink_status(place_, ignored)))
            refuse_place(place_, no_links ? EEXIST : errno);
        if (::rename(file_.c_str(), place_.c_str()) != 0) refuse_place(place_, errno);
    }

  private:
    fs::path place_, file_;
};

// Everything is in the file itself: only the file is put in its place, and closing tells nobody of a disk that fails.
void fold_log(const fs::path& unfinished, const fs::path& file) {
    try {
        sqlite::Database database(unfinished, sqlite::Open::read_write);
        database.execute("PRAGMA wal_checkpoint(TRUNCATE)");
    } catch (const sqlite::Error& error) {
        throw_catalog_error(error, file);
    }
}

bool may_write(const fs::path& file) {
    const fs::path folder = file.has_parent_path() ? file.parent_path() : fs::path(".");
    return ::access(file.c_str(), W_OK) == 0 && ::access(folder.c_str(), W_OK) == 0;
}

sqlite::Open mode_of(const fs::path& file, bool writable) {
    if (writable) return sqlite::Open::read_write;
    const bool has_log = fs::exists(fs::path(file.string() + "-wal"));
    return has_log ? sqlite::Open::read_only : sqlite::Open::immutable;
}

void check_is_ours(sqlite::Database& database, const fs::path& file) {
    const auto version = database.user_version();
    const auto newest = static_cast<std::int32_t>(schema_files().size());
    if (database.application_id() != catalog_application_id || version < 1)
        throw CatalogError(CatalogTrouble::not_ours,
                           fmt::format("{} is a database, but not a tapbook catalog", file.string()),
                           "give the catalog with --db FILE; tapbook init makes a new one");
    if (version > newest)
        throw CatalogError(CatalogTrouble::newer,
                           fmt::format("{} was written by a newer tapbook (schema {}, this one knows {})",
                                       file.string(), version, newest),
                           "use the newer program; nothing was changed");
}

// Without the shop's key nothing can be written in its name.
void check_has_key(sqlite::Database& database, const fs::path& file) {
    auto key = database.prepare("SELECT 1 FROM secret");
    if (!key.step())
        throw CatalogError(CatalogTrouble::not_permitted,
                           fmt::format("{} holds no key of its shop: it can be read, not written", file.string()),
                           "restore a backup that was made with the key");
}

}  // namespace

void throw_catalog_error(const sqlite::Error& error, const fs::path& file) {
    const std::string name = file.string();
    if (error.is_not_a_database())
        throw CatalogError(CatalogTrouble::not_ours, fmt::format("{} is not a tapbook catalog", name),
                           "give the catalog with --db FILE; tapbook init makes a new one");
    if (error.is_busy())
        throw CatalogError(CatalogTrouble::busy, fmt::format("{} is in use by another program", name),
                           "wait a moment and try again; nothing was changed");
    // our own statements are sound: where one is refused, a table or a column is gone
    if (error.is_corrupt() || error.is_refused_statement())
        throw CatalogError(CatalogTrouble::damaged, fmt::format("{} is damaged: {}", name, error.what()),
                           "restore the last backup");
    if (error.is_read_only())
        throw CatalogError(CatalogTrouble::not_permitted, fmt::format("{} may only be read", name),
                           "write from an account that owns it");
    throw CatalogError(CatalogTrouble::input_output, fmt::format("{}: {}", name, error.what()),
                       "check the disk; nothing was changed");
}

Catalog::Catalog(std::unique_ptr<State> state) : state_(std::move(state)) {}
Catalog::~Catalog() = default;
Catalog::Catalog(Catalog&&) noexcept = default;
Catalog& Catalog::operator=(Catalog&&) noexcept = default;

Catalog Catalog::create(const fs::path& file, const std::string& shop_name, CatalogKind kind, const std::string& today,
                        const RandomSource& random, const std::function<void(Catalog&)>& fill) {
    std::error_code ignored;
    if (file.has_parent_path()) fs::create_directories(file.parent_path(), ignored);
    const Unfinished unfinished(file);
    try {
        sqlite::Database database(unfinished.file(), sqlite::Open::read_write);
        database.execute("PRAGMA journal_mode = WAL; PRAGMA synchronous = FULL");
        {
            sqlite::Transaction transaction(database);
            database.set_application_id(catalog_application_id);
            transaction.commit();
        }
        apply_schema(database, file);
        sqlite::Transaction transaction(database);
        make_shop(database, shop_name, kind, today, random);
        transaction.commit();
    } catch (const sqlite::Error& error) {
        throw_catalog_error(error, file);
    }
    if (fill) {
        Catalog catalog = open(unfinished.file(), Access::write);
        fill(catalog);
    }
    fold_log(unfinished.file(), file);
    unfinished.put_in_place();
    return open(file, Access::write);
}

Catalog Catalog::open(const fs::path& file, Access access, std::chrono::milliseconds busy_timeout) {
    const fs::file_status status = fs::status(file);
    if (!fs::exists(status))
        throw CatalogError(CatalogTrouble::missing, fmt::format("there is no catalog at {}", file.string()),
                           "make one with `tapbook init`, or a practice shop with `tapbook demo`");
    if (!fs::is_regular_file(status))
        throw CatalogError(CatalogTrouble::not_ours, fmt::format("{} is not a file", file.string()),
                           "give the catalog with --db FILE");
    if (::access(file.c_str(), R_OK) != 0)
        throw CatalogError(CatalogTrouble::not_permitted, fmt::format("may not read {}", file.string()),
                           "read it from the account that owns it");
    const bool writable = may_write(file);
    if (access == Access::write && !writable)
        throw CatalogError(CatalogTrouble::not_permitted, fmt::format("{} may only be read", file.string()),
                           "write from an account that owns it, or copy it with backup");
    try {
        sqlite::Database database(file, mode_of(file, writable), busy_timeout);
        check_is_ours(database, file);
        if (access == Access::write) {
            database.execute("PRAGMA synchronous = FULL");
            apply_schema(database, file);
            check_has_key(database, file);
        }
        auto [own, practice] = read_settings(database);
        return Catalog(
            std::make_unique<State>(State{std::move(database), file, !writable, practice, std::move(own), {}}));
    } catch (const sqlite::Error& error) {
        throw_catalog_error(error, file);
    }
}

void Catalog::tell_progress(Progress told) {
    state_->progress = std::move(told);
}

bool Catalog::is_practice() const {
    return state_->practice;
}
std::int64_t Catalog::changes_seen() const {
    try {
        auto row = state_->database.prepare("PRAGMA data_version");
        row.step();
        return row.integer(0);
    } catch (const sqlite::Error& error) {
        throw_catalog_error(error, state_->file);
    }
}

bool Catalog::is_read_only() const {
    return state_->read_only;
}
OwnShop Catalog::own_shop() const {
    return state_->own;
}
const fs::path& Catalog::file() const {
    return state_->file;
}

}  // namespace tapbook
