// The plan as a drawing: what is joined to what, in words that are ready to be laid out.
#include <fmt/format.h>

#include <algorithm>

#include "report/drawing.h"
#include "report/feed_report.h"
#include "report/sheet_words.h"

namespace tapbook {
namespace {

constexpr std::size_t most_drawn = 8;

// Number of the step with this id in the order of work; 0 for none.
int step_of(const JobPlanAnswer& plan, std::string_view id) {
    const auto found =
        std::find_if(plan.steps.begin(), plan.steps.end(), [&](const PlanStep& step) { return step.id == id; });
    return found == plan.steps.end() ? 0 : static_cast<int>(found - plan.steps.begin()) + 1;
}

std::string volts_words(const std::optional<RmsVolts>& volts) {
    return volts ? fmt::format("{:.1f} V", volts->in(rms_volts)) : std::string();
}

std::string clean_range(const VoltageRange& clean) {
    if (clean.low && clean.high)
        return fmt::format("{:.1f} to {:.1f} V", clean.low->in(rms_volts), clean.high->in(rms_volts));
    return volts_words(clean.likely);
}

// Where the face of the planned tap's connector has this cavity; absent where that is not known.
std::optional<DrawnCavity> face_place(const TapPoint& tap, std::string_view cavity) {
    const auto place = cavity_place(tap, cavity);
    return place ? std::optional(DrawnCavity{place->row, place->column}) : std::nullopt;
}

DrawnConductor drawn(const TapPoint& tap, const SheetConductor& conductor) {
    return {conductor.cavity, face_place(tap, conductor.cavity), conductor.colour,
            conductor.instead.empty() ? "?" : conductor.instead};
}

// Of the tap itself, with what the notes say in place of a colour.
DrawnPair planned_pair(const JobPlanAnswer& plan) {
    const auto conductors = conductors_of(plan.tap.tap.pair);
    const TapPoint& tap = plan.tap.tap.tap;
    DrawnPair pair{"", drawn(tap, conductors.front()), drawn(tap, conductors.back()), "",
                   clean_range(plan.tap.signal.clean)};
    if (conductors.size() < 2) pair.negative = {"", {}, {}, "?"};
    return pair;
}

std::string pair_name(std::string_view tap) {
    std::string name(path_head(place_in_job(tap), 1));
    std::replace(name.begin(), name.end(), '-', ' ');
    return name;
}

// One pair for each tap point of the plan's conductors, the planned one first.
std::vector<DrawnPair> drawn_pairs(const JobPlanAnswer& plan) {
    std::vector<std::string> taps = {plan.plan.tap};
    std::vector<DrawnPair> pairs = {planned_pair(plan)};
    for (const auto& conductor : plan.conductors) {
        const bool is_positive = conductor.use == "+";
        if (conductor.tap == plan.plan.tap || (!is_positive && conductor.use != "-")) continue;
        auto known = std::find(taps.begin(), taps.end(), conductor.tap);
        if (known == taps.end()) {
            taps.push_back(conductor.tap);
            pairs.push_back({});
            known = taps.end() - 1;
        }
        DrawnPair& pair = pairs[static_cast<std::size_t>(known - taps.begin())];
        const TapPoint& face = plan.tap.tap.tap;
        const bool is_here = conductor.place == face.place && conductor.connector == face.connector;
        (is_positive ? pair.positive : pair.negative) = {
            conductor.cavity, is_here ? face_place(face, conductor.cavity) : std::nullopt, conductor.colour, "?"};
    }
    if (pairs.size() > most_drawn) pairs.resize(most_drawn);
    const bool is_direct = plan.part.converter == "direct";
    for (std::size_t i = 0; i < pairs.size(); ++i) {
        pairs[i].name = pair_name(taps[i]);
        pairs[i].input = fmt::format("{} {}", is_direct ? "high" : "in", i + 1);
    }
    return pairs;
}

DrawnConnector drawn_connector(const JobPlanAnswer& plan) {
    const TapPoint& tap = plan.tap.tap.tap;
    DrawnConnector connector;
    connector.box = {
        step_of(plan, "join"), tap.connector.empty() ? std::string("Factory connector") : tap.connector, {}};
    if (!tap.place.empty()) connector.box.remarks.push_back(tap.place);
    if (tap.side) connector.box.remarks.push_back(fmt::format("{} side", word_of(*tap.side)));
    for (const Hazard hazard : tap.hazards) connector.box.cautions.emplace_back(hazard_text(hazard).title);
    if (!tap.view_face) return connector;
    connector.seen_from = spaced(word_of(*tap.view_face));
    if (const auto columns = cavity_columns(tap)) {
        connector.rows = *tap.cavity_rows;
        connector.columns = *columns;
    }
    return connector;
}

DrawnBox drawn_converter(const JobPlanAnswer& plan) {
    DrawnBox box{step_of(plan, "place converter"),
                 fmt::format("{} {}", plan.part.maker, plan.part.name),
                 {spaced(word_of(plan.part.topology))}};
    if (plan.part.limit_at_lowest)
        box.remarks.push_back(fmt::format("takes up to {}", volts_words(plan.part.limit_at_lowest)));
    if (plan.part.topology == Topology::active_line_level || plan.part.topology == Topology::active_speaker_level)
        box.remarks.emplace_back("own 12 V behind a fuse, own ground");
    return box;
}

DrawnBox drawn_amplifier(const JobPlanAnswer& plan) {
    DrawnBox box{step_of(plan, "place amplifier"), "Amplifier, not chosen"};
    if (plan.amplifier) box.name = fmt::format("{} {}", plan.amplifier->maker, plan.amplifier->name);
    if (plan.install.gain_power && plan.install.gain_load)
        box.remarks.push_back(fmt::format("{:.0f} W into {:g} ohm", plan.install.gain_power->in(watts),
                                          plan.install.gain_load->in(ohms)));
    return box;
}

std::vector<DrawnChannel> drawn_channels(const JobPlanAnswer& plan, const std::vector<DrawnPair>& pairs) {
    const bool is_bridged = plan.install.ask.bridged;
    const AmplifierSpec spec = plan.amplifier ? plan.amplifier->spec : AmplifierSpec{};
    const int per_output = is_bridged ? 2 : 1;
    const int count = std::clamp(spec.channels.value_or(1) / per_output, 1, static_cast<int>(most_drawn));
    std::string load;
    if (plan.install.gain_load) load = fmt::format("{:g} ohm", plan.install.gain_load->in(ohms));
    std::vector<DrawnChannel> channels;
    for (int i = 0; i < count; ++i) {
        const std::string number = is_bridged ? fmt::format("{}+{}", 2 * i + 1, 2 * i + 2) : std::to_string(i + 1);
        const auto place = static_cast<std::size_t>(i);
        std::string speaker = spec.use == AmplifierUse::sub         ? "subwoofer"
                              : place < pairs.size() && !is_bridged ? pairs[place].name
                                                                    : std::string("speaker");
        channels.push_back({number, std::move(speaker), load, volts_words(plan.install.gain_target)});
    }
    return channels;
}

std::string d_c_words(const std::optional<DcVolts>& volts) {
    return volts ? fmt::format("{:.1f} V", volts->in(dc_volts)) : std::string();
}

DrawnTurnOn drawn_turn_on(const JobPlanAnswer& plan) {
    const int step = step_of(plan, "turn-on");
    const JudgedTurnOn* judged = planned_turn_on(plan.install);
    if (judged == nullptr) return {TurnOnBegins::own_source, {step, "Turn-on: not settled"}, {}, ""};
    const TurnOnFacts& facts = judged->facts;
    if (facts.kind == TurnOnKind::converter && plan.part.converter != "direct")
        return {TurnOnBegins::converter, {}, {}, ""};
    if (!facts.tap)
        return {TurnOnBegins::none, {step, "No turn-on lead", {"the amplifier wakes on its own input"}}, {}, ""};
    DrawnBox box{step, circuit_words(*facts.tap)};
    if (const std::string place = place_words(*facts.tap); !place.empty()) box.remarks.push_back(place);
    return {TurnOnBegins::own_source, box, facts.tap->switched.colour, d_c_words(facts.volts.run)};
}

DrawnFeed drawn_feed(const JobPlanAnswer& plan) {
    DrawnFeed feed;
    feed.battery = {step_of(plan, "feed"), "Battery", {}, {"Negative off first, on last"}};
    if (!plan.vehicle.battery_place.empty()) feed.battery.remarks.push_back(plan.vehicle.battery_place);
    if (!plan.install.feed) {
        feed.fuse = {0, "Fuse: not judged"};
        feed.cable = "cable: not judged yet";
        return feed;
    }
    const FeedReport& report = plan.install.feed->report;
    const auto& fuse = report.answer.main_fuse.fuse;
    feed.fuse = {0,
                 fuse && fuse->rating ? fmt::format("{:g} A fuse", fuse->rating->in(amps)) : "No fuse fits",
                 {fmt::format("within {:.0f} mm of the post", fuse_within_trade.in(millimetres))}};
    feed.cable = fmt::format("{} {}, {:.1f} m", size_words(report.feed.main.size),
                             report.feed.conditions.metal == Metal::copper ? "copper" : "copper-clad aluminium",
                             plan.install.feed->length.in(metres));
    if (const auto& likely = report.answer.amplifiers.front().at.likely)
        feed.expected = fmt::format("{:.1f} V at {:.0f} A", likely->volts.in(dc_volts), likely->current.in(amps));
    return feed;
}

DrawnBox drawn_ground(const JobPlanAnswer& plan) {
    DrawnBox box{step_of(plan, "ground"), "Ground", {"bare, clean steel"}, {"Look behind before drilling"}};
    if (plan.install.feed) {
        const FeedReport& report = plan.install.feed->report;
        box.remarks.push_back(fmt::format("{}, as short as can be", size_words(report.feed.main.size)));
    }
    return box;
}

}  // namespace

InstallDrawing drawing_of(const Sheet& sheet) {
    const JobPlanAnswer& plan = sheet.plan;
    InstallDrawing drawing;
    drawing.title = fmt::format("{}, {}", car_words(sheet), system_words(sheet));
    drawing.code = plan.job.code;
    drawing.connector = drawn_connector(plan);
    drawing.pairs = drawn_pairs(plan);
    drawing.amplifier = drawn_amplifier(plan);
    drawing.channels = drawn_channels(plan, drawing.pairs);
    if (plan.part.converter != "direct") {
        drawing.converter = drawn_converter(plan);
        for (std::size_t i = 1; i <= drawing.pairs.size(); ++i)
            drawing.lines.push_back({fmt::format("out {}", i), fmt::format("in {}", i), volts_words(plan.part.output)});
    }
    drawing.turn_on = drawn_turn_on(plan);
    drawing.feed = drawn_feed(plan);
    drawing.ground = drawn_ground(plan);
    return drawing;
}

}  // namespace tapbook
