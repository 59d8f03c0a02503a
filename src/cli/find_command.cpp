// find: which cars do a few words or a VIN mean?
#include <fmt/format.h>

#include "cli/chosen.h"

namespace tapbook {
namespace {

void refuse_nothing_found(const Catalog& catalog, const FoundVehicles& found, const std::string& words) {
    if (found.no_vin) throw UsageError(found.no_vin->message(), "a car can be found by its make and model as well");
    if (found.vin) throw no_car_of_vin(*found.vin);
    if (catalog.vehicle_names().empty())
        throw NoAnswer("the catalog holds no cars yet", "tapbook add FILE.toml puts one in");
    throw NoAnswer(fmt::format("no car matches \"{}\"", shown(words)), "try fewer words; tapbook find lists all cars");
}

}  // namespace

NoAnswer no_car_of_vin(const Vin& vin) {
    return NoAnswer(
        fmt::format("no car's VIN patterns fit this VIN ({})", vin_remark(vin)),
        fmt::format("find the car by its name; with vin_patterns = [\"{}\"] in its vehicle file, tapbook add "
                    "makes such VINs known (? stands for any character)",
                    suggested_pattern(vin)));
}

Exit run_find(Session& session, const Parsed& parsed) {
    session.database = reading_place(session);
    const Catalog catalog = Catalog::open(session.database, Access::read);
    const std::string words = parsed.joined_words();
    const FoundVehicles found = catalog.find(words);
    if (found.hits.empty() && !session.json) refuse_nothing_found(catalog, found, words);
    session.answer([&] { return find_text(found.hits, session.screen, found.vin); },
                   [&] { return find_json(found.hits, found.vin); });
    return found.hits.empty() ? Exit::answer_is_no : Exit::done;
}

}  // namespace tapbook
