// What does somebody read whose request cannot be answered?
#pragma once

#include <string_view>

#include "catalog/catalog.h"
#include "page/request.h"

namespace tapbook {

// A page in plain words: what happened and what to do. Status 405 names the methods with the server's headers.
PageAnswer refusal_page(int status, std::string_view message, std::string_view hint, bool practice = false);

// 404 for what is not there, 503 while others write, 403 without permission, 409 for what cannot be used, 500
// otherwise.
int status_of(CatalogTrouble trouble);

}  // namespace tapbook
