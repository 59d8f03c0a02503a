// taps and advise: load, decide, show.
#include <fmt/format.h>

#include <algorithm>

#include "cli/chosen.h"
#include "cli/install_options.h"

namespace tapbook {

void check_year(const VehicleName& car, std::optional<int> year) {
    if (!year || (*year >= car.first_year && *year <= car.last_year)) return;
    throw NoAnswer(fmt::format("the {} {} was built from {} to {}, not in {}", car.make, car.model, car.first_year,
                               car.last_year, *year),
                   "tapbook find shows other years of it");
}

void check_system(const CarFacts& car, const std::string& system) {
    if (system.empty()) return;
    std::vector<std::string_view> codes;
    for (const auto& known : car.systems) codes.push_back(known.code);
    if (std::find(codes.begin(), codes.end(), system) != codes.end()) return;
    std::string list;
    for (const auto code : codes) list += fmt::format("{}{}", list.empty() ? "" : ", ", code);
    const auto near = nearest(system, codes);
    throw NoAnswer(
        fmt::format("the {} {} has no sound system \"{}\"", car.vehicle.make, car.vehicle.model, shown(system)),
        near ? fmt::format("did you mean {}?", *near) : fmt::format("it has: {}", list));
}

CarFacts load_car(const Catalog& catalog, const Parsed& parsed, Session& session) {
    const ChosenCar chosen = chosen_car_of(catalog, parsed, parsed.joined_words());
    if (chosen.vin && check_verdict(*chosen.vin) == CheckVerdict::mismatch)
        session.remark = fmt::format("tapbook: VIN: {}\n", vin_remark(*chosen.vin));
    CarFacts facts = catalog.car(chosen.vehicle.path, chosen.year);
    check_system(facts, parsed.text("--system").value_or(""));
    return facts;
}

std::string chosen_tap(const CarFacts& car, const std::string& system, const std::string& words) {
    if (words.empty()) return {};
    std::vector<std::string> found;
    std::vector<std::string_view> tails;
    for (const auto& tap : car.taps) {
        if (!system.empty() && tap.system != system) continue;
        const auto parts = path_parts(path_tail(tap.code, system_depth));
        tails.insert(tails.end(), parts.begin(), parts.end());
        if (is_tail_run(tap.code, words) || is_tail_run(path_head(tap.code, circuit_depth), words))
            found.push_back(tap.code);
    }
    if (found.size() == 1) return found.front();
    std::string list;
    for (const auto& code : found) list += fmt::format("\n  {}", path_tail(code, vehicle_depth));
    if (found.size() > 1)
        throw UsageError(fmt::format("\"{}\" names {} tap points:{}", shown(words), found.size(), list),
                         "write more of the path");
    const auto near = nearest(words, tails);
    throw NoAnswer(fmt::format("there is no tap point \"{}\"", shown(words)),
                   near ? fmt::format("did you mean {}?", *near) : "tapbook taps lists them");
}

namespace {

std::string systems_list(const CarFacts& car) {
    std::string list;
    for (const auto& system : car.systems) {
        list += fmt::format("\n  {:<10} {}", system.code, shown(system.entry.name));
        for (const auto& tell : system.entry.tells) list += fmt::format("\n             tell: {}", shown(tell));
    }
    return list;
}

}  // namespace

Exit run_taps(Session& session, const Parsed& parsed) {
    session.database = reading_place(session);
    const Catalog catalog = Catalog::open(session.database, Access::read);
    const TapsAnswer answer =
        taps_answer(load_car(catalog, parsed, session), parsed.text("--system").value_or(""), catalog.is_practice());
    session.answer([&] { return taps_text(answer, session.screen); }, [&] { return taps_json(answer); });
    return Exit::done;
}

Exit run_advise(Session& session, const Parsed& parsed) {
    session.database = reading_place(session);
    const Catalog catalog = Catalog::open(session.database, Access::read);
    JobFacts facts{load_car(catalog, parsed, session), catalog.converters(), {}, catalog.is_practice()};
    if (const auto amplifier = parsed.text("--amp")) facts.amplifier = known_amplifier(catalog, *amplifier);
    AdviseRequest request;
    request.system = parsed.text("--system").value_or("");
    if (request.system.empty() && facts.car.systems.size() > 1)
        throw UsageError(fmt::format("this car came with {} sound systems; say which with --system:{}",
                                     facts.car.systems.size(), systems_list(facts.car)),
                         "tapbook taps tells more about each");
    request.tap = chosen_tap(facts.car, request.system, parsed.text("--tap").value_or(""));
    if (const auto lowest = parsed.number("--lowest-hz", 3, 1000, 20000000)) request.lowest = millihertz(*lowest);
    if (const auto channels = parsed.number("--channels", 0, 1, 16)) request.channels = static_cast<int>(*channels);
    RuleBook rules = rules_beside(session.database, RuleCases::left_out);
    try {
        const Advice advice = advise(facts, request, rules);
        const auto detail = parsed.flag("--why") ? Detail::why : Detail::short_form;
        session.answer([&] { return advice_text(advice, detail, session.screen); },
                       [&] { return advice_json(advice); });
        return advice.best ? Exit::done : Exit::answer_is_no;
    } catch (const AdviseError& error) {
        throw NoAnswer(error.what(), "tapbook taps shows what is recorded of this car");
    }
}

}  // namespace tapbook
