// Where a tap's connector is called an ISO 10487 radio connector: do the noted cavities carry the speaker that public
// tables give them? See trade/radio_connector.h for what is known of that use.
#pragma once

#include <optional>
#include <string>

#include "catalog/catalog.h"

namespace tapbook {

// "B3, B4 (right front)": the cavities that this speaker usually has; "" unless the connector is called ISO 10487 and
// the position has its place there.
std::string usual_cavities(const TapFacts& tap);

// True when a noted cavity is another than the usual one, false when all noted ones are usual. Absent when the
// connector is not called ISO 10487, has no place for this speaker, or no cavity is agreed on.
std::optional<bool> cavities_differ(const TapFacts& tap);

}  // namespace tapbook
