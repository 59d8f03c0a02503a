// What is a part that stands in no parts file: a lead, a fuse, a relay, cable? Only this shop's stock file knows it:
// what it is called, and how many a job takes.
#pragma once

#include <optional>
#include <string>

#include "trade/trade.h"

namespace tapbook {

enum class SmallKind { lead, fuse_tap, fuse, main_fuse, relay, resistor, main_cable, cable, other };
template <>
struct NamedValues<SmallKind> {
    static constexpr Named<SmallKind> all[] = {{SmallKind::lead, "lead"},
                                               {SmallKind::fuse_tap, "fuse_tap"},
                                               {SmallKind::fuse, "fuse"},
                                               {SmallKind::main_fuse, "main_fuse"},
                                               {SmallKind::relay, "relay"},
                                               {SmallKind::resistor, "resistor"},
                                               {SmallKind::main_cable, "main_cable"},
                                               {SmallKind::cable, "cable"},
                                               {SmallKind::other, "other"}};
};
static_assert(table_is_sound<SmallKind>());

// Cable is counted in whole metres, everything else in pieces.
struct SmallTerms {
    SmallKind kind = SmallKind::other;
    std::string name;
    std::optional<int> per_job_thousandths;  // what one job takes, as stated; absent: plans or bookings say it
    std::optional<int> fuse_amps;            // of a main fuse: which one
    std::string cable_size;                  // of main cable: which one, as cable_size_text() writes it; "" for none
    friend bool operator==(const SmallTerms&, const SmallTerms&) = default;
};

inline bool is_cable(SmallKind kind) {
    return kind == SmallKind::main_cable || kind == SmallKind::cable;
}

}  // namespace tapbook
