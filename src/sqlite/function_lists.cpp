// Names from https://www.sqlite.org/lang_corefunc.html, lang_mathfunc.html, lang_aggfunc.html, windowfunctions.html and
// lang_datefunc.html. A function on no list is forbidden.
#include "sqlite/function_lists.h"

#include <algorithm>

#include "sqlite/sandbox.h"

namespace tapbook::sqlite {
namespace {

constexpr std::string_view allowed[] = {
    "abs",    "ceil",  "coalesce", "cos",   "exp",   "floor",  "glob", "ifnull", "iif", "instr",
    "length", "like",  "ln",       "log10", "lower", "max",    "min",  "nullif", "pi",  "pow",
    "power",  "round", "sign",     "sin",   "sqrt",  "substr", "trim", "upper",
};
static_assert(std::is_sorted(std::begin(allowed), std::end(allowed)));

struct Refused {
    std::string_view name;
    Refusal reason;
};

constexpr Refused refused[] = {
    {"avg", Refusal::aggregate},
    {"count", Refusal::aggregate},
    {"group_concat", Refusal::aggregate},
    {"json_group_array", Refusal::aggregate},
    {"json_group_object", Refusal::aggregate},
    {"sum", Refusal::aggregate},
    {"total", Refusal::aggregate},
    {"cume_dist", Refusal::window},
    {"dense_rank", Refusal::window},
    {"first_value", Refusal::window},
    {"lag", Refusal::window},
    {"last_value", Refusal::window},
    {"lead", Refusal::window},
    {"nth_value", Refusal::window},
    {"ntile", Refusal::window},
    {"percent_rank", Refusal::window},
    {"rank", Refusal::window},
    {"row_number", Refusal::window},
    {"changes", Refusal::not_deterministic},
    {"current_date", Refusal::not_deterministic},
    {"current_time", Refusal::not_deterministic},
    {"current_timestamp", Refusal::not_deterministic},
    {"date", Refusal::not_deterministic},
    {"datetime", Refusal::not_deterministic},
    {"julianday", Refusal::not_deterministic},
    {"last_insert_rowid", Refusal::not_deterministic},
    {"random", Refusal::not_deterministic},
    {"randomblob", Refusal::not_deterministic},
    {"strftime", Refusal::not_deterministic},
    {"time", Refusal::not_deterministic},
    {"total_changes", Refusal::not_deterministic},
    {"unixepoch", Refusal::not_deterministic},
};

}  // namespace

std::span<const std::string_view> allowed_functions() {
    return allowed;
}

bool is_allowed_function(std::string_view name) {
    return std::binary_search(std::begin(allowed), std::end(allowed), name);
}

Refusal reason_against(std::string_view name) {
    for (const Refused& one : refused) {
        if (one.name == name) return one.reason;
    }
    return Refusal::forbidden_function;
}

}  // namespace tapbook::sqlite
