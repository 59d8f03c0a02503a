// Verdict and counts of findings.
#include "rules/finding.h"

#include <algorithm>

namespace tapbook {

int count_of(const std::vector<Finding>& findings, Effect effect) {
    return static_cast<int>(
        std::count_if(findings.begin(), findings.end(), [&](const Finding& f) { return f.effect == effect; }));
}

Verdict verdict_of(const std::vector<Finding>& findings) {
    if (count_of(findings, Effect::stop) > 0) return Verdict::no;
    return count_of(findings, Effect::care) > 0 ? Verdict::care : Verdict::fits;
}

}  // namespace tapbook
