// See cavity_use.h.
#include "rules/cavity_use.h"

#include <fmt/format.h>

namespace tapbook {
namespace {

struct Usual {
    const RadioCavity *positive, *negative;
};

std::optional<Usual> usual_of(const TapFacts& tap) {
    const std::string named = tap.tap.connector + " " + tap.pair.connector.value.value_or("");
    if (named.find("ISO 10487") == std::string::npos || !tap.circuit.position) return std::nullopt;
    const Usual usual{speaker_cavity(*tap.circuit.position, SpeakerSign::positive),
                      speaker_cavity(*tap.circuit.position, SpeakerSign::negative)};
    return usual.positive != nullptr && usual.negative != nullptr ? std::optional(usual) : std::nullopt;
}

// "b3", "B 3" and plain "3" are B3.
bool is_cavity(std::string_view noted, const RadioCavity& usual) {
    std::string name;
    for (const char c : noted)
        if (c != ' ' && c != '-') name += c;
    if (name == std::to_string(usual.number)) return true;
    return find_radio_cavity(name) == &usual;
}

}  // namespace

std::string usual_cavities(const TapFacts& tap) {
    const auto usual = usual_of(tap);
    return usual ? fmt::format("{} (+) and {} (-)", usual->positive->name, usual->negative->name) : std::string();
}

std::optional<bool> cavities_differ(const TapFacts& tap) {
    const auto usual = usual_of(tap);
    if (!usual) return std::nullopt;
    std::optional<bool> differ;
    const auto look_at = [&](const Standing& noted, const RadioCavity& wanted) {
        if (noted.value) differ = differ.value_or(false) || !is_cavity(*noted.value, wanted);
    };
    look_at(tap.pair.positive_cavity, *usual->positive);
    look_at(tap.pair.negative_cavity, *usual->negative);
    return differ;
}

}  // namespace tapbook
