// Filling a statement's parameters, remembering which were filled so that step() can refuse the rest.
#include <sqlite3.h>

#include "sqlite/error.h"
#include "sqlite/statement.h"

namespace tapbook::sqlite {

int Statement::parameter_count() const {
    return static_cast<int>(bound_.size());
}

void Statement::bind(int parameter, std::nullopt_t) {
    note_bound(parameter, sqlite3_bind_null(statement_, parameter));
}

void Statement::bind_integer(int parameter, std::int64_t number) {
    note_bound(parameter, sqlite3_bind_int64(statement_, parameter, number));
}

void Statement::bind_real(int parameter, double number) {
    note_bound(parameter, sqlite3_bind_double(statement_, parameter, number));
}

// A null pointer would be bound as NULL, but an empty view is an empty text.
void Statement::bind_text(int parameter, std::string_view text) {
    const char* bytes = text.data() == nullptr ? "" : text.data();
    note_bound(parameter,
               sqlite3_bind_text64(statement_, parameter, bytes, text.size(), SQLITE_TRANSIENT, SQLITE_UTF8));
}

void Statement::bind(int parameter, BlobView blob) {
    const char* bytes = blob.bytes.data() == nullptr ? "" : blob.bytes.data();
    note_bound(parameter, sqlite3_bind_blob64(statement_, parameter, bytes, blob.bytes.size(), SQLITE_TRANSIENT));
}

void Statement::bind(int parameter, const Value& value) {
    if (const auto* integer = std::get_if<std::int64_t>(&value)) return bind_integer(parameter, *integer);
    if (const auto* real = std::get_if<double>(&value)) return bind_real(parameter, *real);
    if (const auto* text = std::get_if<std::string>(&value)) return bind_text(parameter, *text);
    if (const auto* blob = std::get_if<Blob>(&value)) return bind(parameter, *blob);
    bind(parameter, std::nullopt);
}

void Statement::start_binding(int given) {
    reset();
    if (given == parameter_count()) return;
    throw misuse(std::to_string(given) + " values for " + std::to_string(parameter_count()) + " parameters of " +
                 sqlite3_sql(statement_));
}

void Statement::note_bound(int parameter, int result) {
    if (result != SQLITE_OK) {
        throw Error(result, "binding parameter " + std::to_string(parameter) + " of " + sqlite3_sql(statement_) + ": " +
                                sqlite3_errstr(result));
    }
    if (bound_[parameter - 1]) return;
    bound_[parameter - 1] = true;
    --unbound_;
}

void Statement::refuse_number() {
    throw misuse("a number above 9223372036854775807 does not fit a cell");
}

void Statement::refuse_unbound() const {
    std::size_t first = 0;
    while (bound_[first]) ++first;
    throw misuse("parameter " + std::to_string(first + 1) + " was never bound in " + sqlite3_sql(statement_));
}

}  // namespace tapbook::sqlite
