// Which kind of error does an action end in? One word, so that a test can compare it.
#pragma once

#include <string>

#include "sqlite/sqlite.h"

template <class Action>
std::string kind_of_error(Action&& action) {
    try {
        action();
    } catch (const tapbook::sqlite::Error& error) {
        if (error.is_busy()) return "busy";
        if (error.is_full_or_io()) return "full or io";
        if (error.is_corrupt()) return "corrupt";
        if (error.is_not_a_database()) return "not a database";
        if (error.is_read_only()) return "read only";
        if (error.is_cannot_open()) return "cannot open";
        if (error.is_constraint()) return "constraint";
        if (error.is_interrupted()) return "interrupted";
        if (error.is_misuse()) return "misuse";
        return "other: " + std::string(error.what());
    }
    return "none";
}
