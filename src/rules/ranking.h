// In which order are candidates and taps shown? By comparisons that can be read out one after the other; the first that
// differs decides.
#pragma once

#include <vector>

#include "rules/advise.h"

namespace tapbook {

// Verdict; fewer cares; simpler (no converter, transformer, resistive, active line level, active speaker level); on the
// shelf; cheaper (unknown last); headroom (unknown last); name, then path.
bool ranks_before(const JudgedCandidate& a, const JudgedCandidate& b);

// A tap with what its best candidate says; without candidates, what the tap's own rules say.
struct RankedTap {
    JudgedTap judged;
    Verdict verdict = Verdict::no;
    int cares = 0;
};

// No stop; fewer cares; measured before rated before predicted; better pair grade, then polarity grade; plug-in lead;
// fewer minutes (unknown last); fewer panels; code.
bool ranks_before(const RankedTap& a, const RankedTap& b);

// The same of a tap that lies elsewhere.
struct TapRank {
    const TapFacts* tap = nullptr;
    SignalSource source = SignalSource::none;
    Verdict verdict = Verdict::no;  // of its best candidate
    int cares = 0;
};
bool ranks_before(const TapRank& a, const TapRank& b);

// How good a grade is, 0 best: PROVEN, MATCHED, YEAR SPLIT, ONE CAR, PAPER, BLANK, PULLED, MIXED.
int grade_rank(Grade grade);

}  // namespace tapbook
