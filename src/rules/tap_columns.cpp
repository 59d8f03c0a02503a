// The columns of the tap point, its predicted signal and the job.
#include "rules/cavity_use.h"
#include "rules/column_values.h"

namespace tapbook {
namespace {

using C = const Candidate&;

// A line output? The drive decides where it is known, else what the circuit is for.
bool is_line_tap(C c) {
    if (c.output.stage.drive == Drive::unknown) return c.tap.circuit.role == Role::line_level;
    return is_line(c.output.stage.drive);
}

std::optional<std::int64_t> hazards_on_the_way(C c) {
    if (c.tap.tap.hazards.empty() && !c.tap.tap.hazards_listed) return std::nullopt;
    return static_cast<std::int64_t>(c.tap.tap.hazards.size());
}

std::string joined(const std::vector<std::string>& words, std::string_view between) {
    std::string all;
    for (const auto& word : words) {
        if (!all.empty()) all += between;
        all += word;
    }
    return all;
}

std::string hazard_words(C c) {
    std::vector<std::string> titles;
    for (const Hazard hazard : c.tap.tap.hazards) titles.emplace_back(hazard_text(hazard).title);
    return joined(titles, ", ");
}

std::optional<std::int64_t> lookalikes(C c) {
    if (c.tap.pair.conductors.empty()) return std::nullopt;
    return static_cast<std::int64_t>(c.surroundings.lookalikes.size());
}

// In place of a speaker of the ohms that the rating is stated for.
std::optional<Watts> load_resistor(C c) {
    const auto& high = c.signal.clean.high;
    const auto& load = c.tap.circuit.output.rated_at;
    return high && load ? std::optional(load_resistor_power(*high, *load)) : std::nullopt;
}

std::optional<AmplifierUse> use(C c) {
    return c.amplifier == nullptr ? std::nullopt : c.amplifier->spec.use;
}

constexpr Column table[] = {
    {"tap", "place", "TEXT", "text", "where the tap is", [](C c) { return cell::text(c.tap.tap.place); }},
    {"tap", "drive", "TEXT", "word", "how the pair is driven",
     [](C c) { return cell::word_unless(c.output.stage.drive, Drive::unknown); }},
    {"tap", "drive_source", "TEXT", "word", "who says how the pair is driven: noted, expected, disputed or unknown",
     [](C c) { return cell::word(std::optional(c.output.source)); }},
    {"tap", "drive_differs", "INTEGER", "yes/no", "whether notes contradict the entry on the drive",
     [](C c) { return cell::flag(c.output.differs_from_entry); }},
    {"tap", "minus_is_driven", "INTEGER", "yes/no",
     "whether the minus may carry signal; yes until a car has shown it does not",
     [](C c) { return cell::flag(c.output.minus_is_driven); }},
    {"tap", "is_line_level", "INTEGER", "yes/no", "whether the tap is a line output",
     [](C c) { return cell::flag(is_line_tap(c)); }},
    {"tap", "pair_grade", "TEXT", "word", "the grade of the pair",
     [](C c) { return cell::text(word_of(c.tap.pair.pair.grade)); }},
    {"tap", "polarity_grade", "TEXT", "word", "the grade of the polarity",
     [](C c) { return cell::text(word_of(c.tap.pair.polarity.grade)); }},
    {"tap", "outside_years", "INTEGER", "yes/no", "whether the year asked for lies outside the years seen",
     [](C c) { return cell::flag(c.tap.pair.pair.outside_years); }},
    {"tap", "notes", "INTEGER", "count", "how many notes the pair has",
     [](C c) { return cell::whole(c.tap.pair.notes); }},
    {"tap", "other_side_notes", "INTEGER", "count", "how many notes were taken on another side of the connector",
     [](C c) { return cell::whole(c.tap.pair.other_side_notes); }},
    {"tap", "altered", "INTEGER", "yes/no", "whether a note found earlier work by others",
     [](C c) { return cell::flag(c.tap.pair.altered); }},
    {"tap", "same_colours", "INTEGER", "yes/no", "whether both conductors have the same colour",
     [](C c) { return cell::flag(c.tap.pair.same_colours); }},
    {"tap", "lookalikes", "INTEGER", "count", "how many conductors of the connector look alike",
     [](C c) { return cell::whole(lookalikes(c)); }},
    {"tap", "lookalike_words", "TEXT", "text", "which conductors look alike",
     [](C c) { return cell::text(joined(c.surroundings.lookalikes, "; ")); }},
    {"tap", "cavities_differ", "INTEGER", "yes/no",
     "whether noted cavities are not those usual in an ISO 10487 connector",
     [](C c) { return cell::flag(cavities_differ(c.tap)); }},
    {"tap", "usual_cavities", "TEXT", "text", "the cavities this speaker usually has in an ISO 10487 connector",
     [](C c) { return cell::text(usual_cavities(c.tap)); }},
    {"tap", "hazards", "INTEGER", "count", "what is dangerous on the way to the tap",
     [](C c) { return cell::whole(hazards_on_the_way(c)); }},
    {"tap", "hazard_words", "TEXT", "text", "the names of the dangers on the way",
     [](C c) { return cell::text(hazard_words(c)); }},
    {"tap", "concurrent_edits", "INTEGER", "count", "how many edits of the entry nobody has settled",
     [](C c) { return cell::whole(c.tap.concurrent_edits); }},
    {"tap", "plug_in_lead", "TEXT", "text", "the plug-in lead that fits",
     [](C c) { return cell::text(c.tap.tap.plug_in_lead); }},
    {"tap", "minutes", "INTEGER", "min", "how long it takes to reach the tap",
     [](C c) { return cell::whole(c.tap.tap.minutes); }},

    {"signal", "clean_low_v", "REAL", "V", "the least clean volts at the tap",
     [](C c) { return cell::real(c.signal.clean.low, rms_volts); }},
    {"signal", "clean_likely_v", "REAL", "V", "the likely clean volts at the tap",
     [](C c) { return cell::real(c.signal.clean.likely, rms_volts); }},
    {"signal", "clean_high_v", "REAL", "V", "the most clean volts at the tap",
     [](C c) { return cell::real(c.signal.clean.high, rms_volts); }},
    {"signal", "clipped_low_v", "REAL", "V", "the least volts of a clipped output",
     [](C c) { return cell::real(c.signal.clipped.low, rms_volts); }},
    {"signal", "clipped_likely_v", "REAL", "V", "the likely volts of a clipped output",
     [](C c) { return cell::real(c.signal.clipped.likely, rms_volts); }},
    {"signal", "clipped_high_v", "REAL", "V", "the most volts of a clipped output",
     [](C c) { return cell::real(c.signal.clipped.high, rms_volts); }},
    {"signal", "dc_each_low_v", "REAL", "V d.c.", "the least d.c. on each conductor",
     [](C c) { return cell::real(c.signal.dc_each.low, dc_volts); }},
    {"signal", "dc_each_likely_v", "REAL", "V d.c.", "the likely d.c. on each conductor",
     [](C c) { return cell::real(c.signal.dc_each.likely, dc_volts); }},
    {"signal", "dc_each_high_v", "REAL", "V d.c.", "the most d.c. on each conductor",
     [](C c) { return cell::real(c.signal.dc_each.high, dc_volts); }},
    {"signal", "common_mode_high_v", "REAL", "V d.c.", "the most d.c. both conductors share",
     [](C c) { return cell::real(c.signal.common_mode_high, dc_volts); }},
    {"signal", "dc_difference_high_v", "REAL", "V d.c.", "the most d.c. between the two conductors",
     [](C c) { return cell::real(c.signal.dc_difference_high, dc_volts); }},
    {"signal", "bass_cut_db", "REAL", "dB", "how far bass falls behind as the volume rises, read at two volume steps",
     [](C c) { return cell::real(c.tap.pair.bass_cut, decibels); }},
    {"signal", "load_resistor_w", "REAL", "W", "what a resistor in a removed speaker's place must stand",
     [](C c) { return cell::real(load_resistor(c), watts); }},
    {"signal", "source", "TEXT", "word", "where the volts come from",
     [](C c) { return cell::word_unless(c.signal.source, SignalSource::none); }},
    {"signal", "measured", "INTEGER", "yes/no", "whether a complete reading gives the volts",
     [](C c) { return cell::flag(c.signal.source == SignalSource::measured); }},
    {"signal", "readings_used", "INTEGER", "count", "how many complete readings count",
     [](C c) { return cell::whole(c.signal.readings_used); }},
    {"signal", "readings_incomplete", "INTEGER", "count", "how many readings lack a condition",
     [](C c) { return cell::whole(c.signal.readings_incomplete); }},
    {"signal", "readings_out_of_band", "INTEGER", "count",
     "how many complete readings lie too far from the lowest note",
     [](C c) { return cell::whole(c.signal.readings_out_of_band); }},

    {"job", "lowest_hz", "REAL", "Hz", "the lowest note that shall be played",
     [](C c) { return cell::real(std::optional(c.job.lowest), hertz); }},
    {"job", "channels_wanted", "INTEGER", "count", "how many channels are wanted",
     [](C c) { return cell::whole(c.job.channels_wanted); }},
    {"job", "pairs_here", "INTEGER", "count", "how many signal pairs the tap's place offers",
     [](C c) { return cell::whole(c.surroundings.pairs_here); }},
    {"job", "delay_loss_db", "REAL", "dB", "what delay between the pairs costs",
     [](C c) { return cell::real(c.surroundings.delay_loss, decibels); }},
    {"job", "use", "TEXT", "word", "whether it is for a subwoofer or full range",
     [](C c) { return cell::word(use(c)); }},
    {"job", "has_amplifier", "INTEGER", "yes/no", "whether an amplifier is chosen",
     [](C c) { return cell::flag(c.amplifier != nullptr); }},
    {"job", "year", "INTEGER", "year", "the model year of the car on the job",
     [](C c) { return cell::whole(c.job.year); }},
};

}  // namespace

std::span<const Column> tap_columns() {
    return table;
}

}  // namespace tapbook
