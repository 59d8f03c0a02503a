// Which functions may an expression call, and why are the others refused? Inside sqlite/ only; the allowed list is
// public in sandbox.h.
#pragma once

#include <string_view>

#include "sqlite/refused_expression.h"

namespace tapbook::sqlite {

// `name` in lower case.
bool is_allowed_function(std::string_view name);

// The reason for one that is not allowed: aggregate, window, not_deterministic, else forbidden_function.
Refusal reason_against(std::string_view name);

}  // namespace tapbook::sqlite
