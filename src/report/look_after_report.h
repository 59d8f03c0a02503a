// Backups, rebuilding and audits, as text and JSON.
#pragma once

#include <span>
#include <string>

#include "report/screen.h"

namespace tapbook {

std::string backup_text(const CopyReport& report, const Screen& screen);
std::string backup_json(const CopyReport& report);
std::string restore_text(const CopyReport& report, const Screen& screen);
std::string restore_json(const CopyReport& report);

std::string rebuild_text(const RebuildReport& report, const Screen& screen);
std::string rebuild_json(const RebuildReport& report);

// A drawn sample with what was found of it.
struct AuditAnswer {
    std::vector<ProvenFact> sample;
    std::size_t proven = 0;  // facts it was drawn from
    int right = 0, wrong = 0, open = 0;
    ShareInterval share;
    std::uint64_t seed = 0;
    std::string since;
};
std::string audit_text(const AuditAnswer& answer, const Screen& screen);
std::string audit_json(const AuditAnswer& answer);

// "checked 34 %, about 12 s left (Ctrl-C stops and changes nothing)": after `elapsed_ms`, at the pace so far. REQUIRES
// 0 <= done <= all.
std::string progress_text(const std::string& what, std::int64_t done, std::int64_t all, std::int64_t elapsed_ms);

}  // namespace tapbook
