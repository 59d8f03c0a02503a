// The two ways to an answer.
#include "rules/condition.h"

namespace tapbook {

std::optional<bool> Condition::truth(CandidateValues& values) {
    if (plain_) return plain_->truth(values);
    for (const auto relation : relations_) sandbox_->set(relation, values.row(relation));
    return expression_->truth();
}

Condition ConditionReader::read(std::string_view when) {
    Condition condition;
    if (how_ == Answering::plain_where_possible) condition.plain_ = PlainCondition::read(when);
    if (condition.plain_) return condition;
    if (!sandbox_) sandbox_.emplace(column_relations());
    condition.sandbox_ = &*sandbox_;
    condition.expression_ = sandbox_->compile(when);
    for (const auto& read : condition.expression_->reads()) {
        const Column* column = find_column(read.relation, read.column);
        condition.reads_.push_back(column);
        if (condition.relations_.empty() || condition.relations_.back() != column->relation)
            condition.relations_.push_back(column->relation);
    }
    return condition;
}

}  // namespace tapbook
