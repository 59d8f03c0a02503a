// Each line is tried from its fullest to its shortest wording; the first that fits is taken.
#include "evidence/line_parts.h"

#include <fmt/format.h>

#include "evidence/line.h"

namespace tapbook {
namespace {

std::string counted(int number, std::string_view noun) {
    return fmt::format("{} {}{}", number, noun, number == 1 ? "" : "s");
}

// "metered at 1 shop", "metered on 2 of 3 cars at 2 shops", "only copied (2 notes)".
std::string who_and_how(const Claim& claim, std::string_view paper) {
    if (claim.cars == 0) return fmt::format("{} ({})", paper, counted(claim.notes, "note"));
    const std::string shops = counted(claim.shops, "shop");
    if (claim.cars == 1) return fmt::format("{} at {}", claim.best_method, shops);
    if (claim.best_method_cars == claim.cars)
        return fmt::format("{} on {} cars at {}", claim.best_method, claim.cars, shops);
    return fmt::format("{} on {} of {} cars at {}", claim.best_method, claim.best_method_cars, claim.cars, shops);
}

std::string years(const Claim& claim) {
    if (claim.cars == 0) return "";
    if (!claim.first_year) return ", year not noted";
    return ", " + words(ModelYears{*claim.first_year, *claim.last_year});
}

int notes_against(const Standing& standing) {
    int notes = 0;
    for (std::size_t i = 1; i < standing.claims.size(); ++i) notes += standing.claims[i].notes;
    return notes;
}

std::string against(const Standing& standing) {
    if (const int notes = notes_against(standing); notes > 0)
        return fmt::format(", {} against", counted(notes, "note"));
    return standing.claims.front().cars > 1 ? ", nobody against" : "";
}

std::string unseen_year(const Standing& standing) {
    if (!standing.outside_years || standing.claims.front().cars == 0) return "";
    return fmt::format("; nobody has seen a {}", *standing.asked_year);
}

bool fits(std::string_view line) {
    return line.size() <= longest_line;
}

std::string claim_in_mixed(const std::string& name, const Claim& claim) {
    if (claim.cars == 0) return fmt::format("{} ({})", name, claim.best_method);
    const std::string shops = counted(claim.shops, "shop");
    if (claim.best_method_shops == claim.shops) return fmt::format("{} ({} {})", name, shops, claim.best_method);
    return fmt::format("{} ({} of {} {})", name, claim.best_method_shops, shops, claim.best_method);
}

}  // namespace

std::string settled_line(const Standing& standing, const LineSubject& subject) {
    const Claim& claim = standing.claims.front();
    const auto grade = word_of(standing.grade);
    const std::string who = who_and_how(claim, subject.paper), when = years(claim), contra = against(standing);
    const std::string unseen = unseen_year(standing);
    // A note against is said as long as it fits; that there is none gives way to the years.
    const bool is_opposed = notes_against(standing) > 0;
    const std::string details[] = {who + when + contra, who + (is_opposed ? contra : when), who};
    for (const auto& detail : details)
        for (const auto& what : subject.what) {
            const std::string line = fmt::format("{} - {}: {}{}. {}", grade, what, detail, unseen, subject.to_do);
            if (fits(line)) return line;
        }
    return fmt::format("{} - {}: {}{}. {}", grade, subject.what.back(), counted(claim.cars, "car"), unseen,
                       subject.to_do);
}

std::string mixed_line(const Standing& standing, const std::vector<std::pair<std::string, std::string>>& names,
                       std::string_view to_do, std::string_view last) {
    const Claim &leading = standing.claims[0], &next = standing.claims[1];
    const auto others = standing.claims.size() - 2;
    const std::string more = others == 0 ? "" : fmt::format(" or {} more", others);
    const auto grade = word_of(Grade::mixed);
    for (const auto& [first, second] : names) {
        const std::string full = fmt::format("{} - {} or {}{}. {}", grade, claim_in_mixed(first, leading),
                                             claim_in_mixed(second, next), more, to_do);
        if (fits(full)) return full;
    }
    for (const auto& [first, second] : names) {
        const std::string bare = fmt::format("{} - {} or {}{}. {}", grade, first, second, more, to_do);
        if (fits(bare)) return bare;
    }
    return fmt::format("{} - {} ({} answers). {}", grade, last, standing.claims.size(), to_do);
}

std::string split_line(const Standing& standing, const std::vector<std::pair<std::string, std::string>>& names,
                       std::string_view last) {
    const YearSplit& change = standing.split->change;
    const auto grade = word_of(Grade::year_split);
    const std::string end = standing.outside_years ? fmt::format("; nobody has seen a {}: meter.", *standing.asked_year)
                                                   : std::string(". Say the year; meter before you cut.");
    for (const auto& [before, after] : names) {
        const std::string full = fmt::format("{} - {} until {} ({}), {} from {} ({}){}", grade, before,
                                             change.last_old_year, word_of(standing.split->old_grade), after,
                                             change.first_new_year, word_of(standing.split->new_grade), end);
        if (fits(full)) return full;
        const std::string bare = fmt::format("{} - {} until {}, {} from {}{}", grade, before, change.last_old_year,
                                             after, change.first_new_year, end);
        if (fits(bare)) return bare;
    }
    return fmt::format("{} - {} changed between {} and {}{}", grade, last, change.last_old_year, change.first_new_year,
                       end);
}

std::string find_system_line(const std::vector<std::pair<std::string, std::string>>& names, std::string_view last) {
    constexpr std::string_view to_do = "find out which sound system this is. Each is proven in another.";
    for (const auto& [first, second] : names) {
        const std::string line = fmt::format("{} - {} or {}: {}", word_of(Grade::mixed), first, second, to_do);
        if (fits(line)) return line;
    }
    return fmt::format("{} - {}: {}", word_of(Grade::mixed), last, to_do);
}

std::string empty_line(const Standing& standing, std::string_view about, std::string_view to_do) {
    if (standing.grade == Grade::pulled)
        return fmt::format("{} - every note on {} was withdrawn. {}", word_of(Grade::pulled), about, to_do);
    return fmt::format("{} - nobody has noted {}. {}", word_of(Grade::blank), about, to_do);
}

}  // namespace tapbook
