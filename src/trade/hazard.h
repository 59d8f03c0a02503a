// What on the way can hurt somebody or cost a module, and what is the usual caution? One table; the sentences are
// general practice and always defer to the vehicle's own instructions.
#pragma once

#include <string_view>

#include "electrical/electrical.h"

namespace tapbook {

enum class Hazard {
    airbag_connector,
    curtain_airbag,
    side_impact_sensor,
    seat_occupancy_mat,
    pyrotechnic_disconnect,
    high_voltage,
    circuit_48v,
    battery_in_cabin,
    drilling,
    steering_and_pedals,
    exhaust,
    sharp_edges
};
template <>
struct NamedValues<Hazard> {
    static constexpr Named<Hazard> all[] = {{Hazard::airbag_connector, "airbag_connector"},
                                            {Hazard::curtain_airbag, "curtain_airbag"},
                                            {Hazard::side_impact_sensor, "side_impact_sensor"},
                                            {Hazard::seat_occupancy_mat, "seat_occupancy_mat"},
                                            {Hazard::pyrotechnic_disconnect, "pyrotechnic_disconnect"},
                                            {Hazard::high_voltage, "high_voltage"},
                                            {Hazard::circuit_48v, "circuit_48v"},
                                            {Hazard::battery_in_cabin, "battery_in_cabin"},
                                            {Hazard::drilling, "drilling"},
                                            {Hazard::steering_and_pedals, "steering_and_pedals"},
                                            {Hazard::exhaust, "exhaust"},
                                            {Hazard::sharp_edges, "sharp_edges"}};
};

struct HazardText {
    std::string_view title;    // two to five words, as a heading
    std::string_view caution;  // what to do, one or two sentences
};

// Title and caution of a hazard. Never empty.
HazardText hazard_text(Hazard hazard);

}  // namespace tapbook
