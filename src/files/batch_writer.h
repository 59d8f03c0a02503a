// How is a batch written as the text form that read_batch() takes, so that the file adds exactly what the batch would?
// The text is read back before it is handed out: a table that would not come back as it is stands in the file as a
// comment with its reason, and is counted.
#pragma once

#include <string>
#include <vector>

#include "catalog/catalog.h"

namespace tapbook {

struct WrittenFile {
    std::string text;
    int entries = 0, notes = 0, terms = 0;  // tables that adding the file would read
    struct Commented {
        std::string what, reason;  // "note base/front-left/radio-plug"
    };
    std::vector<Commented> commented;
};

// REQUIRES: `extract` holds one vehicle and what lies below it, or parts, or terms. Throws InputRefused when the
// vehicle's own table cannot be written (it was stored by a newer version): nothing of the car could be read then.
WrittenFile write_batch(const Extract& extract);

}  // namespace tapbook
