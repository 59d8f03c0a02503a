// Are the assumptions data: each named once, explained, sourced, with the value the signal specification, section 1
// gives it?
#include "electrical/supply.h"

#include <catch2/catch.hpp>
#include <map>
#include <string>

#include "arbitrary.h"

using namespace tapbook;

namespace {

double value(const SupplyField& field, const Supply& supply) {
    if (const auto* volts = std::get_if<DcVolts Supply::*>(&field.member)) return (supply.**volts).in(dc_volts);
    return (supply.*std::get<Ratio Supply::*>(field.member)).in(ratio);
}

}  // namespace

TEST_CASE("the table of assumptions holds every value of the specification under its name") {
    std::map<std::string, double> printed;
    for (const SupplyField& field : supply_fields()) printed[std::string(field.name)] = value(field, {});
    const std::map<std::string, double> specified = {{"low", 12.6},
                                                     {"likely", 14.4},
                                                     {"high", 15.0},
                                                     {"clean_high", 14.4},
                                                     {"loss_low", 1.2},
                                                     {"loss_likely", 0.75},
                                                     {"loss_high", 0.4},
                                                     {"rating_margin", 1.125},
                                                     {"clip_power_1_percent", 1.0475},
                                                     {"offset", 0.150},
                                                     {"bias_low", 0.3},
                                                     {"clip_power_10_percent", 1.2878},
                                                     {"bias_likely", 0.5},
                                                     {"bias_high", 0.55},
                                                     {"clip_power_square", 2},
                                                     {"crank", 6.0},
                                                     {"true_rms_tolerance", 0.02},
                                                     {"other_meter_tolerance", 0.11},
                                                     {"line_bias_high", 0.25}};
    CHECK(printed == specified);
    CHECK(supply_fields().size() == specified.size());
}

TEST_CASE("every assumption says what it means, its unit and who says so") {
    for (const SupplyField& field : supply_fields()) {
        CAPTURE(std::string(field.name));
        CHECK(field.meaning.size() > 10);
        CHECK_FALSE(field.source.empty());
        CHECK((field.unit == "V") == std::holds_alternative<DcVolts Supply::*>(field.member));
    }
}

TEST_CASE("an overridden assumption changes the prediction") {
    OutputStage bridged;
    bridged.drive = Drive::bridged;
    Supply weak;
    weak.low = dc_volts(11.6);
    const auto usual = predict_signal(bridged, {}, hertz(40));
    const auto weaker = predict_signal(bridged, {}, hertz(40), weak);
    CHECK(usual.clean.low->in(rms_volts)-weaker.clean.low->in(rms_volts) == Approx(0.7071).margin(1e-4));
    CHECK(weaker.clean.likely == usual.clean.likely);
}
