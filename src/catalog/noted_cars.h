// Which cars do notes speak of, and from which side is each tap point of a car looked at? For the files of this folder
// that go through the whole ledger.
#pragma once

#include "catalog/alias_classes.h"

namespace tapbook {

// Paths of the cars in order.
std::vector<std::string> noted_cars(sqlite::Database& database);

// The connector side of each tap point of a car that has one, by path.
std::map<std::string, ConnectorSide, std::less<>> sides_of_taps(sqlite::Database& database, const AliasClasses& same,
                                                                std::string_view car);

// Which places were gone through already, by whatever name. Without aliases nothing is kept: no place comes twice.
class PlacesSeen {
  public:
    explicit PlacesSeen(const AliasClasses& same) : same_(same) {}
    bool insert_first(const std::string& path) { return same_.empty() || seen_.insert(same_.name_of(path)).second; }

  private:
    const AliasClasses& same_;
    std::set<std::string> seen_;
};

}  // namespace tapbook
