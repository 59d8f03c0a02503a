// What does a page work with? The catalog, open for reading and seeing what the command line writes meanwhile; the
// rules; the catalog for writing, in requests that may.
#pragma once

#include <filesystem>
#include <functional>
#include <memory>

#include "page/finished_pages.h"
#include "rules/rules.h"

namespace tapbook {

class SessionList;
class PairingCodes;

// What all desks of one server share.
struct ShopPlace {
    std::filesystem::path catalog;
    std::filesystem::path own_rules;       // may be absent; read again when it changes
    std::function<RuleBook()> read_rules;  // shipped ones with those of the shop
    std::function<std::string()> today;    // "2026-05-04"
    RandomSource random;
    SessionList* sessions = nullptr;
    PairingCodes* codes = nullptr;
    std::string base_address;  // "http://192.168.1.20:8080": for symbols that another phone reads
};

// One per thread at work: not to be shared.
class PageDesk {
  public:
    explicit PageDesk(const ShopPlace& place);
    ~PageDesk();
    PageDesk(const PageDesk&) = delete;
    PageDesk& operator=(const PageDesk&) = delete;

    // The catalog as it is now, for reading; kept open between requests. Throws CatalogError.
    const Catalog& catalog();
    // The catalog for writing, waiting at most two seconds for others who write. Throws CatalogError, and
    // std::logic_error in a request that may not write: a GET changes nothing.
    Catalog catalog_to_write();
    RuleBook& rules();
    // Pages that were finished since catalog or rules last changed, by whomever. Throws CatalogError.
    FinishedPages& finished();
    SessionList& sessions() { return *place_.sessions; }
    PairingCodes& codes() { return *place_.codes; }
    const RandomSource& random() const { return place_.random; }
    const std::string& base_address() const { return place_.base_address; }

    // Before each request, by the server: may this one write?
    void begin(bool may_write);

  private:
    struct Open;
    const ShopPlace& place_;
    std::unique_ptr<Open> open_;
    bool may_write_ = false;
};

}  // namespace tapbook
