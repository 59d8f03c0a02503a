"""Files that cannot be read, are no text or are no TOML: as a file to add, and as the shop's own rules."""
import os
import pathlib
import random

from bad_input import CAR, Row

PNG = b"\x89PNG\r\n\x1a\n\0\0\0\rIHDR\0\0\0\x01\0\0\0\x01\x08\x02\0\0\0"  # signature and first chunk, W3C PNG 5.2
UNCHANGED = "Nothing was changed.\n"
NO_TEXT = "is not text (UTF-8); give a TOML text file, as shown in the README\n" + UNCHANGED
TOO_LARGE = "is larger than 64 MiB; split it\n" + UNCHANGED
NOTHING = "holds nothing to add; see the README for a vehicle file and a parts file\n" + UNCHANGED
LOOK = "check quotes, brackets and commas on this line and the one before\n"


def no_toml(place, why, line, column):
    """The place, the reason, the line and a caret below its column."""
    return f"{place}: not TOML: Error while parsing {why}; {LOOK}    {line}\n    {' ' * (column - 1)}^\n{UNCHANGED}"


# What the bytes are, their bytes, and what is said after the file's name.
BYTES = [
    ("one line of 10 MB", b"make = \"" + b"x" * 10_000_000, ": is larger than 8 MiB; split it: one vehicle per file\n" + UNCHANGED),
    ("a NUL among text", b"[vehicle]\nmake = \"Or\0vane\"\n", ": " + NO_TEXT),
    ("4 kB of random bytes", random.Random(4).randbytes(4096), ": " + NO_TEXT),
    ("a picture", PNG, ": " + NO_TEXT),
    ("UTF-16 with its mark", CAR.encode("utf-16"), ": " + NO_TEXT),
    ("UTF-16 without a mark", CAR.encode("utf-16-le"), ": " + NO_TEXT),
    ("a letter of Latin-1", "[vehicle]\nmake = \"Orväne\"\n".encode("latin-1"), ": " + NO_TEXT),
    ("an overlong form of a slash", b"[vehicle]\nmake = \"Or\xc0\xafvane\"\n", ": " + NO_TEXT),
    ("half a surrogate pair", b"[vehicle]\nmake = \"Or\xed\xa0\x80vane\"\n", ": " + NO_TEXT),
    ("a character cut off at the end", b"# Orv\xc3", ": " + NO_TEXT),
    ("TOML cut in a text", b"[vehicle]\nmake = \"Orva", no_toml(":2:13", "string: encountered end-of-file", 'make = "Orva', 13)),
    ("TOML cut in a name", b"[vehicle]\nmake = \"Orvane\"\nmod", no_toml(":3:4", "key-value pair: encountered end-of-file", "mod", 4)),
    ("TOML cut in a table's name", b"[vehicle]\nmake = \"Orvane\"\n[[syst", no_toml(":3:7", "table header: encountered end-of-file", "[[syst", 7)),
    ("10,000 lists in each other", b"a = " + b"[" * 10_000,
     no_toml(":1:261", "value: exceeded maximum nested value depth of 256 (TOML_MAX_NESTED_VALUES)", "..." + "[" * 60, 64)),
    ("a whole number beyond 64 bits", b"[vehicle]\nfirst_year = 99999999999999999999\n",
     no_toml(":2:34", "decimal integer: '99999999999999999999' is not representable in 64 bits", "first_year = 99999999999999999999", 34)),
]


def put(name, data):
    return lambda folder: (folder / name).write_bytes(data) and None


def hole(name):
    def make(folder):
        with open(folder / name, "wb") as file:
            file.truncate(70_000_000)
    return make


def link(name, target):
    return lambda folder: os.symlink(target, folder / name)


def for_nobody(name):
    """A file only its owner may read, in a folder everybody may use."""
    def make(folder):
        (folder / name).write_text(CAR)
        (folder / name).chmod(0o600)
        (folder / "shop.sqlite").chmod(0o666)
        folder.chmod(0o777)
    return make


# As user 65534, who first proves that the file is closed to him.
NOBODY = "nobody() { setpriv --reuid=65534 --regid=65534 --clear-groups \"$@\"; }; "


def two_places(claim, exit_code, says, before):
    """The same thing as a file to add and as the shop's own rules; `says` follows the name."""
    for name, command in (("bad.toml", "tapbook add bad.toml --db shop.sqlite"), ("shop.rules.toml", "tapbook rules --db shop.sqlite")):
        yield Row(f"{claim} is refused by `{command}`", "timeout 30 " + command, exit_code, name + says, before=before(name))


def cut_anywhere():
    """The practice shop's own files, cut off at twelve places each: taken as far as they go, or refused with the place."""
    root = pathlib.Path(__file__).resolve().parents[2]
    dice = random.Random(12)
    for file in (root / "data/parts.toml", root / "data/stock.toml", root / "data/vehicles/ostrel.toml", root / "src/rules/shipped/2_level.toml"):
        data = file.read_bytes()
        name, command = ("shop.rules.toml", "tapbook rules check --db shop.sqlite") if "rules" in str(file) else ("bad.toml", "tapbook add bad.toml --db shop.sqlite --dry-run")
        for size in sorted(dice.sample(range(len(data)), 12)):
            yield Row(f"{file.name} cut to {size} bytes is taken or refused", f"{command}; code=$?; [ $code = 0 ] || [ $code = 3 ]", 0,
                      lambda said, name=name: said == "" or (said.startswith(name + ":") and said.endswith(UNCHANGED)), None, before=put(name, data[:size]))


def rows(program):
    yield from cut_anywhere()
    for what, data, says in BYTES:
        yield from two_places(what, 3, says, lambda name, data=data: put(name, data))
    for what, data in (("a file of no bytes", b""), ("a file of blanks", b" \n\t\n"), ("a file of remarks", b"# later\n")):
        yield Row(f"{what} holds nothing to add", "tapbook add bad.toml --db shop.sqlite", 3, "bad.toml: " + NOTHING, before=put("bad.toml", data))
        yield Row(f"{what} adds no rule and is no mistake", "diff <(tapbook rules --db shop.sqlite) <(tapbook rules --db other.sqlite)", 0, "",
                  before=put("shop.rules.toml", data))
    key = b"k" * 100_000 + b" = 1\n"
    yield Row("a key of 100 kB is shown by its ends", "tapbook add bad.toml --db shop.sqlite", 3, lambda said: said.startswith('bad.toml:1:1: unknown table "kkk') and
              "more bytes]" in said and said.endswith("    ^\n" + UNCHANGED) and len(said) < 5000, before=put("bad.toml", key))
    yield from two_places("a file of 70 MB", 3, ": " + TOO_LARGE, hole)
    yield Row("a device without an end is refused", "tapbook add /dev/zero --db shop.sqlite", 3, "/dev/zero: " + TOO_LARGE)
    yield from two_places("a folder", 3, ": is a folder; name the files in it, one after the other\n" + UNCHANGED, lambda name: lambda folder: (folder / name).mkdir())
    yield from two_places("a link that leads nowhere", 3, ": there is no such file; check the name and the folder\n" + UNCHANGED, lambda name: link(name, "nowhere"))
    yield from two_places("links in a circle", 3, ": cannot be opened: Too many levels of symbolic links; name a text file\n" + UNCHANGED, lambda name: link(name, name))
    yield from two_places("a pipe without a writer", 3, ": is a pipe into which nobody writes; start its writer first, or pipe into `tapbook add -`\n" + UNCHANGED,
                          lambda name: lambda folder: os.mkfifo(folder / name))
    yield Row("a pipe with a writer is read", "tapbook add <(cat car.toml) --db shop.sqlite --dry-run", 0, "", lambda out: "0 entries new, 0 changed, 4 already here" in out)
    yield Row("standard input is read", "cat car.toml | tapbook add - --db shop.sqlite --dry-run", 0, "", lambda out: "0 entries new, 0 changed, 4 already here" in out)
    yield Row("a file that is not there", "tapbook add bad.toml --db shop.sqlite", 3, "bad.toml: there is no such file; check the name and the folder\n" + UNCHANGED)
    yield Row("a file below a file", "tapbook add car.toml/x --db shop.sqlite", 3, "car.toml/x: there is no such file; check the name and the folder\n" + UNCHANGED)
    long = "x" * 300
    yield Row("a name too long for the disk", f"tapbook add {long} --db shop.sqlite", 3, f"{long}: cannot be opened: File name too long; name a text file\n" + UNCHANGED)
    yield Row("a closed standard input holds nothing", "tapbook add - --db shop.sqlite <&-", 3, "standard input: " + NOTHING)
    for name, command in (("bad.toml", "tapbook add bad.toml --db shop.sqlite"), ("shop.rules.toml", "tapbook rules --db shop.sqlite")):
        yield Row(f"a file that may not be read is refused by `{command}`", f"{NOBODY} nobody cat {name}; nobody {command}", 4,
                  f"cat: {name}: Permission denied\ntapbook: may not read {name}\nread it from an account that may\n", before=for_nobody(name))
