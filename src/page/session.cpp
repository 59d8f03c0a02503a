// See session.h.
#include "page/session.h"

#include <fmt/format.h>
#include <sodium.h>

#include <algorithm>
#include <array>

#include "report/report.h"

namespace tapbook {
namespace {

// At most so many bytes, cut between characters.
std::string_view first_bytes(std::string_view text, std::size_t most) {
    if (text.size() <= most) return text;
    while (most > 0 && (static_cast<unsigned char>(text[most]) & 0xC0U) == 0x80U) --most;
    return text.substr(0, most);
}

}  // namespace

std::string random_name(const RandomSource& random) {
    RecordId bytes{};
    random(bytes.data(), bytes.size());
    return to_hex(bytes);
}

bool equal_in_constant_time(std::string_view a, std::string_view b) {
    return a.size() == b.size() && sodium_memcmp(a.data(), b.data(), a.size()) == 0;
}

std::string SessionList::pair(std::string_view name) {
    const std::lock_guard lock(mutex_);
    const PageTime now = clock_();
    forget_idle(now);
    while (by_hash_.size() >= most_phones)
        by_hash_.erase(std::min_element(by_hash_.begin(), by_hash_.end(), [](const auto& a, const auto& b) {
            return a.second.last_used < b.second.last_used;
        }));
    const std::string cookie = random_name(random_);
    PairedPhone phone;
    phone.number = ++last_number_;
    phone.name = first_bytes(name, longest_phone_name);
    if (phone.name.empty()) phone.name = fmt::format("phone {}", phone.number);
    phone.paired = phone.last_used = now;
    by_hash_.emplace(short_hash(cookie), std::move(phone));
    return cookie;
}

std::optional<PairedPhone> SessionList::use(std::string_view cookie) {
    const std::lock_guard lock(mutex_);
    const PageTime now = clock_();
    forget_idle(now);
    const auto found = by_hash_.find(short_hash(cookie));
    if (found == by_hash_.end()) return std::nullopt;
    found->second.last_used = std::max(found->second.last_used, now);
    return found->second;
}

bool SessionList::end(int number) {
    const std::lock_guard lock(mutex_);
    return std::erase_if(by_hash_, [&](const auto& one) { return one.second.number == number; }) > 0;
}

std::vector<PairedPhone> SessionList::phones() {
    const std::lock_guard lock(mutex_);
    forget_idle(clock_());
    std::vector<PairedPhone> list;
    for (const auto& [hash, phone] : by_hash_) list.push_back(phone);
    std::sort(list.begin(), list.end(), [](const auto& a, const auto& b) { return a.number < b.number; });
    return list;
}

void SessionList::keep(std::string_view cookie, const std::string& name, const std::string& text) {
    const std::lock_guard lock(mutex_);
    const auto found = by_hash_.find(short_hash(cookie));
    if (found == by_hash_.end() || name.size() + text.size() > longest_kept) return;
    auto& kept = found->second.kept;
    const auto same = std::find_if(kept.begin(), kept.end(), [&](const auto& one) { return one.first == name; });
    if (same != kept.end())
        same->second = text;
    else if (kept.size() < most_kept)
        kept.emplace_back(name, text);
}

void SessionList::forget_idle(PageTime now) {
    std::erase_if(by_hash_, [&](const auto& one) { return now - one.second.last_used >= session_idle; });
}

std::string FormTokens::of(std::string_view cookie) const {
    RecordId token{};
    static_assert(std::tuple_size_v<RecordId> == crypto_generichash_BYTES_MIN);
    crypto_generichash(token.data(), token.size(), reinterpret_cast<const unsigned char*>(cookie.data()), cookie.size(),
                       reinterpret_cast<const unsigned char*>(key_.data()), key_.size());
    return to_hex(token);
}

bool FormTokens::fits(std::string_view token, std::string_view cookie) const {
    return equal_in_constant_time(token, of(cookie));
}

}  // namespace tapbook
