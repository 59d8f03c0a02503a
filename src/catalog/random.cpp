// Where do random bytes come from? libsodium's generator; or, for practice catalogs and tests, a stream fixed by a
// seed.
#include <sodium.h>

#include <array>
#include <memory>

#include "catalog/catalog.h"

namespace tapbook {

RandomSource system_random() {
    return [](unsigned char* bytes, std::size_t count) {
        if (sodium_init() < 0) throw CatalogError(CatalogTrouble::input_output, "the system gives no random numbers");
        randombytes_buf(bytes, count);
    };
}

RandomSource repeatable_random(std::string_view seed) {
    auto drawn = std::make_shared<std::uint64_t>(0);
    return [drawn, text = std::string(seed)](unsigned char* bytes, std::size_t count) {
        for (std::size_t at = 0; at < count;) {
            const RecordId block = short_hash(text + "/" + std::to_string((*drawn)++));
            for (std::size_t i = 0; i < block.size() && at < count; ++i) bytes[at++] = block[i];
        }
    };
}

}  // namespace tapbook
