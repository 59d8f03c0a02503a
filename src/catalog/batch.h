// What does a file want to put into the catalog? Drafts in the file's order, each with the place it was written at, so
// that a refusal found later can still point at the line.
#pragma once

#include <optional>
#include <stdexcept>
#include <string>
#include <vector>

#include "catalog/small_terms.h"
#include "evidence/evidence.h"

namespace tapbook {

// A place in a text: lines and columns count from 1, in bytes; 0 when the whole file is meant.
struct SourcePlace {
    std::string file;
    int line = 0;
    int column = 0;
    std::string line_text;
};

// One thing wrong with an input: where, what and why, and the way out.
struct Complaint {
    SourcePlace place;
    std::string message;
    std::string hint;  // what to write or type instead; may be empty
};

// The input is refused as a whole; nothing was changed. what() is the first complaint's message.
class InputRefused : public std::runtime_error {
  public:
    explicit InputRefused(std::vector<Complaint> complaints)
        : std::runtime_error(complaints.empty() ? "refused" : complaints.front().message),
          complaints_(std::move(complaints)) {}
    const std::vector<Complaint>& complaints() const { return complaints_; }

  private:
    std::vector<Complaint> complaints_;
};

struct EntryDraft {
    EntryKind kind;
    Values values;  // "path" and the fields of its kind by their stored names
    SourcePlace place;
};

struct NoteDraft {
    Values values;          // "kind", "path" and the note's fields by their stored names
    std::string shop_code;  // another shop as author: practice catalogs only; "" for this shop
    std::string car_words;  // plate, VIN or any words that tell the car apart; only their salted token is kept. A file
                            // that was exported holds the token itself, as "car" among the values
    SourcePlace place;
};

struct Terms {
    std::optional<std::int64_t> cost_cents;
    std::optional<int> lead_days, pack, on_hand, on_order;
    std::optional<SmallTerms> small = {};  // of a part that stands in no parts file
    friend bool operator==(const Terms&, const Terms&) = default;
};

struct TermsDraft {
    std::string part;
    Terms terms;
    SourcePlace place;
};

// A shop of a practice catalog.
struct ShopDraft {
    std::string code, name;
    SourcePlace place;
};

struct Batch {
    std::string file;
    bool practice = false;  // written from a practice catalog: only such a catalog takes it
    SourcePlace practice_place;
    std::vector<EntryDraft> entries;
    std::vector<NoteDraft> notes;
    std::vector<TermsDraft> terms;
    std::vector<ShopDraft> shops;
};

// What adding a batch did or would do.
struct AddReport {
    int entries_new = 0, entries_changed = 0, entries_here = 0;
    int notes_new = 0, notes_here = 0;
    int terms_changed = 0, terms_here = 0;
    struct GradeMove {
        std::string path;
        Grade before, after;
    };
    std::vector<GradeMove> moves;    // pairs and systems whose grade the notes change
    std::vector<std::string> lines;  // one line per new or changed entry: "new  vehicle  make/model/..."
    bool written = false;
};

}  // namespace tapbook
