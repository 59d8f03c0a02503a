// note: one visit in one line; why a grade is what it is; taking a note back.
#include <fmt/format.h>

#include <algorithm>
#include <set>

#include "cli/chosen.h"
#include "cli/note_options.h"

namespace tapbook {
namespace {

// The place that the words name: a tap point or a sound system.
struct NotePlace {
    VehicleName car;
    std::optional<int> year;
    std::string path;
    NoteKind kind = NoteKind::pair;
    std::string vin;                // when the car was named by it
    bool is_system_unsaid = false;  // several systems have this tap point and none was named
};

std::string joined(const std::vector<std::string>& words, std::size_t first, std::size_t end) {
    std::string all;
    for (std::size_t i = first; i < end; ++i) all += (all.empty() ? "" : " ") + words[i];
    return all;
}

std::string system_codes(const CarFacts& car) {
    std::string list;
    for (const auto& system : car.systems) list += fmt::format("{}{}", list.empty() ? "" : ", ", system.code);
    return list;
}

// The sound system: the one named, or the only one.
std::string needed_system(const CarFacts& car, const std::string& named) {
    if (!named.empty()) return named;
    if (car.systems.size() == 1) return car.systems.front().code;
    throw UsageError("say which sound system it is with --system",
                     car.systems.empty() ? "--system unrecorded when nobody knows"
                                         : fmt::format("{}; or unrecorded when nobody knows", system_codes(car)));
}

// A tap of a car whose system is not known: the taps of all systems lend it their names, each once.
std::string unrecorded_tap(const CarFacts& car, const std::string& words) {
    CarFacts merged;
    for (const auto& tap : car.taps) {
        TapFacts facts = tap;
        facts.system = unrecorded_system;
        facts.code = fmt::format("{}/{}/{}", car.vehicle.path, unrecorded_system, path_tail(tap.code, system_depth));
        const bool is_there = std::any_of(merged.taps.begin(), merged.taps.end(),
                                          [&](const TapFacts& other) { return other.code == facts.code; });
        if (!is_there) merged.taps.push_back(std::move(facts));
    }
    return chosen_tap(merged, std::string(unrecorded_system), words);
}

// Do the words name the same tap point of several sound systems?
bool is_shared_tap(const CarFacts& car, const std::string& words) {
    std::set<std::string_view> tails;
    int taps = 0;
    for (const auto& tap : car.taps)
        if (is_tail_run(tap.code, words) || is_tail_run(path_head(tap.code, circuit_depth), words)) {
            ++taps;
            tails.insert(path_tail(tap.code, system_depth));
        }
    return taps > 1 && tails.size() == 1;
}

Role role_of(const CarFacts& car, const std::string& path) {
    const auto tail = path_tail(path, system_depth);
    for (const auto& tap : car.taps)
        if (tap.code == path || path_tail(tap.code, system_depth) == tail) return tap.circuit.role;
    return Role::speaker;
}

enum class UnsaidSystem { is_asked_for, is_unrecorded };

NotePlace place_of_words(const Catalog& catalog, const Parsed& parsed, std::size_t first, bool is_system,
                         UnsaidSystem unsaid) {
    const auto& words = parsed.words;
    const std::size_t end = words.size() - (is_system ? 0 : 1);
    if (end <= first || (!is_system && words.back().empty()))
        throw UsageError(is_system ? "note needs VEHICLE" : "note needs VEHICLE and TAP",
                         "for example: tapbook note VEHICLE TAP --seen; tapbook taps VEHICLE lists the taps");
    const std::string vehicle_words = joined(words, first, end);
    NotePlace place;
    const ChosenCar chosen = chosen_car_of(catalog, parsed, vehicle_words);
    place.car = chosen.vehicle;
    place.year = chosen.year;
    if (chosen.vin) place.vin = chosen.vin->text();
    const CarFacts car = catalog.car_layout(place.car.path);
    const std::string system = parsed.text("--system").value_or("");
    if (system != unrecorded_system) check_system(car, system);
    if (is_system) {
        place.path = path_join(place.car.path, needed_system(car, system));
        place.kind = NoteKind::system;
        return place;
    }
    place.is_system_unsaid =
        unsaid == UnsaidSystem::is_unrecorded && system.empty() && is_shared_tap(car, words.back());
    place.path = system == unrecorded_system || place.is_system_unsaid ? unrecorded_tap(car, words.back())
                                                                       : chosen_tap(car, system, words.back());
    place.kind = carries_signal(role_of(car, place.path)) ? NoteKind::pair : NoteKind::switched;
    return place;
}

// Does the line speak of the sound system as a whole?
bool is_about_system(const Parsed& parsed) {
    return parsed.text("--premium").has_value() || parsed.text("--tell").has_value();
}

// The text of a check, and what it may mean instead.
Complaint complaint_of(const EntryComplaint& complaint) {
    std::string hint;
    for (const auto& offer : complaint.offers) hint += fmt::format("{}{}", hint.empty() ? "is it: " : "; ", offer);
    const bool is_question = complaint.severity == EntrySeverity::sure;
    return {SourcePlace{note_option_of(complaint.field), 0, 0, {}},
            fmt::format("{}{}", is_question ? "are you sure? " : "", complaint.text), hint};
}

[[noreturn]] void refuse_note(const NoteReport& report) {
    std::vector<Complaint> complaints;
    bool is_final = false;
    for (const auto& complaint : report.complaints) {
        if (complaint.severity == EntrySeverity::info) continue;
        is_final = is_final || complaint.severity == EntrySeverity::refused;
        complaints.push_back(complaint_of(complaint));
    }
    if (!is_final)
        complaints.push_back({SourcePlace{"note", 0, 0, {}},
                              "a reading that disproves the catalog is worth more than one that agrees with it",
                              "if it is what you found, save it: the same line with --sure"});
    throw InputRefused(std::move(complaints));
}

// The fields that were typed. A value that cannot be read is wrong usage, as with every command.
Values typed_values(const NotePlace& place, const Parsed& parsed) {
    const auto typed = typed_note_fields(parsed);
    try {
        Values values = read_typed_note(place.kind, typed);
        if (place.year) values["year"] = std::int64_t{*place.year};
        values["kind"] = std::string(word_of(place.kind));
        values["path"] = place.path;
        return values;
    } catch (const InputRefused& refused) {
        throw UsageError(refused.what(), refused.complaints().front().hint);
    }
}

// Does the note answer anything?
void check_says_something(const Values& values, NoteKind kind) {
    if (says_something(values, kind)) return;
    throw UsageError("the note says nothing yet",
                     kind == NoteKind::pair       ? "give colours (--positive, --negative) or a reading (--ac, ...)"
                     : kind == NoteKind::switched ? "give --wire, or the volts: --key-off, --accessory, --run"
                                                  : "give --premium yes or --premium no, and --tell");
}

Exit take_note(Session& session, const Parsed& parsed) {
    if (parsed.text("--reason"))
        throw UsageError("--reason goes with note withdraw", "for example: tapbook note withdraw ID --reason typo");
    Catalog catalog = Catalog::open(session.database, Access::write);
    const NotePlace place = place_of_words(catalog, parsed, 0, is_about_system(parsed), UnsaidSystem::is_unrecorded);
    NoteDraft draft;
    draft.values = typed_values(place, parsed);
    draft.car_words = parsed.text("--car").value_or(place.vin);
    if (parsed.text("--car") && folded(draft.car_words).empty())
        throw UsageError("--car: write the plate or VIN", "only a salted token of it is stored");
    draft.place.file = "note";
    check_says_something(draft.values, place.kind);
    const NoteTaking taking{fmt::format("note on {}", place.path), parsed.flag("--sure"), parsed.flag("--dry-run")};
    NoteReport report = catalog.take_note(draft, taking, session.today);
    if (report.is_refused) refuse_note(report);
    if (place.is_system_unsaid)
        report.complaints.push_back(
            {EntrySeverity::info,
             "system",
             "several sound systems have this tap and none was named: kept as unrecorded, it counts for none of them; "
             "--system CODE says it",
             {}});
    session.answer(note_text(report, session.screen), note_json(report));
    return Exit::done;
}

// Nothing that was typed is passed over in silence: `what` takes these options alone.
void check_options(const Parsed& parsed, std::string_view what, std::set<std::string_view> taken) {
    taken.insert({"--db", "--json"});
    std::vector<std::string> typed(parsed.flags.begin(), parsed.flags.end());
    for (const auto& [name, value] : parsed.values) typed.push_back(name);
    for (const auto& name : typed)
        if (!taken.contains(name))
            throw UsageError(fmt::format("{} does not go with {}", name, what),
                             fmt::format("{} takes {}", what, fmt::join(taken, ", ")));
}

Exit show_why(Session& session, const Parsed& parsed, std::size_t first) {
    check_options(parsed, "note why", {"--why", "--system", "--year"});
    session.database = reading_place(session);
    const Catalog catalog = Catalog::open(session.database, Access::read);
    const bool is_system = parsed.words.size() == first + 1 && parsed.text("--system").has_value();
    const NotePlace place = place_of_words(catalog, parsed, first, is_system, UnsaidSystem::is_asked_for);
    const WhyAnswer answer = why_answer(catalog.ledger_at(place.path), place.year);
    session.answer(why_text(answer, session.screen), why_json(answer));
    return Exit::done;
}

FoundNote chosen_note(const Catalog& catalog, const std::string& typed) {
    constexpr std::size_t fewest_digits = 8;
    const bool is_hex = typed.size() <= 32 && std::all_of(typed.begin(), typed.end(), [](char c) {
                            return (c >= '0' && c <= '9') || (c >= 'a' && c <= 'f') || (c >= 'A' && c <= 'F');
                        });
    if (!is_hex || typed.size() < fewest_digits)
        throw UsageError(fmt::format("\"{}\" is no note's id", shown(typed)),
                         "write at least its first 8 digits, 0 to 9 and a to f, as note why prints them");
    const auto found = catalog.notes_by_id(typed);
    if (found.empty())
        throw NoAnswer(fmt::format("there is no note {}", typed),
                       "`tapbook note why VEHICLE TAP` lists the notes of a tap with their ids");
    if (found.size() > 1) {
        std::string list;
        for (const auto& note : found) list += fmt::format("\n  {}  {}", to_hex(note.id), note.path);
        throw UsageError(fmt::format("\"{}\" begins the ids of {} notes:{}", typed, found.size(), list),
                         "write more digits");
    }
    return found.front();
}

Exit withdraw_note(Session& session, const Parsed& parsed) {
    check_options(parsed, "note withdraw", {"--reason", "--dry-run"});
    if (parsed.words.size() != 2) throw UsageError("note withdraw needs the note's ID", "note why prints the ids");
    const auto reason = parsed.word<WithdrawalReason>("--reason");
    if (!reason) throw UsageError("why is it withdrawn? Say --reason", "typo, wrong-car, metered-again or asked-to");
    Catalog catalog = Catalog::open(session.database, Access::write);
    const FoundNote note = chosen_note(catalog, parsed.words[1]);
    if (!note.is_own)
        throw NoAnswer(fmt::format("note {} was written by {}: only that shop can withdraw it", short_id(note.id),
                                   note.shop_name.empty() ? "shop " + note.shop.substr(0, 8) : note.shop_name),
                       "note what you found yourself; `tapbook shops block ID` leaves out a whole shop");
    const WithdrawReport report = catalog.withdraw(note.id, *reason, session.today, parsed.flag("--dry-run"));
    session.answer(withdraw_text(report, session.screen), withdraw_json(report));
    return Exit::done;
}

}  // namespace

Exit run_note(Session& session, const Parsed& parsed) {
    if (parsed.words.front() == "withdraw") return withdraw_note(session, parsed);
    if (parsed.words.front() == "why") return show_why(session, parsed, 1);
    if (parsed.flag("--why")) return show_why(session, parsed, 0);
    return take_note(session, parsed);
}

Exit run_undo(Session& session, const Parsed& parsed) {
    Catalog catalog = Catalog::open(session.database, Access::write);
    const UndoReport report = catalog.undo(session.today, parsed.flag("--dry-run"));
    session.answer(undo_text(report, session.screen), undo_json(report));
    return Exit::done;
}

}  // namespace tapbook
