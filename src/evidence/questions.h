// Which questions do the notes of one place answer, what does each note say on them, and how is the answer said? The
// same questions serve the line on the screen, the sum behind a grade and the checks of a new note.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "evidence/pair_standing.h"
#include "evidence/switched_standing.h"

namespace tapbook {

enum class Question { pair, polarity, live, wire, premium };
template <>
struct NamedValues<Question> {
    static constexpr Named<Question> all[] = {{Question::pair, "pair"},
                                              {Question::polarity, "polarity"},
                                              {Question::live, "live"},
                                              {Question::wire, "wire"},
                                              {Question::premium, "amplifier"}};
};
static_assert(table_is_sound<Question>());

// pair: pair and polarity; switched: live and wire; system: premium.
std::span<const Question> questions_of(NoteKind kind);

// Everything the notes of one tap point or sound system say together; only the part of its kind is filled.
struct NotedStanding {
    NoteKind kind = NoteKind::pair;
    PairStanding pair;
    SwitchedStanding switched;
    Standing premium;
};

// What the store knows besides the notes when it asks for a standing.
struct Witnesses {
    std::optional<ConnectorSide> side;  // of the tap point
    KnownShops known;
    int withdrawn = 0;
    ProvenElsewhere proven_elsewhere;  // only for notes on cars whose system was not written down
};

NotedStanding noted_standing(NoteKind kind, std::span<const Note> notes, const Witnesses& witnesses,
                             std::optional<int> year = {});

// REQUIRES a question of the standing's kind.
const Standing& standing_on(const NotedStanding& standing, Question question);

// The line of line.h for that question; "" for the wire, whose colour stands in the line of `live`.
std::string line_on(const NotedStanding& standing, Question question);

// The votes behind standing_on(). `settled_pair` is the value of the pair's standing: once it is settled only its
// supporters have a say on the polarity.
std::vector<Vote> votes_on(Question question, std::span<const Note> notes, std::optional<ConnectorSide> side,
                           const std::optional<std::string>& settled_pair = {});

// A value as people say it: "brown and brown, yellow stripe", "white positive", "accessory", "separate amplifier".
std::string value_words(Question question, std::string_view value);

}  // namespace tapbook
