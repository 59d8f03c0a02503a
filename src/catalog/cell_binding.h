// How does a record's line become the cells of a row without a copy between? The same cells as cells.h gives (a test
// holds the two together), bound straight from where the values stand in the line: this is what makes an import quick.
#pragma once

#include <map>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "catalog/cells.h"

namespace tapbook {

class CellBinding {
  public:
    // The fields' cells are the statement's parameters from `first` on, in their order; the rest follows after them.
    // `kept` names the keys that have columns of their own, which the caller binds.
    CellBinding(std::span<const Field> fields, std::span<const std::string_view> kept, CellStyle style, int first);

    // REQUIRES the same statement each time: a cell that stays empty is not bound again.
    void bind(sqlite::Statement& statement, const RecordTokens& record);

  private:
    struct Column {
        std::string_view key;
        const Field* field = nullptr;  // absent: the caller's own
        int parameter = 0;
        std::vector<std::string_view> words = {};
    };

    // False when no cell of the column's kind holds the value as it is.
    bool bind_cell(sqlite::Statement& statement, const Column& column, const RecordToken& token);
    bool bind_text(sqlite::Statement& statement, const Column& column, const RecordToken& token);
    std::optional<std::int64_t> number_of(const Column& column, std::string_view text);

    std::vector<Field> fields_;
    std::vector<Column> columns_;  // by key
    CellStyle style_;
    int first_;
    std::vector<bool> filled_;  // by parameter, counted from first_
    std::vector<bool> filling_;
    std::map<std::string, std::optional<std::int64_t>, std::less<>> colours_;
    std::string rest_;
};

}  // namespace tapbook
