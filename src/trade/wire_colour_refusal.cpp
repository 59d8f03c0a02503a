// The sentences of refused colours: what is wrong with the piece, and what to write instead.
#include <fmt/format.h>

#include "trade/text.h"
#include "trade/wire_colour_entry.h"

namespace tapbook {
namespace {

// "a", "a or b", "a, b or c"
template <class Text>
std::string or_list(const std::vector<WireColour>& colours, Text text_of) {
    std::string list;
    for (std::size_t i = 0; i < colours.size(); ++i) {
        if (i > 0) list += i + 1 == colours.size() ? " or " : ", ";
        list += text_of(colours[i]);
    }
    return list;
}

std::string codes_of(const std::vector<WireColour>& colours) {
    return or_list(colours, [](const WireColour& colour) { return code(colour); });
}

std::string words_of_all(const std::vector<WireColour>& colours) {
    return or_list(colours, [](const WireColour& colour) {
        return colour.first_stripe ? words(colour.base) + " with a " + words(*colour.first_stripe) + " stripe"
                                   : words(colour);
    });
}

}  // namespace

std::string ColourRefusal::message() const {
    const std::string quoted = '"' + shown(piece) + '"';
    switch (reason) {
        case ColourRefusalReason::empty:
            return "no colour given; write the base colour and, after a slash, its stripe: WH/BK";
        case ColourRefusalReason::unknown:
            if (nearest.empty()) return fmt::format("{} is not a wire colour", quoted);
            return fmt::format("{} is not a wire colour; did you mean \"{}\"?", quoted, nearest);
        case ColourRefusalReason::ambiguous:
            if (choices.size() < 2) return fmt::format("{} is ambiguous; write {}", quoted, codes_of(choices));
            return fmt::format("{} can mean {}; write {}", quoted, words_of_all(choices), codes_of(choices));
        case ColourRefusalReason::joined_without_slash:
            return fmt::format("{} joins colours without a slash; write {}, base colour first", quoted,
                               codes_of(choices));
        case ColourRefusalReason::missing:
            return fmt::format(
                "a colour is missing at column {}; write the base colour and, after a slash, its stripe: WH/BK",
                offset + 1);
        case ColourRefusalReason::too_many_stripes:
            return fmt::format("{} would be a third stripe; a conductor has a base colour and at most two stripes",
                               quoted);
        case ColourRefusalReason::same_stripe:
            return fmt::format("{} repeats a colour of the same conductor; write each colour once", quoted);
    }
    return {};
}

}  // namespace tapbook
