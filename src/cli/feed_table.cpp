// The command for the supply of the amplifiers: words, options, examples.
#include "cli/command_tables.h"

namespace tapbook {

std::span<const CommandSpec> feed_commands() {
    static const CommandSpec table[] = {
        {"feed",
         "in the office",
         "[WATTS:CLASS:METRES:SIZE...]",
         0,
         8,
         "cable, fuses and volts for one amplifier, or for several behind a block",
         {{"--watts", "W", "output power of the amplifier"},
          {"--amps", "I", "or the current it draws"},
          {"--class", "ab|d", "class of the amplifier", spellings<AmplifierClass>},
          {"--efficiency", "RATIO", "printed efficiency, like 0.78; the likely one of its class without it"},
          {"--constant-current", "", "not regulated: draws the same current at any volts"},
          {"--metres", "L", "main cable, one way, measured on the car"},
          {"--size", "SIZE", "4 or 1/0 (AWG), 25mm2, sae4 for cable marked SAE, or choose"},
          {"--from", "LIST", "sizes to choose from: awg, metric or sae", spellings<SizeSystem>},
          {"--metal", "copper|cca", "copper, or copper-clad aluminium", spellings<Metal>},
          {"--insulation", "T", "degrees its insulation is rated for: 60, 75, 80, 90, 105, 125 or 200",
           spellings<Insulation>},
          {"--engine-space", "", "the cable passes through an engine space, 50 C"},
          {"--celsius", "T", "temperature of the cable; 20 without it"},
          {"--supply", "V", "volts at the battery; 13.8 without it"},
          {"--source-mohm", "MOHM", "resistance of battery and charging system; 0 without it"},
          {"--return", "body|cable", "back through the body, or through cable like the one out"},
          {"--return-mohm", "MOHM", "the body's resistance as read; 0, 1 and 5 without it"},
          {"--use", "USE", "what it plays: sub (without it) or full_range", spellings<AmplifierUse>},
          {"--idle-amps", "I", "current of all amplifiers without music"},
          {"--charging", "KIND", "alternator (without it) or dc_converter", spellings<ChargingSource>},
          {"--charging-amps", "I", "its rating, for what is left at idle"},
          {"--farads", "F", "a capacitor, for how long it would last"}},
         {"tapbook feed --watts 900 --class d --metres 5.5 --size choose --insulation 105",
          "tapbook feed 500:d:1:8 300:ab:0.5:8 --metres 5 --size 1/0 --insulation 105"},
         run_feed},
    };
    return table;
}

}  // namespace tapbook
