// Both forms of a note are brought to one list of what was read; every check looks at that list.
#include "evidence/entry_checks.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace tapbook {
namespace {

constexpr std::int64_t most_millivolts = 100000;       // beyond any hand-held reading here
constexpr std::int64_t near_supply_millivolts = 1000;  // as in the meter's own rules
constexpr std::int64_t looks_like_supply_mv = 11000;   // practice: when the supply was not read

struct Read {
    std::string_view field;
    std::int64_t millivolts;
};

struct Entry {
    std::vector<Read> ac, dc;  // dc: of the two conductors
    std::vector<Read> other;   // supply and key positions
    std::optional<std::int64_t> supply;
    Note note;
};

struct VoltField {
    std::string_view field, stored;
    std::vector<Read> Entry::*list;
};
constexpr VoltField volt_fields[] = {
    {"ac_v", "ac_mv", &Entry::ac},
    {"ac_positive_v", "ac_positive_mv", &Entry::ac},
    {"ac_negative_v", "ac_negative_mv", &Entry::ac},
    {"dc_positive_v", "dc_positive_mv", &Entry::dc},
    {"dc_negative_v", "dc_negative_mv", &Entry::dc},
    {"supply_v", "supply_mv", &Entry::other},
    {"key_off_v", "key_off_mv", &Entry::other},
    {"accessory_v", "accessory_mv", &Entry::other},
    {"run_v", "run_mv", &Entry::other},
    {"crank_v", "crank_mv", &Entry::other},
};

Entry entry_of(const Values& values) {
    Entry entry;
    entry.note = note_of(values, {});
    for (const auto& volts : volt_fields)
        if (const auto* number = find_value<std::int64_t>(values, volts.stored))
            (entry.*volts.list).push_back({volts.field, *number});
    if (const auto* supply = find_value<std::int64_t>(values, "supply_mv")) entry.supply = *supply;
    return entry;
}

Entry entry_of(const Note& note) {
    Entry entry;
    entry.note = note;
    const auto add = [](std::vector<Read>& list, std::string_view field, const std::optional<DcVolts>& volts) {
        if (volts) list.push_back({field, std::llround(volts->in(dc_millivolts))});
    };
    if (note.reading) {
        entry.ac.push_back({"ac_v", std::llround(note.reading->volts.in(rms_millivolts))});
        add(entry.other, "supply_v", note.reading->supply);
        if (note.reading->supply) entry.supply = std::llround(note.reading->supply->in(dc_millivolts));
    }
    add(entry.dc, "dc_positive_v", note.dc_positive);
    add(entry.dc, "dc_negative_v", note.dc_negative);
    add(entry.other, "key_off_v", note.key_off);
    add(entry.other, "accessory_v", note.accessory);
    add(entry.other, "run_v", note.run);
    add(entry.other, "crank_v", note.crank);
    return entry;
}

bool same_text(const std::string& a, const std::string& b) {
    return a == b || (!folded(a).empty() && folded(a) == folded(b));
}

class Check {
  public:
    Check(Entry entry, const OutputStage* expected) : entry_(std::move(entry)), expected_(expected) {}

    std::vector<EntryComplaint> run() {
        negative_ac();
        beyond_limit();
        same_cavity();
        same_colour();
        more_than_the_drive_gives();
        near_supply();
        incomplete_reading();
        return std::move(complaints_);
    }

  private:
    void complain(EntrySeverity severity, std::string_view field, std::string text,
                  std::vector<std::string> offers = {}) {
        complaints_.push_back({severity, field, std::move(text), std::move(offers)});
    }

    void negative_ac() {
        for (const Read& read : entry_.ac)
            if (read.millivolts < 0)
                complain(EntrySeverity::refused, read.field,
                         fmt::format("{} V a.c.: an a.c. reading is never negative", unscaled(read.millivolts, 3)));
    }

    void beyond_limit() {
        for (const auto* list : {&entry_.ac, &entry_.dc, &entry_.other})
            for (const Read& read : *list)
                if (std::abs(read.millivolts) > most_millivolts)
                    complain(EntrySeverity::refused, read.field,
                             fmt::format("{} V is beyond 100 V, which no reading here can be",
                                         unscaled(read.millivolts, 3)));
    }

    void same_cavity() {
        const std::string &positive = entry_.note.positive_cavity, &negative = entry_.note.negative_cavity;
        if (!positive.empty() && same_text(positive, negative))
            complain(EntrySeverity::refused, "negative_cavity",
                     fmt::format("both conductors in cavity {}: two conductors sit in two cavities", positive));
    }

    void same_colour() {
        const Note& note = entry_.note;
        if (!note.positive || note.positive != note.negative) return;
        if (same_text(note.positive_mark, note.negative_mark))
            complain(EntrySeverity::refused, "negative",
                     fmt::format("both conductors are {}: say what else tells them apart (a ridge, a print, a ring) "
                                 "as the mark of one of them",
                                 words(*note.positive)));
    }

    // The stage that feeds the pair: what the note found, with the entry's rail where the drives agree.
    OutputStage stage() const {
        OutputStage output = expected_ != nullptr ? *expected_ : OutputStage{};
        const auto found = entry_.note.drive;
        if (!found || *found == Drive::unknown || *found == output.drive) return output;
        output = OutputStage{};
        output.drive = *found;
        return output;
    }

    void more_than_the_drive_gives() {
        const OutputStage output = stage();
        if (!entry_.note.reading || is_line(output.drive) || behaves_as(output) == Drive::unknown) return;
        const Supply assumed;
        const DcVolts supply = entry_.supply && *entry_.supply > 0 ? dc_millivolts(*entry_.supply) : assumed.clean_high;
        const auto peak = peak_limit(output, supply, assumed.loss_high, SplitGuess::bridged);
        if (!peak || entry_.note.reading->volts <= rms_of_sine(*peak)) return;
        complain(EntrySeverity::sure, "ac_v",
                 fmt::format("{} V a.c. is more than a {} output gives: at most {:.1f} V as a clean tone",
                             unscaled(entry_.ac.front().millivolts, 3), word_of(output.drive),
                             rms_of_sine(*peak).in(rms_volts)),
                 {"record the drive as boosted", "the reading was clipped", "the meter is not true-RMS"});
    }

    void near_supply() {
        if (entry_.note.kind != NoteKind::pair) return;
        for (const Read& read : entry_.dc) {
            const bool is_near = entry_.supply ? std::abs(read.millivolts - *entry_.supply) <= near_supply_millivolts
                                               : read.millivolts >= looks_like_supply_mv;
            if (is_near)
                complain(EntrySeverity::sure, read.field,
                         fmt::format("{} V d.c. is about the supply: a speaker conductor does not rest there",
                                     unscaled(read.millivolts, 3)),
                         {"it is a power conductor", "record the drive as boosted"});
        }
    }

    void incomplete_reading() {
        if (!entry_.note.reading) return;
        std::string missing;
        for (const auto condition : missing_conditions(*entry_.note.reading))
            missing.append(missing.empty() ? "" : ", ").append(word_of(condition));
        if (!missing.empty())
            complain(EntrySeverity::info, "ac_v", fmt::format("shown, but no limit is drawn from it: {}", missing));
    }

    Entry entry_;
    const OutputStage* expected_;
    std::vector<EntryComplaint> complaints_;
};

}  // namespace

std::vector<EntryComplaint> check_note(const Values& values, const OutputStage* expected) {
    return Check(entry_of(values), expected).run();
}

std::vector<EntryComplaint> check_note(const Note& note, const OutputStage* expected) {
    return Check(entry_of(note), expected).run();
}

}  // namespace tapbook
