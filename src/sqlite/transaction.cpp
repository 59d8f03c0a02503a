// BEGIN, COMMIT and ROLLBACK tied to a scope.
#include "sqlite/transaction.h"

#include "sqlite/error.h"

namespace tapbook::sqlite {

Transaction::Transaction(Database& database, Kind kind) : database_(database) {
    database_.execute(kind == Kind::write ? "BEGIN IMMEDIATE" : "BEGIN");
}

Transaction::~Transaction() {
    if (!open_ || !database_.in_transaction()) return;
    try {
        database_.execute("ROLLBACK");
    } catch (const Error&) {
        // SQLite rolls back by itself when it cannot go on; there is nothing left to give up.
    }
}

void Transaction::commit() {
    if (!open_) throw misuse("this transaction was committed already");
    database_.execute("COMMIT");
    open_ = false;
}

}  // namespace tapbook::sqlite
