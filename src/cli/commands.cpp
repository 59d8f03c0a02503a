// The table of commands: see command.h.
#include "cli/command.h"

namespace tapbook {
namespace {

const OptionSpec year_option{"--year", "YEAR", "model year of this car, two or four digits"};
const OptionSpec system_option{"--system", "CODE", "sound system, as listed by taps"};

const CommandSpec table[] = {
    {"find", "at the car", "[WORDS...]", 0, -1, "find a car from a few words, typing mistakes allowed; all cars without words", {},
     {"tapbook find ostrel wagon", "tapbook find ostrl 20"}, run_find},
    {"taps", "at the car", "VEHICLE", 1, -1, "where to tap, which conductors, which is positive and how sure that is",
     {year_option, system_option},
     {"tapbook taps ostrel", "tapbook taps ostrel --year 2020 --system base"}, run_taps},
    {"advise", "at the car", "VEHICLE", 1, -1, "which converter fits this tap, by how much, and why the others do not",
     {{"--amp", "AMPLIFIER", "the amplifier that is fed"},
      year_option,
      system_option,
      {"--tap", "TAP", "the tap point; the best one without it"},
      {"--lowest-hz", "HERTZ", "lowest note played; 30 for a subwoofer, 60 for full range"},
      {"--channels", "N", "pairs wanted; the amplifier's channels, else 2"},
      {"--why", "", "for every converter the numbers compared and the notes relied on"}},
     {"tapbook advise ostrel --system base --amp kelm-four", "tapbook advise ostrel --system premium --lowest-hz 30 --why"}, run_advise},
    {"meter", "at the car", "", 0, 0, "what a reading at two conductors means, and when to stop",
     {{"--dc-positive", "V", "d.c. of the positive conductor to chassis"},
      {"--dc-negative", "V", "d.c. of the negative conductor to chassis"},
      {"--ac", "V", "a.c. across the pair, with a tone playing"},
      {"--supply", "V", "the battery, read at the same time"},
      {"--ac-positive", "V", "a.c. of the positive conductor to chassis"},
      {"--ac-negative", "V", "a.c. of the negative conductor to chassis"},
      {"--volume", "full|other", "was the volume at its highest clean step"}},
     {"tapbook meter --dc-positive 7.1 --dc-negative 7.1 --ac 6.2 --supply 14.2 --volume full"}, run_meter},
    {"gain", "at the car", "", 0, 0, "what the meter shall read at the amplifier's output",
     {{"--watts", "W", "continuous watts: the smaller of amplifier and speaker"},
      {"--ohms", "OHM", "the load really connected"},
      {"--tone-db", "DB", "level of the test tone, 0 or below; 0 without it"},
      {"--overlap-db", "DB", "raise on purpose, 0 or more; loud recordings then clip"}},
     {"tapbook gain --watts 75 --ohms 4", "tapbook gain --watts 300 --ohms 2 --tone-db -10"}, run_gain},
    {"add", "in the office", "FILE", 1, 1, "put a vehicle, parts or stock file into the catalog; \"-\" reads from a pipe",
     {{"--dry-run", "", "show what would happen and write nothing"}}, {"tapbook add car.toml --dry-run"}, run_add},
    {"init", "look after", "", 0, 0, "make an empty catalog with this shop's key",
     {{"--shop", "NAME", "the shop's name"}}, {"tapbook init --shop \"Bench Three\""}, run_init},
    {"demo", "look after", "", 0, 0, "make a practice shop with invented cars, parts and notes", {}, {"tapbook demo"}, run_demo},
    {"rules", "look after", "[list | show ID | columns | check]", 0, 2, "the rules that judge converters: list, explain one, what they can read, run their cases", {},
     {"tapbook rules", "tapbook rules show overdriven-at-lowest-note", "tapbook rules columns"}, run_rules},
    {"where", "look after", "", 0, 0, "print the places this program reads and writes", {}, {"tapbook where"}, run_where},
    {"calc swing", "bench", "", 0, 0, "volts and watts an output can give",
     {{"--drive", "DRIVE", "bridged, single_ended, boosted_split, boosted_bridged, ..."},
      {"--supply", "V", "supply; 14.4 without it"},
      {"--ohms", "OHM", "load"},
      {"--loss", "V", "lost per conducting side; 0.75 without it"},
      {"--rail", "V", "rail of a boosted output"},
      {"--bridged", "", "a boosted_split output is bridged"},
      {"--stage", "STAGE", "stage behind a common return: bridged or single_ended"},
      {"--rated-volts", "V", "rated volts of a line output"},
      {"--watts", "W", "printed power"},
      {"--rating", "KIND", "continuous, at_10_percent or maximum"}},
     {"tapbook calc swing --drive bridged --supply 14.4 --ohms 4"}, run_calc_swing},
    {"calc wire", "bench", "", 0, 0, "resistance and drop of a cable, one-way length",
     {{"--awg", "N", "size, 4/0 to 40"},
      {"--mm2", "A", "cross-section of metric vehicle cable"},
      {"--metres", "L", "length of this conductor alone"},
      {"--amps", "I", "constant current"},
      {"--celsius", "T", "temperature; 20 without it"},
      {"--metal", "copper|cca", "copper, or copper-clad aluminium"},
      {"--supply", "V", "what the percentage is of; 13.8 without it"}},
     {"tapbook calc wire --awg 4 --metres 5 --amps 72.5"}, run_calc_wire},
    {"calc colour", "bench", "TEXT", 1, -1, "the code and words of a wire colour", {}, {"tapbook calc colour \"white w/ red stripe\"", "tapbook calc colour LBU/RD"}, run_calc_colour},
};

const OptionSpec common[] = {
    {"--db", "FILE", "the catalog; else TAPBOOK_DB, else the place `tapbook where` prints"},
    {"--json", "", "one JSON object instead of text"},
    {"--help", "", "this help; -h works anywhere"},
};

}  // namespace

std::span<const CommandSpec> commands() { return table; }
std::span<const OptionSpec> common_options() { return std::span(common).first(2); }

const CommandSpec* find_command(std::string_view name) {
    for (const auto& command : table)
        if (command.name == name) return &command;
    return nullptr;
}

}  // namespace tapbook
