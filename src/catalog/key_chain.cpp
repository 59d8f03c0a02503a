// Keys form a chain (or, when one was stolen, a tree) that begins with the key whose hash is the shop's id. A change
// counts when its old key is in it and signed it.
#include "catalog/key_chain.h"

#include <fmt/format.h>
#include <sodium.h>

#include <set>

namespace tapbook {
namespace {

std::span<const unsigned char> bytes_in(std::string_view text) {
    return {reinterpret_cast<const unsigned char*>(text.data()), text.size()};
}

std::string_view view_of(const PublicKey& key) {
    return {reinterpret_cast<const char*>(key.data()), key.size()};
}

bool is_sound(const KeyChange& change) {
    PublicKey key{};
    KeySignature signature{};
    if (change.old_key.size() != key.size() || change.signature.size() != signature.size()) return false;
    std::copy_n(bytes_in(change.old_key).begin(), key.size(), key.begin());
    std::copy_n(bytes_in(change.signature).begin(), signature.size(), signature.begin());
    for (const bool practice : {false, true})
        if (is_signed_by(key, key_change_message(key_record(change, practice)), signature)) return true;
    return false;
}

}  // namespace

bool is_signed_by(const PublicKey& key, std::string_view message, const KeySignature& signature) {
    return crypto_sign_verify_detached(signature.data(), reinterpret_cast<const unsigned char*>(message.data()),
                                       message.size(), key.data()) == 0;
}

std::string digits_of(std::span<const unsigned char> bytes) {
    constexpr std::string_view digits = "0123456789abcdef";
    std::string hex;
    hex.reserve(2 * bytes.size());
    for (const unsigned char byte : bytes) hex += {digits[byte >> 4], digits[byte & 15]};
    return hex;
}

bool bytes_of_digits(std::string_view hex, std::span<unsigned char> bytes) {
    if (!is_hex(hex, 2 * bytes.size())) return false;
    const auto value = [](char c) { return static_cast<unsigned>(c <= '9' ? c - '0' : c - 'a' + 10); };
    for (std::size_t i = 0; i < bytes.size(); ++i)
        bytes[i] = static_cast<unsigned char>(value(hex[2 * i]) * 16 + value(hex[2 * i + 1]));
    return true;
}

std::string fingerprint(const PublicKey& key) {
    const std::string hex = to_hex(short_hash(view_of(key)));
    std::string groups;
    for (std::size_t at = 0; at < hex.size(); at += 4) groups += (at == 0 ? "" : " ") + hex.substr(at, 4);
    return groups;
}

std::string key_change_message(Values record) {
    record.erase("signature");
    return fmt::format("tapbook/1 key\n{}", record_line(record));
}

Values key_record(const KeyChange& change, bool practice) {
    Values record = {{"type", std::string("key")},
                     {"shop", hex_of(change.shop)},
                     {"old_key", digits_of(bytes_in(change.old_key))},
                     {"new_key", digits_of(bytes_in(change.new_key))},
                     {"date", change.date}};
    if (!change.signature.empty()) record["signature"] = digits_of(bytes_in(change.signature));
    if (practice) record["practice"] = true;
    return record;
}

std::vector<KeyChange> key_changes(sqlite::Database& database, std::string_view shop) {
    std::vector<KeyChange> changes;
    auto rows = database.prepare(
        "SELECT old_key, new_key, date, coalesce(signature, x'') FROM key_change WHERE shop = ?1 ORDER BY id");
    for (rows.bind_all(sqlite::BlobView{shop}); rows.step();)
        changes.push_back({std::string(shop), std::string(rows.blob(0)), std::string(rows.blob(1)),
                           std::string(rows.text(2)), std::string(rows.blob(3))});
    return changes;
}

bool is_key_of(sqlite::Database& database, std::string_view shop, const PublicKey& key) {
    if (as_bytes(short_hash(view_of(key))) == shop) return true;
    const auto changes = key_changes(database, shop);
    std::set<std::string> good;
    for (const auto& change : changes)
        if (as_bytes(short_hash(change.old_key)) == shop) good.insert(change.old_key);
    for (bool grows = true; grows;) {
        grows = false;
        for (const auto& change : changes)
            if (good.contains(change.old_key) && !good.contains(change.new_key) && is_sound(change))
                grows = good.insert(change.new_key).second;
    }
    return good.contains(std::string(view_of(key)));
}

}  // namespace tapbook
