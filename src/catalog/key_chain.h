// Which keys are a shop's? The one its id comes from, and every one that a key of the shop signed as its next. For the
// files of this folder only.
#pragma once

#include <string>
#include <vector>

#include "catalog/state.h"

namespace tapbook {

// What a key signs when it names the next one: the record without its signature.
std::string key_change_message(Values record);

// `shop`: 16 bytes. The order in which the changes arrived does not matter.
bool is_key_of(sqlite::Database& database, std::string_view shop, const PublicKey& key);

// The exchanged record of a key change; keys, shop and signature as bytes.
struct KeyChange {
    std::string shop, old_key, new_key, date, signature;  // signature: empty when there is none
};
Values key_record(const KeyChange& change, bool practice);

// The changes of a shop's keys as they lie here, in the order of their ids.
std::vector<KeyChange> key_changes(sqlite::Database& database, std::string_view shop);

}  // namespace tapbook
