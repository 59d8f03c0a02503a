// The grades that moved, as every answer tells them in JSON. For the files of this folder only.
#pragma once

#include <span>

#include "report/json.h"
#include "rules/rules.h"

namespace tapbook {

// A list of {code, before, after}.
inline void write_moves(Json& json, std::span<const AddReport::GradeMove> moves) {
    json.begin_list();
    for (const auto& move : moves)
        json.begin_object()
            .member("code", move.path)
            .member("before", word_of(move.before))
            .member("after", word_of(move.after))
            .end_object();
    json.end_list();
}

}  // namespace tapbook
