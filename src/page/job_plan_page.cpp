// Which tap, converter and amplifier does this job take? The choice as a form; what the plan then says stands on the
// job.
#include <fmt/format.h>

#include <algorithm>

#include "page/job_parts.h"
#include "page/pages.h"
#include "page/part_choice.h"

namespace tapbook {
namespace {

// What was chosen and typed, as it came.
using PlanForm = std::map<std::string, std::string, std::less<>>;

constexpr std::string_view boxes[] = {"system",       "tap",    "converter", "amp",          "lowest_hz",
                                      "turn_on",      "metres", "size",      "metal",        "insulation",
                                      "engine_space", "load",   "bridged",   "speaker_watts"};

struct Said {
    std::map<std::string, std::string, std::less<>> at;  // complaints by box
    std::string whole, way_out;                          // of the plan itself
    bool empty() const { return at.empty() && whole.empty(); }
};

std::string text_of(const PlanForm& form, std::string_view name) {
    const auto found = form.find(name);
    return found == form.end() ? std::string() : found->second;
}

PlanForm form_of(const ShopJob& job) {
    const JobPlan& plan = job.plan;
    PlanForm form;
    form["system"] = job.system;
    form["tap"] = plan.tap.empty() ? "" : std::string(path_tail(plan.tap, system_depth));
    form["converter"] = plan.converter;
    form["amp"] = plan.amplifier;
    if (plan.lowest_mhz) form["lowest_hz"] = unscaled(*plan.lowest_mhz, 3);
    form["turn_on"] = plan.turn_on;
    if (plan.feed_mm) form["metres"] = unscaled(*plan.feed_mm, 3);
    form["size"] = plan.feed_size;
    if (plan.feed_metal) form["metal"] = word_of(*plan.feed_metal);
    if (plan.feed_insulation) form["insulation"] = word_of(*plan.feed_insulation);
    if (plan.feed_in_engine_space) form["engine_space"] = "yes";
    form["load"] = plan.load;
    if (plan.bridged) form["bridged"] = "yes";
    if (plan.speaker_mw) form["speaker_watts"] = unscaled(*plan.speaker_mw, 3);
    return form;
}

PlanForm typed_form(const FormFields& fields) {
    PlanForm form;
    for (const auto name : boxes)
        if (const auto text = fields.text(name)) form[std::string(name)] = *text;
    return form;
}

std::optional<std::int64_t> number_of(const PlanForm& form, std::string_view name, std::int64_t least,
                                      std::int64_t most, Said& said) {
    std::string text = text_of(form, name);
    if (text.empty()) return std::nullopt;
    std::replace(text.begin(), text.end(), ',', '.');
    const auto number = scaled(text, 3);
    if (const auto* wrong = std::get_if<NotANumber>(&number)) {
        said.at[std::string(name)] = fmt::format("\"{}\" {}", shown(text), wrong->reason);
        return std::nullopt;
    }
    const std::int64_t value = std::get<std::int64_t>(number);
    if (value < least || value > most)
        said.at[std::string(name)] = fmt::format("from {} to {}", unscaled(least, 3), unscaled(most, 3));
    return value;
}

// The install as typed. Complaints for what cannot be read.
JobPlan said_of_install(const PlanForm& form, JobPlan plan, Said& said) {
    plan.feed_mm = number_of(form, "metres", 1, 100'000, said);
    plan.speaker_mw = number_of(form, "speaker_watts", 1, 20'000'000, said);
    plan.feed_size.clear();
    if (const std::string size = text_of(form, "size"); !size.empty()) {
        const auto read = parse_cable_size(size);
        if (read && cable_ampacity(*read, {}))
            plan.feed_size = cable_size_text(*read);
        else
            said.at["size"] = read ? "thinner than 18 AWG, where the published table begins"
                                   : "write 4 or 1/0 for AWG, 25mm2 for metric cable, sae4 for cable marked SAE";
    }
    plan.feed_metal = parse_word<Metal>(text_of(form, "metal"));
    plan.feed_insulation = parse_word<Insulation>(text_of(form, "insulation"));
    plan.feed_in_engine_space = form.contains("engine_space");
    plan.load = text_of(form, "load");
    if (!plan.load.empty()) {
        const auto load = parse_load(plan.load);
        if (const auto* trouble = std::get_if<LoadTrouble>(&load)) said.at["load"] = trouble->message;
    }
    plan.bridged = form.contains("bridged");
    if (plan.bridged && plan.load.empty()) said.at["load"] = "bridged needs the load that two channels drive";
    plan.turn_on = text_of(form, "turn_on");
    plan.amplifier = text_of(form, "amp");
    return plan;
}

FormChoices tap_choices(const CarFacts& car, std::string_view system, bool is_power_wanted) {
    FormChoices list = {{"", "the best"}};
    if (is_power_wanted) {
        list.emplace_back("converter", "made by the converter");
        list.emplace_back("own-input", "the amplifier's own input");
    }
    for (const auto& tap : car.taps) {
        if (tap.system != system) continue;
        const bool fits = is_power_wanted ? is_power(tap.circuit.role) : carries_signal(tap.circuit.role);
        if (!fits) continue;
        list.emplace_back(is_power_wanted ? tap.code : std::string(path_tail(tap.code, system_depth)),
                          fmt::format("{}: {}", circuit_words(tap), tap.tap.place));
    }
    return list;
}

const FormChoices other_converters = {{"", "the best"}, {"direct", "none: the amplifier's own input"}};

// Puts the paths of the parts in the place of what was typed for them.
void choose_parts(const Catalog& catalog, PlanForm& form, Said& said) {
    const auto choose = [&](std::string_view name, const FormChoices& parts, const FormChoices& others) {
        const ChosenPart chosen = chosen_part(parts, others, text_of(form, name));
        if (chosen.complaint.empty())
            form[std::string(name)] = chosen.path;
        else
            said.at[std::string(name)] = chosen.complaint;
    };
    choose("amp", amplifier_choices(catalog), no_amplifier);
    choose("converter", converter_choices(catalog), other_converters);
}

void write_parts(Html& html, const Catalog& catalog, const CarFacts& car, const PlanForm& form, const Said& said) {
    const std::string system = text_of(form, "system");
    const FormChoices converters = converter_choices(catalog), amplifiers = amplifier_choices(catalog);
    FormChoices systems;
    if (system == unrecorded_system) systems.emplace_back(unrecorded_system, "not known yet");
    for (const auto& one : car.systems) systems.emplace_back(one.code, one.entry.name);
    html.begin("div", {{"class", "boxes"}}).line();
    write_select(html, "system", "Sound system", systems, system);
    write_select(html, "tap", "Tap", tap_choices(car, system, false), text_of(form, "tap"));
    write_part_choice(html, {"amp", "Amplifier", amplifiers, no_amplifier, text_of(form, "amp")});
    write_part_choice(html, {"converter", "Converter", converters, other_converters, text_of(form, "converter")});
    const auto found = said.at.find("lowest_hz");
    write_form_box(html, {.name = "lowest_hz",
                          .label = "Lowest note",
                          .value = text_of(form, "lowest_hz"),
                          .unit = "Hz",
                          .complaint = found == said.at.end() ? std::string() : found->second,
                          .remark = "30 for a subwoofer, 60 for full range",
                          .is_number = true});
    html.end().line();
}

void write_install_form(Html& html, const CarFacts& car, const PlanForm& form, const Said& said) {
    const auto box = [&](std::string_view name, std::string_view label, std::string_view unit, std::string_view remark,
                         bool is_number) {
        const auto found = said.at.find(name);
        write_form_box(html, {.name = std::string(name),
                              .label = std::string(label),
                              .value = text_of(form, name),
                              .unit = std::string(unit),
                              .complaint = found == said.at.end() ? std::string() : found->second,
                              .remark = std::string(remark),
                              .is_number = is_number});
    };
    FormChoices metals = {{"", "copper"}}, insulations = {{"", "not said"}};
    for (const auto word : spellings<Metal>()) metals.emplace_back(word, word);
    for (const auto word : spellings<Insulation>()) insulations.emplace_back(word, fmt::format("{} \u00b0C", word));
    html.begin("details", {{"open", "open"}}).element("summary", "Turn-on, feed and load").line();
    html.begin("div", {{"class", "boxes"}}).line();
    write_select(html, "turn_on", "What wakes the amplifier", tap_choices(car, text_of(form, "system"), true),
                 text_of(form, "turn_on"));
    box("metres", "Main cable, one way", "m", "measured on the car", true);
    box("size", "Its size", "", "4 or 1/0 (AWG), 25mm2, sae4; empty for the thinnest good one", false);
    write_select(html, "metal", "Metal", metals, text_of(form, "metal"));
    write_select(html, "insulation", "Insulation rated for", insulations, text_of(form, "insulation"));
    box("load", "Load of one output", "ohm", "4, 4+4 in series, 4//4 side by side", false);
    box("speaker_watts", "Power of what hangs there", "W", "continuous", true);
    html.end().line();
    write_tick(html, "engine_space", "The cable passes through an engine space, 50 \u00b0C",
               form.contains("engine_space"));
    write_tick(html, "bridged", "Two channels drive that load together", form.contains("bridged"));
    html.end().line();
}

PageAnswer plan_form(const Catalog& catalog, const PageRequest& request, const ShopJob& job, const PlanForm& form,
                     const Said& said) {
    const CarFacts car = catalog.car(job.vehicle, job.year);
    Page page(request, catalog.is_practice(), "Plan", PagePart::jobs);
    Html& html = page.html();
    if (!said.empty()) {
        html.begin("span", {{"data-refused", "yes"}}).end();
        write_telling(html, Telling::wrong,
                      said.whole.empty() ? "Not planned yet: see below." : upper_first(said.whole),
                      upper_first(said.way_out));
    }
    write_job_head(html, catalog, job, "Plan");
    html.begin("p");
    write_link(html,
               address("/advice/" + encoded_path(job.vehicle),
                       {{"system", job.system == unrecorded_system ? std::string() : job.system},
                        {"amp", text_of(form, "amp")}}),
               "Which converters fit, and why", "more");
    html.end().line();
    begin_form(html, request, job_address(job.code, "plan"), job.code + "-plan");
    write_parts(html, catalog, car, form, said);
    write_install_form(html, car, form, said);
    html.begin("div", {{"class", "act"}});
    if (job.state == JobState::open) write_action(html, request, "Plan it");
    html.end().end().line();
    return page.answer(said.empty() ? 200 : 422);
}

PageAnswer plan_page(PageDesk& desk, const PageRequest& request) {
    const Catalog& catalog = desk.catalog();
    const AskedJob asked = asked_job(catalog, request);
    return plan_form(catalog, request, asked.job, form_of(asked.job), {});
}

PlanWish wish_of(const CarFacts& car, const PlanForm& form, JobPlan plan) {
    PlanWish wish;
    wish.system = text_of(form, "system");
    const std::string tap = path_join(path_join(car.vehicle.path, wish.system), text_of(form, "tap"));
    const auto is_it = [&](const TapFacts& one) { return one.code == tap; };
    if (std::any_of(car.taps.begin(), car.taps.end(), is_it)) wish.tap = tap;
    wish.converter = text_of(form, "converter");
    // A turn-on of the system that was chosen before is no longer meant.
    const bool is_other = !plan.turn_on.empty() && plan.turn_on.find('/') != std::string::npos &&
                          !plan.turn_on.starts_with(path_join(car.vehicle.path, wish.system) + "/");
    if (is_other) plan.turn_on.clear();
    wish.said = std::move(plan);
    return wish;
}

PageAnswer save_plan(PageDesk& desk, const PageRequest& request) {
    Catalog catalog = desk.catalog_to_write();
    const AskedJob asked = asked_job(catalog, request);
    PlanForm form = typed_form(request.form);
    Said said;
    choose_parts(catalog, form, said);
    const JobPlan plan = said_of_install(form, asked.job.plan, said);
    const auto lowest = number_of(form, "lowest_hz", 1000, 20'000'000, said);
    JobFacts facts{catalog.car(asked.job.vehicle, asked.job.year), catalog.converters(), {}, catalog.is_practice()};
    for (const auto& one : catalog.amplifiers())
        if (one.path == plan.amplifier) facts.amplifier = one;
    if (!said.empty()) return plan_form(catalog, request, asked.job, form, said);
    try {
        ShopJob job = asked.job;
        job.plan.tap.clear();
        job.plan.converter.clear();
        PlanWish wish = wish_of(facts.car, form, plan);
        if (lowest) wish.lowest = millihertz(*lowest);
        const JobPlanAnswer answer = planned_job(facts, job, wish, asked.jobs, desk.rules());
        catalog.plan_job(job.number, answer.plan,
                         std::string(path_tail(path_head(answer.plan.tap, system_depth), vehicle_depth)));
    } catch (const PlanRefused& refused) {
        said.whole = refused.what();
        said.way_out = refused.way_out();
        if (refused.trouble() == PlanTrouble::system_unrecorded)
            said.way_out = "the car's page tells how to recognise each";
        return plan_form(catalog, request, asked.job, form, said);
    }
    return job_page_with(desk, request, "Saved: the plan and its steps stand below.", asked.job.code + "-plan");
}

constexpr Route list[] = {{PageMethod::get, "/job/{}/plan", RouteFor::reader, plan_page},
                          {PageMethod::post, "/job/{}/plan", RouteFor::paired_phone, save_plan}};

}  // namespace

std::span<const Route> job_plan_routes() {
    return list;
}

}  // namespace tapbook
