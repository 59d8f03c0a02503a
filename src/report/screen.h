// How does text look on a terminal? One calm accent, swatches outlined with the stripe visible, lines wrapped at the
// screen's width (100 at most). Without colour every word and code is still there: colour carries no meaning of its
// own.
#pragma once

#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "rules/rules.h"

namespace tapbook {

enum class Colours { none, palette_256, full };

struct Screen {
    Colours colours = Colours::none;
    int width = 100;
};

enum class Weight { plain, strong };

// One conductor as it is printed: "+ WH/BK  white, black stripe, cavity 4".
struct Conductor {
    std::string_view sign;  // "+", "-" or nothing
    WireColour colour;
    std::string_view where = {};  // "cavity 4"; may be empty
};

// Names, remarks and whatever else comes from outside may be handed to every function but raw(): what a screen would
// obey (control and direction-changing characters) is made visible.
class Paper {
  public:
    explicit Paper(const Screen& screen) : screen_(screen) {}

    void blank();
    // A heading in the accent, underlined by nothing but its place.
    void heading(std::string_view text);
    // A whole line that stands out.
    void notice(std::string_view text);
    // `first` at `indent`, then `text` wrapped beside it; below it where the screen is too narrow for that.
    void line(int indent, std::string_view first, std::string_view text, Weight weight_of_first = Weight::plain);
    // A line that must not be missed: "! title: caution".
    void caution(int indent, std::string_view title, std::string_view text);
    // `first`, then the conductors with their swatches and `remark`: on one line where that fits, else each on its own.
    // The lines break at the same places with and without colours.
    void conductors(int indent, std::string_view first, std::span<const Conductor> list, std::string_view remark = {});
    // A line already laid out. REQUIRES: its pieces come from accent(), strong(), quiet(), swatch() or shown().
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
    void separate_conductor(int indent, std::string_view first, const Conductor& conductor);
    Screen screen_;
    std::string out_;
};

// A word of a table as people read it: "boosted_bridged" is "boosted bridged".
std::string spaced(std::string_view word);

// Text cut into lines of at most `width` columns at its spaces; a longer word stands alone on its line.
std::vector<std::string> wrapped(std::string_view text, int width);

}  // namespace tapbook
