// See answer_headers.h.
#include "page/answer_headers.h"

#include <fmt/format.h>
#include <sodium.h>

#include <algorithm>
#include <array>

namespace tapbook {
namespace {

std::string hash_source(std::string_view text) {
    std::array<unsigned char, crypto_hash_sha256_BYTES> hash{};
    crypto_hash_sha256(hash.data(), reinterpret_cast<const unsigned char*>(text.data()), text.size());
    std::array<char, sodium_base64_ENCODED_LEN(crypto_hash_sha256_BYTES, sodium_base64_VARIANT_ORIGINAL)> text64{};
    sodium_bin2base64(text64.data(), text64.size(), hash.data(), hash.size(), sodium_base64_VARIANT_ORIGINAL);
    return fmt::format(" 'sha256-{}'", text64.data());
}

}  // namespace

std::string content_policy(const std::vector<std::string>& inline_texts) {
    std::string hashes;
    for (const auto& text : inline_texts) hashes += hash_source(text);
    return fmt::format(
        "default-src 'none'; script-src 'self'{0}; style-src 'self'{0}; img-src 'self' data:; connect-src 'self'; "
        "form-action 'self'; base-uri 'none'; frame-ancestors 'none'",
        hashes);
}

AnswerHeaders answer_headers(const PageAnswer& answer) {
    return {
        {"Content-Type", answer.type},
        {"Content-Security-Policy", content_policy(answer.inline_texts)},
        {"X-Content-Type-Options", "nosniff"},
        {"X-Frame-Options", "DENY"},
        // With "no-referrer" a browser calls the origin of our own forms "null" (Fetch standard, "append a request
        // Origin header"); this value tells other sites nothing either.
        {"Referrer-Policy", "same-origin"},
        {"Cross-Origin-Resource-Policy", "same-origin"},
        {"Permissions-Policy", "camera=(), geolocation=(), microphone=()"},
    };
}

std::string cookie_header(std::string_view name, std::string_view value) {
    return fmt::format("{}={}; Path=/; HttpOnly; SameSite=Strict{}", name, value, value.empty() ? "; Max-Age=0" : "");
}

std::string cookie_value(std::string_view header, std::string_view name) {
    std::string found;
    int times = 0;
    while (!header.empty()) {
        const auto end = std::min(header.find(';'), header.size());
        std::string_view one = header.substr(0, end);
        while (one.starts_with(' ')) one.remove_prefix(1);
        if (one.starts_with(name) && one.substr(name.size()).starts_with('=')) {
            found = one.substr(name.size() + 1);
            ++times;
        }
        header.remove_prefix(std::min(end + 1, header.size()));
    }
    return times == 1 ? found : std::string();
}

}  // namespace tapbook
