// What is the SHA-256 of these bytes? (FIPS 180-4; nettle's, which uses the processor's own instructions for it.)
#pragma once

#include <array>
#include <initializer_list>
#include <string_view>

namespace tapbook {

using Sha256 = std::array<unsigned char, 32>;

// Of the parts, one behind the other.
Sha256 sha256(std::initializer_list<std::string_view> parts);

}  // namespace tapbook
