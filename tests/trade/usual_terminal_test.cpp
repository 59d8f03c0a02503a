// Which number a wiring diagram usually gives to a circuit of a class. Meanings from public copies of the DIN 72552
// table.
#include "trade/usual_terminal.h"

#include <catch2/catch.hpp>

using namespace tapbook;

TEST_CASE("each class of power has its usual terminal, and what is neither has none") {
    CHECK(usual_terminal(SwitchedClass::constant)->number == "30");
    CHECK(usual_terminal(SwitchedClass::constant)->meaning == "direct from battery positive");
    CHECK(usual_terminal(SwitchedClass::accessory)->number == "75");
    CHECK(usual_terminal(SwitchedClass::ignition)->number == "15");
    CHECK(usual_terminal(SwitchedClass::with_crank)->number == "15");
    CHECK(usual_terminal(SwitchedClass::other) == nullptr);
}
