// What was typed for a feed, as quantities.
#pragma once

#include <string>
#include <vector>

#include "cli/command.h"

namespace tapbook {

struct TypedAmplifier {
    AskedAmplifier asked;
    FedAmplifier fed;
};

// "4", "1/0", "25mm2", "sae4". Throws UsageError naming `option`, NoAnswer for a size the table of amps does not reach.
CableSize typed_size(std::string_view option, const std::string& typed);

// The one amplifier of the options, or those of the words. Throws UsageError.
std::vector<TypedAmplifier> typed_amplifiers(const Parsed& parsed, DcVolts supply);

}  // namespace tapbook
