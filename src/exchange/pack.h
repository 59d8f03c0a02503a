// What is a pack? A text of lines, each ended by a line feed, every one in the accepted form of a record:
//
//     {"format":"tapbook.pack/1","key":"<64 hex>","shop":"<32 hex>","type":"pack"}      head; in practice:
//     "practice":true
//     {...,"shop":"...","type":"..."}                        records, ascending by type, path and id, none twice
//     {"hash":"<64 hex>","signature":"<128 hex>","type":"end"}
//
// hash: SHA-256 of all bytes before the last line. signature: Ed25519 by the head's key over "tapbook/1 pack" LF hash.
// The same records, shop and key give the same bytes.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>

namespace tapbook {

inline constexpr std::string_view pack_format = "tapbook.pack/1";
inline constexpr std::string_view pack_start = "{\"format\":\"tapbook.pack/";  // every version's first bytes
inline constexpr std::size_t most_pack_bytes = 64 * 1024 * 1024;
inline constexpr std::size_t most_pack_lines = 200'000;  // head and end are two of them

// SHA-256 in 64 hexadecimal digits.
std::string pack_hash(std::string_view bytes);

// What the shop's key signs.
std::string pack_message(std::string_view hash);

}  // namespace tapbook
