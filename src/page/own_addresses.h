// Under which addresses can others on the shop's network reach this machine?
#pragma once

#include <string>
#include <vector>

namespace tapbook {

// IPv4 addresses in digits of the network cards that are up, in their order: only private ones (RFC 1918, and the
// link-local ones of RFC 3927), so nothing is ever opened to the internet by itself. Empty without a network.
std::vector<std::string> private_addresses();

// RFC 1918 and RFC 3927: 10/8, 172.16/12, 192.168/16, 169.254/16. `address` in network byte order's four bytes.
bool is_private(const unsigned char (&address)[4]);

// An IPv4 or IPv6 address in digits?
bool is_address(const std::string& text);

}  // namespace tapbook
