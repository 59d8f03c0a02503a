// refused: a quantity without a value (what is not known is absent, never zero)
#include <optional>

#include "electrical/laws.h"

using namespace tapbook;

void snippet() {
    [[maybe_unused]] std::optional<RmsVolts> fair;
    [[maybe_unused]] RmsVolts wrong;  // refused
}
