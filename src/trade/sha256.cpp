// See sha256.h.
#include "trade/sha256.h"

#include <nettle/sha2.h>

namespace tapbook {

static_assert(Sha256().size() == SHA256_DIGEST_SIZE);

Sha256 sha256(std::initializer_list<std::string_view> parts) {
    sha256_ctx context;
    sha256_init(&context);
    for (const auto part : parts)
        sha256_update(&context, part.size(), reinterpret_cast<const unsigned char*>(part.data()));
    Sha256 hash{};
    sha256_digest(&context, hash.size(), hash.data());
    return hash;
}

}  // namespace tapbook
