// Every text a meter verdict can show, in one table.
#include "electrical/meter.h"

namespace tapbook {

const Named<MeterSentence> NamedValues<MeterSentence>::all[20] = {
    {MeterSentence::read_supply_first,
     "Read the supply first: without 9 to 16 V of it nothing else on these conductors means anything."},
    {MeterSentence::one_is_supply,
     "One conductor carries the supply and the other does not: this is a power circuit, not a speaker pair."},
    {MeterSentence::large_difference,
     "2 V or more of d.c. between the conductors: a failed output, or two conductors that do not belong together."},
    {MeterSentence::small_difference,
     "Too much d.c. between the conductors for one pair: do not connect, find out why they differ."},
    {MeterSentence::both_half_supply,
     "Both conductors rest at half the supply: a bridged output. Neither of them may touch chassis."},
    {MeterSentence::pair_is_sum,
     "The pair reads what its two conductors read to chassis together: they belong together."},
    {MeterSentence::no_tone_pair_not_proven, "No tone: that these two are one pair is not proven."},
    {MeterSentence::different_channels,
     "The pair reads far less than its two conductors to chassis: two conductors of different channels."},
    {MeterSentence::sum_does_not_match,
     "The pair does not read what its two conductors read to chassis together: do not connect, measure again."},
    {MeterSentence::no_tone_or_grounds,
     "No d.c. and no tone: the radio is off, nothing plays, or these are two grounds."},
    {MeterSentence::speaker_around_ground,
     "A speaker output around ground: one side behind a capacitor, or an amplifier with two rails."},
    {MeterSentence::line_level_low, "Reads as line level around ground."},
    {MeterSentence::could_be_turned_down,
     "This could be a speaker output turned down: put 100 ohm 1 W across the pair. A power output does not move, a "
     "line "
     "output drops."},
    {MeterSentence::line_level_differential, "Reads as a differential line output: neither conductor goes to chassis."},
    {MeterSentence::treat_as_bridged,
     "This fits no known output (a bridge on a raised rail, a pair that is switched, an output with low bias): treat "
     "as "
     "bridged until a scope says otherwise."},
    {MeterSentence::balance_and_fader,
     "Move balance and fader to this corner: the reading stays. To the other side: it goes to nothing. If it only "
     "halves, the conductors belong to two channels."},
    {MeterSentence::no_polarity,
     "A meter cannot show polarity: use a scope or a phase check with a tone, or a 1.5 V cell on an unplugged "
     "full-range "
     "or bass speaker."},
    {MeterSentence::cell_test_limits, "The cell shows how the cone is wired, not how the radio drives it."},
    {MeterSentence::scope_ground,
     "Never clip a scope's ground to a speaker conductor or an amplifier output: use two channels as A minus B, a "
     "differential probe, or a battery scope alone."},
    {MeterSentence::meter_limits,
     "A meter that is not true-RMS reads a clipped signal up to 11 % high, and many are specified for a.c. only up to "
     "a "
     "few hundred Hz."},
};

}  // namespace tapbook
