// Cutting an expression into tokens as SQLite's tokenize.c does, refusing what could end or hide a part of it. Inside
// sqlite/ only.
#pragma once

#include <string_view>
#include <vector>

#include "sqlite/expression_text.h"

namespace tapbook::sqlite {

// Throws RefusedExpression for an open quote, a zero byte, a comment, ';' and the parameter signs ? : @ $.
std::vector<Token> tokens_of(std::string_view expression);

}  // namespace tapbook::sqlite
