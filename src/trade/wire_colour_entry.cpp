// Reads typed colours: a recursive-descent reader over the pieces of wire_colour_token.h with the spellings of
// wire_colour_spelling.h. The first refusal ends the reading.
#include "trade/wire_colour_entry.h"

#include <algorithm>
#include <optional>

#include "trade/nearest.h"
#include "trade/wire_colour_spelling.h"
#include "trade/wire_colour_token.h"

namespace tapbook {
namespace {

constexpr std::string_view stripe_words[] = {"stripe", "stripes", "tracer", "tracers",
                                             "ring",   "rings",   "band",   "bands"};

bool is_stripe_word(const ColourToken& token) {
    return std::ranges::find(stripe_words, token.lower) != std::end(stripe_words);
}

std::optional<Shade> shade_word(const ColourToken& token) {
    if (token.is("light") || token.is("lt") || token.is("sky")) return Shade::light;
    if (token.is("dark") || token.is("dk")) return Shade::dark;
    return std::nullopt;
}

bool is_keyword(const ColourToken& token) {
    return is_stripe_word(token) || token.is("with") || token.is("and") || token.is("a") || !token.is_letters();
}

class ColourReader {
  public:
    explicit ColourReader(std::string_view text) : text_(text), read_(colour_tokens(text)) {}

    std::variant<WireColour, ColourRefusal> read();

  private:
    using Refused = ColourRefusalReason;

    bool more() const { return at_ < read_.tokens.size(); }
    const ColourToken& token(std::size_t ahead = 0) const { return read_.tokens[at_ + ahead]; }
    bool next_is(std::string_view text, std::size_t ahead = 0) const {
        return at_ + ahead < read_.tokens.size() && token(ahead).is(text);
    }
    bool ends_in_stripe_word() const { return is_stripe_word(read_.tokens.back()); }

    void read_all();
    void read_hue();
    void read_separator();
    void skip_stripe_words();
    bool starts_with_abbreviated_with() const;
    bool abbreviated_with_follows() const;
    void take(Hue hue, std::size_t from, std::size_t to);
    void refuse_joined();
    void refuse_piece(const ColourToken& piece, std::optional<Shade> shade);
    void refuse_unknown(const ColourToken& piece);
    void refuse(Refused reason, std::string_view piece, std::size_t offset, std::vector<WireColour> choices = {});

    std::string_view text_;
    ColourTokens read_;
    std::size_t at_ = 0;
    std::vector<Hue> hues_;
    std::size_t base_length_ = 0;   // of the spelling of the base colour, in bytes
    std::size_t end_of_hues_ = 0;   // where the last colour ends, in bytes
    bool joined_by_blank_ = false;  // two colours with only a blank between them
    bool joined_by_and_ = false;    // "white and black": rather two conductors
    std::optional<ColourRefusal> refusal_;
};

std::variant<WireColour, ColourRefusal> ColourReader::read() {
    const bool protective_earth = !read_.stranger && read_.tokens.size() == 1 && read_.tokens[0].is("gnye");
    if (protective_earth) return WireColour{Hue{BaseColour::green}, Hue{BaseColour::yellow}};  // see wire_colour.h
    read_all();
    if (refusal_) return *refusal_;
    return *wire_colour_of(hues_);
}

void ColourReader::read_all() {
    if (read_.stranger) return refuse_unknown(*read_.stranger);
    if (!more()) return refuse(Refused::empty, "", 0);
    if (starts_with_abbreviated_with()) return refuse(Refused::missing, "", token().offset);
    read_hue();
    while (!refusal_ && more()) {
        read_separator();
        if (!refusal_) read_hue();
        if (!refusal_) skip_stripe_words();
    }
    if (refusal_) return;
    const bool unclear = joined_by_and_ || (joined_by_blank_ && !ends_in_stripe_word());
    if (unclear) refuse_joined();
}

// One colour: an optional shade word, then the spelling.
void ColourReader::read_hue() {
    const std::size_t from = more() ? token().offset : text_.size();
    const std::optional<Shade> shade = more() ? shade_word(token()) : std::nullopt;
    const bool sky = next_is("sky");
    if (shade) ++at_;
    if (shade && next_is("-")) ++at_;
    if (!more() || is_keyword(token())) return refuse(Refused::missing, "", more() ? token().offset : text_.size());
    const ColourToken& piece = token();
    const auto found = meanings(piece.lower);
    const bool one_hue = found.size() == 1;
    if (!one_hue && !sky) return refuse_piece(piece, shade);
    Hue hue = one_hue ? found[0].base : Hue{BaseColour::black};
    if (shade) {
        const bool fits = hue.shade == Shade::plain && has_shades(hue.base) && (!sky || hue.base == BaseColour::blue);
        if (!fits) return refuse(Refused::unknown, text_.substr(from, piece.end() - from), from);
        hue.shade = *shade;
    }
    ++at_;
    take(hue, from, piece.end());
}

void ColourReader::take(Hue hue, std::size_t from, std::size_t to) {
    const auto typed = text_.substr(from, to - from);
    if (hues_.size() == 3) return refuse(Refused::too_many_stripes, typed, from);
    if (std::ranges::find(hues_, hue) != hues_.end()) return refuse(Refused::same_stripe, typed, from);
    if (hues_.empty()) base_length_ = typed.size();
    hues_.push_back(hue);
    end_of_hues_ = to;
}

// What stands between two colours. Leaves the place at the next colour.
void ColourReader::read_separator() {
    if (next_is("/") || next_is("-")) {
        ++at_;
    } else if (abbreviated_with_follows()) {
        at_ += 2;
    } else {
        const bool comma = next_is(",");
        if (comma) ++at_;
        if (next_is("with")) {
            ++at_;
            if (next_is("a")) ++at_;
        } else if (next_is("and") || next_is("&")) {
            if (hues_.size() < 2) joined_by_and_ = true;
            ++at_;
        } else if (!comma) {
            joined_by_blank_ = true;
        }
    }
}

// Only after a stripe: "white stripe" has no base colour, or no stripe.
void ColourReader::skip_stripe_words() {
    while (more() && is_stripe_word(token())) ++at_;
}

// "w/ red stripe" could begin with white or with "with".
bool ColourReader::starts_with_abbreviated_with() const {
    if (!next_is("w") || !next_is("/", 1) || token(1).blank_before) return false;
    const bool blank_after = at_ + 2 < read_.tokens.size() && token(2).blank_before;
    return blank_after || ends_in_stripe_word();
}

// "white w/ red" but not "R W/Y", which is rather two conductors.
bool ColourReader::abbreviated_with_follows() const {
    return base_length_ >= 2 && next_is("w") && token().blank_before && next_is("/", 1) && !token(1).blank_before;
}

void ColourReader::refuse_joined() {
    const std::size_t from = read_.tokens.front().offset;
    refuse(Refused::joined_without_slash, text_.substr(from, end_of_hues_ - from), from, {*wire_colour_of(hues_)});
}

// A spelling that is not exactly one colour: ambiguous, joined, or unknown.
void ColourReader::refuse_piece(const ColourToken& piece, std::optional<Shade> shade) {
    auto choices = meanings(piece.lower);
    if (shade) {
        std::erase_if(choices,
                      [](const WireColour& c) { return c.base.shade != Shade::plain || !has_shades(c.base.base); });
        for (WireColour& choice : choices) choice.base.shade = *shade;
    }
    if (!choices.empty()) return refuse(Refused::ambiguous, piece.typed, piece.offset, std::move(choices));
    choices = joined_meanings(piece.lower);
    if (!choices.empty()) return refuse(Refused::joined_without_slash, piece.typed, piece.offset, std::move(choices));
    refuse_unknown(piece);
}

void ColourReader::refuse_unknown(const ColourToken& piece) {
    refuse(Refused::unknown, piece.typed, piece.offset);
    const auto known = nameable_spellings();
    if (const auto meant = nearest(piece.lower, known)) refusal_->nearest = *meant;
}

void ColourReader::refuse(Refused reason, std::string_view piece, std::size_t offset, std::vector<WireColour> choices) {
    refusal_ = ColourRefusal{reason, std::string(piece), offset, std::move(choices), ""};
}

}  // namespace

std::variant<WireColour, ColourRefusal> parse_wire_colour(std::string_view text) {
    return ColourReader(text).read();
}

}  // namespace tapbook
