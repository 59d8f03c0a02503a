// Imagined cars are added to the votes until standing_of() says PROVEN.
#include "evidence/next_step.h"

#include <fmt/format.h>

#include <algorithm>

namespace tapbook {
namespace {

constexpr int points_of_a_meter = 3;
constexpr int most_shops = 6, most_cars_each = 3;

Vote imagined(const std::string& value, const std::string& shop, int number) {
    Vote vote;
    vote.value = value;
    vote.points = points_of_a_meter;
    vote.looked_at = vote.measured = true;
    vote.shop = shop;
    vote.car = fmt::format("imagined {} {}", shop, number);
    vote.note = short_hash(vote.car);
    vote.method_word = word_of(Method::metered);
    return vote;
}

bool would_prove(std::span<const Vote> votes, KnownShops known, const std::string& own_shop, const std::string& value,
                 const ProvingPlan& plan) {
    std::vector<Vote> all(votes.begin(), votes.end());
    for (int car = 0; car < plan.here; ++car) all.push_back(imagined(value, own_shop, car));
    for (int shop = 0; shop < plan.others; ++shop) {
        const std::string name = fmt::format("imagined {}", shop);
        known.insert(name);
        for (int car = 0; car < plan.each; ++car) all.push_back(imagined(value, name, car));
    }
    const Standing standing = standing_of(all, known);
    return standing.grade == Grade::proven && standing.value == value;
}

int cars_of(const ProvingPlan& plan) {
    return plan.here + plan.others * plan.each;
}

// All plans, fewest cars first; of equal ones this shop's own first, then few shops.
std::vector<ProvingPlan> plans() {
    std::vector<ProvingPlan> list;
    for (int here = 0; here <= most_cars_each; ++here) {
        if (here > 0) list.push_back({here, 0, 0});
        for (int others = 1; others <= most_shops; ++others)
            for (int each = 1; each <= most_cars_each; ++each) list.push_back({here, others, each});
    }
    std::stable_sort(list.begin(), list.end(), [](const ProvingPlan& a, const ProvingPlan& b) {
        return std::tuple(cars_of(a), a.others, -a.here) < std::tuple(cars_of(b), b.others, -b.here);
    });
    return list;
}

std::string number_words(int number) {
    constexpr std::string_view names[] = {"no", "one", "two", "three", "four", "five", "six"};
    return number >= 0 && number <= most_shops ? std::string(names[number]) : std::to_string(number);
}

std::string_view method_that_proves(Question question) {
    switch (question) {
        case Question::polarity:
            return "phase-checked";
        case Question::pair:
        case Question::live:
        case Question::wire:
        case Question::premium:
            break;
    }
    return "metered";
}

std::string cars_words(int cars, Question question) {
    return fmt::format("{} more {} car{}", number_words(cars), method_that_proves(question), cars == 1 ? "" : "s");
}

std::string capitalised(std::string text) {
    if (!text.empty() && text[0] >= 'a' && text[0] <= 'z') text[0] = static_cast<char>(text[0] - 'a' + 'A');
    return text;
}

// Would it be PROVEN if every shop behind it were on the list?
bool waits_for_unknown_shops(std::span<const Vote> votes, KnownShops known) {
    std::vector<Vote> all(votes.begin(), votes.end());
    for (auto& vote : all) {
        vote.vouched = true;
        known.insert(vote.shop);
    }
    return standing_of(all, known).grade == Grade::proven;
}

std::string step_on(Question question, const Standing& standing, std::span<const Vote> votes, const KnownShops& known,
                    const std::string& own_shop) {
    switch (standing.grade) {
        case Grade::blank:
        case Grade::pulled:
            return question == Question::live
                       ? "Read the volts with the key off, in accessory and in run: then it counts."
                       : "No note says it yet; one look is enough to start.";
        case Grade::mixed:
            return standing.find_system ? "Find out which sound system this is: each value is proven in another one."
                                        : "The notes disagree: nothing is picked until one value leads by far. "
                                          "Meter one more car.";
        case Grade::year_split:
            return "It changed with the model year: always note the year.";
        case Grade::proven:
            return "Proven. Meter before you cut all the same.";
        case Grade::paper:
        case Grade::one_car:
        case Grade::matched:
            break;
    }
    if (waits_for_unknown_shops(votes, known))
        return "It would be proven if the shops behind it were on your list: `tapbook shops` shows them.";
    const auto plan = proving_plan(votes, known, own_shop);
    return plan ? plan_words(*plan, question)
                : "Too much stands against it to be proven by a few cars: look for what differs between them.";
}

}  // namespace

std::optional<ProvingPlan> proving_plan(std::span<const Vote> votes, const KnownShops& known,
                                        const std::string& own_shop) {
    const Standing standing = standing_of(votes, known);
    if (!standing.value || standing.grade == Grade::proven) return std::nullopt;
    for (const auto& plan : plans())
        if (would_prove(votes, known, own_shop, *standing.value, plan)) return plan;
    return std::nullopt;
}

std::string plan_words(const ProvingPlan& plan, Question question) {
    const std::string others =
        plan.others == 1 ? "another shop" : fmt::format("each of {} other shops", number_words(plan.others));
    if (plan.others == 0) return capitalised(cars_words(plan.here, question)) + " at this shop would prove it.";
    if (plan.here == 0)
        return capitalised(fmt::format("{} at {} would prove it.", cars_words(plan.each, question), others));
    return capitalised(fmt::format("{} at this shop and {} at {} would prove it.", cars_words(plan.here, question),
                                   number_words(plan.each), others));
}

std::string next_step(NoteKind kind, std::span<const Note> notes, const Witnesses& witnesses,
                      const std::string& own_shop) {
    const NotedStanding standing = noted_standing(kind, notes, witnesses);
    const auto& settled = standing.pair.pair.value;
    const auto step = [&](Question question) {
        return step_on(question, standing_on(standing, question), votes_on(question, notes, witnesses.side, settled),
                       witnesses.known, own_shop);
    };
    switch (kind) {
        case NoteKind::pair:
            if (standing.pair.pair.grade != Grade::proven) return step(Question::pair);
            if (standing.pair.polarity.grade == Grade::proven) return step(Question::pair);
            return "The pair is proven. For the polarity: " + step(Question::polarity);
        case NoteKind::switched:
            return step(Question::live);
        case NoteKind::system:
            break;
    }
    return step(Question::premium);
}

}  // namespace tapbook
