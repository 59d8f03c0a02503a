"""Odd surroundings: an answer nobody can take, odd terminals, an odd environment. Nothing of it may change what is said."""
from bad_input import Row

FIND = "tapbook find --db shop.sqlite"
FOUND = "Orvane Tarn sedan  2015-2018  orvane/tarn/sedan/2015\n"
NO_ROOM = "tapbook: cannot write the answer: No space left on device\nonly the answer is lost: what was saved stays saved\n"
CLOSED = NO_ROOM.replace("No space left on device", "Bad file descriptor")
GAIN = "tapbook gain --watts 75 --ohms 4"
TONE = ("tapbook meter --dc-positive 7.1 --dc-negative 7.1 --ac 6.2 --supply 14.2", "tapbook rules columns", "tapbook --help")

# A pipe whose reader has gone before the program starts: `| head -0` without the race.
GONE = ("/usr/bin/python3 -c 'import os, subprocess, sys; r, w = os.pipe(); os.close(r); "
        "sys.exit(subprocess.run(sys.argv[1:], stdout=w).returncode)' ")


def answer_cannot_be_taken():
    for what in (FIND, FIND + " --json", "tapbook --help", "tapbook find --help", "tapbook --version", "tapbook", GAIN, "tapbook rules",
                 "tapbook where", "tapbook gain --watts x --ohms 4 --json"):
        yield Row(f"`{what}` says that the disk is full", what + " >/dev/full", 5, NO_ROOM)
        yield Row(f"`{what}` ends quietly when its reader has gone", GONE + what, 5, "")
        yield Row(f"`{what}` says that its output is closed", what + " >&-", 5, CLOSED)
        yield Row(f"`{what} | head -0` is quiet", what + " | head -0", 0, "")
    yield Row("a catalog made without a place for the answer is whole", "tapbook init --db new.sqlite --shop B >/dev/full; tapbook find --db new.sqlite", 1,
              NO_ROOM + "tapbook: the catalog holds no cars yet\ntapbook add FILE.toml puts one in\n", changes=("new.sqlite",))
    yield Row("without standard error the exit code still tells", "tapbook tips 2>&-", 2, "")
    yield Row("without any handle the catalog is neither read nor harmed as output", FIND + " <&- >&- 2>&-", 5, "")
    yield Row("a full disk for messages changes nothing", "tapbook tips 2>/dev/full", 2, "")


def terminals():
    for width in ("1", "20", "40", "80", "500", "0", "-5", "abc", "", "99999999999999999999", "1e3", "80\x1b[31m"):
        most = {"1": 40, "20": 40, "40": 40, "80": 80, "500": 100, "99999999999999999999": 100}.get(width, 100)
        for what in TONE[:2]:
            yield Row(f"`{what}` keeps to its width with COLUMNS={width!r}", what, 0, "", lambda out, most=most: 0 < max(map(len, out.splitlines())) <= most,
                      surroundings={"COLUMNS": width})
    yield Row("the words are the same at every width", "for w in 1 40 61 80 100 500; do COLUMNS=$w tapbook rules columns | tr -s ' \\n' ' ' | sha256sum; done | sort -u | wc -l",
              0, "", "1\n")
    for name, value in (("TERM", None), ("TERM", "dumb"), ("TERM", "no-such-terminal"), ("NO_COLOR", "1"), ("COLORTERM", "truecolor"), ("COLUMNS", None)):
        yield Row(f"into a pipe nothing is coloured, {name}={value}", FIND, 0, "", FOUND, surroundings={name: value})
    on_a_terminal = "script -qec 'tapbook advise tarn --db shop.sqlite; tapbook rules' /dev/null"
    coloured = lambda out: "\x1b[" in out
    plain = lambda out: "\x1b" not in out and "stop" in out
    yield Row("a terminal gets colours", on_a_terminal, 0, "", coloured, surroundings={"TERM": "xterm-256color"})
    for name, value in (("TERM", None), ("TERM", ""), ("TERM", "dumb"), ("NO_COLOR", "1")):
        yield Row(f"a terminal gets no colours with {name}={value}", on_a_terminal, 0, "", plain, surroundings={name: value})


def environment():
    def places(folder):
        return lambda out: all(f"{folder}/{name}  (not there)\n" in out for name in ("catalog.sqlite", "practice.sqlite", "catalog.rules.toml"))
    yield Row("a relative XDG_DATA_HOME is ignored", "tapbook where", 0, "", places("FOLDER/.local/share/tapbook"), surroundings={"XDG_DATA_HOME": "data"})
    yield Row("an empty XDG_DATA_HOME is none", "tapbook where", 0, "", places("FOLDER/.local/share/tapbook"), surroundings={"XDG_DATA_HOME": ""})
    yield Row("without HOME the place is below this folder", "tapbook where", 0, "", places("./.local/share/tapbook"), surroundings={"XDG_DATA_HOME": None, "HOME": None})
    yield Row("an empty TAPBOOK_DB names no place", "tapbook where", 0, "", places("FOLDER/data/tapbook"), surroundings={"TAPBOOK_DB": ""})
    yield Row("TAPBOOK_DB names the catalog", "tapbook find", 0, "", FOUND, surroundings={"TAPBOOK_DB": "shop.sqlite"})
    yield Row("--db is stronger than TAPBOOK_DB", FIND, 0, "", FOUND, surroundings={"TAPBOOK_DB": "nowhere.sqlite"})
    yield Row("a TAPBOOK_DB that is too long is refused", "tapbook find", 5, lambda said: said.startswith("tapbook: cannot reach xxx") and
              said.endswith(": File name too long\nchoose another place with --db FILE\n") and len(said) < 5000, surroundings={"TAPBOOK_DB": "x" * 100_000})
    for day in ("nonsense", "2026-02-30", "2026-13-01", "2026-00-10", "20260502", "2026-5-2", "02.05.2026", "-2026-05-02", "99999-01-01", " 2026-05-02"):
        yield Row(f"{day!r} is no day", "tapbook where", 2, f"tapbook: TAPBOOK_TODAY: \"{day}\" is not a day\nwrite it like 2026-05-02\n", surroundings={"TAPBOOK_TODAY": day})
    yield Row("a hostile day is shown, not sent", "tapbook where", 2, 'tapbook: TAPBOOK_TODAY: "<U+001B>[31m" is not a day\nwrite it like 2026-05-02\n',
              surroundings={"TAPBOOK_TODAY": "\x1b[31m"})
    yield Row("an empty day is today", "tapbook where", 0, "", None, surroundings={"TAPBOOK_TODAY": ""})


# Given to the program alone: bash itself has something to say about locales it does not know.
LOCALES = ["LC_ALL=C", "LC_ALL=POSIX", "LC_ALL=de_DE.UTF-8", "LC_ALL=tr_TR.UTF-8", "LC_ALL=ar_EG.UTF-8", "LC_ALL=fr_FR@euro", "LC_ALL='no such locale'",
           "LC_ALL=", "LC_ALL=../../etc", "-u LC_ALL LC_NUMERIC=de_DE.UTF-8 LANG=de_DE.UTF-8 LANGUAGE=de", "-u LC_ALL -u LANG"]


def locales():
    """Numbers keep their point and letters their case in every locale, whether this machine knows it or not."""
    for names in LOCALES:
        yield Row(f"numbers keep their point with {names}", f"env {names} tapbook calc wire --awg 4 --metres 2.5 --amps 72.5 --json", 0, "",
                  '{"ok":true,"schema":"tapbook.calc.wire/1","data":{"ohm_per_m":0.0008152,"drop_v":0.1477,"drop_percent":1.0706,"computed":false}}\n')
        yield Row(f"words are found with {names}", f"env {names} tapbook find TARN --db shop.sqlite", 0, "", FOUND)
        yield Row(f"a comma is no point with {names}", f"env {names} tapbook gain --watts 13,8 --ohms 4", 2,
                  'tapbook: --watts: "13,8" uses a comma: write 13.8\nit must be 0.001 to 20000\n')


def rows(program):
    yield from answer_cannot_be_taken()
    yield from terminals()
    yield from environment()
    yield from locales()
