"""What is wrong for each option of the shelf's commands, and what is said: part of the table of bad_words.py."""
import bad_words_notes as notes
import bad_words_table as table
from bad_words_table import Number

DB = ["--db", "shop.sqlite"]
NO_CONVERTER = 'tapbook: there is no converter "{0}"\ntapbook shelf count lists them\n'
CHANGE = 'tapbook: --what-if does not know "{0}"\nwithout=MODEL or with=MODEL\n'

BASE = {"shelf": DB, "shelf count": ["zzz", "use", "1", *DB]}

OPTIONS = {
    "shelf": {
        "--models": Number("1", "100", 0, "2"), "--share": Number("0.001", "100", 3, "60"), "--budget": Number("0.01", "100000000", 2, "100"),
        "--fill": Number("0.001", "99.999", 3, "90"), "--lost-job": Number("0.01", "100000000", 2, "60"), "--half-life": Number("1", "36500", 0, "200"),
        "--forecast": [("zzz.toml", 3, "zzz.toml: there is no such file; check the name and the folder\nNothing was changed.\n")],
        "--amp": [("zzz", 1, 'tapbook: there is no amplifier "zzz"\ntapbook add FILE.toml puts amplifiers in\n')],
        "--what-if": [("zzz", 2, CHANGE.format("zzz")), ("without", 2, CHANGE.format("without")), ("\x1b[2J=a", 2, CHANGE.format("<U+001B>[2J=a")),
                      ("without=zzzzzz", 1, NO_CONVERTER.format("zzzzzz"))],
        "--explain": [("zzzzzz", 1, NO_CONVERTER.format("zzzzzz"))],
        "--seed": Number("0", "1000000000", 0, "3"), "--time-limit": Number("0.001", "3600", 3, "5"),
        "--svg": [("/proc/x/y.svg", 5, "tapbook: cannot write /proc/x: No such file or directory\nchoose another place\n")]},
    "shelf count": {"--job": [("zzz", 1, "tapbook: there is no part \"zzz\"\ntapbook shelf count lists them\n")], "--words": notes.plain("--words")},
}
WORDS = {
    "shelf": [(2, ["--models", "2", "--share", "50", *DB], "tapbook: --models, --share and --budget are three different questions\nask one of them\n"),
              (2, ["--fill", "90", "--lost-job", "60", *DB], "tapbook: --fill and --lost-job are two ways to say how many\nuse one of them\n")],
    "shelf count": [(2, ["zzz", "use", *DB], "tapbook: how many pieces?\nfor example `tapbook shelf count PART receive 4`\n"),
                    (2, ["zzz", "uze", "1", *DB], 'tapbook: shelf count does not know "uze"\ndid you mean use?\n'),
                    (2, ["zzz", "use", "0", *DB], "tapbook: 0 pieces cannot be booked\nwrite a whole number, 1 to 100000\n"),
                    (2, ["zzz", "receive", "1.5", *DB], 'tapbook: "1.5" must be a whole number\nwrite a whole number, 1 to 100000\n')],
}
table.BASE.update(BASE)
table.OPTIONS.update(OPTIONS)
table.WORDS.update(WORDS)
