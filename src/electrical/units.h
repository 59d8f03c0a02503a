// Which kinds and units does the program speak? One tag, one type and its units per kind; small units (milli...) are
// what is stored, so that an integer becomes a quantity exactly.
#pragma once

#include "electrical/quantity.h"

namespace tapbook {

struct RmsVoltsTag {};
struct PeakVoltsTag {};
struct DcVoltsTag {};
struct WattsTag {};
struct OhmsTag {};
struct AmpsTag {};
struct HertzTag {};
struct MetresTag {};
struct SquareMillimetresTag {};
struct SecondsTag {};
struct OhmsPerMetreTag {};
struct FaradsTag {};
struct HenriesTag {};
struct KelvinsTag {};
struct CelsiusTag {
    using Difference = KelvinsTag;
};
struct AmpHoursTag {};
struct RatioTag {};
struct GainTag {};
struct LevelTag {
    using Difference = GainTag;
};
struct FullScaleLevelTag {
    using Difference = GainTag;
};

using RmsVolts = Quantity<RmsVoltsTag>;    // root mean square of whatever waveform
using PeakVolts = Quantity<PeakVoltsTag>;  // highest instantaneous value
using DcVolts = Quantity<DcVoltsTag>;      // steady volts: supply, rail, bias, drop along a cable
using Watts = Quantity<WattsTag>;
using Ohms = Quantity<OhmsTag>;
using Amps = Quantity<AmpsTag>;
using Hertz = Quantity<HertzTag>;
using Metres = Quantity<MetresTag>;
using SquareMillimetres = Quantity<SquareMillimetresTag>;
using Seconds = Quantity<SecondsTag>;
using OhmsPerMetre = Quantity<OhmsPerMetreTag>;
using Farads = Quantity<FaradsTag>;
using Henries = Quantity<HenriesTag>;
using Kelvins = Quantity<KelvinsTag>;                // a difference of temperatures
using Celsius = Quantity<CelsiusTag>;                // a temperature
using AmpHours = Quantity<AmpHoursTag>;              // charge of a battery
using Ratio = Quantity<RatioTag>;                    // volts per volt, or a plain fraction
using Gain = Quantity<GainTag>;                      // a difference of levels, dB
using Level = Quantity<LevelTag>;                    // a point, dB above 1 V RMS
using FullScaleLevel = Quantity<FullScaleLevelTag>;  // a point, dB relative to digital full scale

inline constexpr Unit<RmsVoltsTag> rms_volts;
inline constexpr Unit<RmsVoltsTag, 1, 1000> rms_millivolts;
inline constexpr Unit<PeakVoltsTag> peak_volts;
inline constexpr Unit<PeakVoltsTag, 1, 1000> peak_millivolts;
inline constexpr Unit<DcVoltsTag> dc_volts;
inline constexpr Unit<DcVoltsTag, 1, 1000> dc_millivolts;
inline constexpr Unit<WattsTag> watts;
inline constexpr Unit<WattsTag, 1, 1000> milliwatts;
inline constexpr Unit<OhmsTag> ohms;
inline constexpr Unit<OhmsTag, 1, 1000> milliohms;
inline constexpr Unit<AmpsTag> amps;
inline constexpr Unit<AmpsTag, 1, 1000> milliamps;
inline constexpr Unit<HertzTag> hertz;
inline constexpr Unit<HertzTag, 1, 1000> millihertz;
inline constexpr Unit<MetresTag> metres;
inline constexpr Unit<MetresTag, 1, 1000> millimetres;
inline constexpr Unit<SquareMillimetresTag> square_millimetres;
inline constexpr Unit<SquareMillimetresTag, 1, 1000> thousandths_of_square_millimetre;
inline constexpr Unit<SecondsTag> seconds;
inline constexpr Unit<SecondsTag, 1, 1000> milliseconds;
inline constexpr Unit<OhmsPerMetreTag> ohms_per_metre;
inline constexpr Unit<OhmsPerMetreTag, 1, 1000> milliohms_per_metre;
inline constexpr Unit<FaradsTag> farads;
inline constexpr Unit<FaradsTag, 1, 1000000> microfarads;
inline constexpr Unit<HenriesTag> henries;
inline constexpr Unit<HenriesTag, 1, 1000> millihenries;
inline constexpr Unit<AmpHoursTag> amp_hours;
inline constexpr Unit<AmpHoursTag, 1, 1000> milliamp_hours;
inline constexpr Unit<KelvinsTag> kelvins;
inline constexpr Unit<CelsiusTag> celsius;
inline constexpr Unit<RatioTag> ratio;
inline constexpr Unit<RatioTag, 1, 100> percent;
inline constexpr Unit<RatioTag, 1, 1000> thousandths;
inline constexpr Unit<GainTag> decibels;
inline constexpr Unit<GainTag, 1, 1000> millidecibels;
inline constexpr Unit<LevelTag> dbv;
inline constexpr Unit<FullScaleLevelTag> dbfs;
inline constexpr Unit<FullScaleLevelTag, 1, 1000> thousandths_dbfs;

}  // namespace tapbook
