// What does the catalog expect of a car, its sound systems, circuits and tap points? Typed forms of the entries'
// fields. Entries say what is expected and how to get there; colours, polarity and readings are never here: they come
// from notes only.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "trade/field.h"
#include "trade/hazard.h"

namespace tapbook {

struct Vehicle {
    std::string path, make, model, body;
    int first_year = 0, last_year = 0;
    std::optional<bool> battery_sensor, start_stop, has_48v, high_voltage;
    std::optional<Charging> charging;
    std::optional<Amps> charging_current;        // rated
    std::optional<AmpHours> battery_capacity;    // as printed
    std::optional<int> battery_reserve_minutes;  // at 25 A, as printed
    std::optional<int> airbag_wait_s;
    std::string airbag_wait_source, battery_place;
    bool hazards_listed = false;  // somebody looked, even if the list is empty
    std::vector<Hazard> hazards;
    TextList cautions;
    std::string remarks;
};

struct SoundSystem {
    std::string path, name, option_code, amplifier_place, sound_injected, remarks;
    TextList tells;
    std::optional<bool> premium_expected, band_split, watches_load, cuts_bass, noise_cancelling, engine_sound;
    std::optional<VolumeSet> volume_set;
};

struct Circuit {
    std::string path, carries, remarks;
    Role role = Role::speaker;
    std::optional<Position> position;
    OutputStage output;
    std::optional<Hertz> band_low, band_high;
    std::optional<FedBy> fed_by;
    std::optional<Behind> behind;
    std::optional<LevelKind> level;
    std::optional<Seconds> delay;
    std::optional<Amps> fuse;
    std::optional<Seconds> stays_live;  // after key off
    std::optional<Switching> switching;
    std::vector<Protects> protects;
    std::optional<Amps> gives;  // most that may be taken from it
};

struct TapPoint {
    std::string path, place, connector, terminal, plug_in_lead, remarks;
    std::optional<ConnectorSide> side;
    std::optional<ViewFace> view_face;
    std::optional<SquareMillimetres> gauge;
    std::optional<int> cavities, cavity_rows, minutes;  // numbered along the rows from the top left of view_face
    std::optional<bool> reachable_in_place;
    TextList panels;
    bool hazards_listed = false;
    std::vector<Hazard> hazards;
};

// From the stored fields of an entry; fields that are missing stay absent. REQUIRES values of the right kind.
Vehicle vehicle_of(const Values& values);
SoundSystem sound_system_of(const Values& values);
Circuit circuit_of(const Values& values);
TapPoint tap_point_of(const Values& values);

}  // namespace tapbook
