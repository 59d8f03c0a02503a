// What does a part cost this shop, and how many lie on the shelf? Local, replaced by what is said later, never
// exchanged.
#include "catalog/state.h"

namespace tapbook {

TermsChange put_terms(sqlite::Database& database, const TermsDraft& draft) {
    const auto all = all_terms(database);
    const auto stored = all.find(draft.part);
    if (stored != all.end() && stored->second == draft.terms) return {TermsPut::here, stored->second};
    auto put = database.prepare(
        "INSERT INTO terms (part, cost_cents, lead_days, pack, on_hand, on_order) VALUES (?1, ?2, ?3, ?4, ?5, ?6)"
        " ON CONFLICT (part) DO UPDATE SET cost_cents = ?2, lead_days = ?3, pack = ?4, on_hand = ?5, on_order = ?6");
    put.bind_all(draft.part, draft.terms.cost_cents, draft.terms.lead_days, draft.terms.pack, draft.terms.on_hand,
                 draft.terms.on_order);
    put.run();
    if (stored == all.end()) return {TermsPut::added, {}};
    return {TermsPut::changed, stored->second};
}

}  // namespace tapbook
