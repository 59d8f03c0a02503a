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

CandidateValues::CandidateValues() : held_(columns().size()) {}

void CandidateValues::look_at(const Candidate& candidate) {
    candidate_ = &candidate;
    ++look_;
}

void CandidateValues::forget() {
    candidate_ = nullptr;
    ++look_;
}

void CandidateValues::give(const Column& column, sqlite::Value value) {
    held_[index_of(column)] = {as_stored(column, std::move(value)), look_};
}

const sqlite::Value& CandidateValues::of(const Column& column) {
    Held& held = held_[index_of(column)];
    if (held.of_look == look_) return held.value;
    held.value = candidate_ == nullptr ? sqlite::Value{} : as_stored(column, column.get(*candidate_));
    held.of_look = look_;
    return held.value;
}

std::vector<sqlite::Value> CandidateValues::row(std::string_view relation) {
    std::vector<sqlite::Value> values;
    for (const Column& column : columns_of(relation)) values.push_back(of(column));
    return values;
}

}  // namespace tapbook
