// How is one of very many parts chosen on a page? From a list while it is short; beyond that by typing a part of its
// name, and from the list of those that have it. For the files of this folder.
#pragma once

#include <string>
#include <string_view>

#include "page/page_html.h"

namespace tapbook {

// A longer list is not shown whole: a page holds 60 KB, and nobody scrolls through more on a phone.
inline constexpr std::size_t longest_part_list = 60;

// Path and "maker name" of every amplifier, and of every converter, by path.
FormChoices amplifier_choices(const Catalog& catalog);
FormChoices converter_choices(const Catalog& catalog);

inline const FormChoices no_amplifier = {{"", "none chosen yet"}};  // stands before the amplifiers

// What was meant by the words typed or chosen: a path or one of the `others` ("" among them), or what is wrong.
struct ChosenPart {
    std::string path;
    std::string complaint;  // "7 have \"kessa\" in their name: choose one of them"; empty when the path is known
};

// `parts` by path with their names. A path counts before a name, a whole name before a part of one; words match in any
// order, without regard to capital letters and accents.
ChosenPart chosen_part(const FormChoices& parts, const FormChoices& others, std::string_view typed);

struct PartChoice {
    std::string_view name, label;
    const FormChoices& parts;
    const FormChoices& others;  // stand before the parts: "none chosen yet"
    std::string_view typed;
};

// The list, or a box to type in, with what is wrong beside it.
void write_part_choice(Html& html, const PartChoice& choice);

}  // namespace tapbook
