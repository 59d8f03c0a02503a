// How does a shop sign, change its key and keep it apart from the catalog? Only here is the secret key read.
#include <fmt/format.h>
#include <sodium.h>

#include "catalog/adding.h"
#include "catalog/key_chain.h"

namespace tapbook {
namespace {

using SecretKey = std::array<unsigned char, crypto_sign_SECRETKEYBYTES>;

constexpr std::string_view key_text_start =
    "# tapbook: the key of a shop. Whoever has it can write in the shop's name.";

std::string_view view_of(std::span<const unsigned char> bytes) {
    return {reinterpret_cast<const char*>(bytes.data()), bytes.size()};
}

[[noreturn]] void refuse_without_key(const std::filesystem::path& file) {
    throw CatalogError(CatalogTrouble::not_permitted,
                       fmt::format("{} holds no key of its shop: it cannot sign", file.string()),
                       "put the key back with `tapbook shops key --from FILE`");
}

// The secret key is wiped when it is no longer needed.
struct Secret {
    PublicKey open{};
    SecretKey secret{};
    std::string salt;
    ~Secret() { sodium_memzero(secret.data(), secret.size()); }
};

void read_secret(const Catalog::State& state, Secret& secret) {
    auto rows = state.database.prepare("SELECT public_key, secret_key, salt FROM secret");
    if (!rows.step() || rows.blob(0).size() != secret.open.size() || rows.blob(1).size() != secret.secret.size())
        refuse_without_key(state.file);
    std::copy_n(rows.blob(0).begin(), secret.open.size(), secret.open.begin());
    std::copy_n(rows.blob(1).begin(), secret.secret.size(), secret.secret.begin());
    secret.salt = rows.blob(2);
}

// Makes both halves of the key anew from its seed. False when the text did not hold that key.
bool fits_itself(Secret& secret) {
    std::array<unsigned char, crypto_sign_SEEDBYTES> seed{};
    SecretKey made{};
    crypto_sign_ed25519_sk_to_seed(seed.data(), secret.secret.data());
    crypto_sign_seed_keypair(secret.open.data(), made.data(), seed.data());
    const bool is_same = made == secret.secret;
    sodium_memzero(seed.data(), seed.size());
    sodium_memzero(made.data(), made.size());
    return is_same;
}

KeySignature signature_of(const Secret& secret, std::string_view message) {
    KeySignature signature{};
    crypto_sign_detached(signature.data(), nullptr, reinterpret_cast<const unsigned char*>(message.data()),
                         message.size(), secret.secret.data());
    return signature;
}

// "name = value" in the text, without its quotes; empty when there is none.
std::string line_value(const std::string& text, std::string_view name) {
    const std::string start = fmt::format("\n{} = \"", name);
    const auto at = text.find(start);
    if (at == std::string::npos) return {};
    const auto begin = at + start.size();
    return text.substr(begin, text.find('"', begin) - begin);
}

[[noreturn]] void refuse_text(const std::string& file, const std::string& why, const std::string& way_out) {
    throw InputRefused({Complaint{{file, 0, 0, {}}, why, way_out}});
}

}  // namespace

KeyReport Catalog::own_key() const {
    try {
        KeyReport report{state_->own.id, {}, 0, false};
        Secret secret;
        read_secret(*state_, secret);
        report.key = secret.open;
        report.changes = static_cast<int>(key_changes(state_->database, bytes_of_hex(state_->own.id)).size());
        return report;
    } catch (const sqlite::Error& error) {
        throw_catalog_error(error, state_->file);
    }
}

KeySignature Catalog::sign(std::string_view message) const {
    try {
        Secret secret;
        read_secret(*state_, secret);
        return signature_of(secret, message);
    } catch (const sqlite::Error& error) {
        throw_catalog_error(error, state_->file);
    }
}

KeyReport Catalog::change_key(const std::string& today, const RandomSource& random, bool dry_run) {
    const auto work = [&] {
        Secret old_one, new_one;
        read_secret(*state_, old_one);
        std::array<unsigned char, crypto_sign_SEEDBYTES> seed{};
        random(seed.data(), seed.size());
        crypto_sign_seed_keypair(new_one.open.data(), new_one.secret.data(), seed.data());
        sodium_memzero(seed.data(), seed.size());
        KeyChange change{bytes_of_hex(state_->own.id),
                         std::string(view_of(old_one.open)),
                         std::string(view_of(new_one.open)),
                         today,
                         {}};
        const KeySignature signature = signature_of(old_one, key_change_message(key_record(change, state_->practice)));
        change.signature = view_of(signature);
        const RecordId id = record_id(record_line(key_record(change, state_->practice)));
        auto insert = state_->database.prepare(
            "INSERT INTO key_change (id, shop, old_key, new_key, date, signature) VALUES (?1, ?2, ?3, ?4, ?5, ?6)");
        insert.bind_all(sqlite::BlobView{as_bytes(id)}, sqlite::BlobView{change.shop}, sqlite::BlobView{change.old_key},
                        sqlite::BlobView{change.new_key}, today, sqlite::BlobView{change.signature});
        insert.run();
        auto keep = state_->database.prepare("UPDATE secret SET public_key = ?1, secret_key = ?2");
        keep.bind_all(sqlite::BlobView{view_of(new_one.open)}, sqlite::BlobView{view_of(new_one.secret)});
        keep.run();
        const auto changes = static_cast<int>(key_changes(state_->database, change.shop).size());
        return KeyReport{state_->own.id, new_one.open, changes, false};
    };
    return in_one_transaction(*state_, work, [&](const KeyReport&) { return !dry_run; });
}

std::string Catalog::key_text() const {
    try {
        Secret secret;
        read_secret(*state_, secret);
        return fmt::format(
            "{}\n# Keep it apart from the catalog and show it to nobody.\nshop = \"{}\"\nkey = \"{}\"\nsalt = \"{}\"\n",
            key_text_start, state_->own.id, digits_of(secret.secret),
            digits_of({reinterpret_cast<const unsigned char*>(secret.salt.data()), secret.salt.size()}));
    } catch (const sqlite::Error& error) {
        throw_catalog_error(error, state_->file);
    }
}

KeyReport Catalog::restore_key(const std::filesystem::path& catalog, const std::string& text, const std::string& file) {
    if (!text.starts_with(key_text_start))
        refuse_text(file, "is not a shop's key", "name the file that `tapbook shops key --out FILE` wrote");
    Secret secret;
    std::array<unsigned char, 16> salt{};
    const std::string shop = line_value(text, "shop");
    if (!bytes_of_digits(line_value(text, "key"), secret.secret) || !bytes_of_digits(line_value(text, "salt"), salt))
        refuse_text(file, "is a shop's key, but damaged", "name another copy of it");
    if (!fits_itself(secret)) refuse_text(file, "is a shop's key, but damaged", "name another copy of it");
    try {
        { const Catalog checked = Catalog::open(catalog, Access::read); }  // throws where it is none of ours
        sqlite::Database database(catalog, sqlite::Open::read_write);
        sqlite::Transaction transaction(database);
        auto own = database.prepare("SELECT value FROM setting WHERE name = 'shop_id'");
        const bool has_shop = own.step();
        const std::string own_shop = has_shop ? std::string(own.text(0)) : std::string();
        own.reset();
        if (own_shop != shop || !is_key_of(database, bytes_of_hex(shop), secret.open))
            refuse_text(file,
                        fmt::format("is the key of another shop ({}), not of this catalog's ({})", shop, own_shop),
                        "name the key that belongs to this catalog");
        database.execute("DELETE FROM secret");
        auto keep = database.prepare("INSERT INTO secret (only, public_key, secret_key, salt) VALUES (1, ?1, ?2, ?3)");
        keep.bind_all(sqlite::BlobView{view_of(secret.open)}, sqlite::BlobView{view_of(secret.secret)},
                      sqlite::BlobView{view_of(salt)});
        keep.run();
        transaction.commit();
        const auto changes = static_cast<int>(key_changes(database, bytes_of_hex(shop)).size());
        return KeyReport{shop, secret.open, changes, true};
    } catch (const sqlite::Error& error) {
        throw_catalog_error(error, catalog);
    }
}

}  // namespace tapbook
