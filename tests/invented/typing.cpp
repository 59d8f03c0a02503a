// See typing.h.
#include "invented/typing.h"

#include <fmt/format.h>

#include <algorithm>

#include "trade/trade.h"

namespace invented {
namespace {

using tapbook::VehicleName;

// Letters as they are typed: small, without accents.
std::string plain(const std::string& name) {
    return tapbook::folded(name);
}

std::string two_digits(int year) {
    return fmt::format("{:02}", year % 100);
}

struct Needed {
    bool body = false, year = false;
};

// What it takes to tell cars[place] from the cars of the same make and model. Cars of one model follow each other.
Needed needed(const std::vector<VehicleName>& cars, std::size_t place) {
    const VehicleName& wanted = cars[place];
    Needed result;
    const auto look = [&](const VehicleName& other) {
        if (other.make != wanted.make || other.model != wanted.model) return false;
        (other.body == wanted.body ? result.year : result.body) = true;
        return true;
    };
    for (std::size_t i = place + 1; i < cars.size() && look(cars[i]);) ++i;
    for (std::size_t i = place; i > 0 && look(cars[i - 1]);) --i;
    return result;
}

std::string joined(const std::vector<std::string>& words, std::string_view between) {
    std::string all;
    for (const auto& word : words) {
        if (!all.empty()) all += between;
        all += word;
    }
    return all;
}

// "orrery vel ostrel" -> "orreryvelostrel" or "orrery velostrel"; body and year glued as well now and then.
std::string glued(const std::vector<std::string>& names, const std::vector<std::string>& more, Dice& dice) {
    std::string make = names.front(), model = joined({names.begin() + 1, names.end()}, "");
    std::erase(make, ' ');
    std::erase(model, ' ');
    std::string all = dice.percent(70) ? make + model : make + " " + model;
    for (const auto& word : more) all += (dice.percent(30) ? "" : " ") + word;
    return all;
}

std::string swapped(std::vector<std::string> words, Dice& dice) {
    const auto before = words;
    if (words.size() < 2) return joined(words, " ");
    while (words == before)
        for (std::size_t i = words.size() - 1; i > 0; --i) std::swap(words[i], words[dice.below(i + 1)]);
    return joined(words, " ");
}

}  // namespace

std::string with_typo(std::string text, Dice& dice) {
    constexpr std::string_view letters = "abcdefghijklmnopqrstuvwxyz";
    for (std::string before = text; text == before;) {
        const std::size_t place = dice.below(text.size());
        const char letter = letters[dice.below(letters.size())];
        switch (dice.below(4)) {
            case 0:
                text.insert(place, 1, letter);
                break;
            case 1:
                if (text.size() > 1) text.erase(place, 1);
                break;
            case 2:
                text[place] = letter;
                break;
            default:  // not our enum
                if (place + 1 < text.size()) std::swap(text[place], text[place + 1]);
        }
    }
    return text;
}

std::string typed(const std::vector<VehicleName>& cars, std::size_t place, Typing typing, Dice& dice) {
    const VehicleName& car = cars[place];
    const Needed need = needed(cars, place);
    const int year = dice.between(car.first_year, car.last_year);
    std::vector<std::string> more;
    if (need.body || dice.percent(10)) more.push_back(plain(car.body));
    const bool short_year = typing == Typing::two_digit_year;
    if (need.year || short_year || dice.percent(20))
        more.push_back(short_year ? two_digits(year) : std::to_string(year));
    std::vector<std::string> names = {plain(car.make), plain(car.model)};
    std::vector<std::string> all = names;
    all.insert(all.end(), more.begin(), more.end());
    switch (typing) {
        case Typing::exact:
        case Typing::two_digit_year:
            return joined(all, " ");
        case Typing::one_typo:
            return with_typo(joined(all, " "), dice);
        case Typing::two_typos:
            return with_typo(with_typo(joined(all, " "), dice), dice);
        case Typing::make_missing:
            return joined({all.begin() + 1, all.end()}, " ");
        case Typing::words_swapped: {
            std::vector<std::string> words;
            for (const auto& part : all)
                for (auto& word : tapbook::folded_words(part)) words.push_back(std::move(word));
            return swapped(words, dice);
        }
        case Typing::words_glued:
            return glued(names, more, dice);
    }
    return {};
}

}  // namespace invented
