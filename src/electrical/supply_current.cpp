// Current of an amplifier from its output power. See supply_current.h.
#include "electrical/supply_current.h"

namespace tapbook {

EfficiencyRange efficiency_of(AmplifierClass amplifier_class) {
    switch (amplifier_class) {
        case AmplifierClass::ab:
            return {ratio(0.45), ratio(0.55), ratio(0.65)};
        case AmplifierClass::d:
            return {ratio(0.70), ratio(0.80), ratio(0.90)};
    }
    return {ratio(0.45), ratio(0.45), ratio(0.45)};  // no enumerator: as careful as any
}

Amps supply_current(Watts output, Ratio efficiency, DcVolts supply) {
    return amps((output / efficiency).in(watts) / supply.in(dc_volts));
}

}  // namespace tapbook
