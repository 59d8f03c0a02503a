// Notes for the tests, written as short as they are read: pair_note(1, "WH", "BK").by("S1", "a").
#pragma once

#include <string>

#include "evidence/evidence.h"
#include "evidence/ledgers.h"

namespace tapbook::ledgers {

struct Written : Note {
    Written& by(std::string shop_id, std::string car_token = "a") {
        shop = std::move(shop_id);
        car = std::move(car_token);
        return *this;
    }
    Written& how(Method found, std::optional<PolarityMethod> positive_found = {}) {
        method = found;
        polarity = positive_found;
        return *this;
    }
    Written& in(int model_year) {
        year = model_year;
        return *this;
    }
    Written& at(ConnectorSide half) {
        side = half;
        return *this;
    }
};

// A metered note by S1 on car "a"; "" for a colour that is not named.
inline Written pair_note(int number, std::string_view positive, std::string_view negative) {
    Written note;
    note.id = id_of(number);
    note.date = "2021-03-04";
    note.method = Method::metered;
    note.positive = wire_colour_from_code(positive);
    note.negative = wire_colour_from_code(negative);
    return note.by("S1");
}

inline PairStanding pair_of(const std::vector<Note>& notes, std::optional<ConnectorSide> side = {},
                            std::optional<int> year = {}, int withdrawn = 0) {
    return pair_standing(notes, side, known(), year, withdrawn);
}

inline std::string code_or_dash(const std::optional<WireColour>& colour) {
    return colour ? code(*colour) : "-";
}

// "+WH -BK", with "-" for a conductor that is not printed.
inline std::string printed(const PairStanding& standing) {
    return "+" + code_or_dash(standing.positive) + " -" + code_or_dash(standing.negative);
}

// Colours, shops, methods, sides, marks and years drawn from a few.
inline Note any_pair_note(Dice& dice, int number) {
    const std::vector<std::string> colours = {
        "", "WH", "BK", "BN", "BN/YE", "LTQ/DVT/LOG", "LBU/DVT/LPK", "LGN/DRD/LOG", "WH/BK"};
    auto note = pair_note(number, dice.one_of(colours), dice.one_of(colours));
    note.by(dice.one_of<std::string>({"S1", "S2", "S3", "S4", "X1"}),
            dice.one_of<std::string>({"", "a", "b", "c", "d", "e"}));
    note.method = words_of<Method>()[static_cast<std::size_t>(dice.below(4))].value;
    if (dice.one_in(2)) note.polarity = words_of<PolarityMethod>()[static_cast<std::size_t>(dice.below(6))].value;
    if (dice.one_in(4)) note.side = dice.one_in(2) ? ConnectorSide::radio : ConnectorSide::body;
    if (note.positive == note.negative || dice.one_in(5))
        note.negative_mark = dice.one_of<std::string>({"ring", "a ridge along the whole length of the insulation"});
    if (!dice.one_in(4)) note.year = 2010 + dice.below(12);
    if (dice.one_in(3)) note.positive_cavity = dice.one_of<std::string>({"3", "4", "A3"});
    if (dice.one_in(3)) note.drive = dice.one_in(3) ? Drive::single_ended : Drive::bridged;
    note.knew_first = dice.one_in(6);
    return note;
}

inline std::vector<Note> any_pair_notes(Dice& dice, int most) {
    std::vector<Note> notes;
    for (int i = dice.below(most + 1); i > 0; --i) notes.push_back(any_pair_note(dice, i));
    return notes;
}

}  // namespace tapbook::ledgers
