// Which converter fits this tap, by how much, and why do the others not? Every candidate is judged by every rule
// against each pair it would take, and ranked in an order that can be read out; nothing is scored in secret.
#pragma once

#include <optional>
#include <stdexcept>
#include <string>
#include <vector>

#include "rules/rule_book.h"

namespace tapbook {

struct AdviseRequest {
    std::string system;           // its code; "" only when the car has one
    std::string tap;              // whole path; "" for the best one
    std::optional<Hertz> lowest;  // absent: 30 Hz for a sub amplifier, else 60 Hz
    std::optional<int> channels;  // absent: the amplifier's, else 2
};

enum class AdviseTrouble { needs_system, no_such_system, no_such_tap, no_signal_tap };

// Nothing was judged.
class AdviseError : public std::runtime_error {
  public:
    AdviseError(AdviseTrouble kind, const std::string& message) : std::runtime_error(message), kind_(kind) {}
    AdviseTrouble kind() const { return kind_; }

  private:
    AdviseTrouble kind_;
};

struct JudgedCandidate {
    std::string converter;  // the part's path, or "direct": the amplifier's own speaker-level input
    std::string maker, name;
    Topology topology = Topology::transformer;
    Verdict verdict = Verdict::no;
    std::optional<Gain> headroom, drive_margin;                    // at the named tap
    std::optional<RmsVolts> limit_at_lowest, output_open, output;  // absent without what they rest on
    std::optional<Gain> shortfall;
    std::optional<Watts> reachable;
    std::optional<int> on_hand;
    std::optional<std::int64_t> cost_cents;
    std::vector<Finding> findings;  // stops, cares, good, info; those of the tap included
};

struct JudgedTap {
    TapFacts tap;
    TapSignal signal;
    std::vector<Finding> findings;  // of the rules that read only the car, its tap and the job; same order
};

struct Advice {
    Vehicle vehicle;
    SystemFacts system;
    JudgedTap tap;
    std::vector<JudgedTap> other_taps;  // of the system, next best first
    std::vector<TapFacts> pairs;        // at the tap's place for the channels wanted, the tap first
    Hertz lowest = hertz(60);
    int channels_wanted = 2;
    std::optional<Amplifier> amplifier;       // absent: checked against the converters only
    std::vector<JudgedCandidate> candidates;  // best first
    std::optional<std::string> best;          // first that is not `no`
    bool practice = false;
    std::vector<std::string> rules_off = {};  // ids that the shop has switched off
};

// Throws AdviseError: needs_system (the car has several and none is named), no_such_system, no_such_tap (or none that
// carries a signal under that path), no_signal_tap (the system has none at all).
Advice advise(const JobFacts& facts, const AdviseRequest& request, RuleBook& rules);

}  // namespace tapbook
