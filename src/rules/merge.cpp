// Several pairs, one list.
#include "rules/merge.h"

#include <fmt/format.h>

#include <algorithm>

namespace tapbook {
namespace {

// What the rule said about one pair; nullptr when it was silent.
Finding* said_by(std::vector<Finding>& findings, const std::string& rule) {
    const auto found = std::find_if(findings.begin(), findings.end(), [&](const Finding& f) { return f.rule == rule; });
    return found == findings.end() ? nullptr : &*found;
}

// 0 the gravest; something good is the least grave, so that whatever stands against it counts.
int gravity(const Finding& finding) {
    switch (finding.effect) {
        case Effect::stop:
            return 0;
        case Effect::care:
            return 1;
        case Effect::info:
            return 2;
        case Effect::good:
            break;
    }
    return 3;
}

}  // namespace

std::vector<Finding> merged(std::vector<PairFindings> answers, std::span<const Rule> rules) {
    std::vector<Finding> all;
    for (const Rule& rule : rules) {
        Finding* gravest = nullptr;
        const PairFindings* from = nullptr;
        bool silent_somewhere = false;
        for (PairFindings& answer : answers) {
            Finding* said = said_by(answer.findings, rule.id);
            silent_somewhere = silent_somewhere || said == nullptr;
            if (said == nullptr || (gravest != nullptr && gravity(*said) >= gravity(*gravest))) continue;
            gravest = said;
            from = &answer;
        }
        if (gravest == nullptr || (gravest->effect == Effect::good && silent_somewhere)) continue;
        if (!from->pair.empty()) {
            gravest->pair = from->pair;
            gravest->says =
                fmt::format("{}: {}", path_tail(path_head(from->pair, circuit_depth), system_depth), gravest->says);
        }
        all.push_back(std::move(*gravest));
    }
    return in_order(std::move(all));
}

std::vector<Finding> in_order(std::vector<Finding> findings) {
    std::stable_sort(findings.begin(), findings.end(),
                     [](const Finding& a, const Finding& b) { return a.effect < b.effect; });
    return findings;
}

}  // namespace tapbook
