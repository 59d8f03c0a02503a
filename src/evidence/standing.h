// What do all notes on one question say together? Votes in, one grade and the graded values out.
//
// Points of a value: a shop's best note, one more for each further car, never above 5; plus one for each source of
// copied notes, never above 2. Shops that are not known count together as one shop. A note without a car token counts
// as a car only where its shop has no told car for that value. A shop that contradicts itself on one car strikes its
// older notes; copied notes neither strike nor are struck.
//
// Order of decision: no vote (PULLED or BLANK), YEAR SPLIT (year_split.h), PROVEN, MIXED, then by the cars behind the
// leading value.
#pragma once

#include <optional>
#include <set>
#include <span>
#include <string>
#include <vector>

#include "evidence/grade.h"
#include "evidence/vote.h"
#include "evidence/year_split.h"

namespace tapbook {

// Ids of the shops this shop knows, its own among them.
using KnownShops = std::set<std::string, std::less<>>;

// One value with what stands behind it. Struck notes play no part.
struct Claim {
    std::string value;
    int points = 0;
    int cars = 0;              // looked at; 0 for paper
    int shops = 0;             // that looked at a car; all unknown ones together are one
    int known_shops = 0;       // those of them that this shop knows
    int measured_cars = 0;     // with a metered or scoped note
    int best_method_cars = 0;  // looked at by the best method
    int best_method_shops = 0;
    int notes = 0;                             // copied ones included
    std::optional<int> first_year, last_year;  // model years of the cars looked at
    std::string best_method;                   // word of the note with most points
    Grade grade = Grade::blank;                // by itself, whatever stands against it: PAPER, ONE CAR, MATCHED
};

// An older note that the same shop answered with another value on the same car.
struct Strike {
    RecordId note{};
    std::string value;
    RecordId by{};  // the newest note of that shop on that car
    std::string date;
};

// One value before the change, another after it, each graded by the notes of its own years.
struct SplitStanding {
    YearSplit change;
    Grade old_grade = Grade::blank, new_grade = Grade::blank;
};

struct Standing {
    Grade grade = Grade::blank;
    std::optional<std::string> value;  // absent for BLANK, PULLED, MIXED, and YEAR SPLIT without a year
    std::vector<Claim> claims;         // leading first; equal ones in order of their text
    std::vector<Strike> struck;        // by date, then id
    bool outside_years = false;        // the asked year is outside the years seen: `grade` counts one lower
    std::optional<int> asked_year;
    std::optional<SplitStanding> split;  // with a year asked on one side of it, the rest is of that side alone
    bool find_system = false;            // MIXED, and each value is PROVEN in a recorded sound system
};

enum class YearTest { on, off };

// The standing of the votes, in whatever order they come. `year` is the model year asked for; `withdrawn` counts notes
// that are no longer there.
//
// PROVEN: 6 points before the next value, two known shops, two cars, two cars metered or scoped, and four fifths of all
// points. MIXED: the next value has 3 points or ties the leading one; paper never ties a value that was looked at, and
// such a value always leads. An asked year outside the years seen of the leading value (none dated: outside) lowers
// PROVEN to MATCHED to ONE CAR to PAPER and no further. YEAR SPLIT with a year asked: the standing of that side; a year
// between the last old and the first new car has no value. A vote without a year counts on the side whose value it
// names, and against both when it names neither. `year_test` off asks for one value over all years.
Standing standing_of(std::span<const Vote> votes, const KnownShops& known, std::optional<int> year = {},
                     int withdrawn = 0, YearTest year_test = YearTest::on);

// Values that are PROVEN for the same tap point in the recorded sound systems of a car.
using ProvenElsewhere = std::set<std::string, std::less<>>;

// The standing of notes on cars whose sound system was not written down. Where they disagree and each of their values
// is PROVEN in a recorded system, the system explains it: `find_system` is set and no year split is tried.
Standing unrecorded_standing_of(std::span<const Vote> votes, const KnownShops& known, std::optional<int> year,
                                int withdrawn, const ProvenElsewhere& proven);

}  // namespace tapbook
