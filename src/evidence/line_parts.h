// Which pieces is a line about a standing made of? Grade, what, who and how, years, against, what to do; and which
// wording is the longest that fits. For this folder only.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "evidence/standing.h"

namespace tapbook {

// One fact to be said: `what` in wordings from long to short, and what to do.
struct LineSubject {
    std::vector<std::string> what;
    std::string_view to_do;  // "Meter before you cut."
    std::string_view paper = "only copied";
};

// The line of a standing that picked a value. REQUIRES standing.value and a shortest `what` of at most 31 characters.
std::string settled_line(const Standing& standing, const LineSubject& subject);

// "MIXED - white (2 shops metered) or tan (1 shop metered)." `names` are wordings from long to short, each with one
// name for each of the two leading claims; `last` is said when none fits. REQUIRES two claims or more.
std::string mixed_line(const Standing& standing, const std::vector<std::pair<std::string, std::string>>& names,
                       std::string_view to_do, std::string_view last);

// "YEAR SPLIT - white until 2015 (PROVEN), brown from 2017 (PROVEN). Say the year; meter before you cut." and, for an
// asked year that nobody has seen, "...; nobody has seen a 2016: meter." `names` are wordings from long to short, old
// value first; `last` is said when none fits. REQUIRES standing.split.
std::string split_line(const Standing& standing, const std::vector<std::pair<std::string, std::string>>& names,
                       std::string_view last);

// "MIXED - white or brown: each is proven in another sound system; find out which one this is." REQUIRES two claims.
std::string find_system_line(const std::vector<std::pair<std::string, std::string>>& names, std::string_view last);

// "BLANK - nobody has noted ..." or "PULLED - every note on ... was withdrawn."
std::string empty_line(const Standing& standing, std::string_view about, std::string_view to_do);

}  // namespace tapbook
