// See why_answer.h.
#include "rules/why_answer.h"

#include <fmt/format.h>

#include <algorithm>

namespace tapbook {
namespace {

void append(std::string& text, const std::string& more) {
    if (!more.empty()) text.append(text.empty() ? "" : ", ").append(more);
}

std::string conductor_words(const std::optional<WireColour>& colour, const std::string& mark, std::string_view sign) {
    if (!colour) return {};
    return fmt::format("{}{} ({})", words(*colour), mark.empty() ? "" : " with " + mark, sign);
}

std::string says(const Note& note) {
    std::string text;
    switch (note.kind) {
        case NoteKind::pair:
            append(text, conductor_words(note.positive, note.positive_mark, "+"));
            append(text, conductor_words(note.negative, note.negative_mark, "-"));
            if (note.drive) append(text, fmt::format("drive {}", word_of(*note.drive)));
            if (note.reading) append(text, fmt::format("{:.1f} V a.c.", note.reading->volts.in(rms_volts)));
            break;
        case NoteKind::switched:
            if (note.wire) append(text, words(*note.wire));
            if (const auto live = switched_class(note)) append(text, value_words(Question::live, word_of(*live)));
            break;
        case NoteKind::system:
            if (note.premium) append(text, value_words(Question::premium, *note.premium ? "true" : "false"));
            append(text, note.tell);
            break;
    }
    return text.empty() ? "says nothing on these questions" : text;
}

NoteFate fate_of(const LedgerNote& entry, const std::optional<ConnectorSide>& side) {
    switch (entry.state) {
        case NoteState::withdrawn:
            return NoteFate::withdrawn;
        case NoteState::blocked:
            return NoteFate::blocked;
        case NoteState::live:
            break;
    }
    return entry.note.side && side && *entry.note.side != *side ? NoteFate::other_side : NoteFate::counts;
}

WhyNote why_note(const LedgerNote& entry, const std::optional<ConnectorSide>& side) {
    const Note& note = entry.note;
    WhyNote why{note.id,
                note.date,
                reference_to(note).method,
                note.initials,
                note.shop,
                says(note),
                note.year,
                fate_of(entry, side),
                {},
                !note.car.empty()};
    if (why.fate == NoteFate::withdrawn) {
        append(why.fate_words, entry.reason);
        append(why.fate_words, entry.withdrawn_on);
    }
    return why;
}

void mark_struck(WhyAnswer& answer, const WhyQuestion& why) {
    for (const auto& strike : why.sum.standing.struck)
        for (auto& note : answer.notes) {
            if (note.id != strike.note || note.fate != NoteFate::counts) continue;
            note.fate = NoteFate::struck;
            note.fate_words =
                fmt::format("the shop's note {} says otherwise on the same car", to_hex(strike.by).substr(0, 8));
        }
}

}  // namespace

WhyAnswer why_answer(const TapLedger& ledger, std::optional<int> year) {
    WhyAnswer answer;
    answer.path = ledger.path;
    answer.also = ledger.also;
    answer.kind = ledger.kind;
    answer.year = year;
    answer.shop_names = ledger.shop_names;
    answer.own_shop = ledger.own_shop;
    answer.practice = ledger.practice;
    for (const auto& entry : ledger.notes) answer.notes.push_back(why_note(entry, ledger.witnesses.side));
    const auto live = ledger.live();
    const NotedStanding all_years = noted_standing(ledger.kind, live, ledger.witnesses);
    const NotedStanding one_year = noted_standing(ledger.kind, live, ledger.witnesses, year);
    for (const Question question : questions_of(ledger.kind)) {
        WhyQuestion why;
        why.question = question;
        why.line = line_on(all_years, question);
        why.sum = reckoning_of(votes_on(question, live, ledger.witnesses.side, all_years.pair.pair.value),
                               ledger.witnesses.known, standing_on(all_years, question));
        if (year) {
            why.asked_year = standing_on(one_year, question);
            why.asked_year_line = line_on(one_year, question);
        }
        mark_struck(answer, why);
        answer.questions.push_back(std::move(why));
    }
    answer.next = next_step(ledger.kind, live, ledger.witnesses, ledger.own_shop);
    return answer;
}

}  // namespace tapbook
