// Ledgers for the tests: single votes by hand, and small random ones drawn from a seed.
#pragma once

#include <algorithm>
#include <random>
#include <string>
#include <vector>

#include "evidence/evidence.h"

namespace tapbook::ledgers {

inline RecordId id_of(int number) {
    RecordId id{};
    for (int i = 0; i < 4; ++i) id[static_cast<std::size_t>(15 - i)] = static_cast<unsigned char>(number >> (8 * i));
    return id;
}

// A vote by the pair scale. `number` makes the note's id.
inline Vote vote(int number, std::string value, Method method, std::string shop, std::string car,
                 std::optional<int> year = {}) {
    Note note;
    note.id = id_of(number);
    note.method = method;
    note.shop = std::move(shop);
    note.car = std::move(car);
    note.year = year;
    note.date = "2020-01-01";
    return vote_of(note, std::move(value));
}

// S1..S7 are known, X1.. are not.
inline const KnownShops& known() {
    static const KnownShops shops = {"S1", "S2", "S3", "S4", "S5", "S6", "S7"};
    return shops;
}

class Dice {
  public:
    explicit Dice(unsigned seed) : engine_(seed) {}
    int below(int end) { return static_cast<int>(engine_() % static_cast<unsigned>(end)); }
    bool one_in(int chances) { return below(chances) == 0; }
    template <class T>
    const T& one_of(const std::vector<T>& list) {
        return list[static_cast<std::size_t>(below(static_cast<int>(list.size())))];
    }
    template <class T>
    void shuffle(std::vector<T>& list) {
        for (std::size_t i = list.size(); i > 1; --i)
            std::swap(list[i - 1], list[static_cast<std::size_t>(below(static_cast<int>(i)))]);
    }

  private:
    std::mt19937 engine_;
};

// Few shops, cars, sources and days, so that cars repeat, shops contradict themselves and caps bite.
inline Vote any_vote(Dice& dice, int number) {
    Note note;
    note.id = id_of(number);
    note.method = dice.one_of<Method>({Method::scoped, Method::metered, Method::metered, Method::seen, Method::copied});
    note.shop = dice.one_of<std::string>({"S1", "S1", "S2", "S3", "X1", "X2"});
    note.car = dice.one_of<std::string>({"", "a", "b", "c", "d"});
    note.source = dice.one_of<std::string>({"", "sheet", "forum", "memory"});
    note.date = dice.one_of<std::string>({"2019-05-01", "2020-05-01", "2021-05-01"});
    note.turn = dice.below(2);
    if (!dice.one_in(4)) note.year = 2010 + dice.below(6);
    note.knew_first = dice.one_in(5);
    note.has_proof = dice.one_in(2);
    note.vouched = !dice.one_in(8);
    return vote_of(note, dice.one_of<std::string>({"white", "white", "white", "tan", "brown"}));
}

inline std::vector<Vote> any_votes(Dice& dice, int most) {
    std::vector<Vote> votes;
    for (int i = dice.below(most + 1); i > 0; --i) votes.push_back(any_vote(dice, i));
    return votes;
}

// Votes on a fact that mostly changed its value in some year.
inline std::vector<Vote> any_changed_votes(Dice& dice, int most) {
    const int change = 2011 + dice.below(4);
    auto votes = any_votes(dice, most);
    for (auto& vote : votes) {
        vote.car += std::to_string(dice.below(3));
        if (!dice.one_in(8)) vote.value = !vote.year || *vote.year < change ? "white" : "brown";
    }
    return votes;
}

}  // namespace tapbook::ledgers
