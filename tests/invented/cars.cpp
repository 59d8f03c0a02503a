// See cars.h.
#include "invented/cars.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <set>

#include "invented/dice.h"
#include "trade/trade.h"

namespace invented {
namespace {

using tapbook::VehicleName;

constexpr const char* openings[] = {"b", "br", "d",  "dr", "f", "g",  "gl", "h", "j",  "k", "kl", "l", "m", "n",
                                    "p", "pl", "qu", "r",  "s", "sk", "st", "t", "tr", "v", "w",  "y", "z", "th"};
constexpr const char* vowels[] = {"a", "e", "i", "o", "u", "ae", "ei", "ou", "ia"};
constexpr const char* closings[] = {"", "", "", "l", "n", "r", "s", "m", "nd", "rk", "lt", "sk", "x"};
constexpr const char* endings[] = {"ow", "ick", "el", "ane", "ith", "orn", "ey", "ard", "ov", "une", "est", "ia"};
constexpr const char* variants[] = {"Long", "Cross", "Plus", "Max", "Sport", "Tour", "Neo", "Grand"};
constexpr const char* bodies[] = {"sedan", "hatchback", "wagon", "coupe", "suv", "van", "pickup", "convertible"};
constexpr int oldest = 1994, newest = 2026;

std::string capital(std::string word) {
    if (!word.empty() && word[0] >= 'a' && word[0] <= 'z') word[0] = static_cast<char>(word[0] - 'a' + 'A');
    return word;
}

// One vowel in a few dozen names carries an accent.
std::string with_accent(std::string word, Dice& dice) {
    struct Accent {
        char plain;
        const char* accented;
    };
    constexpr Accent accents[] = {{'a', "å"}, {'e', "é"}, {'o', "ö"}, {'u', "ü"}, {'i', "í"}};
    const auto& accent = dice.one_of(accents);
    const auto place = word.find(accent.plain, 1);
    if (place != std::string::npos) word.replace(place, 1, accent.accented);
    return word;
}

std::string spoken_word(Dice& dice) {
    std::string word;
    for (int syllables = dice.between(1, 2); syllables > 0; --syllables)
        word += std::string(dice.one_of(openings)) + dice.one_of(vowels) + dice.one_of(closings);
    word = capital(word + dice.one_of(openings) + dice.one_of(endings));
    return dice.percent(3) ? with_accent(word, dice) : word;
}

std::string make_name(Dice& dice) {
    if (dice.percent(8)) return spoken_word(dice) + (dice.percent(50) ? "-" : " ") + spoken_word(dice);
    return spoken_word(dice);
}

// A model beside those the make has already: every fourth is a variant of one of them.
std::string model_name(const std::vector<std::string>& others, Dice& dice) {
    const int kind = dice.between(0, 99);
    if (kind < 25 && !others.empty()) {
        const std::string& other = dice.pick(others);
        if (dice.percent(50)) return fmt::format("{} {}", other, dice.one_of(variants));
        return fmt::format("{} {}", other, dice.between(2, 9));
    }
    if (kind < 32)
        return fmt::format("{}{}{}", static_cast<char>('A' + dice.below(26)), dice.percent(50) ? "-" : "",
                           dice.between(1, 9) * (dice.percent(60) ? 1 : 10));
    if (kind < 40) return fmt::format("{}-{}", spoken_word(dice), spoken_word(dice));
    if (kind < 50) return fmt::format("{} {}", spoken_word(dice), spoken_word(dice));
    if (kind < 55) return fmt::format("{} {}", spoken_word(dice), dice.between(2, 9) * 10);
    return spoken_word(dice);
}

VehicleName car(const std::string& make, const std::string& model, const std::string& body, int first, int last) {
    using tapbook::slug_from;
    return {fmt::format("{}/{}/{}/{}", slug_from(make), slug_from(model), slug_from(body), first),
            make,
            model,
            body,
            first,
            last};
}

// One to four cars: one or two bodies, each built in one or two generations.
void add_model(const std::string& make, const std::string& model, Dice& dice, std::vector<VehicleName>& cars,
               std::set<std::string>& paths) {
    const std::size_t first_body = dice.below(std::size(bodies));
    for (std::size_t i = 0, count = 1 + dice.below(3); i < count; ++i) {
        const std::string body = bodies[(first_body + i * 3) % std::size(bodies)];
        int first = dice.between(oldest, newest - 8);
        for (std::size_t generations = 1 + dice.below(3); generations > 0 && first <= newest; --generations) {
            const int last = std::min(newest, first + dice.between(3, 8));
            VehicleName one = car(make, model, body, first, last);
            if (paths.insert(one.path).second) cars.push_back(std::move(one));
            first = last + dice.between(1, 3);
        }
    }
}

}  // namespace

std::vector<VehicleName> cars(std::uint64_t seed, std::size_t count) {
    Dice dice(seed);
    // Larger catalogs have more makes, and more models of each.
    const auto makes = static_cast<std::size_t>(std::ceil(1.2 * std::sqrt(static_cast<double>(count))));
    std::vector<std::string> names;
    for (std::set<std::string> slugs; names.size() < makes;)
        if (std::string name = make_name(dice); slugs.insert(tapbook::slug_from(name)).second)
            names.push_back(std::move(name));
    std::vector<std::vector<std::string>> models(makes);
    std::vector<VehicleName> all;
    for (std::set<std::string> paths, known; all.size() < count;) {
        const std::size_t make = dice.below(makes);
        std::string model = model_name(models[make], dice);
        if (!known.insert(tapbook::slug_from(names[make] + "/" + model)).second || model.size() > 30) continue;
        add_model(names[make], model, dice, all, paths);
        models[make].push_back(std::move(model));
    }
    all.resize(count);
    std::sort(all.begin(), all.end(), [](const auto& a, const auto& b) { return a.path < b.path; });
    return all;
}

}  // namespace invented
