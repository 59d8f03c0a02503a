// How is one exchanged statement written, named and read back? A record is one JSON object on one line: keys sorted by
// bytes, values texts (NFC), whole numbers, yes/no and lists of texts. Its id is the first 16 bytes of SHA-256 over
// "tapbook/1" LF line. A line is accepted only if writing what was read gives the same bytes again.
#pragma once

#include <array>
#include <cstdint>
#include <stdexcept>
#include <string>
#include <string_view>

#include "trade/value.h"

namespace tapbook {

using RecordId = std::array<unsigned char, 16>;

inline constexpr std::size_t most_record_bytes = 65536;  // one line, without its LF
inline constexpr std::size_t most_record_keys = 64;
inline constexpr std::size_t most_key_bytes = 64;
inline constexpr std::size_t most_text_bytes = 4000;
inline constexpr std::int64_t most_record_integer = 9007199254740991;  // 2^53 - 1 (RFC 7493)

// A line that is not a record. `column` is the 1-based byte at which reading stopped, 0 when the line as a whole is
// meant.
class RecordRefused : public std::runtime_error {
  public:
    RecordRefused(const std::string& reason, std::size_t column) : std::runtime_error(reason), column_(column) {}
    std::size_t column() const { return column_; }

  private:
    std::size_t column_;
};

// The record as one line without line feed. Throws RecordRefused when a value breaks a limit, is not UTF-8 or not NFC.
std::string record_line(const Values& record);

// The record on `line` (no LF). Throws RecordRefused with the reason: not JSON, nested, a fraction, a repeated key,
// keys out of order, not NFC, or any other spelling than the one record_line() writes.
Values read_record_line(std::string_view line);

// The same by the JSON library alone: slower, and held against it by a test.
Values read_record_line_slowly(std::string_view line);

// Never fails; equal lines have equal ids.
RecordId record_id(std::string_view line);

// 32 lower-case hexadecimal digits for 16 bytes, and back (empty optional when `hex` is not exactly that).
std::string to_hex(const RecordId& id);
bool from_hex(std::string_view hex, RecordId& id);

// First 16 bytes of SHA-256 over `bytes`: shop ids and car tokens are made with it.
RecordId short_hash(std::string_view bytes);

}  // namespace tapbook
