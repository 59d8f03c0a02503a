// The note is added to the others, so that a note with one colour is matched to the pair it belongs to.
#include "evidence/ledger_checks.h"

#include <fmt/format.h>

#include <algorithm>

namespace tapbook {
namespace {

std::string_view field_of(Question question) {
    switch (question) {
        case Question::pair:
            return "positive";
        case Question::polarity:
            return "polarity";
        case Question::live:
            return "run_v";
        case Question::wire:
            return "wire";
        case Question::premium:
            break;
    }
    return "premium";
}

std::string counted(int number, std::string_view noun) {
    return fmt::format("{} {}{}", number, noun, number == 1 ? "" : "s");
}

class LedgerCheck {
  public:
    LedgerCheck(const Note& note, std::span<const Note> before, const Witnesses& witnesses)
        : note_(note), witnesses_(witnesses), all_(before.begin(), before.end()) {
        before_ = noted_standing(note.kind, before, witnesses, note.year);
        all_.push_back(note);
        after_ = noted_standing(note.kind, all_, witnesses);
    }

    std::vector<EntryComplaint> run(std::span<const SisterTap> sisters) {
        for (const Question question : questions_of(note_.kind)) against_proven(question);
        if (note_.kind == NoteKind::pair) unlike_sisters(sisters);
        strikes_own();
        missing_marks();
        return std::move(complaints_);
    }

  private:
    void inform(std::string_view field, std::string text) {
        complaints_.push_back({EntrySeverity::info, field, std::move(text), {}});
    }

    // What the note says; "" when it has no say on the question.
    std::string said(Question question) const {
        for (const auto& vote : votes_on(question, all_, witnesses_.side, before_.pair.pair.value))
            if (vote.note == note_.id) return vote.value;
        return {};
    }

    void against_proven(Question question) {
        const Standing& standing = standing_on(before_, question);
        const std::string value = said(question);
        if (standing.grade != Grade::proven || value.empty() || value == *standing.value) return;
        const Claim& claim = standing.claims.front();
        complaints_.push_back({EntrySeverity::sure,
                               field_of(question),
                               fmt::format("{} differs from what is PROVEN here: {} ({}, {})",
                                           value_words(question, value), value_words(question, *standing.value),
                                           counted(claim.cars, "car"), counted(claim.shops, "shop")),
                               {"another body, sound system or side of the connector", "earlier work by others",
                                "a colour that looks different in this light"}});
    }

    void unlike_sisters(std::span<const SisterTap> sisters) {
        const std::string value = said(Question::pair);
        if (value.empty() || sisters.empty() || before_.pair.pair.value == value) return;
        const bool is_alone =
            std::none_of(sisters.begin(), sisters.end(), [&](const SisterTap& sister) { return sister.pair == value; });
        if (!is_alone) return;
        std::string places;
        for (const auto& sister : sisters.first(std::min<std::size_t>(sisters.size(), 3)))
            places += fmt::format("{}{} in {}", places.empty() ? "" : "; ", value_words(Question::pair, sister.pair),
                                  sister.path);
        if (sisters.size() > 3) places += fmt::format("; {} more", sisters.size() - 3);
        complaints_.push_back(
            {EntrySeverity::sure,
             field_of(Question::pair),
             fmt::format("{} is unlike every sister trim of this tap: {}", value_words(Question::pair, value), places),
             {"another tap point", "another side of the connector"}});
    }

    void strikes_own() {
        for (const Question question : questions_of(note_.kind))
            for (const auto& strike : standing_on(after_, question).struck)
                if (strike.by == note_.id)
                    inform(
                        field_of(question),
                        fmt::format("this shop noted {} on this car on {}; the newer note counts, the older is shown "
                                    "struck",
                                    value_words(question, strike.value), strike.date));
    }

    void missing_marks() {
        if (!note_.year) inform("year", "no model year: the note counts, but cannot show a change between years");
        if (note_.car.empty() && note_.method != Method::copied)
            inform("car", "no plate or VIN: without one, two cars of this shop cannot be told apart and count as one");
        if (note_.method == Method::copied && note_.source.empty())
            inform("source", "no source: all copied notes without one count as copies of one sheet");
    }

    const Note& note_;
    const Witnesses& witnesses_;
    std::vector<Note> all_;
    NotedStanding before_, after_;
    std::vector<EntryComplaint> complaints_;
};

}  // namespace

std::vector<EntryComplaint> check_against_ledger(const Note& note, std::span<const Note> before,
                                                 const Witnesses& witnesses, std::span<const SisterTap> sisters) {
    return LedgerCheck(note, before, witnesses).run(sisters);
}

}  // namespace tapbook
