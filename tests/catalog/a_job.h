// What do the tests of jobs start from? The car without notes, and a job on it.
#pragma once

#include "a_catalog.h"

inline const std::string second_tap = car + "/base/front-right/radio-plug";

// The car with two tap points and no notes.
inline tapbook::Batch bare_car() {
    using tapbook::EntryKind;
    tapbook::Batch batch = one_car();
    batch.notes.clear();
    batch.entries.push_back(entry(EntryKind::circuit, car + "/base/front-right", {{"role", words("speaker")}}, 40));
    batch.entries.push_back(entry(EntryKind::tap, second_tap, {{"place", words("radio")}}, 50));
    return batch;
}

inline tapbook::JobStart job_start(const std::string& plate = "AB 123") {
    return {car, "base", 2014, "bill 77", plate, "mk"};
}

inline tapbook::Catalog catalog_with_job(const CatalogFolder& folder) {
    auto catalog = folder.create();
    catalog.add(bare_car(), false, today);
    catalog.start_job(job_start(), today, tapbook::repeatable_random("jobs"));
    return catalog;
}

inline tapbook::JobReading colours_at(const std::string& path, const char* positive, const char* negative) {
    tapbook::JobReading reading;
    reading.path = path;
    reading.values = {{"positive", words(positive)}, {"negative", words(negative)}};
    return reading;
}

inline tapbook::JobClosing fine_closing() {
    tapbook::JobClosing closing;
    closing.left.rest = tapbook::CheckAnswer::ok;
    return closing;
}

// Each complaint of the InputRefused that `action` throws as "place: message | hint"; none when it throws none.
template <class Action>
std::vector<std::string> refusals_of(Action action) {
    std::vector<std::string> lines;
    try {
        action();
    } catch (const tapbook::InputRefused& refused) {
        for (const auto& complaint : refused.complaints())
            lines.push_back(complaint.place.file + ": " + complaint.message + " | " + complaint.hint);
    }
    return lines;
}
