// What did a rule say about a tap or a converter? Data, never a string built at the call: the rule's id, what it is
// worth, whether it is settled, the sentence, its basis, and the numbers that were compared.
#pragma once

#include <string>
#include <vector>

#include "electrical/electrical.h"

namespace tapbook {

// What a finding is worth, gravest first.
enum class Effect { stop, care, good, info };
template <>
struct NamedValues<Effect> {
    static constexpr Named<Effect> all[] = {
        {Effect::stop, "stop"}, {Effect::care, "care"}, {Effect::good, "good"}, {Effect::info, "info"}};
};
static_assert(table_is_sound<Effect>());

// What it is worth when a rule cannot be decided because something is not known.
enum class Unknown { stop, care, info, silent };
template <>
struct NamedValues<Unknown> {
    static constexpr Named<Unknown> all[] = {
        {Unknown::stop, "stop"}, {Unknown::care, "care"}, {Unknown::info, "info"}, {Unknown::silent, "silent"}};
};
static_assert(table_is_sound<Unknown>());

// Any stop: no. Else any care: care. Else fits.
enum class Verdict { fits, care, no };
template <>
struct NamedValues<Verdict> {
    static constexpr Named<Verdict> all[] = {{Verdict::fits, "fits"}, {Verdict::care, "care"}, {Verdict::no, "no"}};
};
static_assert(table_is_sound<Verdict>());

struct Compared {
    std::string column;  // "signal.clean_high_v"
    std::string value;   // "9.6 V", "yes", "unknown"
};

struct Finding {
    std::string rule;              // its id
    Effect effect = Effect::info;  // as it counts: of an unsettled rule, what not knowing is worth
    bool settled = true;
    std::string says;
    std::string basis;
    std::vector<std::string> unknown_columns;  // read and NULL; only when unsettled
    std::vector<Compared> compared;            // every column the rule read
    std::string pair;  // whole path of the other pair it is about; "" for the tap that is judged
};

Verdict verdict_of(const std::vector<Finding>& findings);

// How many of the findings have this effect.
int count_of(const std::vector<Finding>& findings, Effect effect);

}  // namespace tapbook
