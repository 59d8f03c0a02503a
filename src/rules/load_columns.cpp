// The columns of what hangs on one output of the amplifier.
#include "rules/column_values.h"

namespace tapbook {
namespace {

using C = const Candidate&;
using sqlite::Value;
using Facts = const LoadFacts&;

template <class Give>
Value of(C c, Give give) {
    if (c.load == nullptr) return std::monostate{};
    return give(*c.load);
}

constexpr Column table[] = {
    {"load", "ohms", "REAL", "ohm", "the load on one output",
     [](C c) { return of(c, [](Facts f) { return cell::real(std::optional(f.load.load), ohms); }); }},
    {"load", "bridged", "INTEGER", "yes/no", "whether two channels drive the load together",
     [](C c) { return of(c, [](Facts f) { return cell::flag(f.load.bridged); }); }},
    {"load", "least_ohms", "REAL", "ohm", "the least load the output may drive",
     [](C c) { return of(c, [](Facts f) { return cell::real(f.load.least, ohms); }); }},
    {"load", "allowed", "INTEGER", "yes/no", "whether the output may drive this load",
     [](C c) { return of(c, [](Facts f) { return cell::flag(f.load.allowed); }); }},
    {"load", "rated_w", "REAL", "W", "the power printed for exactly this load",
     [](C c) { return of(c, [](Facts f) { return cell::real(f.load.rated, watts); }); }},
    {"load", "speaker_w", "REAL", "W", "what the speaker takes all the time",
     [](C c) { return of(c, [](Facts f) { return cell::real(f.speaker, watts); }); }},
    {"load", "set_for_w", "REAL", "W", "the power the gain is set for",
     [](C c) { return of(c, [](Facts f) { return cell::real(f.set_for, watts); }); }},
};

}  // namespace

std::span<const Column> load_columns() {
    return table;
}

}  // namespace tapbook
