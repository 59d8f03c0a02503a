// The subjects of the four lines: their names in words and in codes, and what to do about them.
#include "evidence/line.h"

#include <fmt/format.h>

#include <algorithm>

#include "evidence/line_parts.h"
#include "evidence/pair_saying.h"

namespace tapbook {
namespace {

constexpr std::string_view cut_not = "Do not cut on this; meter, then save your reading.";

using Spelling = std::string (*)(const WireColour&);

// A conductor by its key, with its mark when the key has one.
std::string named(std::string_view key, Spelling spelling) {
    const auto mark = key.find(' ');
    return spelling(*colour_of(key)) +
           (mark == std::string_view::npos ? "" : " with " + std::string(key.substr(mark + 1)));
}

std::string joined(const std::vector<std::string>& keys, Spelling spelling) {
    return keys.size() == 1 ? named(keys[0], spelling) : named(keys[0], spelling) + " and " + named(keys[1], spelling);
}

std::string both_alike(const WireColour& colour) {
    return fmt::format("both {}", code(colour));
}

// The settled pair: "white/black" with the positive conductor first, "white and black" while that is disputed.
std::vector<std::string> pair_names(const PairStanding& standing) {
    const auto keys = keys_of(*standing.pair.value);
    if (standing.same_colours)
        return {joined(keys, words), joined(keys, code), both_alike(standing.conductors.front())};
    if (!standing.positive || !standing.negative) return {joined(keys, words), joined(keys, code)};
    return {words(*standing.positive) + "/" + words(*standing.negative),
            fmt::format("{} (+) {} (-)", code(*standing.positive), code(*standing.negative))};
}

// Two pairs are told apart by the conductors they do not share.
std::vector<std::string> not_shared(const std::vector<std::string>& keys, const std::vector<std::string>& others) {
    std::vector<std::string> own;
    for (const auto& key : keys)
        if (std::find(others.begin(), others.end(), key) == others.end()) own.push_back(key);
    return own.empty() ? keys : own;
}

// Names for two pairs, in words and in codes: the conductors they do not share, all where one was only half noted.
std::vector<std::pair<std::string, std::string>> pair_choices(std::string_view one, std::string_view other) {
    const auto first_keys = keys_of(one), second_keys = keys_of(other);
    const bool is_one_colour = first_keys.size() == 1 || second_keys.size() == 1;
    const auto first = is_one_colour ? first_keys : not_shared(first_keys, second_keys);
    const auto second = is_one_colour ? second_keys : not_shared(second_keys, first_keys);
    return {{joined(first, words), joined(second, words)}, {joined(first, code), joined(second, code)}};
}

std::string mixed_pair_line(const Standing& pair) {
    constexpr std::string_view last = "the notes disagree on the colours";
    const auto names = pair_choices(pair.claims[0].value, pair.claims[1].value);
    return pair.find_system ? find_system_line(names, last) : mixed_line(pair, names, cut_not, last);
}

// "white positive", "WH positive"; the last wording leaves out the mark.
std::vector<std::string> polarity_names(std::string_view value) {
    const bool is_negative = value.starts_with(negative_only);
    const auto key = is_negative ? value.substr(negative_only.size()) : value;
    const std::string pole = is_negative ? " negative" : " positive";
    return {named(key, words) + pole, named(key, code) + pole, code(*colour_of(key)) + pole};
}

std::vector<std::pair<std::string, std::string>> positive_choices(std::string_view one, std::string_view other) {
    const auto name = [](std::string_view value, Spelling spelling) {
        if (!value.starts_with(negative_only)) return named(value, spelling);
        return std::string(negative_only) + named(value.substr(negative_only.size()), spelling);
    };
    return {{"positive is " + name(one, words), name(other, words)},
            {"positive is " + name(one, code), name(other, code)}};
}

}  // namespace

std::string standing_line(const PairStanding& standing) {
    const Standing& pair = standing.pair;
    if (pair.value) return settled_line(pair, {pair_names(standing), "Meter before you cut."});
    if (pair.grade == Grade::mixed) return mixed_pair_line(pair);
    if (pair.grade == Grade::year_split)
        return split_line(pair, pair_choices(pair.split->change.old_value, pair.split->change.new_value),
                          "the colours");
    return empty_line(pair, "this pair", "Meter it, then save your reading.");
}

std::string polarity_line(const PairStanding& standing) {
    const Standing& polarity = standing.polarity;
    if (polarity.value)
        return settled_line(polarity,
                            {polarity_names(*polarity.value), "Check it with a tone first.", "only copied or assumed"});
    if (polarity.grade == Grade::mixed)
        return mixed_line(polarity, positive_choices(polarity.claims[0].value, polarity.claims[1].value),
                          "Trust neither; check with a tone.", "the notes disagree on the polarity");
    if (polarity.grade == Grade::year_split)
        return split_line(polarity,
                          positive_choices(polarity.split->change.old_value, polarity.split->change.new_value),
                          "the polarity");
    return empty_line(polarity, "the polarity", "Check it with a tone, then save it.");
}

std::string premium_line(const Standing& premium) {
    const auto name = [](std::string_view value) -> std::string {
        return value == "true" ? "separate amplifier" : "no separate amplifier";
    };
    const auto choices = [&](std::string_view one, std::string_view other) {
        const auto brief = [](std::string_view value) -> std::string { return value == "true" ? "yes" : "no"; };
        return std::vector<std::pair<std::string, std::string>>{{name(one), name(other)}, {brief(one), brief(other)}};
    };
    if (premium.value) return settled_line(premium, {{name(*premium.value)}, "Look for it before you choose a part."});
    if (premium.grade == Grade::mixed)
        return mixed_line(premium, choices(premium.claims[0].value, premium.claims[1].value),
                          "Do not choose on this; look for it.", "the notes disagree on a separate amplifier");
    if (premium.grade == Grade::year_split)
        return split_line(premium, choices(premium.split->change.old_value, premium.split->change.new_value),
                          "the amplifier");
    return empty_line(premium, "whether there is a separate amplifier", "Look for it, then save it.");
}

std::string switched_line(const SwitchedStanding& standing) {
    const auto name = [](std::string text) {
        std::replace(text.begin(), text.end(), '_', ' ');
        return text;
    };
    const Standing& circuit = standing.circuit;
    if (circuit.value) {
        const std::string live = name(*circuit.value);
        std::vector<std::string> what = {live};
        if (standing.colour) what = {live + ", " + words(*standing.colour), live + ", " + code(*standing.colour)};
        return settled_line(circuit, {what, "Meter before you tap."});
    }
    if (circuit.grade == Grade::mixed) {
        constexpr std::string_view last = "the notes disagree on when it is live";
        const std::vector<std::pair<std::string, std::string>> names = {
            {name(circuit.claims[0].value), name(circuit.claims[1].value)}};
        return circuit.find_system
                   ? find_system_line(names, last)
                   : mixed_line(circuit, names, "Do not tap on this; meter, then save your reading.", last);
    }
    if (circuit.grade == Grade::year_split)
        return split_line(circuit, {{name(circuit.split->change.old_value), name(circuit.split->change.new_value)}},
                          "the circuit");
    return empty_line(circuit, "when this circuit is live", "Meter it, then save your reading.");
}

}  // namespace tapbook
