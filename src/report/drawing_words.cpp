// Widths by table, Unicode judged by the trade layer's text functions, lines filled word by word.
#include "report/drawing_words.h"

#include <algorithm>
#include <array>

#include "trade/trade.h"

namespace tapbook {

namespace {

// Thousandths of the font size, U+0020 to U+007E: the larger of two widely installed sans-serif faces (from memory).
constexpr std::array<int, 95> ascii_widths = {
    318,  401, 460, 838, 636, 950, 780, 275, 390, 390, 500, 838, 318, 361, 318, 337,  // space to /
    636,  636, 636, 636, 636, 636, 636, 636, 636, 636, 337, 337, 838, 838, 838, 556,  // 0 to ?
    1015, 684, 686, 722, 770, 667, 611, 778, 752, 295, 500, 667, 557, 863, 748, 787,  // @ to O
    667,  787, 722, 667, 611, 732, 684, 989, 685, 667, 685, 390, 337, 390, 838, 556,  // P to _
    500,  613, 635, 550, 635, 615, 352, 635, 634, 278, 278, 579, 278, 974, 634, 612,  // ` to o
    635,  635, 411, 521, 392, 634, 592, 818, 592, 592, 525, 636, 337, 636, 838};      // p to ~
constexpr double latin_width = 1000, other_width = 1200, strong_factor = 1.14;
constexpr std::string_view ellipsis = "\u2026";

// Signs beyond ASCII that plans are full of; widths as above.
struct KnownSign {
    std::string_view sign;
    double width;
};
constexpr KnownSign known_signs[] = {{"\u2212", 838}, {"\u2013", 556}, {"\u00b2", 401}, {"\u00b0", 500},
                                     {"\u00d7", 838}, {"\u2126", 800}, {"\u03a9", 800}, {ellipsis, 1000}};

const KnownSign* known_sign(std::string_view character) {
    const auto* found = std::find_if(std::begin(known_signs), std::end(known_signs),
                                     [&](const KnownSign& known) { return known.sign == character; });
    return found == std::end(known_signs) ? nullptr : found;
}

// Length of the character at `at`; text that is not UTF-8 has been replaced before.
std::size_t length_at(std::string_view text, std::size_t at) {
    const auto lead = static_cast<unsigned char>(text[at]);
    const std::size_t length = lead < 0x80 ? 1 : lead < 0xe0 ? 2 : lead < 0xf0 ? 3 : 4;
    return std::min(length, text.size() - at);
}

double character_width(std::string_view character) {
    const auto lead = static_cast<unsigned char>(character.front());
    if (lead < 0x80) return lead < 0x20 || lead > 0x7e ? 0 : ascii_widths[lead - 0x20u];
    if (const auto* known = known_sign(character)) return known->width;
    if (shown_width(character) == 0) return 0;
    return lead < 0xcc ? latin_width : other_width;  // below U+0300
}

bool is_noncharacter(std::string_view character) {
    return character == "\uFFFE" || character == "\uFFFF";
}

std::string ascii_only(std::string_view text) {
    std::string out;
    for (const char letter : text) out += static_cast<unsigned char>(letter) < 0x80 ? letter : '?';
    return out;
}

// The longest beginning of `text` that is at most `room` wide; never half a character.
std::size_t beginning_that_fits(std::string_view text, double room, DrawnWeight weight, double font) {
    std::size_t at = 0;
    while (at < text.size()) {
        const std::size_t next = at + length_at(text, at);
        if (words_width(text.substr(0, next), font, weight) > room) break;
        at = next;
    }
    return at;
}

std::string_view without_leading_space(std::string_view text) {
    while (text.starts_with(' ')) text.remove_prefix(1);
    return text;
}

// Printable ASCII with one blank between words, as nearly every text is.
bool is_clean_already(std::string_view text) {
    char before = ' ';
    for (const char c : text) {
        if (c < ' ' || c > '~' || (c == ' ' && before == ' ')) return false;
        before = c;
    }
    return before != ' ' || text.empty();
}

std::string_view entity_of(char letter) {
    switch (letter) {
        case '&':
            return "&amp;";
        case '<':
            return "&lt;";
        case '>':
            return "&gt;";
        case '"':
            return "&quot;";
        case '\'':
            return "&#39;";
        default:  // not our enum
            return {};
    }
}

// What lies between two letters that need an entity is added at once.
void add_escaped(std::string& out, std::string_view text) {
    std::size_t added = 0;
    for (std::size_t at = 0; at < text.size(); ++at) {
        const std::string_view entity = entity_of(text[at]);
        if (entity.empty()) continue;
        out.append(text, added, at - added).append(entity);
        added = at + 1;
    }
    out.append(text, added);
}

}  // namespace

std::string clean_words(std::string_view text) {
    if (is_clean_already(text)) return std::string(text);
    const std::string whole = is_utf8(text) ? std::string(text) : ascii_only(text);
    std::string out;
    int marks = 0;
    for (std::size_t at = 0; at < whole.size();) {
        const std::string_view character = std::string_view(whole).substr(at, length_at(whole, at));
        at += character.size();
        if (character == " " || character == "\n" || character == "\t") {
            if (!out.empty() && !out.ends_with(' ')) out += ' ';
            continue;
        }
        if (hidden_character(character) || is_noncharacter(character)) continue;
        marks = shown_width(character) == 0 ? marks + 1 : 0;
        if (marks <= 2) out += character;
    }
    if (out.ends_with(' ')) out.pop_back();
    return out;
}

double words_width(std::string_view text, double font, DrawnWeight weight) {
    double sum = 0;
    for (std::size_t at = 0; at < text.size(); at += length_at(text, at))
        sum += character_width(text.substr(at, length_at(text, at)));
    return sum / 1000 * font * (weight == DrawnWeight::strong ? strong_factor : 1.0);
}

std::string fitted_words(std::string_view text, double room, double font, DrawnWeight weight) {
    if (words_width(text, font, weight) <= room) return std::string(text);
    const double left = room - words_width(ellipsis, font, weight);
    if (left < 0) return {};
    std::string cut(text.substr(0, beginning_that_fits(text, left, weight, font)));
    while (cut.ends_with(' ')) cut.pop_back();
    return cut + std::string(ellipsis);
}

std::vector<std::string> wrapped_words(std::string_view text, double room, int count, DrawnWeight weight) {
    std::vector<std::string> lines;
    while (!text.empty() && static_cast<int>(lines.size()) < count) {
        if (static_cast<int>(lines.size()) + 1 == count) {
            lines.push_back(fitted_words(text, room, drawing_font, weight));
            break;
        }
        std::size_t end = beginning_that_fits(text, room, weight, drawing_font);
        if (end == 0) break;
        if (end < text.size() && text[end] != ' ') {
            const auto space = text.substr(0, end).rfind(' ');
            if (space != std::string_view::npos && space > 0) end = space;
        }
        lines.emplace_back(text.substr(0, end));
        text = without_leading_space(text.substr(end));
    }
    return lines;
}

bool has_known_width(std::string_view text) {
    for (std::size_t at = 0; at < text.size(); at += length_at(text, at)) {
        const auto character = text.substr(at, length_at(text, at));
        if (character.size() > 1 && known_sign(character) == nullptr) return false;
    }
    return true;
}

std::string xml_escaped(std::string_view text) {
    std::string out;
    add_escaped(out, text);
    return out;
}

void add_xml_words(std::string& out, std::string_view text) {
    if (is_clean_already(text))
        add_escaped(out, text);
    else
        add_escaped(out, clean_words(text));
}

}  // namespace tapbook
