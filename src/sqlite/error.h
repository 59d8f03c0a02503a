// What went wrong in SQLite, and which of the few kinds that callers tell apart is it? The result codes are SQLite's
// own (https://www.sqlite.org/rescode.html); what() is SQLite's sentence and what was being done.
#pragma once

#include <stdexcept>
#include <string>

struct sqlite3;

namespace tapbook::sqlite {

class Error : public std::runtime_error {
  public:
    // `extended_code` is an extended or a primary result code.
    Error(int extended_code, const std::string& message);

    int code() const { return extended_code_ & 0xff; }  // primary result code
    int extended_code() const { return extended_code_; }

    bool is_busy() const;               // another connection holds the lock, also after waiting
    bool is_full_or_io() const;         // disk full, or reading or writing failed
    bool is_corrupt() const;            // the file is a database but damaged
    bool is_not_a_database() const;     // the file is something else
    bool is_read_only() const;          // a write to what may only be read
    bool is_cannot_open() const;        // no such file, or not allowed to open it
    bool is_constraint() const;         // a UNIQUE, CHECK, NOT NULL, FOREIGN KEY or STRICT type was broken
    bool is_refused_statement() const;  // SQL that does not compile: a syntax error, no such table or column
    bool is_interrupted() const;        // a step budget was used up
    bool is_misuse() const;  // the caller's mistake: unbound parameter, text after a statement, wrong column type

  private:
    int extended_code_;
};

// The error `database` reports now, preceded by `doing` ("opening x.db"). `database` may be null: then out of memory.
Error last_error(sqlite3* database, const std::string& doing);

// The caller's mistake, with is_misuse() true.
Error misuse(const std::string& message);

}  // namespace tapbook::sqlite
