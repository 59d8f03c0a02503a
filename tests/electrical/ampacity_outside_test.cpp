// Allowable amps against the printed tables. A: 33 CFR 183.425 table 5, every row and column as printed in the Code of
// Federal Regulations, and note 1 as a printed column of corrected amps for 105 C wire (0.85, rounded to whole amps by
// the printer). B: FAA AC 43.13-1B tables 11-3 and 11-9, which answer under other conditions. C: SAE J1127 areas from a
// cable-trade page. Trap: 4 AWG is "68 A" in one published table and "160 A" in another.
#include <catch2/catch.hpp>

#include <cmath>
#include <string>

#include "electrical/electrical.h"

using namespace tapbook;

namespace {

struct PrintedRow {
    const char* size;
    double allowed[7];  // 60, 75, 80, 90, 105, 125, 200 C
};

constexpr PrintedRow printed[] = {
    {"18", {10, 10, 15, 20, 20, 25, 25}},         {"16", {15, 15, 20, 25, 25, 30, 35}},
    {"14", {20, 20, 25, 30, 35, 40, 45}},         {"12", {25, 25, 35, 40, 45, 50, 55}},
    {"10", {40, 40, 50, 55, 60, 70, 70}},         {"8", {55, 65, 70, 70, 80, 90, 100}},
    {"6", {80, 95, 100, 100, 120, 125, 135}},     {"4", {105, 125, 130, 135, 160, 170, 180}},
    {"3", {120, 145, 150, 155, 180, 195, 210}},   {"2", {140, 170, 175, 180, 210, 225, 240}},
    {"1", {165, 195, 210, 210, 245, 265, 280}},   {"1/0", {195, 230, 245, 245, 285, 305, 325}},
    {"2/0", {225, 265, 285, 285, 330, 355, 370}}, {"3/0", {260, 310, 330, 330, 385, 410, 430}},
    {"4/0", {300, 360, 385, 385, 445, 475, 510}},
};

struct Corrected {
    const char* size;
    double allowed;
};

// A, 105 C, engine space (50 C).
constexpr Corrected engine_space[] = {{"18", 17},   {"16", 21},   {"14", 30},  {"12", 38}, {"10", 51},
                                      {"8", 68},    {"6", 102},   {"4", 136},  {"2", 178}, {"1", 208},
                                      {"1/0", 242}, {"2/0", 280}, {"4/0", 378}};

// B, table 11-3: the fuse the FAA pairs with a copper wire.
constexpr Corrected aircraft_fuses[] = {{"18", 10}, {"16", 10}, {"14", 15}, {"12", 20}, {"10", 30},  {"8", 50},
                                        {"6", 70},  {"4", 70},  {"2", 100}, {"1", 150}, {"1/0", 150}};

// B, table 11-9, 105 C: 33 or more wires (9 from 8 AWG up) in a bundle, 70 C around it, 60,000 ft.
constexpr Corrected aircraft_bundle[] = {{"18", 6},    {"16", 7},    {"14", 10},   {"12", 13},  {"10", 17},
                                         {"8", 38},    {"6", 50},    {"4", 68},    {"2", 95},   {"1", 113},
                                         {"1/0", 128}, {"2/0", 147}, {"3/0", 172}, {"4/0", 204}};

Amps allowed(const char* size, const CableConditions& conditions) {
    const auto found = ampacity(*parse_awg(size), conditions);
    REQUIRE(found);
    return found->allowed;
}

}  // namespace

TEST_CASE("every row and column of the allowable amperage is as printed") {
    REQUIRE(std::size(printed) == ampacity_rows().size());
    for (std::size_t i = 0; i < std::size(printed); ++i) {
        CAPTURE(printed[i].size);
        CHECK(awg_text(ampacity_rows()[i]) == printed[i].size);
        for (const auto& [insulation, word] : words_of<Insulation>()) {
            CAPTURE(word);
            const auto column = static_cast<std::size_t>(insulation);
            CHECK(allowed(printed[i].size, {Metal::copper, insulation, CablePlace::elsewhere}).in(amps) ==
                  printed[i].allowed[column]);
        }
    }
}

TEST_CASE("in an engine space 105 C wire carries what the corrected column prints, to half an amp") {
    const CableConditions hot{Metal::copper, Insulation::rated_105, CablePlace::engine_space};
    for (const auto& [size, amperes] : engine_space) {
        CAPTURE(size);
        CHECK(allowed(size, hot).in(amps) == Approx(amperes).margin(0.5001));
    }
    CHECK_FALSE(ampacity(Awg{4}, hot)->factor_from_memory);
    CHECK(ampacity(Awg{4}, {Metal::copper, Insulation::rated_90, CablePlace::engine_space})->factor_from_memory);
}

// Heat balance: the rise above the air goes with the square of the amps, so the factor is near sqrt((T-50)/(T-30)).
TEST_CASE("each engine-space factor but that of 200 C is what the heat balance says within 0.01") {
    for (const auto& [insulation, word] : words_of<Insulation>()) {
        const double rated = std::stod(std::string(word));
        const auto cool = ampacity(Awg{4}, {Metal::copper, insulation, CablePlace::elsewhere})->allowed;
        const auto hot = ampacity(Awg{4}, {Metal::copper, insulation, CablePlace::engine_space})->allowed;
        CAPTURE(word);
        if (insulation == Insulation::rated_200)
            CHECK(hot == cool);  // the table makes no difference there
        else
            CHECK((hot / cool).in(ratio) == Approx(std::sqrt((rated - 50) / (rated - 30))).margin(0.01));
    }
}

TEST_CASE("the aircraft charts, made for hotter and thinner air, never allow more than our most careful column") {
    for (const auto& [size, amperes] : aircraft_fuses) {
        CAPTURE(size);
        CHECK(allowed(size, {}).in(amps) >= amperes);
    }
    for (const auto& [size, amperes] : aircraft_bundle) {
        CAPTURE(size);
        CHECK(allowed(size, {Metal::copper, Insulation::rated_105, CablePlace::elsewhere}).in(amps) > amperes);
    }
}

TEST_CASE("insulation that is not known counts as 60 C and says so") {
    const auto unknown = ampacity(Awg{4}, {});
    CHECK(unknown->allowed == amps(105));
    CHECK(unknown->insulation_assumed);
    CHECK(unknown->column == Insulation::rated_60);
}

// C. 37,360, 62,450, 98,980, 125,100 and 205,500 cmil; GNU units: `circularmil` = 5.0670748e-4 mm^2.
TEST_CASE("cable marked in SAE sizes counts by its copper, a row below the AWG of the same number") {
    const auto of_sae = [](const char* marked) {
        const SaeSize* size = find_sae_size(marked);
        REQUIRE(size != nullptr);
        return *ampacity(size->least_area, {});
    };
    CHECK(find_sae_size("4")->least_area.in(square_millimetres) == Approx(18.93).epsilon(1e-3));
    CHECK(find_sae_size("4/0")->least_area.in(square_millimetres) == Approx(104.13).epsilon(1e-3));
    CHECK(awg_text(of_sae("4").row) == "6");
    CHECK(awg_text(of_sae("2").row) == "3");
    CHECK(awg_text(of_sae("1/0").row) == "1");
    CHECK(awg_text(of_sae("2/0").row) == "1/0");
    CHECK(awg_text(of_sae("4/0").row) == "3/0");
    for (const SaeSize& size : sae_sizes()) {
        CAPTURE(size.marked);
        const auto same_number = area(*parse_awg(size.marked));
        CHECK((size.least_area / same_number).in(ratio) > 0.86);  // "5 to 12 percent smaller"
        CHECK((size.least_area / same_number).in(ratio) < 0.98);
    }
    CHECK(find_sae_size("6") == nullptr);
}

// Areas of the AWG sizes by GNU units, wiregauge(n)^2 pi/4: 26.67 (3), 21.15 (4), 33.63 (2), 13.30 (6), 0.823 (18)
// mm^2.
TEST_CASE("metric cable counts as the thickest AWG size that is not thicker") {
    const auto row = [](double square) {
        const auto found = ampacity(square_millimetres(square), {});
        return found ? awg_text(found->row) : std::string("none");
    };
    CHECK(row(16) == "6");
    CHECK(row(25) == "4");
    CHECK(row(35) == "2");
    CHECK(row(50) == "1");
    CHECK(row(1) == "18");
    CHECK(row(0.75) == "none");
    CHECK(row(500) == "4/0");
    CHECK(ampacity(square_millimetres(25), {})->rounded_down);
    CHECK_FALSE(ampacity(area(Awg{4}), {})->rounded_down);
    CHECK(awg_text(ampacity(Awg{5}, {})->row) == "6");
    CHECK_FALSE(ampacity(Awg{20}, {}).has_value());
}
