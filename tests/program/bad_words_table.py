"""What is wrong for each option, and what is said: the table of bad_words.py. One row per option that takes a value."""
import dataclasses
import re
import typing


@dataclasses.dataclass(frozen=True)
class Number:
    """A number option: the least and most it takes, its digits after the point, a good value, and for a field of a note
    the unit after a blank, which is what its refusal names; None for all others."""
    least: str
    most: str
    digits: int
    good: str
    unit: typing.Optional[str] = None

    def refused(self, option, text, reason):
        if self.unit is not None:
            return f"tapbook: {option} {visible(text)} {reason}\n"
        return f'tapbook: {option}: "{visible(text)}" {reason}\nit must be {self.least} to {self.most}\n'

    def outside(self, option, text):
        if self.unit is not None:
            return f"tapbook: {option} is {text}{self.unit}\nit must be {self.least} to {self.most}{self.unit}\n"
        return f"tapbook: {option}: {text} is out of range\nit must be {self.least} to {self.most}\n"


def visible(text):
    """As the program shows what it must not send to a screen."""
    return re.sub("[\x00-\x1f\x7f\u200b-\u200f\u202a-\u202e]", lambda found: f"<U+{ord(found.group()):04X}>", text)


CAR = ["Orvane", "Tarn", "--db", "shop.sqlite"]

# A line that is right, by command (or by command and option), as option and value; the option that is tested is taken
# out of it.
BASE = {
    "taps": CAR, "advise": CAR, "add": ["car.toml", "--db", "shop.sqlite"], "export": [*CAR[:2], "--db", "shop.sqlite"], "find": CAR[:2],
    "meter": ["--dc-positive", "7.1", "--dc-negative", "7.1", "--ac", "6.2", "--supply", "14.2"],
    "gain": ["--watts", "75", "--ohms", "4"],
    "calc swing": ["--drive", "bridged", "--ohms", "4", "--watts", "10", "--rating", "continuous"],
    "calc level": ["--volts", "9.1", "--gain", "0.1", "--adding", "unity", "--topology", "transformer"],
    "calc wire": ["--awg", "4", "--metres", "5", "--amps", "70"],
    "calc fuse": ["--awg", "4", "--amps", "70"],
    "calc holdup": ["--farads", "1", "--amps", "100"],
    "calc corner": ["--ohms", "4", "--microfarads", "1000"],
    "feed": ["--watts", "900", "--class", "d", "--metres", "5.5", "--size", "4"],
    "serve": ["--db", "none.sqlite"], ("serve", "--address"): ["--lan", "--db", "none.sqlite"],
}
# Options of which only one may be there: the first takes the others out of the line.
INSTEAD = {("calc wire", "--mm2"): ["--awg"], ("calc fuse", "--mm2"): ["--awg"], ("calc fuse", "--sae"): ["--awg"],
           ("calc fuse", "--watts"): ["--amps"], ("calc holdup", "--watts"): ["--amps"], ("calc corner", "--corner-hz"): ["--microfarads"],
           ("feed", "--amps"): ["--watts"]}
# What has to stand beside an option.
BESIDE = {("calc fuse", "--watts"): ["--class", "d"], ("calc fuse", "--efficiency"): ["--watts", "300"], ("calc fuse", "--class"): ["--watts", "300"],
          ("calc fuse", "--supply"): ["--watts", "300", "--class", "d"], ("calc swing", "--rail"): []}
INSTEAD.update({("calc fuse", option): ["--amps"] for option in ("--efficiency", "--class", "--supply")})


def base_without(command, option):
    left, skip = [], False
    taken = [option, *INSTEAD.get((command, option), [])]
    for word in BASE.get((command, option), BASE.get(command, [])):
        if skip:
            skip = False
        elif word in taken:
            skip = True
        else:
            left.append(word)
    return left + BESIDE.get((command, option), [])


def unknown(option, known, near):
    """Rows of an option that takes one word of a list."""
    rows = [(wrong, 2, f'tapbook: {option} does not know "{wrong}"\none of {known}\n') for wrong in ("zzzzzzzz", "12345678")]
    return rows + [(wrong, 2, f'tapbook: {option} does not know "{wrong}"\ndid you mean {right}?\n') for wrong, right in near]


YEARS = [("010", "is the number 10, outside the model years 1950 to 2079"), ("0", "is the number 0, outside the model years 1950 to 2079"),
         ("1949", "is the number 1949, outside the model years 1950 to 2079"), ("-5", "is not a model year"), ("2,016", "is not a model year"),
         ("2016.5", "is not a model year"), ("0x7e0", "is not a model year"), ("2e3", "is not a model year"), (" 2016", "is not a model year")]
YEAR = [(text, 2, f'tapbook: --year: "{text}" {reason}; write four digits, or the last two\n') for text, reason in YEARS]
YEAR += [("2014", 1, "tapbook: the Orvane Tarn was built from 2015 to 2018, not in 2014\ntapbook find shows other years of it\n")]
SYSTEM = [("bass", 1, 'tapbook: the Orvane Tarn has no sound system "bass"\ndid you mean base?\n'),
          ("\x1b[2J", 1, 'tapbook: the Orvane Tarn has no sound system "<U+001B>[2J"\nit has: base\n')]
SAE = "one of 18, 16, 14, 12, 10, 8, 4, 2, 1/0, 2/0, 4/0; or give the printed area with --mm2\n"
VOLTS = Number("-100", "100", 3, "7.1")

OPTIONS = {
    "find": {}, "rules": {}, "where": {}, "demo": {}, "check": {}, "completion": {}, "calc terminal": {}, "calc cavity": {}, "calc vin": {}, "calc colour": {},
    "add": {"--mapping": [("zzz", 3, "zzz: there is no such file; check the name and the folder\nNothing was changed.\n"),
                          ("\x1b[2J", 3, "<U+001B>[2J: there is no such file; check the name and the folder\nNothing was changed.\n")],
            "--refused": [("again.csv", 2, "tapbook: --refused goes with --mapping\ntapbook add FILE.csv --mapping MAPPING.toml\n")]},
    "export": {"--csv": unknown("--csv", "notes, taps, converters, amplifiers, jobs", [("noets", "notes"), ("job", "jobs")]),
               "--out": [("shop.sqlite", 3, "tapbook: shop.sqlite is there already\nchoose another place, or say --replace; nothing was written\n"),
                         ("/dev/full", 3, "tapbook: /dev/full is there already\nchoose another place, or say --replace; nothing was written\n"),
                         (".", 3, "tapbook: . is there already\nchoose another place, or say --replace; nothing was written\n"),
                         ("/proc/x/y.toml", 5, "tapbook: cannot write /proc/x: No such file or directory\nchoose another place\n")],
               "--into": [("car.toml", 5, "tapbook: cannot write car.toml/vehicles: Not a directory\nchoose another place\n"),
                          ("/proc/x", 5, "tapbook: cannot write /proc/x/vehicles: No such file or directory\nchoose another place\n")]},
    "taps": {"--year": YEAR, "--system": SYSTEM},
    "advise": {"--year": YEAR, "--system": SYSTEM, "--lowest-hz": Number("1", "20000", 3, "30"), "--channels": Number("1", "16", 0, "2"),
               "--amp": [("zzz", 1, 'tapbook: there is no amplifier "zzz"\ntapbook add FILE.toml puts amplifiers in\n')],
               "--tap": [("radio-plg", 1, 'tapbook: there is no tap point "radio-plg"\ndid you mean radio-plug?\n'),
                         ("zzz", 1, 'tapbook: there is no tap point "zzz"\ntapbook taps lists them\n')]},
    "meter": {"--dc-positive": VOLTS, "--dc-negative": VOLTS, "--ac": Number("0", "100", 3, "6.2"), "--supply": Number("0", "100", 3, "14.2"),
              "--ac-positive": Number("0", "100", 3, "3"), "--ac-negative": Number("0", "100", 3, "3"),
              "--volume": [("loud", 2, 'tapbook: --volume does not know "loud"\nfull or other\n'), ("\x1b[2J", 2, 'tapbook: --volume does not know "<U+001B>[2J"\nfull or other\n')]},
    "gain": {"--watts": Number("0.001", "20000", 3, "75"), "--ohms": Number("0.1", "100", 3, "4"), "--tone-db": Number("-120", "120", 3, "-10"),
             "--overlap-db": Number("0", "20", 3, "5")},
    "init": {"--shop": [("\x1b[31mBench", 2, "tapbook: --shop: write the shop's name in plain characters\n"),
                        ("Bench\u202e", 2, "tapbook: --shop: write the shop's name in plain characters\n"),
                        ("two\nlines", 2, "tapbook: --shop: write the shop's name in plain characters\n")]},
    "calc swing": {"--drive": unknown("--drive", "bridged, single_ended, boosted_split, boosted_bridged, line_differential, line_single_ended, common_return, digital, unknown", [("brigded", "bridged")]), "--supply": Number("0.001", "100", 3, "14.4"), "--ohms": Number("0.1", "10000", 3, "4"),
                   "--loss": Number("0", "50", 3, "0.75"), "--rail": Number("0.001", "200", 3, "40"), "--stage": unknown("--stage", "bridged, single_ended, unknown", [("bridge", "bridged")]),
                   "--rated-volts": Number("0.001", "50", 3, "4"), "--watts": Number("0.001", "20000", 3, "10"),
                   "--rating": unknown("--rating", "continuous, at_10_percent, maximum", [("maximun", "maximum")])},
    "calc level": {"--volts": Number("0.001", "1000", 3, "9.1"), "--low": Number("0.001", "1000", 3, "9"), "--high": Number("0.001", "1000", 3, "10"),
                   "--lowest-hz": Number("0.001", "1000000", 3, "30"), "--topology": unknown("--topology", "direct, transformer, resistive, active_line_level, active_speaker_level", [("transfromer", "transformer")]),
                   "--input-min": Number("0.001", "1000", 3, "1"), "--input-max": Number("0.001", "1000", 3, "10"), "--input-max-hz": Number("0.001", "1000000", 3, "40"),
                   "--gain": Number("0.000001", "1000", 6, "0.1"), "--least-gain": Number("0.000001", "1000", 6, "0.1"), "--corner-hz": Number("0", "1000000", 3, "20"),
                   "--output-ohms": Number("0", "100000000", 3, "600"), "--output-max": Number("0.001", "1000", 3, "5"), "--taps": Number("1", "8", 0, "2"),
                   "--adding": unknown("--adding", "none, unity, averaging", [("avaraging", "averaging")]), "--amp-ohms": Number("0.001", "100000000", 3, "10000"),
                   "--sensitivity": Number("0.001", "1000", 3, "0.5"), "--least-sensitivity": Number("0.001", "1000", 3, "4"), "--amp-max": Number("0.001", "1000", 3, "8"),
                   "--watts": Number("0.001", "20000", 3, "300")},
    # Zeros before a gauge are refused, neither dropped nor counted: 00 is another way to write 2/0.
    "calc wire": {"--awg": [(text, 2, f'tapbook: --awg: "{text}" is no size\nwrite 4/0 to 40, like 8 or 1/0\n') for text in ("41", "08", "010", "-1", "5/0", "0/0", "4/1", "4.5", "1e1", "0x8", "four", "4 /0", "99999999999999999999")],
                  "--mm2": Number("0.001", "1000", 3, "16"), "--metres": Number("0.001", "1000", 3, "5"), "--amps": Number("0.001", "5000", 3, "70"),
                  "--celsius": Number("-60", "250", 3, "-20"), "--metal": unknown("--metal", "copper, cca", [("coper", "copper")]), "--supply": Number("1", "1000", 3, "13.8")},
    "calc fuse": {"--awg": [(text, 2, f'tapbook: --awg: "{text}" is no size\nwrite 4/0 to 40, like 8 or 1/0\n') for text in ("41", "5/0", "-4")] +
                  [("20", 1, "tapbook: 20 AWG is thinner than 18 AWG (0.823 mm2), where the published table begins\ntake 18 AWG, 1 mm2 or thicker for a supply cable\n")],
                   "--mm2": Number("0.001", "1000", 3, "25"), "--sae": [(text, 2, f'tapbook: --sae: "{text}" is not in the table of SAE sizes\n{SAE}') for text in ("3", "-8", "x", "0x8")],
                  "--amps": Number("0.001", "5000", 3, "70"), "--watts": Number("0.001", "20000", 3, "300"),
                  "--class": unknown("--class", "ab, d", [("dd", "d")]), "--efficiency": Number("0.01", "1", 3, "0.8"), "--supply": Number("1", "100", 3, "13.8"), "--insulation": unknown("--insulation", "60, 75, 80, 90, 105, 125, 200", [("106", "105")]),
                  "--metal": unknown("--metal", "copper, cca", [("coper", "copper")])},
    "calc holdup": {"--farads": Number("0.000001", "100000", 6, "1"), "--amps": Number("0.001", "5000", 3, "100"), "--watts": Number("0.001", "20000", 3, "100"), "--from-v": Number("0.001", "100", 3, "14.4"),
                    "--to-v": Number("0.001", "100", 3, "12"), "--sag-v": Number("0.001", "100", 3, "1"), "--esr-ohms": Number("0", "1000", 3, "0.002"), "--note-seconds": Number("0.001", "3600", 3, "1")},
    "calc corner": {"--ohms": Number("0.001", "100000000", 3, "4"), "--microfarads": Number("0.000001", "1000000", 6, "1000"), "--corner-hz": Number("0.001", "1000000", 3, "40"), "--hz": Number("0.001", "1000000", 3, "40")},
}

FEED_SIZE = "write 4 or 1/0 for AWG, 25mm2 for metric cable, sae4 for cable marked SAE\n"
NO_HOST = 'tapbook: --name: "{}" is no name of a machine\nletters, digits, - and points, like bench.local; several with commas between\n'
NO_CARD = 'tapbook: --address: "{}" is no address of one network card\nwrite it in digits, like 192.168.1.20\n'
OPTIONS["serve"] = {
    "--port": Number("0", "65535", 0, "8080"),
    "--name": [(text, 2, NO_HOST.format(said)) for text, said in (
        ("a_b", "a_b"), ("192.168.1.20", "192.168.1.20"), ("bench:8080", "bench:8080"), ("bench.", "bench."), ("bench,,x", ""), ("-x", "-x"),
        ("b\u00e9nch", "b\u00e9nch"), ("\x1b[2J", "<U+001B>[2J"), ("http://bench", "http://bench"))],
    "--address": [(text, 2, NO_CARD.format(said)) for text, said in (
        ("bench", "bench"), ("0.0.0.0", "0.0.0.0"), ("::", "::"), ("192.168.1", "192.168.1"), ("192.168.1.20/24", "192.168.1.20/24"),
        ("[::1]", "[::1]"), ("\x1b[2J", "<U+001B>[2J"))] + [
        ("203.0.113.77", 3, "tapbook: there is no catalog at none.sqlite\nmake one with `tapbook init`, or a practice shop with `tapbook demo`\n")]}
OPTIONS["feed"] = {
    "--watts": Number("0.001", "20000", 3, "900"), "--amps": Number("0.001", "5000", 3, "80"), "--class": unknown("--class", "ab, d", [("dd", "d")]),
    "--efficiency": Number("0.01", "1", 3, "0.8"), "--metres": Number("0.001", "100", 3, "5.5"),
    "--size": [(text, 2, f'tapbook: --size: "{text}" is no size\n{FEED_SIZE}') for text in ("41", "04", "-4", "5/0", "4.5", "0mm2", "mm2", "-25mm2", "25,5mm2", "1e2mm2", "25 mm2", "1001mm2", "0.0001mm2", "sae", "sae3", "sae-4", "SAE4", "chose")] +
    [("\x1b[2J", 2, f'tapbook: --size: "<U+001B>[2J" is no size\n{FEED_SIZE}')] +
    [(typed, 1, f"tapbook: {said} is thinner than 18 AWG (0.823 mm2), where the published table begins\ntake 18 AWG, 1 mm2 or thicker for a supply cable\n")
     for typed, said in (("20", "20 AWG"), ("0.5mm2", "0.5 mm2"), ("sae18", "SAE 18"))],
    "--from": unknown("--from", "awg, metric, sae", [("metrik", "metric")]), "--metal": unknown("--metal", "copper, cca", [("coper", "copper")]),
    "--insulation": unknown("--insulation", "60, 75, 80, 90, 105, 125, 200", [("106", "105")]), "--supply": Number("1", "100", 3, "13.8"), "--celsius": Number("-60", "250", 3, "40"),
    "--source-mohm": Number("0", "1000", 3, "5"), "--return": [(text, 2, f'tapbook: --return does not know "{text}"\nbody or cable\n') for text in ("chassis", "boddy", "5")],
    "--return-mohm": Number("0", "1000", 3, "1.5"), "--use": unknown("--use", "sub, full_range", [("fullrange", "full_range")]),
    "--idle-amps": Number("0", "100", 3, "1.2"), "--charging": unknown("--charging", "alternator, dc_converter", [("alternater", "alternator")]),
    "--charging-amps": Number("0.001", "1000", 3, "120"), "--farads": Number("0.000001", "100000", 6, "1"),
}


def no_terminal(text):
    return 1, [text], f'tapbook: no terminal "{text}" is in the table of DIN 72552\nread the number beside the contact again, like 30 or 87a; else a meter decides\n'


def no_cavity(text):
    return 1, [text], f'tapbook: no cavity "{text}" is in the table of the ISO radio connector\nA1 to A8, B1 to B8, C1 to C6 and C13 to C20; else a meter decides\n'


def empty_word(command, takes):
    return 2, [""], f"tapbook: {command} was given an empty word\nUSAGE\n"


NO_CAR = 'tapbook: no car is called "{0}"\ntapbook find lists all cars\n'

# Wrong words by command: exit code, words, whole message.
FEED_MAIN = ["--metres", "5", "--size", "1/0"]
FEED = ["--watts", "900", "--class", "d", "--metres", "5", "--size", "4"]
FEED_LOAD = "tapbook: give either --watts or --amps, or amplifiers as WATTS:CLASS:METRES:SIZE\nfor example --watts 900 --class d\n"
WORDS = {
    "feed": [(2, [text, *FEED_MAIN], f'tapbook: "{said}" is no WATTS:CLASS:METRES:SIZE\nfor example 500:d:1:8\n')
             for text, said in (("500", "500"), ("500:d:1", "500:d:1"), ("500:d:1:8:9", "500:d:1:8:9"), ("\x1b[1m", "<U+001B>[1m"))] +
            [(2, ["5x:d:1:8", *FEED_MAIN], 'tapbook: 5x:d:1:8: watts "5x" is not a number: write digits with at most one point, like 13.8\nit must be 0.001 to 20000\n'),
             (2, ["0:d:1:8", *FEED_MAIN], "tapbook: 0:d:1:8: watts 0 is out of range\nit must be 0.001 to 20000\n"),
             (2, ["500:d:1,5:8", *FEED_MAIN], 'tapbook: 500:d:1,5:8: metres "1,5" uses a comma: write 1.5\nit must be 0.001 to 100\n'),
             (2, ["500:d:101:8", *FEED_MAIN], "tapbook: 500:d:101:8: metres 101 is out of range\nit must be 0.001 to 100\n"),
             (2, ["500:c:1:8", *FEED_MAIN], 'tapbook: 500:c:1:8: "c" is no class\nab or d\n'),
             (2, ["500:d:1:choose", *FEED_MAIN], f'tapbook: 500:d:1:choose: "choose" is no size\n{FEED_SIZE}'),
             (1, ["500:d:1:20", *FEED_MAIN], "tapbook: 20 AWG is thinner than 18 AWG (0.823 mm2), where the published table begins\ntake 18 AWG, 1 mm2 or thicker for a supply cable\n"),
             (2, ["500:d:1:8"] * 9 + FEED_MAIN, 'tapbook: "500:d:1:8" is one word too many for feed\nUSAGE\n'),
             (2, ["500:d:1:8", "--watts", "500", *FEED_MAIN], "tapbook: --watts beside amplifiers as words\neach word says it all: WATTS:CLASS:METRES:SIZE, like 500:d:1:8\n"),
             (2, [], FEED_LOAD), (2, [*FEED, "--amps", "80"], FEED_LOAD),
             (2, ["--watts", "900", *FEED_MAIN], "tapbook: --watts needs --class or --efficiency\nfor example --watts 900 --class d\n"),
             (2, ["--amps", "80", "--efficiency", "0.8", *FEED_MAIN], "tapbook: --efficiency and --constant-current belong to --watts\nleave them out beside --amps\n"),
             (2, FEED[:4] + ["--size", "4"], "tapbook: --metres is needed\nadd -h to see an example\n"), (2, FEED[:6], "tapbook: --size is needed\n--size 4, or --size choose\n"),
             (2, [*FEED, "--from", "awg"], "tapbook: --from belongs to --size choose\nleave it out beside a size\n"),
             (2, [*FEED, "--charging", "alternator"], "tapbook: --charging needs --charging-amps\nfor example --charging-amps 120\n"),
             (2, [*FEED, "--return", "cable", "--return-mohm", "1"], "tapbook: --return-mohm belongs to the body\nleave it out beside --return cable\n")],
    "find": [(1, ["zzzz", "--db", "shop.sqlite"], 'tapbook: no car matches "zzzz"\ntry fewer words; tapbook find lists all cars\n'),
             (1, ["\x1b]0;x\x07", "--db", "shop.sqlite"], 'tapbook: no car matches "<U+001B>]0;x<U+0007>"\ntry fewer words; tapbook find lists all cars\n'),
             (1, ["--db", "shop.sqlite", "--", "--zzzz"], 'tapbook: no car matches "--zzzz"\ntry fewer words; tapbook find lists all cars\n')],
    "taps": [(2, [], "tapbook: taps needs VEHICLE\nUSAGE\n"), (1, ["zzzz", "--db", "shop.sqlite"], NO_CAR.format("zzzz")),
             (1, ["\u202ezzzz", "--db", "shop.sqlite"], NO_CAR.format("<U+202E>zzzz")),
             (1, ["orvane", "tarm", "--db", "shop.sqlite"], 'tapbook: no car is called exactly "orvane tarm"\ndid you mean Orvane Tarn sedan, 2015-2018 (orvane/tarn/sedan/2015)?\n')],
    "advise": [(2, [], "tapbook: advise needs VEHICLE\nUSAGE\n"), (1, ["zzzz", "--db", "shop.sqlite"], NO_CAR.format("zzzz"))],
    "add": [(2, [], "tapbook: add needs FILE\nUSAGE\n"), empty_word("add", "FILE"),
            (2, ["a.toml", "b.toml"], 'tapbook: "b.toml" is one word too many for add\nUSAGE\n'),
            (2, ["a.csv", "--db", "shop.sqlite"], "tapbook: a.csv is a spreadsheet: which column is what?\nname a mapping: --mapping MAPPING.toml; for what export --csv wrote, "
                                                  "--mapping notes, converters, amplifiers or stock\n"),
            (2, ["-", "--mapping", "-", "--db", "shop.sqlite"], "tapbook: the spreadsheet and its mapping cannot both come from the pipe\nname a file for one of them\n"),
            (2, ["car.toml", "--skip-refused", "--db", "shop.sqlite"], "tapbook: --skip-refused goes with --mapping\ntapbook add FILE.csv --mapping MAPPING.toml\n")],
    "export": [(1, ["zzzz", "--db", "shop.sqlite"], NO_CAR.format("zzzz")), (1, ["", "--db", "shop.sqlite"], 'tapbook: no car is called exactly ""\ndid you mean Orvane Tarn sedan, 2015-2018 (orvane/tarn/sedan/2015)?\n'),
               (2, ["--db", "shop.sqlite"], "tapbook: export needs to know what\nname a VEHICLE, --parts or --stock; or give --into FOLDER for everything\n"),
               (2, ["--csv", "notes", "--db", "shop.sqlite"], "tapbook: export --csv notes needs to know which car\ntapbook export VEHICLE --csv notes\n"),
               (2, ["orvane", "--csv", "jobs", "--db", "shop.sqlite"], "tapbook: --csv jobs is about no single car\ntapbook export --csv jobs\n"),
               (2, ["--csv", "jobs", "--stock", "--db", "shop.sqlite"], "tapbook: --csv and --stock together\none export writes one of them\n"),
               (2, ["--csv", "jobs", "--into", "x", "--out", "y", "--db", "shop.sqlite"], "tapbook: --into and --out together\n--into FOLDER for many files, --out FILE for one\n"),
               (2, ["--parts", "--into", "x", "--out", "y", "--db", "shop.sqlite"], "tapbook: --into and --out together\n--into FOLDER for many files, --out FILE for one\n")],
    "completion": [(2, [], "tapbook: completion needs bash | zsh | fish\nUSAGE\n"),
                   (2, ["csh"], 'tapbook: there is no completion for "csh"\ndid you mean `tapbook completion zsh`?\n'),
                   (2, ["bash", "zsh"], 'tapbook: "zsh" is one word too many for completion\nusage: tapbook completion bash | zsh | fish\n')],
    "rules": [(2, ["shwo"], "tapbook: rules does not know \"shwo\"\ndid you mean `tapbook rules show`?\n"), (2, [""], 'tapbook: rules does not know ""\nlist, show ID, columns or check\n'),
              (2, ["show"], "tapbook: rules show needs the rule's id\ntapbook rules lists them\n"),
              (1, ["show", "\x1b[1m"], 'tapbook: there is no rule "<U+001B>[1m"\ntapbook rules lists them\n'),
              (2, ["show", "a", "b"], 'tapbook: "b" is one word too many for rules\nUSAGE\n')] +
             [(2, [what, "x"], f'tapbook: "x" is one word too many for rules {what}\ntapbook rules {what}\n') for what in ("list", "columns", "check")],
    "calc terminal": [no_terminal("99"), no_terminal("88b"), no_terminal("0x1E"), empty_word("calc terminal", "NUMBER"), (1, ["\x1b[1m"], no_terminal("<U+001B>[1m")[2])],
    "calc cavity": [no_cavity("B9"), no_cavity("Z1"), no_cavity("5"), empty_word("calc cavity", "CAVITY"), (1, ["\x1b[1m"], no_cavity("<U+001B>[1m")[2])],
    "calc vin": [(2, [], "tapbook: calc vin needs TEXT\nUSAGE\n"), (2, [""], "tapbook: no VIN given; write its 17 characters\n"),
                 (2, ["1M8GDM9"], "tapbook: a VIN has 17 characters, this has 7\n"),
                 (2, ["\x1b[1m"], 'tapbook: "<U+001B>" at position 1 is in no VIN; write digits and the letters A to Z without I, O and Q\n')],
    "calc colour": [(2, [], "tapbook: calc colour needs TEXT\nUSAGE\n"),
                    (2, [""], "tapbook: no colour given; write the base colour and, after a slash, its stripe: WH/BK\n"),
                    (2, ["blurple"], 'tapbook: "blurple" is not a wire colour; did you mean "purple"?\n'), (2, ["\x1b[1m"], 'tapbook: "<U+001B>" is not a wire colour\n')],
}


def stray(command):
    """A command that takes no words."""
    return [(2, ["stray"], f'tapbook: "stray" is one word too many for {command}\nUSAGE\n'), (2, [""], f'tapbook: "" is one word too many for {command}\nUSAGE\n'),
            (2, ["--", "-x"], f'tapbook: "-x" is one word too many for {command}\nUSAGE\n')]


for command in ("meter", "gain", "init", "demo", "where", "check", "serve", "calc swing", "calc level", "calc wire", "calc fuse", "calc holdup",
                "calc corner"):
    WORDS[command] = stray(command)

ALL = "tapbook --help lists all commands\n"
LONG = "x" * 120_000  # Linux gives a program no word of 128 KiB or more


def long_one(begin, end):
    """The message of a word too long for a screen keeps both ends."""
    return lambda said: said.startswith(begin + "xxx") and "more bytes] xxx" in said and said.endswith(end) and len(said) < 5000


WHOLE_LINES = [
    ([""], 2, f'tapbook: there is no command ""\n{ALL}'), (["tips"], 2, 'tapbook: there is no command "tips"\ndid you mean `tapbook taps`?\n'),
    (["\x1b[31mtaps"], 2, f'tapbook: there is no command "<U+001B>[31mtaps"\n{ALL}'),
    (["calc"], 2, lambda said: said.startswith("tapbook: calc needs to know what\nswing, level, wire, ")), (["calc", "zzzzzz"], 2, lambda said: said.startswith('tapbook: there is no command "calc zzzzzz"\nthere are: swing, level, wire, ')),
    (["job"], 2, lambda said: said.startswith("tapbook: job needs to know what\nstart, came, plan, ")),
    (["job", "zzzzzz"], 2, lambda said: said.startswith('tapbook: there is no command "job zzzzzz"\nthere are: start, came, plan, ')),
    (["-5"], 2, f'tapbook: the command comes first, before "-5"\n{ALL}'), (["--"], 2, f'tapbook: the command comes first, before "--"\n{ALL}'),
    (["gain", "--watts", "75", "--ohms", "4", "--tone-db", "3"], 2, "tapbook: --tone-db: a tone cannot be above digital full scale\nwrite 0 or a negative number, like -10\n"),
    ([LONG], 2, long_one('tapbook: there is no command "', f'x"\n{ALL}')),
    (["find", LONG, "--db", "shop.sqlite"], 1, long_one('tapbook: no car matches "', 'x"\ntry fewer words; tapbook find lists all cars\n')),
    (["taps", LONG, "--db", "shop.sqlite"], 1, long_one('tapbook: no car is called "', 'x"\ntapbook find lists all cars\n')),
    (["gain", "--watts", LONG, "--ohms", "4"], 2, long_one('tapbook: --watts: "', "it must be 0.001 to 20000\n")),
    (["gain", "--" + LONG], 2, long_one("tapbook: gain has no option --", "tapbook gain --help lists its options\n")),
    (["find", "--db", LONG], 5, long_one("tapbook: cannot reach ", ": File name too long\nchoose another place with --db FILE\n")),
    (["add", LONG, "--db", "shop.sqlite"], 3, long_one("", "x: cannot be opened: File name too long; name a text file\nNothing was changed.\n")),
    (["calc", "colour", LONG], 2, long_one('tapbook: "', 'x" is not a wire colour\n')),
    (["calc", "terminal", LONG], 1, long_one('tapbook: no terminal "', "a meter decides\n")),
    (["find", "--db", "shop.sqlite", *["zzzz"] * 5000], 1, lambda said: said.startswith('tapbook: no car matches "zzzz zzzz') and len(said) < 5000),
    (["gain", *["zzzz"] * 5000], 2, 'tapbook: "zzzz" is one word too many for gain\nusage: tapbook gain [OPTIONS]\n'),
    (["gain", *["--zzzz"] * 5000], 2, "tapbook: gain has no option --zzzz\ntapbook gain --help lists its options\n"),
]
