// The allow-list: one SELECT, the relations' own columns, the allowed functions. All else is denied and remembered.
#include <sqlite3.h>

#include <algorithm>

#include "sqlite/function_lists.h"
#include "sqlite/sandbox_state.h"

namespace tapbook::sqlite {

void Judge::begin() {
    compiling_ = true;
    selects_ = 0;
    denial_.reset();
    reads_.clear();
}

int Judge::answer(int action, const char* first, const char* second) {
    if (!compiling_) return SQLITE_OK;
    const std::string_view one = first == nullptr ? "" : first;
    const std::string_view two = second == nullptr ? "" : second;
    switch (action) {
        case SQLITE_SELECT:
            return ++selects_ == 1 ? SQLITE_OK : deny(Refusal::subquery, "");
        case SQLITE_READ:
            return answer_read(one, two);
        case SQLITE_FUNCTION:
            return is_allowed_function(two) ? SQLITE_OK : deny(reason_against(two), std::string(two));
        case SQLITE_RECURSIVE:
            return deny(Refusal::subquery, "");
        default:  // not our enum
            return deny(Refusal::syntax_error, "");
    }
}

int Judge::answer_read(std::string_view relation, std::string_view column) {
    if (column.empty()) return SQLITE_OK;  // a relation of FROM that is not read
    for (std::size_t i = 0; i < relations_.size(); ++i) {
        if (relations_[i].name != relation) continue;
        const auto& columns = relations_[i].columns;
        const auto found =
            std::find_if(columns.begin(), columns.end(), [&](const auto& c) { return c.name == column; });
        if (found == columns.end()) break;
        reads_.emplace_back(i, static_cast<std::size_t>(found - columns.begin()));
        return SQLITE_OK;
    }
    return deny(Refusal::unknown_column, std::string(relation) + "." + std::string(column));
}

int Judge::deny(Refusal reason, std::string name) {
    if (!denial_) denial_ = Denial{reason, std::move(name)};
    return SQLITE_DENY;
}

RelationSet Judge::relations_read() const {
    RelationSet set = 0;
    for (const auto& [relation, column] : reads_) set |= RelationSet{1} << relation;
    return set;
}

std::vector<ColumnRead> Judge::reads() const {
    auto sorted = reads_;
    std::sort(sorted.begin(), sorted.end());
    sorted.erase(std::unique(sorted.begin(), sorted.end()), sorted.end());
    std::vector<ColumnRead> named;
    for (const auto& [relation, column] : sorted) {
        named.push_back({relations_[relation].name, relations_[relation].columns[column].name});
    }
    return named;
}

}  // namespace tapbook::sqlite
