#!/usr/bin/env python3
"""What is left when somebody presses Ctrl-C during `add`? A file of 400 amplifiers is added and interrupted at 24 moments
from the fifth millisecond to past the end, and once while it waits for standard input. Each time the exit code is 130 with
the message, or 0 and all is saved; the catalog holds every one or none, is sound, and adding again completes it. And `init`: a whole
catalog or none."""
import argparse
import os
import pathlib
import shutil
import signal
import sqlite3
import subprocess
import sys
import tempfile
import time

import bad_input

SAID = "tapbook: cancelled; what was not saved yet is undone\n"
MANY = 400


def amplifiers():
    return "".join(f'[[amplifier]]\ncode = "bench-{number}"\nmaker = "Bench"\nname = "Bench {number}"\nchannels = 2\nuse = "full_range"\n\n'
                   for number in range(MANY))


def count(file):
    database = sqlite3.connect(file)
    try:
        sound = database.execute("PRAGMA integrity_check").fetchone()[0]
        return sound, database.execute("SELECT count(*) FROM amplifier").fetchone()[0]
    finally:
        database.close()


def start(program, folder, words, **others):
    # SIGINT may be ignored in here; a program started from a keyboard has it as usual.
    return subprocess.Popen([str(program), *words], cwd=folder, env=bad_input.environment(folder, program, {}), stdout=subprocess.PIPE,
                            stderr=subprocess.PIPE, preexec_fn=lambda: signal.signal(signal.SIGINT, signal.SIG_DFL), **others)


def interrupted(program, folder, after):
    """(exit code, messages) of an add that gets Ctrl-C after so many seconds."""
    adding = start(program, folder, ["add", "many.toml", "--db", "shop.sqlite"], stdin=subprocess.DEVNULL)
    time.sleep(after)
    adding.send_signal(signal.SIGINT)
    _, said = adding.communicate(timeout=60)
    return adding.returncode, said.decode()


def interrupted_init(program, folder):
    """Ctrl-C at 16 moments of `init`: under the name stands a whole catalog or nothing, and the name stays usable."""
    for moment in range(16):
        for leftover in folder.glob("new.sqlite*"):
            leftover.unlink()
        making = start(program, folder, ["init", "--db", "new.sqlite"], stdin=subprocess.DEVNULL)
        time.sleep(0.004 * 1.25 ** moment)
        making.send_signal(signal.SIGINT)
        making.communicate(timeout=60)
        there = (folder / "new.sqlite").exists()
        after = start(program, folder, ["find" if there else "init", "--db", "new.sqlite"], stdin=subprocess.DEVNULL)
        _, said = after.communicate(timeout=60)
        if after.returncode != (1 if there else 0):
            yield f"init, moment {moment} of 15: exit {making.returncode}; then exit {after.returncode}, {said[:200]!r}"


def main():
    arguments = argparse.ArgumentParser()
    arguments.add_argument("--program", required=True)
    program = pathlib.Path(arguments.parse_args().program).resolve()
    problems, cancelled, saved = [], 0, 0
    with tempfile.TemporaryDirectory(prefix="tapbook-") as name:
        folder = pathlib.Path(name)
        bad_input.prepare(folder, program)
        (folder / "many.toml").write_text(amplifiers())
        shutil.copy(folder / "shop.sqlite", folder / "before.sqlite")

        waiting = start(program, folder, ["add", "-", "--db", "shop.sqlite"], stdin=subprocess.PIPE)
        time.sleep(1)
        waiting.send_signal(signal.SIGINT)
        _, said = waiting.communicate(timeout=60)
        if (waiting.returncode, said.decode()) != (130, SAID) or count(folder / "shop.sqlite") != ("ok", 0):
            problems.append(f"while waiting for input: exit {waiting.returncode}, {said[:200]!r}, {count(folder / 'shop.sqlite')}")

        problems += interrupted_init(program, folder)

        begun = time.monotonic()
        whole = start(program, folder, ["add", "many.toml", "--db", "shop.sqlite"], stdin=subprocess.DEVNULL)
        if whole.communicate(timeout=120)[1] or count(folder / "shop.sqlite") != ("ok", MANY):
            problems.append(f"uninterrupted: exit {whole.returncode}, {count(folder / 'shop.sqlite')}")
        takes = time.monotonic() - begun
        for moment in range(24):
            for leftover in folder.glob("shop.sqlite*"):
                leftover.unlink()
            shutil.copy(folder / "before.sqlite", folder / "shop.sqlite")
            code, said = interrupted(program, folder, min(0.005 * 1.3 ** moment, takes * 1.1))
            found = count(folder / "shop.sqlite")
            early = code == -signal.SIGINT and said == ""  # on a busy machine, before main() began
            if code == 130 and said == SAID and found in (("ok", 0), ("ok", MANY)):
                cancelled += 1
            elif code == 0 and said == "" and found == ("ok", MANY):
                saved += 1
            elif not (early and found == ("ok", 0)):
                problems.append(f"moment {moment} of 23: exit {code}, {said[:200]!r}, {found}")
        again = start(program, folder, ["add", "many.toml", "--db", "shop.sqlite"], stdin=subprocess.DEVNULL)
        again.communicate(timeout=120)
        if again.returncode != 0 or count(folder / "shop.sqlite") != ("ok", MANY):
            problems.append(f"again: exit {again.returncode}, {count(folder / 'shop.sqlite')}")
    print("\n".join(problems))
    print(f"41 interruptions, 25 of them of add: {cancelled + 1} cancelled, {saved} came too late; an undisturbed add takes {takes * 1000:.0f} ms")
    sys.exit(1 if problems or cancelled < 3 else 0)


if __name__ == "__main__":
    main()
