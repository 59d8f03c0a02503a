// A note reduced to what a reader needs to find and weigh it.
#include "evidence/note_reference.h"

#include <tuple>

#include "evidence/points.h"

namespace tapbook {

NoteReference reference_to(const Note& note) {
    std::string method(word_of(note.method));
    if (note.polarity) method.append(", polarity ").append(method_words(*note.polarity));
    return {note.id, note.shop, note.car, method, note.date, note.year};
}

bool is_newer(const Note& a, const Note& b) {
    return std::tie(a.date, a.turn, a.id) > std::tie(b.date, b.turn, b.id);
}

}  // namespace tapbook
