// See own_addresses.h.
#include "page/own_addresses.h"

#include <arpa/inet.h>
#include <ifaddrs.h>
#include <net/if.h>
#include <netinet/in.h>

#include <algorithm>
#include <array>
#include <cstring>
#include <memory>

namespace tapbook {

bool is_private(const unsigned char (&address)[4]) {
    const unsigned first = address[0], second = address[1];
    return first == 10 || (first == 172 && second >= 16 && second <= 31) || (first == 192 && second == 168) ||
           (first == 169 && second == 254);
}

std::vector<std::string> private_addresses() {
    ifaddrs* first = nullptr;
    if (::getifaddrs(&first) != 0) return {};
    const std::unique_ptr<ifaddrs, void (*)(ifaddrs*)> all(first, ::freeifaddrs);
    std::vector<std::string> list;
    for (const ifaddrs* one = first; one != nullptr; one = one->ifa_next) {
        const bool is_usable = (one->ifa_flags & IFF_UP) != 0 && (one->ifa_flags & IFF_LOOPBACK) == 0;
        if (!is_usable || one->ifa_addr == nullptr || one->ifa_addr->sa_family != AF_INET) continue;
        sockaddr_in place{};
        std::memcpy(&place, one->ifa_addr, sizeof place);
        unsigned char bytes[4];
        std::memcpy(bytes, &place.sin_addr, sizeof bytes);
        std::array<char, INET_ADDRSTRLEN> text{};
        if (!is_private(bytes) || ::inet_ntop(AF_INET, bytes, text.data(), text.size()) == nullptr) continue;
        if (std::find(list.begin(), list.end(), text.data()) == list.end()) list.emplace_back(text.data());
    }
    return list;
}

bool is_address(const std::string& text) {
    std::array<unsigned char, sizeof(in6_addr)> bytes{};
    return ::inet_pton(AF_INET, text.c_str(), bytes.data()) == 1 ||
           ::inet_pton(AF_INET6, text.c_str(), bytes.data()) == 1;
}

}  // namespace tapbook
