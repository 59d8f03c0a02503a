// How do records become packs? In the order they come from the catalog; when a pack is full the next one begins. Every
// pack carries the shop's own changes of key, so that each can be judged alone.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "catalog/catalog.h"
#include "exchange/pack.h"

namespace tapbook {

struct WrittenPack {
    std::string text;
    std::string hash;  // 64 hexadecimal digits
    int records = 0;
};

struct PackLimits {
    std::size_t bytes = most_pack_bytes, lines = most_pack_lines;
};

// The records of the catalog that `choice` names and `is_wanted` takes; no pack when there is none. REQUIRES that the
// catalog holds its key. Throws CatalogError.
using IsWanted = std::function<bool(const OutgoingRecord&)>;
std::vector<WrittenPack> write_packs(const Catalog& catalog, const OutgoingChoice& choice,
                                     const IsWanted& is_wanted = {}, PackLimits limits = {});

}  // namespace tapbook
