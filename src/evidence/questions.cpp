// Votes are made as the standings make them: a note from another side of the connector has no say on colours.
#include "evidence/questions.h"

#include <algorithm>

#include "evidence/line.h"
#include "evidence/pair_saying.h"
#include "evidence/premium_standing.h"
#include "evidence/reliance.h"

namespace tapbook {
namespace {

std::vector<PairSaying> sayings_of(std::span<const Note> notes, std::optional<ConnectorSide> side) {
    std::vector<const Note*> near;
    for (const Note& note : notes)
        if (note.kind == NoteKind::pair && !is_other_side(note, side)) near.push_back(&note);
    return pair_sayings(near);
}

std::vector<Vote> polarity_votes(const std::vector<PairSaying>& sayings,
                                 const std::optional<std::string>& settled_pair) {
    std::vector<Vote> votes;
    for (const auto& saying : sayings) {
        if (settled_pair && saying.pair != *settled_pair) continue;
        if (!saying.positive.empty())
            votes.push_back(polarity_vote_of(*saying.note, saying.positive));
        else if (!saying.negative.empty())
            votes.push_back(polarity_vote_of(*saying.note, std::string(negative_only) + saying.negative));
    }
    return votes;
}

// The vote of each note of `kind` that has an answer: answer(note) is its value or absent.
template <class Answer>
std::vector<Vote> votes_by(NoteKind kind, std::span<const Note> notes, Answer answer) {
    std::vector<Vote> votes;
    for (const Note& note : notes)
        if (note.kind == kind)
            if (const std::optional<std::string> value = answer(note)) votes.push_back(vote_of(note, *value));
    return votes;
}

std::string key_words(std::string_view key) {
    const auto mark = key.find(' ');
    const auto colour = colour_of(key);
    return (colour ? words(*colour) : std::string(key)) +
           (mark == std::string_view::npos ? "" : " with " + std::string(key.substr(mark + 1)));
}

std::string pair_words(std::string_view value) {
    const auto keys = keys_of(value);
    return keys.size() == 1 ? key_words(keys[0]) : key_words(keys[0]) + " and " + key_words(keys[1]);
}

}  // namespace

std::span<const Question> questions_of(NoteKind kind) {
    static constexpr Question pair[] = {Question::pair, Question::polarity};
    static constexpr Question switched[] = {Question::live, Question::wire};
    static constexpr Question system[] = {Question::premium};
    switch (kind) {
        case NoteKind::pair:
            return pair;
        case NoteKind::switched:
            return switched;
        case NoteKind::system:
            return system;
    }
    return {};
}

NotedStanding noted_standing(NoteKind kind, std::span<const Note> notes, const Witnesses& witnesses,
                             std::optional<int> year) {
    NotedStanding standing;
    standing.kind = kind;
    switch (kind) {
        case NoteKind::pair:
            standing.pair = pair_standing(notes, witnesses.side, witnesses.known, year, witnesses.withdrawn,
                                          witnesses.proven_elsewhere);
            break;
        case NoteKind::switched:
            standing.switched = switched_standing(notes, witnesses.known, year, witnesses.withdrawn, witnesses.side,
                                                  witnesses.proven_elsewhere);
            break;
        case NoteKind::system:
            standing.premium = premium_standing(notes, witnesses.known, year, witnesses.withdrawn);
            break;
    }
    return standing;
}

const Standing& standing_on(const NotedStanding& standing, Question question) {
    switch (question) {
        case Question::pair:
            return standing.pair.pair;
        case Question::polarity:
            return standing.pair.polarity;
        case Question::live:
            return standing.switched.circuit;
        case Question::wire:
            return standing.switched.wire;
        case Question::premium:
            break;
    }
    return standing.premium;
}

std::string line_on(const NotedStanding& standing, Question question) {
    switch (question) {
        case Question::pair:
            return standing_line(standing.pair);
        case Question::polarity:
            return polarity_line(standing.pair);
        case Question::live:
            return switched_line(standing.switched);
        case Question::wire:
            return {};
        case Question::premium:
            break;
    }
    return premium_line(standing.premium);
}

std::vector<Vote> votes_on(Question question, std::span<const Note> notes, std::optional<ConnectorSide> side,
                           const std::optional<std::string>& settled_pair) {
    using Answer = std::optional<std::string>;
    switch (question) {
        case Question::pair: {
            std::vector<Vote> votes;
            for (const auto& saying : sayings_of(notes, side)) votes.push_back(vote_of(*saying.note, saying.pair));
            return votes;
        }
        case Question::polarity:
            return polarity_votes(sayings_of(notes, side), settled_pair);
        case Question::live:
            return votes_by(NoteKind::switched, notes, [](const Note& note) {
                const auto live = switched_class(note);
                return live ? Answer(word_of(*live)) : std::nullopt;
            });
        case Question::wire:
            return votes_by(NoteKind::switched, notes, [&](const Note& note) {
                return note.wire && !is_other_side(note, side) ? Answer(code(*note.wire)) : std::nullopt;
            });
        case Question::premium:
            break;
    }
    return votes_by(NoteKind::system, notes, [](const Note& note) {
        return note.premium ? Answer(*note.premium ? "true" : "false") : std::nullopt;
    });
}

std::string value_words(Question question, std::string_view value) {
    switch (question) {
        case Question::pair:
            return pair_words(value);
        case Question::polarity: {
            const bool is_negative = value.starts_with(negative_only);
            return key_words(is_negative ? value.substr(negative_only.size()) : value) +
                   (is_negative ? " negative" : " positive");
        }
        case Question::live: {
            std::string text(value);
            std::replace(text.begin(), text.end(), '_', ' ');
            return text;
        }
        case Question::wire:
            return key_words(value);
        case Question::premium:
            break;
    }
    return value == "true" ? "separate amplifier" : "no separate amplifier";
}

}  // namespace tapbook
