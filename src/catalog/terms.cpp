// What does a part cost this shop, and how many lie on the shelf? Local, replaced by what is said later, never
// exchanged.
#include "catalog/stock_rows.h"

namespace tapbook {

TermsChange put_terms(sqlite::Database& database, const TermsDraft& draft, const std::string& today) {
    auto stored = terms_of_part(database, draft.part);
    if (stored && *stored == draft.terms) return {TermsPut::here, std::move(stored)};
    write_terms(database, draft.part, draft.terms);
    book_difference(database, stored, draft.terms, {0, draft.part, MovementKind::filed, 0, 0, today, {}, false, {}});
    return {stored ? TermsPut::changed : TermsPut::added, std::move(stored)};
}

}  // namespace tapbook
