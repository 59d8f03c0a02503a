// What do the readings of one place of a job mean? The meter's own verdict first, then each reading against its
// prediction, the colours against the catalog, and what is still to read.
#pragma once

#include "rules/predicted_reading.h"

namespace tapbook {

struct ComparedReading {
    PredictedReading predicted;
    std::int64_t millivolts = 0;
    Against against = Against::inside;
    std::string_view means;
};

struct ReadingAnswer {
    ShopJob job;  // with the reading
    std::string path;
    NoteKind kind = NoteKind::pair;
    Values readings;
    std::optional<MeterVerdict> verdict;  // when both d.c. and the a.c. were read
    std::optional<SwitchedClass> live;    // of a power circuit
    std::vector<ComparedReading> compared;
    std::vector<EntryComplaint> complaints;  // refused: it will hold the closing back
    std::string catalog_line;                // what the catalog says of this place; "" when it says nothing
    std::vector<std::string> to_read;        // still missing, in order
    bool practice = false;
    bool written = false;
};

// What the job has at `path`, explained. `car` is what the catalog knows of the car; `before` its notes there.
ReadingAnswer reading_answer(const ShopJob& job, const std::string& path, const CarFacts& car, const TapLedger& before);

}  // namespace tapbook
