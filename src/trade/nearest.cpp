// Dynamic programming over prefixes: a row per letter of `a`; the row before last is kept for swapped neighbours.
#include "trade/nearest.h"

#include <algorithm>
#include <vector>

namespace tapbook {
namespace {

char folded_letter(char letter) {
    return letter >= 'A' && letter <= 'Z' ? static_cast<char>(letter - 'A' + 'a') : letter;
}

std::size_t difference(std::size_t a, std::size_t b) {
    return a > b ? a - b : b - a;
}

}  // namespace

std::size_t edit_distance(std::string_view a, std::string_view b) {
    std::vector<std::size_t> before_last, last(b.size() + 1), row(b.size() + 1);
    for (std::size_t j = 0; j <= b.size(); ++j) row[j] = j;
    for (std::size_t i = 1; i <= a.size(); ++i) {
        before_last = last;
        last = row;
        row[0] = i;
        for (std::size_t j = 1; j <= b.size(); ++j) {
            const bool same = folded_letter(a[i - 1]) == folded_letter(b[j - 1]);
            row[j] = std::min({last[j] + 1, row[j - 1] + 1, last[j - 1] + (same ? 0 : 1)});
            const bool swapped = i > 1 && j > 1 && folded_letter(a[i - 1]) == folded_letter(b[j - 2]) &&
                                 folded_letter(a[i - 2]) == folded_letter(b[j - 1]);
            if (swapped) row[j] = std::min(row[j], before_last[j - 2] + 1);
        }
    }
    return row[b.size()];
}

std::optional<std::string_view> nearest(std::string_view typed, std::span<const std::string_view> words) {
    std::size_t limit = std::clamp<std::size_t>(typed.size() / 3, 1, 3);
    std::optional<std::string_view> best;
    for (const std::string_view word : words) {
        if (difference(typed.size(), word.size()) > limit) continue;
        const std::size_t distance = edit_distance(typed, word);
        const bool shares_a_letter = distance < std::max(typed.size(), word.size());
        if (distance > limit || !shares_a_letter) continue;
        best = word;
        if (distance == 0) break;
        limit = distance - 1;  // only a nearer word may replace it: the first of equals stays
    }
    return best;
}

}  // namespace tapbook
