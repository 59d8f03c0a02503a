// How does a half-done change leave no trace? A transaction gives up unless it is told to commit.
#pragma once

#include "sqlite/database.h"

namespace tapbook::sqlite {

class Transaction {
  public:
    enum class Kind {
        write,  // takes the write lock at once (BEGIN IMMEDIATE): waiting and is_busy() happen here, not half-way
        read,   // several SELECTs see one state of the file; a write inside may fail with is_busy()
    };

    // Throws Error when one is open already, or when the lock is not to be had within the time-out.
    // REQUIRES: `database` outlives this and is not moved.
    explicit Transaction(Database& database, Kind kind = Kind::write);

    // Rolls back unless commit() succeeded; never throws.
    ~Transaction();
    Transaction(const Transaction&) = delete;
    Transaction& operator=(const Transaction&) = delete;

    // Throws Error when the changes could not be made durable, or when SQLite has rolled back by itself (disk full):
    // then nothing was changed.
    void commit();

  private:
    Database& database_;
    bool open_ = true;
};

}  // namespace tapbook::sqlite
