// Sheets by dice: any steps, cautions, readings, circuits and lists, with names that are long, empty or hostile.
#pragma once

#include "answers.h"
#include "sheet_plans.h"

namespace tapbook::sheets {

class SheetDice {
  public:
    explicit SheetDice(unsigned seed) : dice_(seed) {}

    Sheet sheet() {
        const Sheet& base = bases()[static_cast<std::size_t>(dice_.below(static_cast<int>(bases().size())))];
        Sheet out = base;
        JobPlanAnswer& plan = out.plan;
        plan.vehicle.make = name(), plan.vehicle.model = name();
        plan.job.customer = name(), plan.job.remarks = name(), plan.job.agreed = name();
        out.shop = name(), out.ledger.catalog = name();
        if (dice_.one_in(3)) out.address = name();
        plan.practice = dice_.one_in(2);
        for (auto& conductor : plan.conductors) conductor.cavity = name(), conductor.place = name();
        for (auto& step : plan.steps) redo(step);
        for (int i = dice_.below(5); i > 0; --i) {
            TapFacts tap = cars::tap("circuit-" + std::to_string(i), Position::centre, pair());
            tap.tap.place = name(), tap.tap.connector = name();
            out.circuits.push_back(tap);
        }
        for (const auto& named : words_of<CheckItem>())
            if (dice_.one_in(2)) plan.job.came.push_back({named.value, CheckAnswer::bad, name()});
        plan.job.actions.push_back({1, name(), "2026-05-02", ""});
        return out;
    }

    std::string name() { return dice_.one_in(2) ? answers::hostile_name(dice_) : std::string("a plain name"); }

  private:
    static const std::vector<Sheet>& bases() {
        static const std::vector<Sheet> all = {plain(), cautious(), disputed(), without_job()};
        return all;
    }

    PairStanding pair() {
        return dice_.one_in(3) ? cars::disputed() : dice_.one_in(2) ? PairStanding{} : cars::agreed("GN", "LBU/RD");
    }

    void redo(PlanStep& step) {
        if (dice_.one_in(2)) step.what = name();
        for (int i = dice_.below(4); i > 0; --i) step.cautions.push_back({name(), name()});
        for (auto& reading : step.readings) reading.what = name();
    }

    ledgers::Dice dice_;
};

}  // namespace tapbook::sheets
