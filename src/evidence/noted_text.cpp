// One spelling for each folded text, then a plain vote.
#include "evidence/noted_text.h"

#include <map>

#include "evidence/note_reference.h"

namespace tapbook {
namespace {

// "+" and "-" fold to nothing and stay what they are.
std::string kind_of(const std::string& text) {
    const std::string plain = folded(text);
    return plain.empty() ? text : plain;
}

}  // namespace

Standing text_standing(std::span<const NotedText> texts, const KnownShops& known, std::optional<int> year) {
    std::map<std::string, const NotedText*> newest;
    for (const auto& noted : texts) {
        if (noted.text.empty()) continue;
        const NotedText*& last = newest[kind_of(noted.text)];
        if (last == nullptr || is_newer(*noted.note, *last->note)) last = &noted;
    }
    std::vector<Vote> votes;
    for (const auto& noted : texts)
        if (!noted.text.empty()) votes.push_back(vote_of(*noted.note, newest.at(kind_of(noted.text))->text));
    return standing_of(votes, known, year);
}

}  // namespace tapbook
