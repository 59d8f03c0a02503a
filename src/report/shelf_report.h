// How is said what to keep on the shelf: which models, how many, what to order today, what is lost without one?
#pragma once

#include <cstdint>
#include <optional>
#include <string>

#include "report/screen.h"
#include "shelf/shelf.h"

namespace tapbook {

// What the plan rests on.
struct ShelfSources {
    std::string amplifier;             // path; "" for none: held against the taps only
    bool amplifier_is_usual = false;   // not named, but the one of most jobs
    int jobs = 0;                      // that count
    int jobs_direct = 0;               // done without a converter
    int jobs_left_out = 0;             // whose sound system is not recorded or has no tap
    int forecasts = 0;                 // lines of the forecast
    int systems_with_notes = 0;        // judged with all that was noted of them
    int systems_by_entries = 0;        // of cars that no job and no forecast speaks of: by their entries alone
    int systems_without_tap = 0;       // nothing to judge
    std::int64_t taps = 0, kinds = 0;  // judged, and how many kinds of them there are
    double read_seconds = 0, rules_seconds = 0, plan_seconds = 0;  // what of the run went where
};

// A run of so long says where the time went.
constexpr double worth_telling_seconds = 1;

inline double all_seconds(const ShelfSources& from) {
    return from.read_seconds + from.rules_seconds + from.plan_seconds;
}

struct ShelfAnswer {
    ShelfInput input;
    PlanAsk ask;
    ShelfPlan plan;
    ShelfSources sources;
    std::optional<ModelExplained> explained;
    std::optional<PlanChange> change;
    std::string change_words;  // as it was typed
    bool practice = false;
};

std::string shelf_text(const ShelfAnswer& answer, const Screen& screen);
std::string shelf_json(const ShelfAnswer& answer);

// The share that so many models cover, as a drawing of its own.
std::string shelf_curve_svg(const ShelfAnswer& answer);

}  // namespace tapbook
