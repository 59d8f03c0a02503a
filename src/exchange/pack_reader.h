// Is this text a pack, whole, unchanged and signed with the key it names? Everything is checked that can be without a
// catalog: the bytes, every line, the order, the hash and the signature.
#pragma once

#include <string>
#include <string_view>

#include "catalog/catalog.h"
#include "exchange/pack.h"

namespace tapbook {

enum class PackTrouble {
    no_pack,    // something else altogether
    not_whole,  // begins as one, but its end is missing: half copied, or cut off
    wrong       // changed, damaged, or beyond a limit
};

class PackRefused : public InputRefused {
  public:
    PackRefused(PackTrouble trouble, Complaint complaint)
        : InputRefused(std::vector<Complaint>{std::move(complaint)}), trouble_(trouble) {}
    PackTrouble trouble() const { return trouble_; }

  private:
    PackTrouble trouble_;
};

// The pack that `text` is; `file` names it in messages. The result points into the text, which must outlive it. Throws
// PackRefused with line, column, reason and the way out.
Incoming read_pack(std::string_view text, const std::string& file);

}  // namespace tapbook
