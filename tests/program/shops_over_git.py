#!/usr/bin/env python3
"""Do three shops end up knowing the same over a real git repository? Each has a clone, exchanges, commits and pushes at the
same time as the others; who comes second rebases. At the end what the three would hand on is the same byte for byte, and
git never met a conflict: the files are immutable and named by their contents."""
import argparse
import hashlib
import os
import pathlib
import subprocess
import sys
import tempfile

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
    def __init__(self, program, root, origin, name):
        self.name, self.root, self.clone, self.notes = name, root, root / name, ""
        self.environment = {**os.environ, "TAPBOOK_TODAY": "2026-05-02", "TAPBOOK_DB": str(root / f"{name}.sqlite"), "HOME": str(root),
                            "GIT_CONFIG_NOSYSTEM": "1", "GIT_AUTHOR_NAME": name, "GIT_AUTHOR_EMAIL": f"{name}@example.org",
                            "GIT_COMMITTER_NAME": name, "GIT_COMMITTER_EMAIL": f"{name}@example.org"}
        self.program = program
        self.tapbook("init", "--shop", name)
        self.run("git", "clone", "--quiet", str(origin), str(self.clone), folder=root)

    def run(self, *words, folder=None, good=(0,), data=None):
        done = subprocess.run([str(word) for word in words], cwd=folder or self.clone, env=self.environment, input=data, capture_output=True, timeout=120)
        if done.returncode not in good:
            sys.exit(f"{self.name}: {' '.join(map(str, words))} -> {done.returncode}\n{done.stdout.decode()}{done.stderr.decode()}")
        return done

    def tapbook(self, *words, **more):
        return self.run(self.program, *words, folder=self.root, **more)

    def note(self, number, plate, colour):
        """The car's file again, with one note more: only that is new."""
        self.notes += NOTE.format(colour, plate)
        (self.root / "more.toml").write_text((self.root / f"{number}.toml").read_text() + self.notes)
        self.tapbook("add", str(self.root / "more.toml"))

    def exchange(self):
        self.tapbook("exchange", str(self.clone))
        self.run("git", "add", "--all")
        self.run("git", "commit", "--quiet", "--allow-empty", "-m", "packs")

    def push(self):
        """Whether git took it; not when somebody pushed in between."""
        return self.run("git", "push", "--quiet", "origin", "HEAD:main", good=(0, 1, 128)).returncode == 0

    def pull(self):
        self.run("git", "pull", "--quiet", "--rebase", "origin", "main")

    def known(self):
        return self.tapbook("pack", "export", "-").stdout

    def records(self):
        """Without head and end, which name the shop."""
        return hashlib.sha256(b"\n".join(self.known().splitlines()[1:-1])).hexdigest()


def main():
    arguments = argparse.ArgumentParser()
    arguments.add_argument("--program", required=True, type=pathlib.Path)
    program = arguments.parse_args().program.resolve()
    with tempfile.TemporaryDirectory() as folder:
        root = pathlib.Path(folder)
        subprocess.run(["git", "init", "--quiet", "--bare", "--initial-branch=main", str(root / "origin.git")], check=True)
        shops = [Shop(program, root, root / "origin.git", name) for name in ("bench", "quill", "relay")]
        for number, shop in enumerate(shops):
            (root / f"{number}.toml").write_text(CAR.format(("Tarn", "Brim", "Vell")[number]))
            shop.tapbook("add", str(root / f"{number}.toml"))
        shops[0].exchange()
        assert shops[0].push()
        rebased = 0
        for turn in range(3):
            for number, shop in enumerate(shops):
                shop.note(number, f"plate {turn} {shop.name}", ("white", "brown", "green")[turn])
                shop.exchange()
            for shop in shops:  # all have committed before the first one pushes: the others come too late
                while not shop.push():
                    shop.pull()
                    rebased += 1
        for shop in shops:
            shop.pull()
            shop.exchange()
        found = {shop.records() for shop in shops}
        counts = {len(shop.known().splitlines()) for shop in shops}
        for shop in shops:
            shop.tapbook("check", "--full")
        if len(found) != 1 or counts != {2 + 3 * 4 + 9}:
            sys.exit(f"the shops know different things: {found}, {counts} lines")
        if rebased < 2:
            sys.exit("nobody had to rebase: this test does not see pushes that meet")
        print(f"3 shops, 9 notes, 12 entries: the same in all, {rebased} pushes came too late and were rebased")


main()
