// Where do the fields of a record stand in its line? Read in one pass over a line in the one accepted form, without a
// copy: a pack of 200,000 lines is read three times as fast as by a general JSON reader. What is not in that form is
// only said to be so; record_reader.cpp then finds the reason.
#pragma once

#include <array>
#include <cstdint>
#include <deque>
#include <optional>
#include <span>
#include <string>
#include <string_view>

#include "trade/record.h"

namespace tapbook {

enum class TokenKind { whole, flag, text, list };

struct RecordToken {
    std::string_view key;    // unescaped
    std::string_view text;   // unescaped; of a text
    std::string_view raw;    // the value as it stands in the line
    std::string_view field;  // key and value as they stand in the line
    std::size_t begin = 0;   // where in the line the key's quote stands, counted from 0
    TokenKind kind = TokenKind::whole;
    bool is_escaped = false;  // of a text, or of any text of a list
    std::int64_t number = 0;  // of a whole number; 1 or 0 of a flag
};

class RecordTokens {
  public:
    // True when the line is in the accepted form: then fields() are its fields, in the order of their keys. They stay
    // good until the next read(), and as long as the line itself does.
    bool read(std::string_view line);

    std::span<const RecordToken> fields() const { return {fields_.data(), count_}; }

    // The field of that name, or nullptr. text() is "" when it is not there or no text.
    const RecordToken* find(std::string_view key) const;
    std::string_view text(std::string_view key) const;

    // Where read() stopped, counted from 0: in a line that was refused, the first byte that cannot be.
    std::size_t stopped_at() const { return at_; }

  private:
    bool field();
    bool value(RecordToken& token);
    bool text(std::string_view& text, bool& is_escaped);
    bool escape(std::string& text);
    bool whole(RecordToken& token);
    bool list(RecordToken& token);
    bool word(std::string_view word);
    bool next_is(char c) const { return at_ < line_.size() && line_[at_] == c; }

    std::string_view line_;
    std::size_t at_ = 0;
    std::array<RecordToken, most_record_keys> fields_;
    std::size_t count_ = 0;
    std::deque<std::string> unescaped_;  // texts that do not stand in the line as they are
};

// The texts of a list token, unescaped.
TextList items_of(const RecordToken& token);

// Every field as the value it holds.
Values values_of(const RecordTokens& tokens);

}  // namespace tapbook
