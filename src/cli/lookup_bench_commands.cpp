// calc corner, calc terminal, calc cavity: a capacitor's corner, and two tables of the trade.
#include <fmt/format.h>

#include "cli/command.h"

namespace tapbook {
namespace {

constexpr std::int64_t most_millihertz = 1'000'000'000;

}  // namespace

Exit run_calc_corner(Session& session, const Parsed& parsed) {
    constexpr Unit<FaradsTag, 1, 1'000'000'000'000> picofarads;
    const Ohms load = milliohms(parsed.need_number("--ohms", 3, 1, 100'000'000'000));
    const auto typed = parsed.number("--microfarads", 6, 1, 1'000'000'000'000);
    const auto wanted = parsed.number("--corner-hz", 3, 1, most_millihertz);
    if (typed.has_value() == wanted.has_value())
        throw UsageError("give either --microfarads or --corner-hz",
                         "for example --ohms 4 --microfarads 1000, or --ohms 10000 --corner-hz 40");
    const Farads capacitance = typed ? picofarads(*typed) : coupling_capacitor(load, millihertz(*wanted));
    CornerAnswer answer{load, capacitance, coupling_corner(load, capacitance), {}, {}, {}};
    if (wanted) {
        const Farads standard = next_standard_capacitor(capacitance);
        answer.standard = StandardCapacitor{standard, coupling_corner(load, standard)};
    }
    if (const auto note = parsed.number("--hz", 3, 1, most_millihertz)) {
        answer.note = millihertz(*note);
        answer.loss = first_order_loss(*answer.note, answer.corner);
    }
    session.answer(corner_text(answer, session.screen), corner_json(answer));
    return Exit::done;
}

Exit run_calc_terminal(Session& session, const Parsed& parsed) {
    const std::string typed = parsed.joined_words();
    const Terminal* terminal = find_terminal(typed);
    if (terminal == nullptr)
        throw NoAnswer(fmt::format("no terminal \"{}\" is in the table of DIN 72552", shown(typed)),
                       "read the number beside the contact again, like 30 or 87a; else a meter decides");
    session.answer(terminal_text(*terminal, session.screen), terminal_json(*terminal));
    return Exit::done;
}

Exit run_calc_cavity(Session& session, const Parsed& parsed) {
    const std::string typed = parsed.joined_words();
    const RadioCavity* cavity = find_radio_cavity(typed);
    if (cavity == nullptr)
        throw NoAnswer(fmt::format("no cavity \"{}\" is in the table of the ISO radio connector", shown(typed)),
                       "A1 to A8, B1 to B8, C1 to C6 and C13 to C20; else a meter decides");
    session.answer(cavity_text(*cavity, session.screen), cavity_json(*cavity));
    return Exit::done;
}

}  // namespace tapbook
