// Which keys do the tables have that are no record: a part's terms at this shop, and the shops of a practice catalog?
// Read by the reader and the writer alike.
#pragma once

#include <span>

#include "catalog/catalog.h"

namespace tapbook {

// The fields of [[stock]] besides part, and of [[shop]] besides code.
std::span<const Field> stock_fields();

// Of those the ones that every part may have: the others belong to small parts.
std::span<const Field> terms_fields();
std::span<const Field> shop_fields();

// Which of the small part's keys do not go together; empty when all do.
struct FieldTrouble {
    std::string key, message, hint;
};
std::vector<FieldTrouble> trouble_of_stock(const Values& values);

// Terms as values by the stored names of stock_fields(), and back.
Values values_of(const Terms& terms);
Terms terms_of(const Values& values);

}  // namespace tapbook
