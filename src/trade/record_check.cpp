// The field tables say what a known field may hold; beside them each kind has a few fields of its own.
#include "trade/record_check.h"

#include <fmt/format.h>

#include <algorithm>
#include <vector>

#include "trade/day.h"
#include "trade/note.h"
#include "trade/path.h"
#include "trade/text.h"

namespace tapbook {
namespace {

using Fault = std::optional<RecordFault>;

Fault fault_at(const RecordToken& token, std::string reason) {
    return RecordFault{std::move(reason), token.begin + 1};
}

Fault missing(std::string_view key) {
    return RecordFault{fmt::format("the field \"{}\" is missing", key), 0};
}

Fault wrong_type(const RecordToken& token, std::string_view wanted) {
    return fault_at(token, fmt::format("\"{}\" must be {}", token.key, wanted));
}

Fault hidden_in(const RecordToken& token, std::string_view text) {
    const auto hidden = hidden_character(text);
    if (!hidden) return std::nullopt;
    return fault_at(token, fmt::format("\"{}\" holds the invisible character {}", token.key, *hidden));
}

Fault fault_of_number(const RecordToken& token, const Field& field) {
    if (token.kind != TokenKind::whole) return wrong_type(token, "a whole number");
    const bool has_limits = field.least != field.most;
    if (!has_limits || (token.number >= field.least && token.number <= field.most)) return std::nullopt;
    return fault_at(token,
                    fmt::format("\"{}\" is {}, outside {} to {}", token.key, token.number, field.least, field.most));
}

Fault fault_of_list(const RecordToken& token) {
    if (token.kind != TokenKind::list) return wrong_type(token, "a list of texts");
    if (!token.is_escaped && !hidden_character(token.raw)) return std::nullopt;
    for (const auto& item : items_of(token))
        if (auto fault = hidden_in(token, item)) return fault;
    return std::nullopt;
}

// What the field's kind asks of the value. A word or a colour that this version does not know is no fault.
Fault fault_of_field(const RecordToken& token, const Field& field) {
    switch (field.kind) {
        case FieldKind::whole:
        case FieldKind::decimal:
            return fault_of_number(token, field);
        case FieldKind::flag:
            return token.kind == TokenKind::flag ? std::nullopt : wrong_type(token, "true or false");
        case FieldKind::names:
        case FieldKind::word_list:
        case FieldKind::loads:
            return fault_of_list(token);
        case FieldKind::name:
        case FieldKind::word:
        case FieldKind::colour:
        case FieldKind::slug:
            return token.kind == TokenKind::text ? hidden_in(token, token.text) : wrong_type(token, "a text");
        case FieldKind::text:
            return token.kind == TokenKind::text ? std::nullopt : wrong_type(token, "a text");
        case FieldKind::day:
            if (token.kind == TokenKind::text && day_number(token.text)) return std::nullopt;
            return wrong_type(token, "a day like 2026-05-02");
    }
    return std::nullopt;
}

// The fields of one table in the order of their keys, which is the order in which a record has them.
using SortedFields = std::vector<const Field*>;

template <class Table, class FieldOf>
SortedFields sorted_fields(const Table& table, FieldOf field_of) {
    SortedFields sorted;
    for (const auto& row : table) sorted.push_back(&field_of(row));
    std::sort(sorted.begin(), sorted.end(), [](const Field* a, const Field* b) { return a->stored < b->stored; });
    return sorted;
}

const SortedFields& fields_of_notes() {
    static const SortedFields fields =
        sorted_fields(note_fields(), [](const NoteField& row) -> const Field& { return row.field; });
    return fields;
}

const SortedFields& fields_of_entries(EntryKind kind) {
    static const std::vector<SortedFields> all = [] {
        std::vector<SortedFields> list;
        for (const auto& [one, word] : words_of<EntryKind>())
            list.push_back(sorted_fields(fields_of(one), [](const Field& row) -> const Field& { return row; }));
        return list;
    }();
    return all[static_cast<std::size_t>(kind)];
}

Fault fault_of_fields(const RecordTokens& record, const SortedFields& fields) {
    auto field = fields.begin();
    for (const auto& token : record.fields()) {
        while (field != fields.end() && (*field)->stored < token.key) ++field;
        if (field == fields.end()) break;
        if ((*field)->stored != token.key) continue;
        if (auto fault = fault_of_field(token, **field)) return fault;
    }
    return std::nullopt;
}

// A field that the kind cannot be without: a text that `is_right` takes.
template <class IsRight>
Fault fault_of_text(const RecordTokens& record, std::string_view key, std::string_view wanted, IsRight is_right) {
    const RecordToken* token = record.find(key);
    if (token == nullptr) return missing(key);
    if (token->kind == TokenKind::text && is_right(token->text)) return std::nullopt;
    return wrong_type(*token, wanted);
}

Fault fault_of_path(const RecordTokens& record, std::string_view key, std::size_t least, std::size_t most) {
    const auto is_right = [&](std::string_view path) {
        const auto parts = path_parts(path);
        return parts.size() >= least && parts.size() <= most && std::all_of(parts.begin(), parts.end(), is_slug);
    };
    const std::string wanted = most == 1 ? "a part's code" : "a path of small letters, digits and hyphens";
    return fault_of_text(
        record, key, least == most ? fmt::format("{} with {} part{}", wanted, least, least == 1 ? "" : "s") : wanted,
        is_right);
}

Fault fault_of_day(const RecordTokens& record) {
    return fault_of_text(record, "date", "a day like 2026-05-02",
                         [](std::string_view text) { return day_number(text).has_value(); });
}

Fault fault_of_hex(const RecordTokens& record, std::string_view key, std::size_t digits) {
    return fault_of_text(record, key, fmt::format("{} hexadecimal digits", digits),
                         [&](std::string_view text) { return is_hex(text, digits); });
}

Fault fault_of_note(const RecordTokens& record) {
    const bool is_system = record.text("kind") == word_of(NoteKind::system);
    const std::size_t depth = is_system ? system_depth : tap_depth;
    if (auto fault = fault_of_path(record, "path", depth, depth)) return fault;
    if (auto fault = fault_of_day(record)) return fault;
    if (record.find("method") == nullptr) return missing("method");
    if (record.find("car") != nullptr)
        if (auto fault = fault_of_hex(record, "car", 32)) return fault;
    return fault_of_fields(record, fields_of_notes());
}

Fault fault_of_entry(const RecordTokens& record, EntryKind kind) {
    const std::size_t depth = depth_of(kind);
    if (auto fault = fault_of_path(record, "path", depth, depth)) return fault;
    if (auto fault = fault_of_day(record)) return fault;
    const RecordToken* revision = record.find("revision");
    if (revision == nullptr) return missing("revision");
    if (revision->kind != TokenKind::whole || revision->number < 1) return wrong_type(*revision, "a number from 1 on");
    return fault_of_fields(record, fields_of_entries(kind));
}

Fault fault_of_withdrawal(const RecordTokens& record) {
    if (auto fault = fault_of_hex(record, "target", 32)) return fault;
    if (auto fault = fault_of_path(record, "path", system_depth, tap_depth)) return fault;
    if (auto fault = fault_of_day(record)) return fault;
    const auto is_word = [](std::string_view text) { return !hidden_character(text); };
    return fault_of_text(record, "reason", "a text without invisible characters", is_word);
}

Fault fault_of_alias(const RecordTokens& record) {
    constexpr std::size_t part = 1;
    if (auto fault = fault_of_path(record, "first", part, tap_depth)) return fault;
    if (auto fault = fault_of_path(record, "second", part, tap_depth)) return fault;
    if (auto fault = fault_of_day(record)) return fault;
    const auto first = record.text("first"), second = record.text("second");
    const RecordToken& token = *record.find("second");
    if (first >= second) return fault_at(token, "\"second\" must be the later of the two paths");
    if (path_parts(first).size() != path_parts(second).size())
        return fault_at(token, "the two paths must have the same number of parts");
    return std::nullopt;
}

Fault fault_of_key(const RecordTokens& record) {
    constexpr std::size_t key_digits = 64, signature_digits = 128;
    if (auto fault = fault_of_day(record)) return fault;
    if (auto fault = fault_of_hex(record, "new_key", key_digits)) return fault;
    if (auto fault = fault_of_hex(record, "old_key", key_digits)) return fault;
    if (record.find("signature") == nullptr) return std::nullopt;
    return fault_of_hex(record, "signature", signature_digits);
}

Fault fault_of_kind(const RecordTokens& record, RecordKind kind) {
    if (const auto entry = entry_kind_of(kind)) return fault_of_entry(record, *entry);
    switch (kind) {
        case RecordKind::alias:
            return fault_of_alias(record);
        case RecordKind::key:
            return fault_of_key(record);
        case RecordKind::note:
            return fault_of_note(record);
        case RecordKind::withdrawal:
            return fault_of_withdrawal(record);
        case RecordKind::amplifier:
        case RecordKind::circuit:
        case RecordKind::converter:
        case RecordKind::system:
        case RecordKind::tap:
        case RecordKind::vehicle:
            break;
    }
    return std::nullopt;
}

// A record says practice: true in a practice catalog and nothing of it in a real one.
Fault fault_of_practice(const RecordTokens& record, bool practice) {
    const RecordToken* token = record.find("practice");
    const bool says_practice = token != nullptr && token->kind == TokenKind::flag && token->number == 1;
    if (practice) return says_practice ? std::nullopt : missing("practice");
    if (token == nullptr) return std::nullopt;
    return fault_at(*token, "a practice record in a pack that does not say practice");
}

}  // namespace

std::optional<EntryKind> entry_kind_of(RecordKind kind) {
    return parse_word<EntryKind>(word_of(kind));
}

std::size_t depth_of(EntryKind kind) {
    switch (kind) {
        case EntryKind::vehicle:
            return vehicle_depth;
        case EntryKind::system:
            return system_depth;
        case EntryKind::circuit:
            return circuit_depth;
        case EntryKind::tap:
            return tap_depth;
        case EntryKind::converter:
        case EntryKind::amplifier:
            return 1;
    }
    return 1;
}

bool is_hex(std::string_view text, std::size_t digits) {
    return text.size() == digits && std::all_of(text.begin(), text.end(), [](char c) {
               return (c >= '0' && c <= '9') || (c >= 'a' && c <= 'f');
           });
}

RecordHead head_of(const RecordTokens& record) {
    RecordHead head{record.text("type"), record.text("shop"), record.text("path"), {}};
    head.kind = parse_word<RecordKind>(head.type);
    if (head.kind == RecordKind::alias) head.path = record.text("first");
    if (head.kind == RecordKind::key) head.path = {};
    if (head.kind == RecordKind::note && !parse_word<NoteKind>(record.text("kind"))) head.kind.reset();
    return head;
}

std::optional<RecordFault> fault_of(const RecordTokens& record, const RecordHead& head, bool practice) {
    const auto is_type = [](std::string_view text) {
        return !text.empty() &&
               std::all_of(text.begin(), text.end(), [](char c) { return (c >= 'a' && c <= 'z') || c == '_'; });
    };
    if (auto fault = fault_of_text(record, "type", "a word of small letters", is_type)) return fault;
    if (auto fault = fault_of_hex(record, "shop", 32)) return fault;
    if (auto fault = fault_of_practice(record, practice)) return fault;
    if (!head.kind) return std::nullopt;
    return fault_of_kind(record, *head.kind);
}

}  // namespace tapbook
