"""More rows of bad_words_table.py: notes, jobs, whose notes they are, and looking after the catalog."""
import bad_input
import bad_words_table as table
from bad_words_table import NO_CAR, SYSTEM, YEAR, Number, unknown

# A circuit of another kind, two jobs, one of them with something done for a while only.
SWITCHED = bad_input.CAR + """
[[circuit]]
at = "base"
code = "accessory"
role = "switched_power"

[[tap]]
at = "base/accessory"
code = "fuse-box"
place = "fuse box below the wheel"
"""
PREPARE = [["add", "switched.toml", "--db", "shop.sqlite"], ["job", "start", "Orvane", "Tarn", "--db", "shop.sqlite"],
           ["job", "start", "Orvane", "Tarn", "--db", "shop.sqlite"], ["job", "action", "1", "pulled fuse 31", "--db", "shop.sqlite"]]

DB = ["--db", "shop.sqlite"]
TARN = ["Orvane", "Tarn"]
BYTE = "\udcff"  # one byte that is no UTF-8
PLAIN = "tapbook: {0}: write it in plain characters\n"
LONG_TEXT = "x" * 4001

BASE = {
    "note": [*TARN, "radio-plug", "--seen", "--positive", "white", *DB], "shops": ["know", "1234567890abcdef1234567890abcdef", *DB],
    "job start": [*TARN, *DB], "job came": ["1", *DB], "job plan": ["1", *DB], "sheet": [*TARN[:2], *DB], "job reading": ["1", "radio-plug", "--seen", "--negative", "white", *DB],
    "job action": ["1", *DB], "job close": ["2", "--outcome", "fine", "--sure", "rest", *DB], "audit": DB,
    ("note", "--reason"): ["withdraw", "12345678", *DB], ("job reading", "--from"): ["1", *DB],
}
ON_SWITCHED = ["--wire", "--key-off", "--accessory", "--run", "--crank", "--retained-s"]
ON_SYSTEM = ["--premium", "--tell"]
for option in ON_SWITCHED:
    BASE["note", option] = [*TARN, "fuse-box", "--seen", "--supply", "12.6", *DB]
    BASE["job reading", option] = ["1", "fuse-box", "--seen", "--supply", "12.6", *DB]
for option in ON_SYSTEM:
    BASE["note", option] = [*TARN, "--seen", "--premium", "yes", *DB]
    BASE["job reading", option] = ["1", "--seen", "--premium", "yes", *DB]


def reading(least, most, digits, good, unit=""):
    return Number(least, most, digits, good, f" {unit}" if unit else "")


def text(option, longest=False):
    """Rows of a text on one line."""
    rows = [(wrong, 2, f"tapbook: {option} holds the hidden character {which}\ntype the text again by hand\n")
            for wrong, which in (("\x1b[31mx", "U+001B"), ("two\nlines", "U+000A"), ("a\u202eb", "U+202E"))]
    return rows + [(BYTE, 2, PLAIN.format(option))] + ([(LONG_TEXT, 2, f"tapbook: {option} is longer than 4000 bytes\nshorten it\n")] if longest else [])


def plain(option, also=()):
    """Rows of a text that a job keeps."""
    return [(wrong, 2, PLAIN.format(option)) for wrong in ("\x1b[31mx", "a\u202eb", BYTE, *also)] + \
        [(LONG_TEXT, 2, f"tapbook: {option} is longer than 4000 bytes\nshorten it\n")]


def word(option, known, near):
    *first, last = known.split(", ")
    return [("zzzzzzzz", 2, f'tapbook: {option} does not know "zzzzzzzz"\none of {", ".join(first)} or {last}\n'),
            ("\x1b[2J", 2, f"tapbook: {option} holds the hidden character U+001B\ntype the text again by hand\n"), (BYTE, 2, PLAIN.format(option)),
            (near[0], 2, f'tapbook: {option} does not know "{near[0]}"\ndid you mean "{near[1]}"?\n')]


def flag(option):
    return [(wrong, 2, f'tapbook: {option} does not know "{table.visible(wrong)}"\nyes or no\n') for wrong in ("perhaps", "true", "Yes", "1", "\x1b[2J")]


def colour(option):
    reasons = [("blurple", '"blurple" is not a wire colour; did you mean "purple"?'), ("GR", '"GR" can mean grey or green; write GY or GN'),
               ("white/", "a colour is missing at column 7; write the base colour and, after a slash, its stripe: WH/BK"),
               ("white/white", '"white" repeats a colour of the same conductor; write each colour once')]
    return [(wrong, 2, f'tapbook: {option} "{wrong}" is not clear: {reason}\n') for wrong, reason in reasons] + text(option)[:1] + text(option)[-1:]


def plate(option):
    return [(wrong, 2, f"tapbook: {option}: write the plate or VIN\nonly a salted token of it is stored\n") for wrong in (" ", "--", "...", BYTE)]


HAZARDS = ("airbag_connector, curtain_airbag, side_impact_sensor, seat_occupancy_mat, pyrotechnic_disconnect, high_voltage, circuit_48v, battery_in_cabin, drilling, "
           "steering_and_pedals, exhaust, sharp_edges")
DRIVES = "bridged, single_ended, boosted_split, boosted_bridged, line_differential, line_single_ended, common_return, digital, unknown"
VOLTS, VOLTS_RMS = reading("-100", "100", 3, "7.1", "V"), reading("0", "100", 3, "6.2", "V RMS")
POWER = reading("0", "100", 3, "12.4", "V")

# What one visit found: the same rows for a note and for a reading on a job.
FOUND = {
    "--dc-positive": VOLTS, "--dc-negative": VOLTS, "--ac": VOLTS_RMS, "--ac-positive": VOLTS_RMS, "--ac-negative": VOLTS_RMS, "--supply": POWER,
    "--tone-hz": reading("1", "20000", 3, "40", "Hz"), "--tone-db": reading("-60", "0", 3, "-10", "dBFS"), "--key-off": POWER, "--accessory": POWER, "--run": POWER, "--crank": POWER,
    "--retained-s": reading("0", "86400", 0, "600", "s"), "--positive": colour("--positive"), "--negative": colour("--negative"), "--wire": colour("--wire"),
    "--polarity": word("--polarity", "scoped, phase, cell, metered, seen, copied", ("phas", "phase")), "--drive": word("--drive", DRIVES, ("brigded", "bridged")),
    "--side": word("--side", "radio, body, amplifier, speaker", ("speeker", "speaker")),
    "--hazards": word("--hazards", HAZARDS, ("drillin", "drilling")) + [("exhaust,drillin", 2, 'tapbook: --hazards does not know "drillin"\ndid you mean "drilling"?\n')] +
    [(wrong, 2, "tapbook: --hazards is empty\nleave the line out when it is not known\n") for wrong in (",", "exhaust,,drilling")],
    "--remarks": [(BYTE, 2, PLAIN.format("--remarks")), (LONG_TEXT, 2, "tapbook: --remarks is longer than 4000 bytes\nshorten it\n")],
}
for option in ("--source", "--positive-mark", "--negative-mark", "--connector", "--positive-cavity", "--negative-cavity", "--tell", "--photo"):
    FOUND[option] = text(option, longest=option == "--source")
for option in ("--knew-first", "--full-volume", "--speaker-connected", "--controls-flat", "--true-rms", "--music", "--premium", "--altered"):
    FOUND[option] = flag(option)

NO_DAYS = ["today", "2026-02-30", "2026-13-01", "02.05.2026", "2026-5-2", "2026-05-02\n", "\u202e2026-05-02"]
ITEMS = "lamps,speakers,radio,call,chime,camera,damage,earlier-work,other-radio,drain"


def not_sure(typed, item, way_out):
    return typed, 3, (f"job 2: nobody has looked at: {ITEMS}; look and write `tapbook job left 2 ITEM=ok ...`, or leave them out knowingly: --sure rest\n"
                      f'job 2: --sure: "{item}" is neither an item of the list nor a place of this job; {way_out}\nNothing was changed.\n')


SIZES = [(typed, code, said) for typed, code, said in table.OPTIONS["feed"]["--size"]]
COILS = "ohms of voice coils: 4, 4+4 in series, 4//4 side by side, (4+4)//(4+4)\n"
NO_TAP = lambda name, hint: (name, 1, f'tapbook: there is no tap point "{name}"\n{hint}\n')
NOTHING_FITS = "tapbook: no converter fits this tap, so nothing was planned\ntapbook advise VEHICLE --why says why; another tap: --tap\n"
# What a plan says of the install beside tap and parts.
INSTALL = {
    "--turn-on": [NO_TAP("fuse-bx", "did you mean fuse-box?"), NO_TAP("zzz", "tapbook taps lists them")],
    "--metres": Number("0.001", "100", 3, "5.5"), "--size": SIZES, "--metal": unknown("--metal", "copper, cca", [("coper", "copper")]),
    "--insulation": unknown("--insulation", "60, 75, 80, 90, 105, 125, 200", [("106", "105")]), "--speaker-watts": Number("0.001", "20000", 3, "300"),
    "--load": [(typed, 2, lambda said, typed=typed: said.startswith(f'tapbook: --load "{table.visible(typed)}": ') and said.endswith(COILS))
               for typed in ("x", "4/4", "4//", "+4", "(4", "4)", "0", "-4", "4,5", "4 ohm", "1001", "4//4//", "\x1b[2J", "()", "4.0001", "(" * 9 + "4" + ")" * 9)],
}

OPTIONS = {
    "note": {"--system": SYSTEM, "--year": YEAR, "--turn": reading("0", "1000", 0, "5"), "--initials": text("--initials", longest=True), "--car": plate("--car"), **FOUND,
             "--date": [(day, 2, f"tapbook: --date {table.visible(day)} is not a day\nwrite it like 2024-05-02\n") for day in NO_DAYS] +
             [("2026-05-03", 3, "--date: 2026-05-03 is after today (2026-05-02)\nNothing was changed.\n")],
             "--reason": unknown("--reason", "typo, wrong-car, metered-again, asked-to", [("tpyo", "typo"), ("wrong_car", "wrong-car")]) +
             [("typo", 1, "tapbook: there is no note 12345678\n`tapbook note why VEHICLE TAP` lists the notes of a tap with their ids\n")]},
    "undo": {}, "rebuild": {}, "backup": {}, "restore": {}, "job left": {}, "job list": {}, "job show": {}, "job open": {},
    "shops": {"--name": [(wrong, 2, "tapbook: --name: write the shop's name in plain characters\n") for wrong in ("\x1b[31mBench", "Bench\u202e", "two\nlines", BYTE)] +
              [(LONG_TEXT, 2, "tapbook: --name is longer than 4000 bytes\nshorten it\n")]},
    "job start": {"--year": YEAR, "--system": SYSTEM, "--customer": plain("--customer", ["two\nlines"]), "--initials": plain("--initials", ["two\nlines"]), "--car": plate("--car")},
    "job came": {"--agreed": plain("--agreed", ["two\nlines"])},
    "job plan": {"--tap": [("radio-plg", 1, 'tapbook: there is no tap point "radio-plg"\ndid you mean radio-plug?\n'), ("zzz", 1, 'tapbook: there is no tap point "zzz"\ntapbook taps lists them\n')],
                 "--converter": [("zzz", 1, 'tapbook: there is no converter "zzz"\ntapbook advise lists them\n'),
                                 ("\x1b[2J", 1, 'tapbook: there is no converter "<U+001B>[2J"\ntapbook advise lists them\n')],
                 "--amp": [("zzz", 1, 'tapbook: there is no amplifier "zzz"\ntapbook add FILE.toml puts amplifiers in\n')],
                 "--lowest-hz": Number("1", "20000", 3, "30"), **INSTALL,
                 "--system": SYSTEM + [("unrecorded", 2, "tapbook: the sound system of job 1 is not recorded: find out which one it is\n"
                                        "then say --system CODE; tapbook taps tells how to recognise each\n")]},
    "sheet": {"--tap": [NO_TAP("zzz", "tapbook taps lists them")], "--converter": [("zzz", 1, 'tapbook: there is no converter "zzz"\ntapbook advise lists them\n')],
              "--amp": [("zzz", 1, 'tapbook: there is no amplifier "zzz"\ntapbook add FILE.toml puts amplifiers in\n')], "--lowest-hz": Number("1", "20000", 3, "30"),
              "--system": SYSTEM, "--year": YEAR, **INSTALL, "--paper": unknown("--paper", "letter, a4", [("a5", "a4"), ("leter", "letter")]),
              "--read": [NO_TAP("zzz", "tapbook taps lists them"), ("radio-plug,", 2, 'tapbook: --read "radio-plug," has an empty name\ntap points with commas between, or all\n'),
                         ("fuse-box,fuse-box", 2, "tapbook: accessory/fuse-box stands on the sheet twice\nname each circuit once; those of the plan are on it already\n")],
              "--address": [(wrong, 2, f'tapbook: --address "{table.visible(wrong)}" is no address of a page\nwrite it like http://bench.local:8080, at most 200 characters\n')
                            for wrong in ("bench.local", "ftp://bench.local", "http://a b", "javascript:alert(1)", "http://\x1b[2J", "http://" + "x" * 194)],
              **{option: [("x.out", 1, NOTHING_FITS)] for option in ("--html", "--pdf", "--drawing")}},
    "job reading": {**FOUND, "--from": [("zzz.toml", 3, "zzz.toml: there is no such file; check the name and the folder\nNothing was changed.\n"),
                                        (".", 3, ".: is a folder; name the files in it, one after the other\nNothing was changed.\n")]},
    "job action": {"--done": Number("1", "100000", 0, "1")},
    "job close": {"--outcome": unknown("--outcome", "fine, noise, thump, comeback", [("fien", "fine")]), "--remarks": plain("--remarks"), "--minutes": Number("0", "100000", 0, "90"),
                  "--sure": [not_sure("camrea", "camrea", "did you mean camera?"), not_sure(",", "", "leave it out"), not_sure("\x1b[2J", "<U+001B>[2J", "leave it out")]},
    "audit": {"--count": Number("1", "10000", 0, "10"), "--seed": Number("0", "1000000000", 0, "7"),
              "--since": [(day, 2, f'tapbook: --since: "{table.visible(day)}" is not a day\nwrite it like 2026-05-02\n') for day in NO_DAYS]},
}

TAP_NEEDED = "tapbook: note needs VEHICLE and TAP\nfor example: tapbook note VEHICLE TAP --seen; tapbook taps VEHICLE lists the taps\n"
WHICH_JOB = lambda said: said.startswith("tapbook: 2 jobs are open; say which:\n  1    ") and said.endswith("\nby number or code\n")
NO_JOB = "tapbook: there is no job {0}\n`tapbook job list --all` shows all jobs\n"
FOR_A_WHILE = 'tapbook: what was done for a while?\nfor example: tapbook job action "pulled fuse 31"\n'
NAME_GOES_WITH = "tapbook: --name goes with shops know\nfor example: tapbook shops know ID --name NAME\n"
WHY_TAKES = "tapbook: {0} does not go with note why\nnote why takes --db, --json, --system, --why, --year\n"
NO_BACKUP = "tapbook: there is no backup at {0}\nname one that `tapbook backup` made\n"
THERE = "tapbook: {0} is there already\nname another file; nothing was overwritten\n"


def no_item(command):
    """Items of the list that are none."""
    name = command.split()[1]
    more = ["--outcome", "fine"] if name == "close" else []
    answers = "write lamps=ok, lamps=bad:WORDS, or lamps=none when this car has no such thing\n"
    return [(2, ["2", *wrong, *more, *DB], f"tapbook: {says}") for wrong, says in (
        (["lampz=ok"], 'the list has no item "lampz"\ndid you mean lamps?\n'), (["=ok"], f'the list has no item ""\nits items: {ITEMS.replace(",", ", ")}, rest\n'),
        (["lamps"], f'lamps: "" is no answer\n{answers}'), (["lamps=perhaps"], f'lamps: "perhaps" is no answer\n{answers}'),
        (["lamps=\x1b[2J"], f'lamps: "<U+001B>[2J" is no answer\n{answers}'), (["lamps=bad"], "lamps: bad in what way?\nwrite lamps=bad:WORDS\n"),
        (["rest=bad:dark"], "rest: bad in what way?\nname each bad item by itself\n"),
        (["lamps=bad:\x1b[2J"], "lamps: the words hold a hidden character\nwrite it in plain characters\n"),
        (["lamps=bad:" + BYTE], "lamps: the words hold a hidden character\nwrite it in plain characters\n"))] + \
        [(1, ["99", *more, *DB], NO_JOB.format("99")), (2, ["lamps=ok", *more, *DB], WHICH_JOB)]


WORDS = {
    "note": [(2, [], "tapbook: note needs VEHICLE TAP | why VEHICLE TAP | withdraw ID\nUSAGE\n"), (2, ["Tarn", "--seen", *DB], TAP_NEEDED), (2, [*TARN, "", "--seen", *DB], TAP_NEEDED),
             (2, ["why", *DB], TAP_NEEDED), (1, ["zzzz", "radio-plug", "--seen", *DB], NO_CAR.format("zzzz")),
             (1, [*TARN, "radio-plg", "--seen", *DB], 'tapbook: there is no tap point "radio-plg"\ndid you mean radio-plug?\n'),
             (1, ["why", *TARN, "\x1b[2J", *DB], 'tapbook: there is no tap point "<U+001B>[2J"\ntapbook taps lists them\n'),
             (2, [*TARN, "radio-plug", "--positive", "white", *DB], "tapbook: how was it found? Say one of --scoped, --metered, --seen, --copied\n"),
             (2, [*TARN, "radio-plug", "--seen", "--metered", *DB], "tapbook: --metered and --seen: say one of them\nthe stronger one, when both were done\n"),
             (2, [*TARN, "radio-plug", "--seen", *DB], "tapbook: the note says nothing yet\ngive colours (--positive, --negative) or a reading (--ac, ...)\n"),
             (2, [*TARN, "radio-plug", "--seen", "--wire", "red", *DB], "tapbook: --wire does not belong to a speaker or line pair\nit says: colour of the power conductor\n"),
             (2, [*TARN, "fuse-box", "--seen", "--ac", "5", *DB], "tapbook: --ac does not belong to a power circuit\nit says: a.c. across the pair\n"),
             (2, [*TARN, "radio-plug", "--seen", "--ac", "5", "--reason", "typo", *DB], "tapbook: --reason goes with note withdraw\nfor example: tapbook note withdraw ID --reason typo\n"),
             (2, ["why", *TARN, "radio-plug", "--positive", "white", *DB], WHY_TAKES.format("--positive")),
             (2, [*TARN, "radio-plug", "--why", "--seen", *DB], WHY_TAKES.format("--seen")),
             (2, ["withdraw", "--reason", "typo", *DB], "tapbook: note withdraw needs the note's ID\nnote why prints the ids\n"),
             (2, ["withdraw", "12345678", *DB], "tapbook: why is it withdrawn? Say --reason\ntypo, wrong-car, metered-again or asked-to\n"),
             (2, ["withdraw", "12345678", "--reason", "typo", "--sure", *DB], "tapbook: --sure does not go with note withdraw\nnote withdraw takes --db, --dry-run, --json, --reason\n")] +
            [(2, ["withdraw", wrong, "--reason", "typo", *DB],
              f'tapbook: "{table.visible(wrong)}" is no note\'s id\nwrite at least its first 8 digits, 0 to 9 and a to f, as note why prints them\n')
             for wrong in ("", "1234567", "1234567g", "1" * 33, "\x1b[2J00000")],
    "shops": [(2, ["kow", "zz", *DB], 'tapbook: shops does not know "kow"\ndid you mean `tapbook shops know`?\n'),
              (2, ["", *DB], 'tapbook: shops does not know ""\nknow, forget, block, unblock, errors or key\n'), (2, ["--name", "Bench", *DB], NAME_GOES_WITH),
              (2, ["block", "zz", "--name", "Bench", *DB], NAME_GOES_WITH), (2, ["errors", "--name", "Bench", *DB], NAME_GOES_WITH),
              (2, ["errors", "\x1b[1m", *DB], 'tapbook: "<U+001B>[1m" is one word too many for shops errors\ntapbook shops errors\n')] +
             [(2, [what, *DB], f"tapbook: shops {what} needs the shop's ID or name\ntapbook shops lists them\n") for what in ("know", "forget", "block", "unblock")] +
             [(1, ["know", wrong, *DB], f'tapbook: there is no shop "{table.visible(wrong)}"\ntapbook shops lists them\n') for wrong in ("", "123", "g" * 32, "\x1b[2J")] +
             [(1, ["know", "Bench", "Tree", *DB], 'tapbook: there is no shop "Bench Tree"\ndid you mean "Bench Three"?\n')],
    "job start": [(2, [], "tapbook: job start needs VEHICLE\nUSAGE\n"), (1, ["zzzz", *DB], NO_CAR.format("zzzz"))],
    "job came": no_item("job came"), "job left": no_item("job left"),
    "job close": no_item("job close") + [(2, ["2", *DB], "tapbook: how did it end? Say --outcome\nfine, noise, thump or comeback\n"),
                                         (3, ["1", "--outcome", "fine", "--sure", "rest", *DB],
                                          "job 1: temporary action 1 is open: pulled fuse 31; put it back, then `tapbook job action 1 --done 1`\nNothing was changed.\n")],
    "job plan": [(2, DB, WHICH_JOB), (1, ["99", *DB], NO_JOB.format("99")), (1, ["\x1b[2J", *DB], NO_JOB.format("<U+001B>[2J")),
                 (2, ["1", "2", *DB], 'tapbook: "2" is one word too many for job plan\nUSAGE\n')],
    "sheet": [(2, DB, WHICH_JOB), (1, ["99", *DB], NO_JOB.format("99")), (1, ["zzzz", *DB], NO_CAR.format("zzzz")),
              (1, ["1", *DB], "tapbook: job 1 has no plan yet: no tap is chosen\ntapbook job plan 1 chooses tap and converter, or say --tap here\n"),
              (2, ["1", "--tap", "radio-plug", "--year", "2016", *DB], "tapbook: --year belongs to a car, and job 1 has its own\nleave it out\n"),
              (2, [*TARN, "--bridged", *DB], "tapbook: --bridged needs the load that two channels drive\nfor example --load 4 --bridged\n")],
    "job reading": [(2, ["--ac", "5", *DB], WHICH_JOB), (2, ["1", "--from", "readings.toml", "--ac", "5", *DB], "tapbook: --ac beside --from\nthe file brings the readings; type the others after it\n"), (2, ["1", "--ac", "5", *DB], "tapbook: which tap was read?\nname it, as tapbook taps lists it; or plan the job first\n"),
                    (1, ["99", "radio-plug", "--ac", "5", *DB], NO_JOB.format("99")), (1, ["1", "radio-plg", "--ac", "5", *DB], 'tapbook: there is no tap point "radio-plg"\ndid you mean radio-plug?\n'),
                    (2, ["1", "radio-plug", "--seen", "--metered", *DB], "tapbook: --metered and --seen: say one of them\nthe stronger one, when both were done\n"),
                    (2, ["1", "radio-plug", "--wire", "red", *DB], "tapbook: --wire does not belong to a speaker or line pair\nit says: colour of the power conductor\n"),
                    (2, ["1", "radio-plug", *DB], "tapbook: the reading says nothing yet\ngive colours (--positive, --negative) or volts (--ac, ...)\n"),
                    (3, ["1", "radio-plug", "--same", *DB], "job 1: no other place was read yet, so there are no conditions to take over; say them here: --supply, --tone-hz, --tone-db, "
                     "--full-volume, ...\nNothing was changed.\n")],
    "job action": [(2, words, FOR_A_WHILE) for words in (DB, ["1", *DB], ["1", "", *DB], ["1", "   ", *DB])] +
                  [(2, ["1", wrong, *DB], PLAIN.format("what was done")) for wrong in ("\x1b[31mfuse", "two\nlines", BYTE)] +
                  [(2, ["pulled", "fuse", *DB], WHICH_JOB), (2, ["1", "x", "--done", "1", *DB], "tapbook: --done closes an action: no words belong to it\ntapbook job action JOB --done N\n"),
                   (3, ["1", "--done", "2", *DB], "job 1: has no temporary action 2; `tapbook job show 1` lists them\nNothing was changed.\n")],
    "job show": [(2, DB, WHICH_JOB), (1, ["99", *DB], NO_JOB.format("99")), (2, ["1", "2", *DB], 'tapbook: "2" is one word too many for job show\nUSAGE\n')],
    "job open": [(2, [], "tapbook: job open needs JOB\nUSAGE\n"), table.empty_word("job open", "JOB"), (1, ["99", *DB], NO_JOB.format("99")),
                 (1, ["1", *DB], "tapbook: job 1 is open already\n`tapbook job show 1` shows it\n")],
    "backup": [(3, ["shop.sqlite", *DB], THERE.format("shop.sqlite")), (3, ["car.toml", *DB], THERE.format("car.toml")), (3, ["/dev/full", *DB], THERE.format("/dev/full")),
               (3, [".", *DB], THERE.format(".")), (5, ["/proc/x/y", *DB], "tapbook: cannot write /proc/x/y: No such file or directory\nname another place; nothing was changed\n"),
               (2, ["a", "b", *DB], 'tapbook: "b" is one word too many for backup\nUSAGE\n')],
    "restore": [(2, [], "tapbook: restore needs FILE\nUSAGE\n"), table.empty_word("restore", "FILE"), (3, ["zzzz", *DB], NO_BACKUP.format("zzzz")),
                (3, ["\x1b[2J", *DB], NO_BACKUP.format("<U+001B>[2J")), (2, ["a", "b", *DB], 'tapbook: "b" is one word too many for restore\nUSAGE\n')],
    **{command: table.stray(command) for command in ("undo", "rebuild", "audit", "job list")},
}
table.BASE.update(BASE)
table.OPTIONS.update(OPTIONS)
table.WORDS.update(WORDS)
