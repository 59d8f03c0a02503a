// How does text look on a terminal? One calm accent, swatches outlined with the stripe visible, lines wrapped at the
// screen's width (100 at most). Without colour every word and code is still there: colour carries no meaning of its
// own.
#pragma once

#include <string>
#include <string_view>

#include "rules/rules.h"

namespace tapbook {

enum class Colours { none, palette_256, full };

struct Screen {
    Colours colours = Colours::none;
    int width = 100;
};

class Paper {
  public:
    explicit Paper(const Screen& screen) : screen_(screen) {}

    void blank();
    // A heading in the accent, underlined by nothing but its place.
    void heading(std::string_view text);
    // `first` at `indent`, then `text` wrapped beside it.
    void line(int indent, std::string_view first, std::string_view text);
    // A line that must not be missed: "! title: caution".
    void caution(int indent, std::string_view title, std::string_view text);
    // A line already laid out; only control characters are made visible.
    void raw(std::string_view text);

    std::string accent(std::string_view text) const;
    std::string strong(std::string_view text) const;
    std::string quiet(std::string_view text) const;
    // Outlined swatch of a conductor, stripe drawn diagonally, 6 columns wide; nothing but the code where there are no
    // colours.
    std::string swatch(const WireColour& colour) const;

    const Screen& screen() const { return screen_; }
    std::string take() { return std::move(out_); }

  private:
    std::string paint(std::string_view code, std::string_view text) const;
    Screen screen_;
    std::string out_;
};

// "WH/BK  white, black stripe", with its swatch before it where there are colours.
std::string conductor_words(const Paper& paper, const WireColour& colour);

// Text cut into lines of at most `width` columns at its spaces; a longer word stands alone on its line.
std::vector<std::string> wrapped(std::string_view text, int width);

}  // namespace tapbook
