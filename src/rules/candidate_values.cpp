// Values remembered by the number of the look in which they were asked for.
#include "rules/candidate_values.h"

#include <cmath>
#include <utility>

namespace tapbook {
namespace {

sqlite::Value as_stored(const Column& column, sqlite::Value value) {
    if (const auto* real = std::get_if<double>(&value); real != nullptr && std::isnan(*real)) return std::monostate{};
    if (const auto* whole = std::get_if<std::int64_t>(&value); whole != nullptr && column.type == "REAL")
        return static_cast<double>(*whole);
    return value;
}

}  // namespace

CandidateValues::CandidateValues() : held_(columns().size()) {
    for (const Column& column : columns()) held_[index_of(column)].is_of_tap = is_of_tap(column.relation);
}

void CandidateValues::look_at(const Candidate& candidate) {
    candidate_ = &candidate;
    look_of_tap_ = ++look_;
}

void CandidateValues::look_at_part(const Candidate& candidate) {
    candidate_ = &candidate;
    ++look_;
}

void CandidateValues::forget() {
    candidate_ = nullptr;
    look_of_tap_ = ++look_;
}

void CandidateValues::give(const Column& column, sqlite::Value value) {
    Held& held = held_[index_of(column)];
    held.value = as_stored(column, std::move(value));
    held.of_look = look_of(held);
}

void CandidateValues::ask(std::size_t place) {
    Held& held = held_[place];
    const Column& column = columns()[place];
    held.value = candidate_ == nullptr ? sqlite::Value{} : as_stored(column, column.get(*candidate_));
    held.of_look = look_of(held);
}

std::vector<sqlite::Value> CandidateValues::row(std::string_view relation) {
    std::vector<sqlite::Value> values;
    for (const Column& column : columns_of(relation)) values.push_back(of(column));
    return values;
}

}  // namespace tapbook
