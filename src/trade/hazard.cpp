// The caution sentences. Sources: 12 V disconnection and "up to 5 minutes" from NHTSA interim guidance for responders;
// orange covering from UN R100; the rest is common practice. None replaces the vehicle's own instructions.
#include "trade/hazard.h"

namespace tapbook {

HazardText hazard_text(Hazard hazard) {
    switch (hazard) {
        case Hazard::airbag_connector:
            return {"air-bag connector on the way",
                    "Never probe, tap or meter it. Open it only dead: key out, battery negative off, the vehicle's own "
                    "waiting time over; "
                    "no power until it is mated again."};
        case Hazard::curtain_airbag:
            return {"curtain air bag behind the trim",
                    "Route no cable across the bag or its clips; refit the trim clips exactly as the vehicle's "
                    "instructions say."};
        case Hazard::side_impact_sensor:
            return {"side-impact sensor close by",
                    "Do not knock, drill or unplug it while there is power; follow the vehicle's own order of work."};
        case Hazard::seat_occupancy_mat:
            return {"seat-occupancy mat",
                    "Tilt the seat without unplugging it where that is enough; never tap its wires; no power with the "
                    "seat unplugged."};
        case Hazard::pyrotechnic_disconnect:
            return {"pyrotechnic battery disconnect",
                    "Leave the charge and its plug alone and take no supply behind it unless the vehicle's "
                    "instructions allow it."};
        case Hazard::high_voltage:
            return {"orange high-voltage cable",
                    "Trained people only. Taking the 12 V negative off does not make it safe: keep hands, tools and "
                    "screws away from orange."};
        case Hazard::circuit_48v:
            return {"48 V circuit", "Never tap it and never join it to 12 V, whatever its colour."};
        case Hazard::battery_in_cabin:
            return {"battery in the cabin",
                    "Negative first off and last on; cover the positive post; the main fuse close to the post and "
                    "inside the same space."};
        case Hazard::drilling:
            return {"drilling and screws",
                    "Look behind first: tank, fuel and brake pipes, harness, traction battery. Use a depth stop."};
        case Hazard::steering_and_pedals:
            return {"steering column and pedals",
                    "Nothing may hang, move or chafe there: tie cables back and try full travel before closing."};
        case Hazard::exhaust:
            return {"exhaust and hot parts", "Keep cables clear and shielded as the factory harness is."};
        case Hazard::sharp_edges:
            return {"sharp sheet-metal edges", "Wear gloves; grommet every hole a cable passes."};
    }
    return {};
}

}  // namespace tapbook
