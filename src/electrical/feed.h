// Will this cable carry the amplifiers, and which fuses protect it? The volts of feed_network.h with the return at its
// low, likely and high ohms; the share lost on the way out and back is graded at the likely return (3 % good, 5 % care;
// common practice, and 3 % is the published figure for critical marine circuits); fuses by cable_fuse.h for the main
// cable and for every branch that is thinner.
#pragma once

#include <optional>
#include <span>
#include <variant>
#include <vector>

#include "electrical/cable_fuse.h"
#include "electrical/feed_network.h"
#include "electrical/feed_size.h"
#include "electrical/return_path.h"

namespace tapbook {

// Back through the body. Practice: a sound steel body and a bare ground point. It passes the current of all amplifiers,
// the careful way, for the body between them is shared.
struct BodyReturn {
    Ohms low = ohms(0), likely = likely_body_return, high = milliohms(5);
};

// Back through cable: beside every cable out lies one of the same size and length.
struct EqualCableReturn {};

using FeedReturn = std::variant<BodyReturn, EqualCableReturn>;

struct FeedCable {
    CableSize size;
    Metres length;  // one way
};

struct FedAmplifier {
    Draw draw;                             // constant electrical watts (regulated), or constant amps
    std::optional<Amps> most_current;      // at the least efficiency of its class; absent when its efficiency is known
    std::optional<FeedCable> branch = {};  // from the block; absent when the main cable ends at this amplifier
};

struct Feed {
    DcVolts supply = running_supply;
    Ohms source = ohms(0);  // of the battery and charging system
    FeedCable main;
    std::vector<FedAmplifier> amplifiers;
    FeedReturn back = BodyReturn{};
    CableConditions conditions = {};
    Celsius temperature = celsius(20);  // of the conductors
};

enum class FeedGrade { good, care, too_thin };

template <>
struct NamedValues<FeedGrade> {
    static constexpr Named<FeedGrade> all[] = {
        {FeedGrade::good, "good"}, {FeedGrade::care, "care"}, {FeedGrade::too_thin, "too_thin"}};
};

inline constexpr Ratio most_good_drop = percent(3);
inline constexpr Ratio most_care_drop = percent(5);

FeedGrade grade_of(Ratio drop);

// At one value of the return.
struct FedAt {
    DcVolts volts;
    Amps current;
    Ratio drop;  // lost between battery and amplifier and back, as a share of the supply
};

// By the ohms of the return. Absent: the amplifier finds no volts.
struct FedRange {
    std::optional<FedAt> low, likely, high;
};

struct JudgedFuse {
    std::optional<CableFuse> fuse;  // absent: the cable is thinner than the table begins
    bool may_blow;                  // at the least efficiency of the class
};

struct FedResult {
    FedRange at;
    FeedGrade grade;                   // too thin where it finds no volts
    std::optional<JudgedFuse> branch;  // absent: no branch, or one no thinner than the main cable
};

struct FeedAnswer {
    std::vector<FedResult> amplifiers;  // as asked
    FeedGrade grade;                    // the worst of them
    JudgedFuse main_fuse;
    Amps total;  // with the likely return; where there are no volts, as if nothing were lost
    // Above these ohms out and back a single regulated amplifier finds no volts; absent for several or constant amps.
    std::optional<Ohms> most_resistance;
    bool fused;  // every fuse that is needed exists
};

// REQUIRES at least one amplifier, draws, lengths and supply above zero, ohms not negative.
FeedAnswer judge_feed(const Feed& feed);

// Good volts and every fuse.
bool is_good(const FeedAnswer& answer);

// The largest share lost to any amplifier at the likely return; absent when one finds no volts.
std::optional<Ratio> worst_drop(const FeedAnswer& answer);

// The thinnest main cable of `sizes` (in any order) that makes the feed good; absent when none does.
std::optional<CableSize> thinnest_good(Feed feed, std::span<const CableSize> sizes);

// What the next thicker main cable would buy.
struct NextSize {
    CableSize size;
    FeedGrade grade;
    std::optional<Ratio> drop;
    std::optional<Ratio> saved;  // of the supply; absent when either finds no volts
};

// The thinnest of `sizes` that is thicker than the main cable; absent when none is.
std::optional<NextSize> next_size(Feed feed, std::span<const CableSize> sizes);

}  // namespace tapbook
