"""What is wrong for the commands with which shops share, and what is said: rows for the table of bad_words.py."""
import bad_words_notes  # its rows come first: those of `shops` are added to
import bad_words_table as table

DB = ["--db", "shop.sqlite"]
NO_DAYS = ["today", "2026-02-30", "02.05.2026", "2026-05-02\n", "\u202e2026-05-02"]
GO_WITH_KEY = "tapbook: --new, --out and --from go with shops key\nfor example: tapbook shops key --out shop.key\n"
NO_FILE = "{0}: there is no such file; check the name and the folder\nNothing was changed.\n"
NO_PACK = ("{0}:1:1: is not a pack; a pack is what `tapbook pack export` writes; a vehicle file is put in by `tapbook add`\n"
           "Nothing was changed.\n")
WHOLE_PATH = ('tapbook: "{0}" is not a whole path\nwrite make/model/body/first-year, and system, circuit and tap point where those are meant\n')
CAR = "orvane/tarn/hatch/2011"

BASE = {"pack export": ["x.jsonl", "--dry-run", *DB], ("shops", "--out"): DB, ("shops", "--from"): DB}

OPTIONS = {
    "pack export": {
        "--make": [("zzzz", 1, 'tapbook: there is no car of the make "zzzz"\ntapbook find lists all cars\n'),
                   ("orvanne", 1, 'tapbook: there is no car of the make "orvanne"\ndid you mean "orvane"?\n')],
        "--vehicle": [("zzzz", 1, 'tapbook: no car is called "zzzz"\ntapbook find lists all cars\n')],
        "--since": [(day, 2, f'tapbook: --since: "{table.visible(day)}" is not a day\nwrite it like 2026-05-02\n') for day in NO_DAYS],
    },
    "pack show": {}, "pack import": {}, "exchange": {}, "alias": {},
}
SHOPS = {"--out": [("x.key", 2, GO_WITH_KEY)], "--from": [("x.key", 2, GO_WITH_KEY)]}

WORDS = {
    "pack export": [(2, [], "tapbook: pack export needs FILE\nUSAGE\n"),
                    (2, ["x", "--make", "Orvane", "--vehicle", "Tarn", *DB], "tapbook: --make and --vehicle together\na car has its make already: keep one\n"),
                    (3, ["car.toml", *DB], "tapbook: car.toml is there already\nchoose another name; nothing was written\n")],
    "pack show": [(2, [], "tapbook: pack show needs FILE\nUSAGE\n"), (3, ["zzz"], NO_FILE.format("zzz")), (3, ["car.toml"], NO_PACK.format("car.toml"))],
    "pack import": [(2, [], "tapbook: pack import needs FILE\nUSAGE\n"), (3, ["zzz", *DB], NO_FILE.format("zzz")),
                    (3, ["car.toml", *DB], NO_PACK.format("car.toml"))],
    "exchange": [(2, [], "tapbook: exchange needs FOLDER\nUSAGE\n"),
                 (3, ["zzz", *DB], "tapbook: there is no folder zzz\nmake it, or name the one that is shared\n")],
    "alias": [(2, [], "tapbook: alias needs PATH PATH\nUSAGE\n"), (2, [CAR, "x", *DB], WHOLE_PATH.format("x")),
              (2, ["\x1b[2J", CAR, *DB], WHOLE_PATH.format("<U+001B>[2J")),
              (3, [CAR, CAR, *DB], lambda said: f"{CAR} twice" in said)],
    "shops": [(2, ["key", "--name", "Bench", *DB], "tapbook: --name goes with shops know\nfor example: tapbook shops know ID --name NAME\n"),
              (2, ["--new", *DB], GO_WITH_KEY), (2, ["know", "Bench", "--out", "x", *DB], GO_WITH_KEY),
              (2, ["key", "--new", "--out", "x", *DB], "tapbook: --new, --out and --from each stand alone\none after the other\n"),
              (3, ["key", "--out", "car.toml", *DB], "tapbook: car.toml is there already\nchoose another place; nothing was written\n"),
              (3, ["key", "--from", "car.toml", *DB], "car.toml: is not a shop's key; name the file that `tapbook shops key --out FILE` wrote\nNothing was changed.\n")],
}

assert bad_words_notes.OPTIONS["shops"] is table.OPTIONS["shops"]
table.BASE.update(BASE)
table.OPTIONS.update(OPTIONS)
table.OPTIONS["shops"].update(SHOPS)
for command, rows in WORDS.items():
    table.WORDS[command] = table.WORDS.get(command, []) + rows
