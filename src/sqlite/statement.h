// How is one prepared statement filled, run and read, without SQLite's silent conversions? A parameter never bound is
// refused (SQLite takes NULL), and reading a cell as something it is not is refused (SQLite gives 0 or an empty text).
//
//     Statement pairs = database.prepare("SELECT tap, colour FROM pair WHERE vehicle = ?1");
//     for (pairs.bind_all(vehicle); pairs.step();) use(pairs.integer(0), pairs.optional_text(1));
//
// Parameters count from 1, columns from 0, as in SQLite. Every function throws Error; used by one thread at a time.
#pragma once

#include <concepts>
#include <cstddef>
#include <cstdint>
#include <limits>
#include <optional>
#include <string>
#include <string_view>
#include <type_traits>
#include <vector>

#include "sqlite/value.h"

struct sqlite3_stmt;

namespace tapbook::sqlite {

class Statement {
  public:
    explicit Statement(sqlite3_stmt* owned);  // used by Database::prepare()
    ~Statement();
    Statement(Statement&& other) noexcept;
    Statement& operator=(Statement&& other) noexcept;

    int parameter_count() const;

    // Texts and blobs are copied. Bindings stay over reset() until replaced. A NaN becomes NULL (SQLite has none).
    // REQUIRES: no row is being read; reset() first.
    void bind(int parameter, std::nullopt_t);
    void bind(int parameter, std::nullptr_t) = delete;  // not a text
    void bind(int parameter, BlobView bytes);
    void bind(int parameter, const Blob& bytes) { bind(parameter, BlobView{bytes.bytes}); }
    void bind(int parameter, const Value& value);
    template <std::integral Integer>
    void bind(int parameter, Integer number) {
        if constexpr (std::is_unsigned_v<Integer> && sizeof(Integer) >= sizeof(std::int64_t)) {
            if (number > static_cast<Integer>(std::numeric_limits<std::int64_t>::max())) refuse_number();
        }
        bind_integer(parameter, static_cast<std::int64_t>(number));
    }
    template <std::floating_point Real>
    void bind(int parameter, Real number) {
        bind_real(parameter, static_cast<double>(number));
    }
    template <class Text>
    requires std::convertible_to<const Text&, std::string_view>
    void bind(int parameter, const Text& text) { bind_text(parameter, std::string_view(text)); }
    template <class Some>
    void bind(int parameter, const std::optional<Some>& value) {
        value ? bind(parameter, *value) : bind(parameter, std::nullopt);
    }

    // Resets, then binds every parameter in order; refused unless there are exactly as many.
    template <class... Values>
    void bind_all(const Values&... values) {
        start_binding(static_cast<int>(sizeof...(values)));
        int parameter = 0;
        (bind(++parameter, values), ...);
    }

    // True: a row is there to be read. False: the end; the statement is reset and may be stepped again from the start.
    // A loop left before the end keeps its read lock until reset() or the end of the statement's life.
    bool step();
    void run();  // steps to the end; rows are passed over
    void reset();

    int column_count() const;
    std::string column_name(int column) const;

    // The cell of the current row. Refused without a row, for a NULL, and for another storage class, but real() takes
    // integers as well. A view is good until the next step() or reset().
    std::int64_t integer(int column) const;
    double real(int column) const;
    std::string_view text(int column) const;
    std::string_view blob(int column) const;

    // Absent for NULL, else the same.
    std::optional<std::int64_t> optional_integer(int column) const;
    std::optional<double> optional_real(int column) const;
    std::optional<std::string_view> optional_text(int column) const;
    std::optional<std::string_view> optional_blob(int column) const;

    bool is_null(int column) const;
    Value value(int column) const;

    sqlite3_stmt* raw() const { return statement_; }  // for the files of this folder

  private:
    void bind_integer(int parameter, std::int64_t number);
    void bind_real(int parameter, double number);
    void bind_text(int parameter, std::string_view text);
    void start_binding(int given);
    void note_bound(int parameter, int result);
    [[noreturn]] static void refuse_number();
    [[noreturn]] void refuse_unbound() const;
    int type_of(int column) const;
    void expect_type(int column, int wanted, const char* words) const;

    sqlite3_stmt* statement_;
    std::vector<bool> bound_;
    int unbound_ = 0;
    bool has_row_ = false;
};

}  // namespace tapbook::sqlite
