// A feed as text: each caution stands beside the step it belongs to.
#include <fmt/format.h>

#include "report/calculations.h"
#include "report/feed_report.h"

namespace tapbook {

static_assert(table_is_sound<SizeOrigin>());

namespace {

constexpr std::string_view grounds[] = {
    "seat-belt and seat bolts",
    "air-bag and sensor grounds",
    "fuel, brake and steering parts",
    "bonded or aluminium panels",
};

std::string amps_words(Amps current) {
    return fmt::format("{:.1f} A", current.in(amps));
}

std::string percent_words(Ratio share) {
    return fmt::format("{:.1f} %", share.in(percent));
}

std::string_view metal_words(Metal metal) {
    return metal == Metal::copper ? "copper" : "copper-clad aluminium";
}

std::string lost_words(const std::optional<Ratio>& drop, DcVolts supply) {
    if (!drop) return "an amplifier finds no volts";
    return fmt::format("{} of {:g} V lost on the way out and back", percent_words(*drop), supply.in(dc_volts));
}

std::string asked_words(const AskedAmplifier& asked, const FedAmplifier& fed) {
    if (!asked.output) return fmt::format("{} drawn", amps_words(std::get<Amps>(fed.draw)));
    std::string text = fmt::format("{:g} W", asked.output->in(watts));
    if (asked.amplifier_class) text += fmt::format(" of class {}", word_of(*asked.amplifier_class));
    if (asked.efficiency) text += fmt::format(", efficiency {:g}", asked.efficiency->in(ratio));
    const bool constant = std::holds_alternative<Amps>(fed.draw);
    return text + (constant ? "; the same current at any volts" : "; keeps its power, so it draws more as volts fall");
}

std::string one_end(const std::optional<FedAt>& at) {
    return at ? percent_words(at->drop) : "no volts";
}

void print_volts(Paper& paper, const FeedReport& report, const FedResult& result) {
    if (const auto& likely = result.at.likely)
        paper.line(0, "volts     ",
                   fmt::format("{:.2f} V at {} reach it: {} lost", likely->volts.in(dc_volts),
                               amps_words(likely->current), percent_words(likely->drop)));
    else
        paper.line(0, "volts     ", "none at which it gets this power: it cuts out or blows its fuse");
    const auto* body = std::get_if<BodyReturn>(&report.feed.back);
    if (body && body->low != body->high && result.at.low)
        paper.line(0, "          ",
                   fmt::format("{} lost in the cable alone, {} with {:g} mohm of body, {} with {:g} mohm",
                               one_end(result.at.low), one_end(result.at.likely), body->likely.in(milliohms),
                               one_end(result.at.high), body->high.in(milliohms)));
}

std::string fuse_words(const JudgedFuse& judged) {
    if (!judged.fuse) return "none: the cable is thinner than 18 AWG, where the published table begins";
    const CableFuse& fuse = *judged.fuse;
    if (!fuse.rating) return no_fuse_words(fuse);
    return fmt::format("{:g} A, the cable carries {:.4g} A with {} C insulation, {}", fuse.rating->in(amps),
                       fuse.cable.allowed.in(amps), word_of(fuse.cable.column),
                       fuse.cable.place == CablePlace::engine_space ? "in an engine space (50 C)" : "30 C around it");
}

void print_may_blow(Paper& paper, const JudgedFuse& judged) {
    if (judged.may_blow)
        paper.line(0, "care      ",
                   "at the least efficiency of the class more is drawn than this fuse carries: go by the fuses printed "
                   "on the amplifier");
}

void print_amplifiers(Paper& paper, const FeedReport& report) {
    for (std::size_t i = 0; i < report.asked.size(); ++i) {
        const FedAmplifier& fed = report.feed.amplifiers[i];
        const FedResult& result = report.answer.amplifiers[i];
        const std::string name = fed.branch ? fmt::format("branch {}  ", i + 1) : "load      ";
        paper.line(0, name, asked_words(report.asked[i], fed), fed.branch ? Weight::strong : Weight::plain);
        if (fed.branch)
            paper.line(0, "          ",
                       fmt::format("{}: {}, {:g} m from the block", spaced(word_of(result.grade)),
                                   size_words(fed.branch->size), fed.branch->length.in(metres)));
        print_volts(paper, report, result);
        if (result.branch) {
            paper.line(0, "fuse      ", fuse_words(*result.branch) + "; at the block, where the cable gets thinner",
                       Weight::strong);
            print_may_blow(paper, *result.branch);
        } else if (fed.branch) {
            paper.line(0, "fuse      ", "the main fuse covers it: this branch is no thinner than the main cable");
        }
    }
}

void print_main_fuse(Paper& paper, const FeedReport& report) {
    const JudgedFuse& main = report.answer.main_fuse;
    paper.line(0, report.answer.amplifiers.size() > 1 ? "main fuse " : "fuse      ",
               fmt::format("{}; {} at full power", fuse_words(main), amps_words(report.answer.total)), Weight::strong);
    print_may_blow(paper, main);
    paper.line(0, "where     ",
               fmt::format("within {:.0f} mm (18 in) of the battery post, measured along the cable; a published rule "
                           "(33 CFR 183.455) says {:.0f} mm (7 in)",
                           fuse_within_trade.in(millimetres), fuse_within_published.in(millimetres)));
    if (main.fuse && main.fuse->cable.insulation_assumed)
        paper.line(0, "care      ",
                   "the insulation was not given: the 60 C column counts; read the print on the cable");
    if (main.fuse && main.fuse->cable.factor_from_memory)
        paper.line(0, "care      ", "the engine-space factor of this insulation could not be confirmed");
    paper.caution(0, "fuse",
                  "It protects the cable, not the amplifier. It stays out until everything is connected, battery "
                  "negative comes off first and goes on last but for this fuse. Between two batteries a fuse stands at "
                  "both ends.");
}

void print_return(Paper& paper, const FeedReport& report) {
    if (const auto* body = std::get_if<BodyReturn>(&report.feed.back)) {
        const bool read = body->low == body->high;
        paper.line(0, "return    ",
                   read ? fmt::format("through the body, {:g} mohm as read", body->likely.in(milliohms))
                        : std::string("through the body, on bare, clean steel; its ohms are practice, read them"));
    } else {
        paper.line(0, "return    ", "a cable of the same size and length beside every cable");
    }
    std::string list;
    for (const auto place : grounds) list += fmt::format("{}{}", list.empty() ? "" : ", ", place);
    paper.caution(0, "ground", fmt::format("Never to {}. Look behind the panel before drilling.", list));
}

void print_size(Paper& paper, const FeedReport& report) {
    const Feed& feed = report.feed;
    paper.line(
        0, "feed      ",
        fmt::format("{}: {}", spaced(word_of(report.answer.grade)), lost_words(worst_drop(report.answer), feed.supply)),
        Weight::strong);
    std::string text = fmt::format("{} {}, {:g} m one way", size_words(feed.main.size),
                                   metal_words(feed.conditions.metal), feed.main.length.in(metres));
    if (feed.temperature > celsius(20) || feed.temperature < celsius(20))
        text += fmt::format(", at {:g} C", feed.temperature.in(celsius));
    if (report.origin == SizeOrigin::chosen) text += "; the thinnest that is good and has its fuses";
    if (report.origin == SizeOrigin::none_good) text += "; no size of the list is good: this is the thickest";
    paper.line(0, "cable     ", text);
    if (system_of(feed.main.size) == SizeSystem::sae)
        paper.line(0, "care      ", "SAE sizes hold less copper than the AWG size of the same number");
    if (const auto* marked = std::get_if<SaeSize>(&feed.main.size); marked && marked->from_memory)
        paper.line(0, "care      ", "the area of this SAE size could not be confirmed");
}

void print_next(Paper& paper, const std::optional<NextSize>& next) {
    if (!next) return;
    std::string text = fmt::format("{}: {}", size_words(next->size), spaced(word_of(next->grade)));
    if (next->drop) text += fmt::format(", {} lost", percent_words(*next->drop));
    if (next->saved) text += fmt::format(", {:.1f} points less", next->saved->in(percent));
    paper.line(0, "next size ", text);
}

void print_limit(Paper& paper, const std::optional<Ohms>& most) {
    if (!most) return;
    paper.line(0, "limit     ",
               fmt::format("above {:.1f} mohm out and back no volts give it this power", most->in(milliohms)));
}

std::string reserve_words(const SpareCharging& spare) {
    const AmpsRange& left = spare.reserve;
    std::string text = fmt::format("{:.0f} A of {} leave {:.0f}, {:.0f} or {:.0f} A at idle (low, likely, high)",
                                   spare.rating.in(amps), spaced(word_of(spare.kind)), left.low.in(amps),
                                   left.likely.in(amps), left.high.in(amps));
    if (spare.verdict) text += fmt::format(": {}", spaced(word_of(*spare.verdict)));
    if (spare.kind == ChargingSource::dc_converter) text += "; nothing while the vehicle is not ready";
    return text;
}

void print_charging(Paper& paper, const FeedReport& report) {
    if (const auto& average = report.average) {
        std::string text = fmt::format("{} with {}", amps_words(average->current),
                                       average->use == AmplifierUse::sub ? "bass" : "full-range music");
        text += fmt::format(" (music at {:.3g} of full power)", average->share.in(ratio));
        if (!average->idle_known) text += "; idle current not given, not counted";
        paper.line(0, "average   ", text);
    } else {
        paper.line(0, "average   ", "not known without the class of every amplifier");
    }
    if (report.spare) paper.line(0, "charging  ", reserve_words(*report.spare));
}

void print_capacitor(Paper& paper, const FeedReport& report) {
    if (!report.capacitor) return;
    const CapacitorBeside& beside = *report.capacitor;
    paper.line(
        0, "capacitor ",
        fmt::format("{:g} F carries it for {:.1f} ms from {:g} V to {:g} V; a bass note of {:g} s is {:.0f} ms: it "
                    "does not mend a weak supply",
                    beside.capacitance.in(farads), beside.hold_up.time.in(milliseconds), beside.from.in(dc_volts),
                    beside.to.in(dc_volts), beside.hold_up.note.in(seconds), beside.hold_up.note.in(milliseconds)));
    paper.caution(0, "capacitor", "Charge it through a resistor or test lamp, never straight to the battery.");
}

}  // namespace

std::span<const std::string_view> forbidden_grounds() {
    return grounds;
}

std::string size_words(const CableSize& size) {
    if (const Awg* gauge = std::get_if<Awg>(&size)) return awg_text(*gauge) + " AWG";
    if (const SaeSize* marked = std::get_if<SaeSize>(&size)) return fmt::format("SAE {}", marked->marked);
    return fmt::format("{:g} mm2", std::get<SquareMillimetres>(size).in(square_millimetres));
}

std::string feed_text(const FeedReport& report, const Screen& screen) {
    Paper paper(screen);
    print_size(paper, report);
    print_amplifiers(paper, report);
    print_next(paper, report.next);
    print_limit(paper, report.answer.most_resistance);
    print_main_fuse(paper, report);
    print_return(paper, report);
    print_charging(paper, report);
    print_capacitor(paper, report);
    paper.line(0, "source    ",
               "33 CFR 183.425 table 5, a boat regulation; 3 % and 5 % lost are common practice; figures from the "
               "vehicle's or cable's maker go first");
    paper.caution(0, "before you connect",
                  "The vehicle's own instructions, local codes and licensed practice come first. 48 V and orange cable "
                  "are never tapped or joined.");
    return paper.take();
}

}  // namespace tapbook
