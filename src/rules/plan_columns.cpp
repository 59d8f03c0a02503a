// The columns of the plan as a whole: its conductors, its order of work, and the battery it hangs on.
#include "rules/column_values.h"

namespace tapbook {
namespace {

using C = const Candidate&;
using sqlite::Value;

template <class Give>
Value of(C c, Give give) {
    if (c.plan == nullptr) return std::monostate{};
    return give(*c.plan);
}

using Facts = const PlanFacts&;

constexpr double seconds_a_day = 24 * 60 * 60;

constexpr Column table[] = {
    {"plan", "conductors", "INTEGER", "count", "how many conductors are joined",
     [](C c) { return of(c, [](Facts f) { return cell::whole(f.conductors); }); }},
    {"plan", "conductors_twice", "INTEGER", "count", "how many conductors the plan names more than once",
     [](C c) { return of(c, [](Facts f) { return cell::whole(f.conductors_twice); }); }},
    {"plan", "conductors_unknown", "INTEGER", "count", "how many conductors have no settled colour",
     [](C c) { return of(c, [](Facts f) { return cell::whole(f.conductors_unknown); }); }},
    {"plan", "steps_out_of_order", "INTEGER", "count", "how many steps stand before something they need",
     [](C c) { return of(c, [](Facts f) { return cell::whole(f.steps_out_of_order); }); }},
    {"plan", "live_with_airbag_open", "INTEGER", "count", "how many live steps come while an air-bag connector is open",
     [](C c) { return of(c, [](Facts f) { return cell::whole(f.live_with_airbag_open); }); }},
    {"plan", "battery_sensor", "INTEGER", "yes/no", "whether a current sensor sits on the battery's negative post",
     [](C c) { return c.plan == nullptr ? Value{} : cell::flag(c.vehicle.battery_sensor); }},
    {"plan", "airbag_wait_s", "REAL", "s", "the vehicle's own waiting time after battery negative is off",
     [](C c) { return c.plan == nullptr ? Value{} : cell::whole(c.vehicle.airbag_wait_s); }},
    {"plan", "high_voltage", "INTEGER", "yes/no", "whether there are orange high-voltage cables",
     [](C c) { return c.plan == nullptr ? Value{} : cell::flag(c.vehicle.high_voltage); }},
    {"plan", "days_before", "REAL", "days", "how long the car stands without the install",
     [](C c) {
         return of(
             c, [](Facts f) { return f.standing ? Value{f.standing->before.in(seconds) / seconds_a_day} : Value{}; });
     }},
    {"plan", "days_after", "REAL", "days", "how long the car stands with the install",
     [](C c) {
         return of(c,
                   [](Facts f) { return f.standing ? Value{f.standing->after.in(seconds) / seconds_a_day} : Value{}; });
     }},
    {"plan", "standby_ma", "REAL", "mA", "the standby current of what is installed",
     [](C c) {
         return of(c, [](Facts f) {
             return f.standing && f.standing->added_known ? cell::real(std::optional(f.standing->added), milliamps)
                                                          : Value{};
         });
     }},
    {"plan", "minutes_to_tap", "INTEGER", "min", "the time to reach the tap",
     [](C c) { return of(c, [](Facts f) { return cell::whole(f.minutes_to_tap); }); }},
    {"plan", "minutes_taken_before", "INTEGER", "min", "what such a job took here before",
     [](C c) { return of(c, [](Facts f) { return cell::whole(f.minutes_taken_before); }); }},
};

}  // namespace

std::span<const Column> plan_columns() {
    return table;
}

}  // namespace tapbook
