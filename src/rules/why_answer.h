// Why does a tap point or sound system have its grades? For each question the sum behind the grade, for each note what
// became of it: the facts of the ledger put in order, nothing new.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "catalog/catalog.h"

namespace tapbook {

struct WhyQuestion {
    Question question = Question::pair;
    std::string line;  // of all years
    Reckoning sum;
    std::optional<Standing> asked_year;  // the standing for the year that was asked for
    std::string asked_year_line;
};

// What became of a note.
enum class NoteFate { counts, struck, withdrawn, blocked, other_side };
template <>
struct NamedValues<NoteFate> {
    static constexpr Named<NoteFate> all[] = {{NoteFate::counts, "counts"},
                                              {NoteFate::struck, "struck"},
                                              {NoteFate::withdrawn, "withdrawn"},
                                              {NoteFate::blocked, "blocked"},
                                              {NoteFate::other_side, "other side"}};
};
static_assert(table_is_sound<NoteFate>());

struct WhyNote {
    RecordId id{};
    std::string date, method, initials, shop;  // method with the polarity's
    std::string says;                          // "brown (+), brown, yellow stripe (-)"
    std::optional<int> year;
    NoteFate fate = NoteFate::counts;
    std::string fate_words;      // "typo, 2026-05-02"; may be empty
    bool is_told_apart = false;  // plate or VIN is known, as a token
};

struct WhyAnswer {
    std::string path;
    std::vector<std::string> also;  // its other paths
    NoteKind kind = NoteKind::pair;
    std::optional<int> year;
    std::vector<WhyQuestion> questions;
    std::vector<WhyNote> notes;  // by date
    std::map<std::string, std::string> shop_names;
    std::string own_shop;
    std::string next;
    bool practice = false;
};

WhyAnswer why_answer(const TapLedger& ledger, std::optional<int> year);

}  // namespace tapbook
