// See usual_terminal.h.
#include "trade/usual_terminal.h"

namespace tapbook {

const Terminal* usual_terminal(SwitchedClass live) {
    switch (live) {
        case SwitchedClass::constant:
            return find_terminal("30");
        case SwitchedClass::accessory:
            return find_terminal("75");
        case SwitchedClass::ignition:
        case SwitchedClass::with_crank:
            return find_terminal("15");
        case SwitchedClass::other:
            break;
    }
    return nullptr;
}

}  // namespace tapbook
