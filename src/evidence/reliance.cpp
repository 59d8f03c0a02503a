// Filters over the notes that several standings share.
#include "evidence/reliance.h"

#include <algorithm>
#include <map>

#include "evidence/points.h"

namespace tapbook {
namespace {

bool was_struck(const Standing& standing, const Vote& vote) {
    return std::any_of(standing.struck.begin(), standing.struck.end(),
                       [&](const Strike& strike) { return strike.note == vote.note && strike.value == vote.value; });
}

}  // namespace

std::vector<NoteReference> relied_on(const Standing& standing, std::span<const Vote> votes,
                                     std::span<const Note* const> notes) {
    std::map<RecordId, const Note*> by_id;
    for (const Note* note : notes) by_id[note->id] = note;
    std::map<RecordId, int> points;
    for (const Vote& vote : votes)
        if ((!standing.value || vote.value == *standing.value) && !was_struck(standing, vote))
            points[vote.note] = vote.points;
    std::vector<std::pair<int, const Note*>> supporting;
    for (const auto& [id, weight] : points) supporting.emplace_back(weight, by_id.at(id));
    std::sort(supporting.begin(), supporting.end(), [](const auto& a, const auto& b) {
        return a.first != b.first ? a.first > b.first : is_newer(*a.second, *b.second);
    });
    std::vector<NoteReference> references;
    references.reserve(supporting.size());
    for (const auto& [weight, note] : supporting) references.push_back(reference_to(*note));
    return references;
}

bool found_altered(std::span<const Note* const> notes) {
    return std::any_of(notes.begin(), notes.end(),
                       [](const Note* note) { return note->altered && looked_at(note->method); });
}

bool is_other_side(const Note& note, std::optional<ConnectorSide> side) {
    return note.side && side && *note.side != *side;
}

}  // namespace tapbook
