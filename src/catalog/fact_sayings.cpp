// The whole ledger, car by car: of each question the votes of cars that were looked at, where two shops or more speak.
// What the model year explains is no error.
#include <algorithm>

#include "catalog/noted_cars.h"

namespace tapbook {

std::vector<std::string> noted_cars(sqlite::Database& database) {
    std::vector<std::string> cars;
    auto paths = database.prepare("SELECT min(path) FROM subject GROUP BY vehicle ORDER BY 1");
    while (paths.step()) cars.emplace_back(path_head(paths.text(0), vehicle_depth));
    return cars;
}

std::map<std::string, ConnectorSide, std::less<>> sides_of_taps(sqlite::Database& database, const AliasClasses& same,
                                                                std::string_view car) {
    std::map<std::string, ConnectorSide, std::less<>> sides;
    for (const auto& tap : entries_of_car(database, same, EntryKind::tap, car))
        if (const auto side = word_field<ConnectorSide>(tap.entry.values, "side"))
            sides.emplace(text_field(tap.entry.values, "path"), *side);
    return sides;
}

namespace {

bool is_shared(const std::vector<ShopSaying>& sayings) {
    return std::any_of(sayings.begin(), sayings.end(),
                       [&](const ShopSaying& saying) { return saying.shop != sayings.front().shop; });
}

void add_facts(std::vector<FactSayings>& facts, const std::string& path, const std::vector<Note>& notes,
               const Witnesses& witnesses) {
    const NoteKind kind = notes.front().kind;
    const NotedStanding standing = noted_standing(kind, notes, witnesses);
    for (const Question question : questions_of(kind)) {
        if (standing_on(standing, question).grade == Grade::year_split) continue;
        FactSayings fact{path, question, {}};
        for (const Vote& vote : votes_on(question, notes, witnesses.side))
            if (vote.looked_at) fact.sayings.push_back({vote.shop, vote.value});
        if (is_shared(fact.sayings)) facts.push_back(std::move(fact));
    }
}

}  // namespace

std::vector<FactSayings> Catalog::shared_sayings() const {
    try {
        std::vector<FactSayings> facts;
        const auto cars = noted_cars(state_->database);
        const auto [known, same] = counting_in(state_->database);
        PlacesSeen seen(same);
        Steps steps(state_->progress, static_cast<std::int64_t>(cars.size()));
        for (const auto& car : cars) {
            steps.one();
            const LedgerNotes ledger = notes_of_car(state_->database, same, car);
            const auto sides = sides_of_taps(state_->database, same, car);
            for (const auto& [path, notes] : ledger.live) {
                const auto side = sides.find(path);
                if (!notes.empty() && seen.insert_first(path))
                    add_facts(facts, path, notes,
                              {side == sides.end() ? std::nullopt : std::optional(side->second), known, 0, {}});
            }
        }
        return facts;
    } catch (const sqlite::Error& error) {
        throw_catalog_error(error, state_->file);
    }
}

}  // namespace tapbook
