// Published values: FIPS 180-4's examples as NIST prints them (csrc.nist.gov, "SHA-256 example algorithm"), and the
// empty message of NIST's short-message vectors (SHA256ShortMsg.rsp).
#include <catch2/catch.hpp>
#include <string>

#include "trade/trade.h"

using namespace tapbook;

namespace {

std::string digits(const Sha256& hash) {
    constexpr std::string_view digits = "0123456789abcdef";
    std::string text;
    for (const unsigned char byte : hash) text += {digits[byte >> 4], digits[byte & 15]};
    return text;
}

}  // namespace

TEST_CASE("SHA-256 has the values that NIST published") {
    CHECK(digits(sha256({""})) == "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855");
    CHECK(digits(sha256({"abc"})) == "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
    CHECK(digits(sha256({"abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq"})) ==
          "248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1");
    CHECK(digits(sha256({std::string(1'000'000, 'a')})) ==
          "cdc76e5c9914fb9281a1c7e284d73e67f1809a48a497200e046d39ccc7112cd0");
}

TEST_CASE("the hash of parts is that of the whole wherever it is cut") {
    std::string text;
    for (int i = 0; i < 150; ++i) text += static_cast<char>('a' + i % 26);
    const std::string_view whole = text;
    for (std::size_t cut = 0; cut <= whole.size(); ++cut)
        CHECK(sha256({whole.substr(0, cut), whole.substr(cut)}) == sha256({whole}));
}
