// Is the drawing still the one that somebody has looked at and accepted?
#include "approved.h"
#include "drawing_plans.h"

using namespace tapbook;

TEST_CASE("the drawing of one subwoofer channel is as approved, on A4") {
    approval::approve("drawing-one-channel", install_drawing_svg(plans::one_channel(), DrawingPage::a4));
}

TEST_CASE("the drawing of eight channels from a 40-cavity connector is as approved, on A4") {
    approval::approve("drawing-eight-channels", install_drawing_svg(plans::eight_channels(), DrawingPage::a4));
}

TEST_CASE("the drawing without a converter and with a disputed colour is as approved, on Letter") {
    approval::approve("drawing-without-converter",
                      install_drawing_svg(plans::without_converter(), DrawingPage::letter));
}

TEST_CASE("the same plan gives the same bytes twice") {
    CHECK(install_drawing_svg(plans::eight_channels(), DrawingPage::a4) ==
          install_drawing_svg(plans::eight_channels(), DrawingPage::a4));
}
