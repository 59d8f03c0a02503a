// Names are compared as the search for cars compares them: folded, word by word.
#include "page/part_choice.h"

#include <fmt/format.h>

#include <algorithm>

namespace tapbook {
namespace {

bool has_all(const std::string& name, const std::vector<std::string>& words) {
    return std::all_of(words.begin(), words.end(),
                       [&](const std::string& word) { return name.find(word) != std::string::npos; });
}

bool has_all_whole(const std::string& name, const std::vector<std::string>& words) {
    const auto parts = folded_words(name);
    return std::all_of(words.begin(), words.end(), [&](const std::string& word) {
        return std::find(parts.begin(), parts.end(), word) != parts.end();
    });
}

// Those that the words may mean: all that are called exactly so, else all that have every word in name or path, else
// all that have it as a piece of a word.
FormChoices meant(const FormChoices& parts, std::string_view typed) {
    const std::string whole = folded(typed);
    const auto words = folded_words(typed);
    FormChoices exact, wholly, partly;
    if (words.empty()) return {};
    for (const auto& part : parts) {
        const std::string name = folded(part.second);
        if (name == whole) exact.push_back(part);
        const std::string both = name + ' ' + folded(part.first);
        if (has_all(both, words)) partly.push_back(part);
        if (has_all_whole(both, words)) wholly.push_back(part);
    }
    if (!exact.empty()) return exact;
    return wholly.empty() ? partly : wholly;
}

const std::string* words_of_path(const FormChoices& list, std::string_view path) {
    const auto found = std::find_if(list.begin(), list.end(), [&](const auto& one) { return one.first == path; });
    return found == list.end() ? nullptr : &found->second;
}

// What stands in the box for a chosen part: its name, or its path where others are called the same.
std::string box_text(const PartChoice& choice, const ChosenPart& chosen) {
    const std::string* words = words_of_path(choice.parts, chosen.path);
    if (words == nullptr) return chosen.complaint.empty() ? std::string() : std::string(choice.typed);
    return meant(choice.parts, *words).size() == 1 ? *words : chosen.path;
}

}  // namespace

FormChoices amplifier_choices(const Catalog& catalog) {
    FormChoices list;
    for (const auto& one : catalog.amplifiers()) list.emplace_back(one.path, fmt::format("{} {}", one.maker, one.name));
    return list;
}

FormChoices converter_choices(const Catalog& catalog) {
    FormChoices list;
    for (const auto& one : catalog.converters())
        list.emplace_back(one.part.path, fmt::format("{} {}", one.part.maker, one.part.name));
    return list;
}

ChosenPart chosen_part(const FormChoices& parts, const FormChoices& others, std::string_view typed) {
    if (words_of_path(others, typed) != nullptr || words_of_path(parts, typed) != nullptr)
        return {std::string(typed), {}};
    const FormChoices possible = meant(parts, typed);
    if (possible.size() == 1) return {possible.front().first, {}};
    if (possible.empty()) return {{}, fmt::format("none is called \"{}\"", shown(typed))};
    const auto way_out = possible.size() > longest_part_list ? "type more of it" : "choose one of them";
    return {{}, fmt::format("{} have \"{}\" in their name: {}", possible.size(), shown(typed), way_out)};
}

void write_part_choice(Html& html, const PartChoice& choice) {
    const ChosenPart chosen = chosen_part(choice.parts, choice.others, choice.typed);
    FormChoices list = choice.others;
    const auto is_short = [](const FormChoices& parts) { return parts.size() <= longest_part_list; };
    const FormChoices possible =
        is_short(choice.parts) || chosen.complaint.empty() ? FormChoices() : meant(choice.parts, choice.typed);
    if (is_short(choice.parts) || (!possible.empty() && is_short(possible))) {
        const FormChoices& parts = is_short(choice.parts) ? choice.parts : possible;
        list.insert(list.end(), parts.begin(), parts.end());
        return write_select(html, choice.name, choice.label, list, chosen.path, chosen.complaint);
    }
    std::string remark = fmt::format("a part of its name; {} are known", choice.parts.size());
    for (const auto& [value, words] : choice.others)
        if (!value.empty()) remark += fmt::format("; or {} ({})", value, words);
    write_form_box(html, {.name = std::string(choice.name),
                          .label = std::string(choice.label),
                          .value = box_text(choice, chosen),
                          .complaint = chosen.complaint,
                          .remark = remark,
                          .is_wide = true});
}

}  // namespace tapbook
