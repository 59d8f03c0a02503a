// By which names may a browser call this server? A page elsewhere can make its own name lead here (DNS rebinding); only
// names that nobody else can own are answered: "localhost", our addresses in digits, and names the shop gave.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace tapbook {

class OwnNames {
  public:
    // `addresses` in digits ("192.168.1.20", "fe80::1" without brackets); names in any case.
    OwnNames(const std::vector<std::string>& addresses, const std::vector<std::string>& names, int port);

    // Is this the whole Host header of a request meant for us? Port 80 may be left out, as browsers do; nothing else
    // may differ but the case of letters.
    bool accepts(std::string_view host) const;

    // Every spelling that accepts() takes, in lower case.
    const std::vector<std::string>& spellings() const { return spellings_; }

  private:
    std::vector<std::string> spellings_;
};

// Did a page of this very server send the form? Origin is then "http://" and the Host header (RFC 6454).
bool is_own_origin(std::string_view origin, std::string_view host);

// May it stand in a Host header as a name of ours: letters, digits, "-" and points between, at most 253 characters, not
// digits alone (that would be an address)?
bool is_host_name(std::string_view name);

}  // namespace tapbook
