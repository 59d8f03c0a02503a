// See catalog.h.
#include "invented/catalog.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <map>

#include "invented/dice.h"

namespace invented {
namespace {

using tapbook::Batch;
using tapbook::EntryKind;
using tapbook::TextList;
using tapbook::Values;
using tapbook::VehicleName;

constexpr const char* shop_codes[] = {"ambrel", "bryndle", "costow", "dunnick", "elverley", "fanthorp"};
constexpr const char* base_colours[] = {"WH", "GY", "GN", "VT", "BN", "RD", "BU", "YE", "OG", "PK", "LBU", "TN"};
constexpr const char* stripe_colours[] = {"BK", "WH", "RD", "YE", "GN", "BU"};

std::string text(const char* words) {
    return words;
}

std::int64_t whole(int number) {
    return number;
}

struct CircuitPlan {
    const char* code;
    const char* position;  // of a speaker
    const char* role;
};
constexpr CircuitPlan plain_circuits[] = {{"front-left", "front left", "speaker"},
                                          {"front-right", "front right", "speaker"},
                                          {"rear-left", "rear left", "speaker"},
                                          {"rear-right", "rear right", "speaker"},
                                          {"accessory", "", "switched_power"},
                                          {"battery", "", "constant_power"},
                                          {"dash-light", "", "illumination"},
                                          {"wake", "", "turn_on_lead"},
                                          {"earth", "", "ground"},
                                          {"bus", "", "data_pair"}};
constexpr CircuitPlan more_circuits[] = {{"front-left-tweeter", "front left tweeter", "speaker"},
                                         {"front-right-tweeter", "front right tweeter", "speaker"}};

// What is true at a tap point; a note says it, or something else.
struct Truth {
    std::string path, role;
    std::string positive, negative, wire;
    int half_supply_mv = 0, clean_mv = 0;
    bool bridged = true;
};

std::string colour(Dice& dice) {
    const std::string base = dice.one_of(base_colours);
    const std::string stripe = dice.one_of(stripe_colours);
    return dice.percent(50) || stripe == base ? base : base + "/" + stripe;
}

class CarMaking {
  public:
    CarMaking(std::uint64_t seed, const VehicleName& car) : car_(car), dice_(Dice(seed).branch(hash_of(car.path))) {}

    Batch take(int notes) {
        batch_.file = car_.path + ".toml";
        batch_.practice = true;
        add_vehicle();
        const int systems = dice_.percent(60) ? 2 : dice_.percent(50) ? 1 : 3;
        for (int i = 0; i < systems; ++i) add_system(i);
        for (int i = 0; i < notes; ++i) add_note(i);
        return std::move(batch_);
    }

  private:
    static std::uint64_t hash_of(std::string_view path) {  // FNV-1a
        std::uint64_t hash = 0xcbf29ce484222325;
        for (const char c : path) hash = (hash ^ static_cast<unsigned char>(c)) * 0x100000001b3;
        return hash;
    }

    void entry(EntryKind kind, const std::string& path, Values values) {
        values["path"] = path;
        batch_.entries.push_back({kind, std::move(values), {}});
    }

    void add_vehicle() {
        entry(EntryKind::vehicle, car_.path,
              {{"make", car_.make},
               {"model", car_.model},
               {"body", car_.body},
               {"first_year", whole(car_.first_year)},
               {"last_year", whole(car_.last_year)},
               {"vin_patterns", TextList{vin_pattern()}},
               {"battery_mah", whole(dice_.between(40, 95) * 1000)},
               {"battery_sensor", dice_.percent(50)},
               {"start_stop", dice_.percent(40)},
               {"high_voltage", dice_.percent(10)},
               {"hazards", dice_.percent(60) ? TextList{"curtain_airbag"} : TextList{}}});
    }

    // Of a region that nobody has (first character 0).
    std::string vin_pattern() {
        constexpr std::string_view letters = "ABCDEFGHJKLMNPRSTUVWXYZ";
        std::string pattern = "0";
        for (int i = 0; i < 7; ++i) pattern += letters[dice_.below(letters.size())];
        return pattern + "?????????";
    }

    void add_system(int number) {
        constexpr const char* codes[] = {"base", "premium", "mid"};
        const bool premium = number == 1;
        const std::string path = car_.path + "/" + codes[number];
        entry(EntryKind::system, path,
              {{"name", fmt::format("{} sound", codes[number])},
               {"premium_expected", premium},
               {"tells", TextList{premium ? "amplifier under the right front seat" : "no badge on the grilles"}},
               {"volume_set", text("radio")}});
        for (const auto& circuit : plain_circuits) add_circuit(path, circuit, premium);
        if (number > 0)
            for (const auto& circuit : more_circuits) add_circuit(path, circuit, premium);
        systems_.push_back(path);
    }

    void add_circuit(const std::string& system, const CircuitPlan& plan, bool premium) {
        const std::string path = system + "/" + plan.code;
        Values values{{"role", text(plan.role)}, {"fed_by", text(premium ? "amplifier" : "radio")}};
        Truth truth{"",
                    plan.role,
                    colour(dice_),
                    colour(dice_),
                    colour(dice_),
                    dice_.between(6600, 7400),
                    dice_.between(5200, 9300),
                    dice_.percent(85)};
        if (truth.negative == truth.positive) truth.negative = "BK";
        if (*plan.position != '\0') {
            values["position"] = text(plan.position);
            values["drive"] = text(truth.bridged ? "bridged" : "single_ended");
            values["watts_mw"] = whole(dice_.between(15, 20) * 1000);
            values["rating"] = text("continuous");
            values["rating_mohm"] = whole(4000);
            values["band_low_mhz"] = whole(dice_.between(20, 60) * 1000);
            values["behind"] = text("none");
            values["level"] = text("follows_volume");
        }
        entry(EntryKind::circuit, path, std::move(values));
        add_tap(path + "/radio-plug", "radio", truth);
        if (dice_.percent(50)) add_tap(path + "/kick-panel", "kick panel", truth);
    }

    void add_tap(const std::string& path, const char* place, const Truth& truth) {
        entry(EntryKind::tap, path,
              {{"place", text(place)},
               {"connector",
                fmt::format("{} plug, {} cavities", dice_.percent(50) ? "grey" : "white", dice_.between(6, 24))},
               {"side", text("body")},
               {"panels", TextList{"trim frame", "radio, four screws"}},
               {"minutes", whole(dice_.between(5, 60))},
               {"hazards", dice_.percent(20) ? TextList{"curtain_airbag"} : TextList{}}});
        taps_.push_back(truth);
        taps_.back().path = path;
    }

    void add_note(int number) {
        Values values{{"date", fmt::format("{}-{:02}-{:02}", dice_.between(2015, 2025), dice_.between(1, 12),
                                           dice_.between(1, 28))},
                      {"turn", whole(number % 1000)},
                      {"year", whole(dice_.between(car_.first_year, car_.last_year))}};
        if (dice_.percent(4)) {
            const bool premium = systems_.size() > 1 && dice_.percent(50);
            values["kind"] = text("system");
            values["path"] = systems_[premium ? 1 : 0];
            values["method"] = text("seen");
            values["premium"] = premium;
        } else {
            const double skew = std::pow(dice_.fraction(), 1.5);  // some tap points are met more often
            say(taps_[static_cast<std::size_t>(skew * static_cast<double>(taps_.size()))], values);
        }
        batch_.notes.push_back({std::move(values), dice_.one_of(shop_codes), fmt::format("car {}", number / 4), {}});
    }

    void say(const Truth& truth, Values& values) {
        const int kind = dice_.between(0, 99);
        const bool copied = kind < 15;
        values["path"] = truth.path;
        values["side"] = text("body");
        values["method"] = text(copied ? "copied" : kind < 60 ? "metered" : kind < 80 ? "scoped" : "seen");
        if (copied) values["source"] = text("an old wiring sheet");
        const bool pair = truth.role == "speaker" || truth.role == "data_pair";
        values["kind"] = text(pair ? "pair" : "switched");
        const bool wrong = dice_.percent(4), swapped = dice_.percent(3);
        if (!pair) {
            values["wire"] = wrong ? colour(dice_) : truth.wire;
            const bool constant = truth.role == "constant_power";
            values["key_off_mv"] = whole(constant ? dice_.between(12100, 12800) : 0);
            values["accessory_mv"] = whole(dice_.between(12000, 12700));
            values["run_mv"] = whole(dice_.between(13400, 14400));
            return;
        }
        values["positive"] = wrong ? colour(dice_) : swapped ? truth.negative : truth.positive;
        values["negative"] = swapped ? truth.positive : truth.negative;
        values["drive"] = text(truth.bridged ? "bridged" : "single_ended");
        if (copied) return;
        values["polarity_method"] = text(kind < 50 ? "phase" : "cell");
        if (kind < 60) add_reading(truth, values);
    }

    void add_reading(const Truth& truth, Values& values) {
        const int dc = truth.bridged ? truth.half_supply_mv : 0;
        values["dc_positive_mv"] = whole(dc + dice_.between(0, 60));
        values["dc_negative_mv"] = whole(dc + dice_.between(0, 60));
        values["ac_mv"] = whole(truth.clean_mv + dice_.between(-300, 300));
        values["tone_mhz"] = whole(50000);
        values["tone_mdb"] = whole(0);
        values["supply_mv"] = whole(dice_.between(13800, 14400));
        for (const char* key : {"full_volume", "speaker_connected", "controls_flat", "true_rms"}) values[key] = true;
    }

    const VehicleName& car_;
    Dice dice_;
    Batch batch_;
    std::vector<std::string> systems_;
    std::vector<Truth> taps_;
};

}  // namespace

std::vector<int> note_counts(std::uint64_t seed, std::size_t cars, std::int64_t total) {
    constexpr double spread = 0.64, most = 6.0;  // of the weights' logarithm; of a weight, the middle one being 1
    Dice dice = Dice(seed).branch(1);
    std::vector<double> weights;
    double all = 0;
    for (std::size_t i = 0; i < cars; ++i) {
        double normal = -6;  // twelve draws add up to nearly a normal distribution
        for (int draw = 0; draw < 12; ++draw) normal += dice.fraction();
        weights.push_back(std::min(most, std::exp(spread * normal)));
        all += weights.back();
    }
    std::vector<int> counts;
    double so_far = 0;
    std::int64_t given = 0;
    for (const double weight : weights) {
        so_far += weight;
        const auto wanted = static_cast<std::int64_t>(std::llround(static_cast<double>(total) * so_far / all));
        counts.push_back(static_cast<int>(wanted - given));
        given = wanted;
    }
    return counts;
}

Batch shops() {
    Batch batch;
    batch.file = "shops.toml";
    batch.practice = true;
    for (const std::string code : shop_codes) {
        std::string name = code;
        name[0] = static_cast<char>(name[0] - 'a' + 'A');
        batch.shops.push_back({code, name, {}});
    }
    return batch;
}

Batch car_batch(std::uint64_t seed, const VehicleName& car, int notes) {
    return CarMaking(seed, car).take(notes);
}

Batch parts_like(const Batch& models, std::uint64_t seed, std::size_t count) {
    Dice dice = Dice(seed).branch(2);
    Batch batch;
    batch.file = "parts.toml";
    batch.practice = true;
    std::vector<tapbook::EntryDraft> converters;
    for (const auto& draft : models.entries)
        (draft.kind == EntryKind::converter ? converters : batch.entries).push_back(draft);
    for (std::size_t i = 0; i < count && !converters.empty(); ++i) {
        tapbook::EntryDraft draft = converters[i % converters.size()];
        const std::size_t turn = i / converters.size();
        if (turn > 0) {
            draft.values["path"] = fmt::format("{}-{}", tapbook::text_field(draft.values, "path"), turn + 1);
            draft.values["name"] = fmt::format("{} {}", tapbook::text_field(draft.values, "name"), turn + 1);
            for (const char* key : {"input_max_mv", "survives_mv", "output_max_mv"})
                if (const auto value = tapbook::whole_field(draft.values, key))
                    draft.values[key] = *value * dice.between(80, 120) / 100;
        }
        batch.entries.push_back(std::move(draft));
    }
    return batch;
}

}  // namespace invented
