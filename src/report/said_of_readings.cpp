// What is said of a reading: where it lies, and what a check asks back.
#include <fmt/format.h>

#include "report/said.h"

namespace tapbook {
namespace {

std::string predicted_words(const MillivoltRange& range) {
    const auto end = [](std::int64_t millivolts) {
        return fmt::format("{:.1f}", static_cast<double>(millivolts) / 1000);
    };
    if (range.low && range.high) return fmt::format("{} to {} V", end(*range.low), end(*range.high));
    if (range.low) return fmt::format("{} V or more", end(*range.low));
    if (range.high) return fmt::format("up to {} V", end(*range.high));
    return "nothing to predict it from";
}

}  // namespace

std::string against_words(const ComparedReading& compared) {
    const std::string range = predicted_words(compared.predicted.range);
    switch (compared.against) {
        case Against::inside:
        case Against::below:
        case Against::above:
            return fmt::format("{} the predicted {}", word_of(compared.against), range);
        case Against::other_volume:
            return fmt::format("not at full volume, where {} is predicted", range);
        case Against::not_predicted:
            break;
    }
    return "nothing to predict it from";
}

std::string_view severity_words(EntrySeverity severity) {
    switch (severity) {
        case EntrySeverity::refused:
            return "cannot be";
        case EntrySeverity::sure:
            return "are you sure?";
        case EntrySeverity::info:
            break;
    }
    return "info";
}

std::string complaint_words(const EntryComplaint& complaint) {
    std::string text = complaint.text;
    for (const auto& offer : complaint.offers)
        text += fmt::format("{}{}", &offer == &complaint.offers.front() ? "; is it: " : "; ", offer);
    return text;
}

}  // namespace tapbook
