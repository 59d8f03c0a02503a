// Which fields does each kind of record have? One table per kind: what people write, the column and record key, the
// unit, the limits, the words, the meaning. The TOML reader, the store, the record, the JSON and the help all read
// these tables.
#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "trade/position.h"
#include "trade/terms.h"
#include "trade/value.h"

namespace tapbook {

enum class FieldKind {
    name,       // one line of text without hidden characters
    text,       // free text
    slug,       // [a-z0-9-]{1,40}
    word,       // one of `words`
    colour,     // a wire colour; stored as its code
    whole,      // a whole number
    decimal,    // a decimal number; stored times 10^digits
    flag,       // true or false
    names,      // a list of one-line texts
    word_list,  // a list of `words`
    loads,      // a list of "ohms:watts"; stored as a list of "mohm:mW"
    day         // YYYY-MM-DD
};

using WordList = std::vector<std::string_view> (*)();

// All words of an enum in the order of its table.
template <class Enum>
std::vector<std::string_view> spellings() {
    std::vector<std::string_view> words;
    for (const auto& named : words_of<Enum>()) words.push_back(named.word);
    return words;
}

struct Field {
    std::string_view name;    // in files, options and JSON: "rating_ohms"
    std::string_view stored;  // column and record key: "rating_mohm"
    FieldKind kind;
    int digits = 0;              // decimal only
    std::string_view unit = {};  // of what people write
    std::int64_t least = 0;      // whole and decimal: bounds of the stored number
    std::int64_t most = 0;
    WordList words = nullptr;  // word and word_list
    bool required = false;
    std::string_view meaning = {};
    int since = 1;  // of an entry: the schema version whose tables first have the column
};

enum class EntryKind { vehicle, system, circuit, tap, converter, amplifier };
template <>
struct NamedValues<EntryKind> {
    static constexpr Named<EntryKind> all[] = {
        {EntryKind::vehicle, "vehicle"}, {EntryKind::system, "system"},       {EntryKind::circuit, "circuit"},
        {EntryKind::tap, "tap"},         {EntryKind::converter, "converter"}, {EntryKind::amplifier, "amplifier"}};
};

// The fields of an entry besides type, path, revision, shop, date and practice.
std::span<const Field> fields_of(EntryKind kind);

// Where the fields of a note apply and which are voted on when many notes are held against each other.
struct NoteField {
    Field field;
    bool pair, switched, system;  // kinds of note that may have it
    bool voted;                   // false: measured numbers and remarks are never voted
};
std::span<const NoteField> note_fields();

// The field people call `name`, or nullptr.
const Field* find_field(std::span<const Field> fields, std::string_view name);
const NoteField* find_note_field(std::string_view name);

bool applies_to(const NoteField& field, NoteKind kind);

}  // namespace tapbook
