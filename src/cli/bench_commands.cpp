// meter, gain, calc: pure calculators that need no catalog.
#include <fmt/format.h>

#include "cli/command.h"

namespace tapbook {
namespace {

constexpr std::int64_t most_millivolts = 100000;

std::optional<bool> full_volume(const Parsed& parsed) {
    const auto typed = parsed.text("--volume");
    if (!typed) return std::nullopt;
    if (*typed == "full") return true;
    if (*typed == "other") return false;
    throw UsageError(fmt::format("--volume does not know \"{}\"", shown(*typed)), "full or other");
}

}  // namespace

Exit run_meter(Session& session, const Parsed& parsed) {
    MeterReadings readings;
    readings.dc_positive_mv = parsed.need_number("--dc-positive", 3, -most_millivolts, most_millivolts);
    readings.dc_negative_mv = parsed.need_number("--dc-negative", 3, -most_millivolts, most_millivolts);
    readings.ac_mv = parsed.need_number("--ac", 3, 0, most_millivolts);
    readings.supply_mv = parsed.number("--supply", 3, 0, most_millivolts);
    readings.ac_positive_mv = parsed.number("--ac-positive", 3, 0, most_millivolts);
    readings.ac_negative_mv = parsed.number("--ac-negative", 3, 0, most_millivolts);
    readings.full_volume = full_volume(parsed);
    const MeterVerdict verdict = judge(readings);
    session.answer(meter_text(verdict, session.screen), meter_json(verdict));
    return Exit::done;
}

Exit run_gain(Session& session, const Parsed& parsed) {
    const Watts power = milliwatts(parsed.need_number("--watts", 3, 1, 20000000));
    const Ohms load = milliohms(parsed.need_number("--ohms", 3, 100, 100000));
    const auto level = parsed.number("--tone-db", 3, -120000, 120000).value_or(0);
    if (level > 0)
        throw UsageError("--tone-db: a tone cannot be above digital full scale",
                         "write 0 or a negative number, like -10");
    const auto overlap = parsed.number("--overlap-db", 3, 0, 20000).value_or(0);
    const RmsVolts target = gain_target(power, load, thousandths_dbfs(level), millidecibels(overlap));
    session.answer(gain_text(target, power, load, thousandths_dbfs(level), session.screen), gain_json(target));
    return Exit::done;
}

Exit run_calc_swing(Session& session, const Parsed& parsed) {
    OutputStage output;
    const auto drive = parsed.word<Drive>("--drive");
    if (!drive) throw UsageError("--drive is needed", "for example --drive bridged");
    output.drive = *drive;
    if (const auto rail = parsed.number("--rail", 3, 1, 200000)) output.rail = dc_millivolts(*rail);
    if (parsed.flag("--bridged"))
        output.split_is_bridged = true;
    else if (output.drive == Drive::boosted_split)
        output.split_is_bridged = false;
    output.common_stage = parsed.word<Stage>("--stage").value_or(Stage::unknown);
    if (const auto line = parsed.number("--rated-volts", 3, 1, 50000)) output.line_volts = rms_millivolts(*line);
    const auto watts_typed = parsed.number("--watts", 3, 1, 20000000);
    const auto kind = parsed.word<RatingKind>("--rating");
    if (watts_typed.has_value() != kind.has_value())
        throw UsageError("--watts and --rating belong together", "for example --watts 18 --rating continuous");
    const Ohms load = milliohms(parsed.need_number("--ohms", 3, 100, 10000000));
    if (watts_typed) {
        output.rated = milliwatts(*watts_typed);
        output.rating_kind = *kind;
        output.rated_at = load;
    }
    const DcVolts supply = dc_millivolts(parsed.number("--supply", 3, 1, 100000).value_or(14400));
    const DcVolts loss = dc_millivolts(parsed.number("--loss", 3, 0, 50000).value_or(750));
    Supply assumed;
    assumed.likely = supply;
    if (const auto impossible = impossible_rating(output, assumed))
        throw UsageError(fmt::format("{} W {} is impossible here: {:g} V into {:g} ohm gives at most {:.2f} W",
                                     unscaled(*watts_typed, 3), word_of(*kind), supply.in(dc_volts), load.in(ohms),
                                     impossible->limit.in(watts)),
                         "a printed \"50 W\" is usually --rating maximum");
    const Swing swing = calculate_swing(output, load, supply, loss);
    session.answer(swing_text(swing, session.screen), swing_json(swing));
    return Exit::done;
}

Exit run_calc_wire(Session& session, const Parsed& parsed) {
    const auto gauge = parsed.text("--awg");
    const auto area_typed = parsed.number("--mm2", 3, 1, 1000000);
    if (gauge.has_value() == area_typed.has_value())
        throw UsageError("give either --awg or --mm2", "for example --awg 4");
    const auto kelvin_free = [](std::int64_t milli) { return celsius(static_cast<double>(milli) / 1000.0); };
    const Celsius temperature = kelvin_free(parsed.number("--celsius", 3, -60000, 250000).value_or(20000));
    const Metal metal = parsed.word<Metal>("--metal").value_or(Metal::copper);
    std::optional<CableResistance> cable;
    if (gauge) {
        const auto size = parse_awg(*gauge);
        if (!size)
            throw UsageError(fmt::format("--awg: \"{}\" is no size", shown(*gauge)), "write 4/0 to 40, like 8 or 1/0");
        cable = resistance(*size, temperature, metal);
    } else {
        cable = resistance(thousandths_of_square_millimetre(*area_typed), temperature, metal);
    }
    const Metres length = millimetres(parsed.need_number("--metres", 3, 1, 1000000));
    const Amps current = milliamps(parsed.need_number("--amps", 3, 1, 5000000));
    const DcVolts supply = dc_millivolts(parsed.number("--supply", 3, 1000, 1000000).value_or(13800));
    const WireAnswer answer{*cable, drop(cable->per_metre, length, current), supply, length, current};
    session.answer(wire_text(answer, session.screen), wire_json(answer));
    return Exit::done;
}

Exit run_calc_colour(Session& session, const Parsed& parsed) {
    const auto colour = parse_wire_colour(parsed.joined_words());
    if (const auto* refusal = std::get_if<ColourRefusal>(&colour)) throw UsageError(refusal->message());
    session.answer(colour_text(std::get<WireColour>(colour), session.screen),
                   colour_json(std::get<WireColour>(colour)));
    return Exit::done;
}

Exit run_calc_vin(Session& session, const Parsed& parsed) {
    const auto read = parse_vin(parsed.joined_words());
    if (const auto* refusal = std::get_if<VinRefusal>(&read)) throw UsageError(refusal->message());
    const Vin& vin = std::get<Vin>(read);
    session.answer(vin_text(vin, session.screen), vin_json(vin));
    return check_verdict(vin) == CheckVerdict::mismatch ? Exit::answer_is_no : Exit::done;
}

}  // namespace tapbook
