// A fact that an audit may draw: what the notes before a day prove, and what the notes from that day on say of it.
#pragma once

#include <string>

#include "evidence/evidence.h"

namespace tapbook {

enum class AuditVerdict { open, right, wrong };
template <>
struct NamedValues<AuditVerdict> {
    static constexpr Named<AuditVerdict> all[] = {
        {AuditVerdict::open, "unsure"}, {AuditVerdict::right, "right"}, {AuditVerdict::wrong, "wrong"}};
};
static_assert(table_is_sound<AuditVerdict>());

struct ProvenFact {
    std::string path;
    Question question = Question::pair;
    std::string words;                          // "brown and brown, yellow stripe"
    std::string line;                           // of its standing, before that day
    AuditVerdict verdict = AuditVerdict::open;  // open: nobody has looked since; wrong: anybody found otherwise
    int looks = 0;                              // cars looked at since, instrument in hand where the question needs one
};

}  // namespace tapbook
