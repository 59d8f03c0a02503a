// The order of work. Source: common practice; the waiting time is the vehicle's own where it is recorded, and the
// published "up to 5 minutes" (NHTSA interim guidance for responders) where it is not.
#include "rules/job_plan.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace tapbook {
namespace {

constexpr double bass_tone_hz = 50;

Caution caution_of(Hazard hazard) {
    const auto text = hazard_text(hazard);
    return {std::string(text.title), std::string(text.caution)};
}

bool any_of_hazards(const TapPoint& tap, std::initializer_list<Hazard> wanted) {
    return std::any_of(wanted.begin(), wanted.end(), [&](Hazard hazard) {
        return std::find(tap.hazards.begin(), tap.hazards.end(), hazard) != tap.hazards.end();
    });
}

class Planner {
  public:
    Planner(const ShopJob& job, const Advice& advice, const JudgedCandidate& part)
        : advice_(advice), tap_(advice.tap.tap) {
        answer_.job = job;
        answer_.plan = plan_of(advice, part);
        answer_.job.plan = answer_.plan;
        answer_.vehicle = advice.vehicle;
        answer_.tap = advice.tap;
        answer_.part = part;
        answer_.amplifier = advice.amplifier;
        answer_.practice = advice.practice;
        for (const auto& pair : advice.pairs)
            if (pair.code != tap_.code) answer_.other_pairs.emplace_back(path_tail(pair.code, system_depth));
    }

    JobPlanAnswer run() {
        live_check();
        power_off();
        dead_work();
        power_on();
        final_check();
        return std::move(answer_);
    }

  private:
    PlanStep& step(PowerPhase phase, std::string what) {
        return answer_.steps.emplace_back(PlanStep{phase, std::move(what), {}, {}});
    }

    void live_check() {
        step(PowerPhase::live_check,
             fmt::format("fill the list as it came with the customer, initials under it (tapbook job came {})",
                         answer_.job.number));
        PlanStep& reach = step(PowerPhase::live_check, reach_words());
        for (const Hazard hazard : tap_.tap.hazards) reach.cautions.push_back(caution_of(hazard));
        if (!tap_.tap.hazards_listed && tap_.tap.hazards.empty())
            reach.cautions.push_back({"hazards on the way", "nobody has listed any, which does not mean none"});
        PlanStep& read =
            step(PowerPhase::live_check, "every air-bag connector mated: take the readings at the tap, in this order");
        const Hertz tone = hertz(std::max(bass_tone_hz, advice_.lowest.in(hertz)));
        read.readings = predicted_readings(advice_.tap.signal, effective_output(tap_), tone, dbfs(0));
        read.cautions.push_back({"scope", "never its ground clip on a speaker conductor or amplifier output"});
        step(PowerPhase::live_check,
             "balance and fader to this corner: the reading stays; to the other side: nothing is left");
        step(PowerPhase::live_check, "polarity: scope or phase check with a tone; a meter cannot show it");
    }

    std::string reach_words() const {
        std::string text = fmt::format("reach {}", tap_.tap.place.empty() ? std::string("the tap") : tap_.tap.place);
        for (std::size_t i = 0; i < tap_.tap.panels.size(); ++i)
            text += (i == 0 ? ": off comes " : ", then ") + tap_.tap.panels[i];
        if (tap_.tap.minutes) text += fmt::format(" (about {} min)", *tap_.tap.minutes);
        return text;
    }

    void power_off() {
        const Vehicle& car = advice_.vehicle;
        step(PowerPhase::power_off,
             "key out; open by hand what must stay open; charging plug out; modules asleep; battery negative off; no "
             "memory keeper");
        PlanStep& wait = step(PowerPhase::power_off, wait_words());
        for (const Hazard hazard : car.hazards) wait.cautions.push_back(caution_of(hazard));
        const auto has = [&](Hazard hazard) {
            return std::find(car.hazards.begin(), car.hazards.end(), hazard) != car.hazards.end();
        };
        if (car.high_voltage == true && !has(Hazard::high_voltage))
            wait.cautions.push_back(caution_of(Hazard::high_voltage));
        if (car.has_48v == true && !has(Hazard::circuit_48v)) wait.cautions.push_back(caution_of(Hazard::circuit_48v));
        for (const auto& words : car.cautions) wait.cautions.push_back({"this car", words});
    }

    std::string wait_words() const {
        const Vehicle& car = advice_.vehicle;
        if (car.airbag_wait_s)
            return fmt::format("wait {} s before any air-bag connector is opened ({})", *car.airbag_wait_s,
                               car.airbag_wait_source);
        return "wait before any air-bag connector is opened: this car's own time is not recorded, read it in its "
               "instructions (published guidance: air bags may stay active up to 5 minutes)";
    }

    void dead_work() {
        PlanStep& join = step(PowerPhase::dead_work, join_words());
        join.cautions.push_back({"before you join", "only where this job's readings say it is the pair"});
        for (const auto& finding : answer_.part.findings)
            if (finding.effect == Effect::care) join.cautions.push_back({"care", finding.says});
        step(PowerPhase::dead_work,
             answer_.part.converter == "direct"
                 ? std::string("the amplifier's own speaker-level input takes the pair: no converter")
                 : fmt::format("place {} {} near the tap, twist the pair, ground on bare clean steel",
                               answer_.part.maker, answer_.part.name));
        if (answer_.amplifier)
            step(PowerPhase::dead_work, fmt::format("place {} {}, not on the subwoofer's box; its main fuse stays out",
                                                    answer_.amplifier->maker, answer_.amplifier->name));
        else
            step(PowerPhase::dead_work, "place the amplifier, not on the subwoofer's box; its main fuse stays out");
    }

    std::string join_words() const {
        const std::string others = answer_.other_pairs.empty()
                                       ? std::string()
                                       : fmt::format("; the same at {}", fmt::join(answer_.other_pairs, ", "));
        if (!tap_.tap.plug_in_lead.empty())
            return fmt::format("join with the plug-in lead ({}): nothing is stripped{}", tap_.tap.plug_in_lead, others);
        return "join: take the terminal out of its cavity, solder or crimp, push back, check the lock; else on the "
               "uncut "
               "conductor; no piercing clips" +
               others;
    }

    void power_on() {
        step(PowerPhase::power_on,
             any_of_hazards(tap_.tap, {Hazard::airbag_connector, Hazard::seat_occupancy_mat})
                 ? "air-bag connectors mated, seats bolted and plugged in, then battery negative on"
                 : "every connector mated, then battery negative on");
        step(PowerPhase::power_on, "main fuse of the amplifier last");
    }

    void final_check() {
        step(PowerPhase::final_check, "set the gain by the meter (tapbook gain), speaker disconnected, boost off");
        step(PowerPhase::final_check, "functions and lamps as on the list; drain once the modules sleep");
        step(PowerPhase::final_check,
             fmt::format("fill the list as it left and close (tapbook job close {} --outcome fine)",
                         answer_.job.number));
    }

    const Advice& advice_;
    const TapFacts& tap_;
    JobPlanAnswer answer_;
};

}  // namespace

const JudgedCandidate* planned_part(const Advice& advice, const std::string& named) {
    const std::string wanted = named.empty() ? advice.best.value_or("") : named;
    const auto found = std::find_if(advice.candidates.begin(), advice.candidates.end(),
                                    [&](const JudgedCandidate& candidate) { return candidate.converter == wanted; });
    return found == advice.candidates.end() ? nullptr : &*found;
}

JobPlan plan_of(const Advice& advice, const JudgedCandidate& part) {
    return {advice.tap.tap.code, part.converter, advice.amplifier ? advice.amplifier->path : std::string(),
            std::llround(advice.lowest.in(millihertz)), advice.tap.tap.tap.minutes};
}

JobPlanAnswer plan_answer(const ShopJob& job, const Advice& advice, const JudgedCandidate& part) {
    return Planner(job, advice, part).run();
}

}  // namespace tapbook
