// Which closed lists of words does the trade use for circuits, taps and notes? Each enum carries its words in one
// table.
#pragma once

#include "electrical/electrical.h"

namespace tapbook {

// What a circuit is for.
enum class Role { speaker, line_level, switched_power, constant_power, ground, turn_on_lead, illumination, data_pair };
template <>
struct NamedValues<Role> {
    static constexpr Named<Role> all[] = {{Role::speaker, "speaker"},
                                          {Role::line_level, "line_level"},
                                          {Role::switched_power, "switched_power"},
                                          {Role::constant_power, "constant_power"},
                                          {Role::ground, "ground"},
                                          {Role::turn_on_lead, "turn_on_lead"},
                                          {Role::illumination, "illumination"},
                                          {Role::data_pair, "data_pair"}};
};

// Which unit drives a speaker or line circuit.
enum class FedBy { radio, amplifier };
template <>
struct NamedValues<FedBy> {
    static constexpr Named<FedBy> all[] = {{FedBy::radio, "radio"}, {FedBy::amplifier, "amplifier"}};
};

// What stands between the output and the tap.
enum class Behind { none, capacitor, crossover };
template <>
struct NamedValues<Behind> {
    static constexpr Named<Behind> all[] = {
        {Behind::none, "none"}, {Behind::capacitor, "capacitor"}, {Behind::crossover, "crossover"}};
};

// Does the level on the circuit follow the volume control, or is volume set further on?
enum class LevelKind { follows_volume, fixed };
template <>
struct NamedValues<LevelKind> {
    static constexpr Named<LevelKind> all[] = {{LevelKind::follows_volume, "follows_volume"},
                                               {LevelKind::fixed, "fixed"}};
};

// Which half of a connector is meant: colours may change from one to the other.
enum class ConnectorSide { radio, body, amplifier, speaker };
template <>
struct NamedValues<ConnectorSide> {
    static constexpr Named<ConnectorSide> all[] = {{ConnectorSide::radio, "radio"},
                                                   {ConnectorSide::body, "body"},
                                                   {ConnectorSide::amplifier, "amplifier"},
                                                   {ConnectorSide::speaker, "speaker"}};
};

// From where the connector's face is drawn and its cavities are counted.
enum class ViewFace { wire_side, mating_side };
template <>
struct NamedValues<ViewFace> {
    static constexpr Named<ViewFace> all[] = {{ViewFace::wire_side, "wire_side"},
                                              {ViewFace::mating_side, "mating_side"}};
};

enum class SteeringSide { left, right };
template <>
struct NamedValues<SteeringSide> {
    static constexpr Named<SteeringSide> all[] = {{SteeringSide::left, "left"}, {SteeringSide::right, "right"}};
};

// How the 12 V supply is charged.
enum class Charging { alternator, smart_alternator, dc_converter };
template <>
struct NamedValues<Charging> {
    static constexpr Named<Charging> all[] = {{Charging::alternator, "alternator"},
                                              {Charging::smart_alternator, "smart_alternator"},
                                              {Charging::dc_converter, "dc_converter"}};
};

// How a power output is switched, where that decides what may hang on it.
enum class Switching { plain, pulsed, monitored, bus };
template <>
struct NamedValues<Switching> {
    static constexpr Named<Switching> all[] = {{Switching::plain, "plain"},
                                               {Switching::pulsed, "pulsed"},
                                               {Switching::monitored, "monitored"},
                                               {Switching::bus, "bus"}};
};

// What a circuit protects: one that protects any of these is never tapped.
enum class Protects {
    airbags,
    brakes,
    stability,
    steering,
    engine_control,
    fuel,
    lighting,
    emergency_call,
    seat_occupancy,
    immobiliser,
    door_locks
};
template <>
struct NamedValues<Protects> {
    static constexpr Named<Protects> all[] = {{Protects::airbags, "airbags"},
                                              {Protects::brakes, "brakes"},
                                              {Protects::stability, "stability"},
                                              {Protects::steering, "steering"},
                                              {Protects::engine_control, "engine_control"},
                                              {Protects::fuel, "fuel"},
                                              {Protects::lighting, "lighting"},
                                              {Protects::emergency_call, "emergency_call"},
                                              {Protects::seat_occupancy, "seat_occupancy"},
                                              {Protects::immobiliser, "immobiliser"},
                                              {Protects::door_locks, "door_locks"}};
};

// Which unit of a sound system sets the volume.
enum class VolumeSet { radio, amplifier };
template <>
struct NamedValues<VolumeSet> {
    static constexpr Named<VolumeSet> all[] = {{VolumeSet::radio, "radio"}, {VolumeSet::amplifier, "amplifier"}};
};

// How a pair of conductors was recognised, strongest first.
enum class Method { scoped, metered, seen, copied };
template <>
struct NamedValues<Method> {
    static constexpr Named<Method> all[] = {
        {Method::scoped, "scoped"}, {Method::metered, "metered"}, {Method::seen, "seen"}, {Method::copied, "copied"}};
};

// How the positive conductor was recognised: a meter cannot show it.
enum class PolarityMethod { scoped, phase, cell, metered, seen, copied };
template <>
struct NamedValues<PolarityMethod> {
    static constexpr Named<PolarityMethod> all[] = {
        {PolarityMethod::scoped, "scoped"},   {PolarityMethod::phase, "phase"}, {PolarityMethod::cell, "cell"},
        {PolarityMethod::metered, "metered"}, {PolarityMethod::seen, "seen"},   {PolarityMethod::copied, "copied"}};
};

// What one visit was about: a speaker or line pair, a power or turn-on circuit, or the sound system as a whole.
enum class NoteKind { pair, switched, system };
template <>
struct NamedValues<NoteKind> {
    static constexpr Named<NoteKind> all[] = {
        {NoteKind::pair, "pair"}, {NoteKind::switched, "switched"}, {NoteKind::system, "system"}};
};

// When a power circuit is live, from its volts in the four key positions.
enum class SwitchedClass { constant, accessory, ignition, with_crank, other };
template <>
struct NamedValues<SwitchedClass> {
    static constexpr Named<SwitchedClass> all[] = {{SwitchedClass::constant, "constant"},
                                                   {SwitchedClass::accessory, "accessory"},
                                                   {SwitchedClass::ignition, "ignition"},
                                                   {SwitchedClass::with_crank, "with_crank"},
                                                   {SwitchedClass::other, "other"}};
};

}  // namespace tapbook
