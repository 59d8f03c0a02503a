#!/usr/bin/env python3
"""Does the program pass the same VINs as a validator written by others? The npm package vin-validator 1.0.0 (ISC) judges
the published test VINs and 1,000 made here: valid, one character changed, two exchanged, lower case, wrong letters,
wrong length. Check digits of the valid ones are found by trying all eleven on that validator, so no sum is worked out
here. Traps: weight of position 9 left in, Z counted as 7, remainder 10 taken for 0.

Where the two differ on purpose: the other one knows no year codes, so a VIN whose only fault is its tenth character is
refused by the program alone; and it judges VINs from everywhere, while the check digit is law only where the first
character is 1 to 5 (49 CFR 565.15): elsewhere the program has to say that nothing can be said."""
import argparse
import json
import pathlib
import random
import shutil
import string
import subprocess
import sys

from asking import ask_all

PACKAGE = "vin-validator@1.0.0"
YEAR_CODES = "ABCDEFGHJKLMNPRSTVWXY123456789"  # 49 CFR 565.15, table VII: no I, O, Q, U, Z and no 0
LETTERS = "ABCDEFGHJKLMNPRSTUVWXYZ0123456789"  # 49 CFR 565.15, table III

# Worked examples and test VINs of public pages (an encyclopaedia's article on VINs; 49 CFR 565 table V) and of public
# test suites; with the verdict printed there.
PUBLISHED = [
    ("1M8GDM9AXKP042788", True), ("5GZCZ43D13S812715", True), ("11111111111111111", True), ("1G4AH59H45G118341", True),
    ("1HGCM82633A004352", True), ("5GZCZ43D23S812715", False), ("WP0ZZZ99ZTS392124", False), ("5GZCZ43D1US812715", False),
    ("IGZOZ43Q13S812715", False), ("00000000000000000", False),
]


def installed(folder):
    """The package in the build folder; installed once. A machine without npm is told so, loudly."""
    if not (folder / "node_modules" / "vin-validator" / "index.js").exists():
        if shutil.which("npm") is None or shutil.which("node") is None:
            print("SKIPPED: there is no npm on this machine, so the VINs were NOT checked against the outside validator")
            sys.exit(77)
        folder.mkdir(parents=True, exist_ok=True)
        subprocess.run(["npm", "install", "--no-save", "--ignore-scripts", "--no-audit", "--no-fund", "--prefix", str(folder), PACKAGE],
                       check=True, stdin=subprocess.DEVNULL, stdout=subprocess.DEVNULL, timeout=300)
    version = json.loads((folder / "node_modules" / "vin-validator" / "package.json").read_text())["version"]
    if "vin-validator@" + version != PACKAGE:
        sys.exit(f"vin-validator {version} is there instead of {PACKAGE}")


def judged(vins, folder):
    """The validator's verdict on each text."""
    script = ("const v = require('vin-validator');"
              "console.log(JSON.stringify(JSON.parse(require('fs').readFileSync(0)).map(t => v.validate(t))))")
    done = subprocess.run(["node", "-e", script], input=json.dumps(vins), capture_output=True, text=True, cwd=folder, check=True, timeout=60)
    return json.loads(done.stdout)


def some_vin(dice):
    body = [dice.choice(LETTERS) for _ in range(17)]
    body[0] = dice.choice("12345")  # North America, where the check digit is the law
    body[9] = dice.choice(YEAR_CODES)
    return "".join(body)


def spoilt(vin, dice):
    """One of the mistakes people make."""
    place, other = dice.randrange(17), dice.randrange(17)
    kind = dice.randrange(6)
    if kind == 0:
        return vin[:place] + dice.choice(LETTERS) + vin[place + 1:]
    if kind == 1:
        swapped = list(vin)
        swapped[place], swapped[other] = swapped[other], swapped[place]
        return "".join(swapped)
    if kind == 2:
        return vin[:place] + dice.choice("IOQioq") + vin[place + 1:]
    if kind == 3:
        return vin.lower()
    if kind == 4:
        return vin[:place] if dice.random() < 0.5 else vin + dice.choice(LETTERS)
    return vin[:place] + dice.choice("*%_é") + vin[place + 1:]


def made(count, folder):
    dice = random.Random(565)
    bases = [some_vin(dice) for _ in range(count // 2)]
    tried = [base[:8] + digit + base[9:] for base in bases for digit in string.digits + "X"]
    passed = [vin for vin, good in zip(tried, judged(tried, folder)) if good]
    if len(passed) != len(bases):
        sys.exit(f"{len(bases)} VINs took {len(passed)} check digits; each has exactly one")
    return passed + [spoilt(vin, dice) for vin in passed]


def main():
    arguments = argparse.ArgumentParser()
    arguments.add_argument("--program", required=True)
    arguments.add_argument("--folder", required=True)
    given = arguments.parse_args()
    folder = pathlib.Path(given.folder)
    installed(folder)
    vins = [vin for vin, _ in PUBLISHED] + made(1000, folder)
    theirs = judged(vins, folder)
    answers = ask_all(given.program, [["calc", "vin", vin] for vin in vins])
    ours = [answer["data"]["valid"] if answer["ok"] else False for _, answer in answers]
    wrong = [f"{vin}: printed {good}, program {our}" for (vin, good), our in zip(PUBLISHED, ours) if good != bool(our)]
    year_only = elsewhere = 0
    for vin, their, our in zip(vins, theirs, ours):
        if their and our is False and vin[9].upper() not in YEAR_CODES:
            year_only += 1
        elif our is None and vin[0] not in "12345":
            elsewhere += 1
        elif their != our:
            wrong.append(f"{vin}: validator {their}, program {our}")
    print("\n".join(wrong[:20]))
    print(f"{len(vins)} VINs, {sum(theirs)} valid, {year_only} refused for the year code alone, {elsewhere} from elsewhere, "
          f"{len(wrong)} differ")
    sys.exit(1 if wrong else 0)


if __name__ == "__main__":
    main()
