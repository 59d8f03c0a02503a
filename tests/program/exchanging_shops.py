"""What do the tests of shops that exchange start from? A shop is a catalog of its own and a folder that others can see; one
car each, and notes one after the other."""
import hashlib
import os
import subprocess
import sys

CAR = """[vehicle]
make = "Orvane"
model = "{0}"
body = "hatch"
first_year = 2011
last_year = 2016

[[system]]
code = "base"
name = "radio, four speakers"

[[circuit]]
at = "base"
code = "front-left"
role = "speaker"

[[tap]]
at = "base/front-left"
code = "radio-plug"
place = "radio"
"""

NOTE = """
[[note]]
at = "base/front-left/radio-plug"
date = 2026-04-02
method = "seen"
positive = "{0}"
negative = "black"
car = "{1}"
"""


class Shop:
    def __init__(self, program, root, name, folder):
        self.program, self.root, self.name, self.folder, self.notes = program, root, name, folder, ""
        self.environment = {**os.environ, "TAPBOOK_TODAY": "2026-05-02", "TAPBOOK_DB": str(root / f"{name}.sqlite"), "HOME": str(root)}
        self.tapbook("init", "--shop", name)

    def run(self, *words, folder=None, good=(0,)):
        done = subprocess.run([str(word) for word in words], cwd=folder or self.folder, env=self.environment, capture_output=True, timeout=120)
        if done.returncode not in good:
            sys.exit(f"{self.name}: {' '.join(map(str, words))} -> {done.returncode}\n{done.stdout.decode()}{done.stderr.decode()}")
        return done

    def tapbook(self, *words, **more):
        return self.run(self.program, *words, folder=self.root, **more)

    def add_car(self, model):
        self.car = CAR.format(model)
        self.note()

    def note(self, plate=None, colour=None):
        """The car's file again, with one note more: only that is new."""
        if plate:
            self.notes += NOTE.format(colour, plate)
        file = self.root / f"{self.name}.toml"
        file.write_text(self.car + self.notes)
        self.tapbook("add", file)

    def exchange(self, **more):
        return self.tapbook("exchange", self.folder, **more).stdout.decode()

    def known(self):
        return self.tapbook("pack", "export", "-").stdout

    def records(self):
        """Without head and end, which name the shop."""
        return hashlib.sha256(b"\n".join(self.known().splitlines()[1:-1])).hexdigest()


def need_agreement(shops, lines):
    """All know the same, so much of it, and every catalog is sound."""
    found = {shop.records() for shop in shops}
    counts = {len(shop.known().splitlines()) for shop in shops}
    for shop in shops:
        shop.tapbook("check", "--full")
    if len(found) != 1 or counts != {lines}:
        sys.exit(f"the shops know different things: {found}, {counts} lines")
