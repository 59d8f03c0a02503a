#!/usr/bin/env python3
"""Are texts read, composed and escaped as Python does it? Random names in random spellings of TOML (basic, literal and
multi-line strings, escapes, decomposed letters) are added and asked for again; Python's tomllib says what the spelling
means, unicodedata (Unicode 14) what its composed form (NFC) is, json what the program's answer holds. Then every file of
the practice shop: tomllib's tables against the stored parts. Traps: an escape left as it is, a letter composed twice,
a quote that ends the answer."""
import argparse
import json
import os
import pathlib
import random
import sqlite3
import subprocess
import sys
import tempfile
import tomllib
import unicodedata

ROOT = pathlib.Path(__file__).resolve().parents[2]
# Letters with one, two and three marks, Hangul in parts, letters that compose in only one order; all in Unicode 14.
PIECES = ["e\u0301", "\u00e9", "o\u0302\u0323", "o\u0323\u0302", "\u1100\u1161\u11a8", "\uac00", "A\u030a", "\u212b", "s\u0323\u0307", "\u0041\u0328\u0301",
          "K", "\u212a", "q\u0307", "fi", "\ufb01", "\u00df", "\u0390", "\u03b9\u0308\u0301", "\u0958", "\u4e00", "\U0001d15e", "x", " ", "-", "'", "\"", "\\", "/", "<", "&", "$(id)"]


def spelt(text, dice):
    """One of the spellings TOML has for a text."""
    kind = dice.randrange(4)
    if kind == 0 and "'" not in text:
        return f"'{text}'"
    if kind == 1 and "'''" not in text and not text.endswith("'"):
        return f"'''{text}'''"
    letters = []
    for letter in text:
        way = dice.randrange(4)
        if letter in '"\\' or way == 0:
            letters.append(f"\\U{ord(letter):08X}" if way < 2 or ord(letter) > 0xFFFF else f"\\u{ord(letter):04x}")
        else:
            letters.append(letter)
    quote = '"""' if kind == 2 else '"'
    return quote + "".join(letters) + quote


def names(count, dice):
    for number in range(count):
        middle = "".join(dice.choice(PIECES) for _ in range(dice.randint(1, 8)))
        yield f"Bench {number} {middle}x"


def amplifier(number, spelling):
    return f'[[amplifier]]\ncode = "bench-{number}"\nmaker = "Bench"\nname = {spelling}\nchannels = 2\nuse = "full_range"\n\n'


def rows(file, question):
    database = sqlite3.connect(file)
    try:
        return database.execute(question).fetchall()
    finally:
        database.close()


def main():
    arguments = argparse.ArgumentParser()
    arguments.add_argument("--program", required=True)
    program = str(pathlib.Path(arguments.parse_args().program).resolve())
    dice, problems = random.Random(14), []
    with tempfile.TemporaryDirectory() as name:
        folder = pathlib.Path(name)
        surroundings = {"PATH": os.environ["PATH"], "HOME": name, "TAPBOOK_TODAY": "2026-05-02"}

        def run(*words):
            done = subprocess.run([program, *words], cwd=folder, env=surroundings, capture_output=True, stdin=subprocess.DEVNULL, timeout=60)
            if done.returncode != 0:
                sys.exit(f"{words}: exit {done.returncode}: {done.stderr.decode(errors='replace')[:2000]}")
            return done.stdout.decode()

        run("init", "--db", "shop.sqlite", "--shop", "Bench")
        spellings = [spelt(text, dice) for text in names(300, dice)]
        (folder / "names.toml").write_text("".join(amplifier(number, spelling) for number, spelling in enumerate(spellings)))
        run("add", "names.toml", "--db", "shop.sqlite")
        meant = {entry["code"]: unicodedata.normalize("NFC", entry["name"]) for entry in tomllib.loads((folder / "names.toml").read_text())["amplifier"]}
        stored = {path.split("/")[-1]: text for path, text in rows(folder / "shop.sqlite", "SELECT path, name FROM amplifier")}
        problems += [f"{code}: meant {meant[code]!r}, stored {stored.get(code)!r}" for code in meant if meant[code] != stored.get(code)]

        for number, text in enumerate(names(40, dice)):
            told = json.loads(run("init", "--db", f"shop{number}.sqlite", "--shop", text, "--json"))["data"]["shop"]
            if told != unicodedata.normalize("NFC", text):
                problems.append(f"--shop {text!r}: answered {told!r}")

        run("demo", "--db", "practice.sqlite")
        parts = tomllib.loads((ROOT / "data/parts.toml").read_text())
        for kind in ("converter", "amplifier"):
            wanted = sorted(((part.get("maker"), part.get("name"), part.get("channels")) for part in parts[kind]), key=str)
            found = sorted(rows(folder / "practice.sqlite", f"SELECT maker, name, channels FROM {kind}"), key=str)
            problems += [f"{kind}s of the practice shop: {set(wanted) ^ set(found)}"] if wanted != found else []
        cars = [tomllib.loads(file.read_text())["vehicle"] for file in sorted((ROOT / "data/vehicles").glob("*.toml"))]
        wanted = sorted((car["make"], car["model"], car["first_year"], car["last_year"]) for car in cars)
        found = sorted(rows(folder / "practice.sqlite", "SELECT make, model, first_year, last_year FROM vehicle"))
        problems += [f"cars of the practice shop: {set(wanted) ^ set(found)}"] if wanted != found else []
    print("\n".join(problems[:20])[:4000])
    print(f"{len(meant)} spellings, 40 answers, {len(cars)} cars and {sum(map(len, parts.values()))} parts; {len(problems)} differ")
    sys.exit(1 if problems else 0)


if __name__ == "__main__":
    main()
