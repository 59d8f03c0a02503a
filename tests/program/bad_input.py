#!/usr/bin/env python3
"""What does the program say to input that cannot be right? Each row: what is wrong, the command, its exit code and its
whole message; and after it nothing in the folder has changed. Rows stand in bad_input_TOPIC.py beside this file.

    bad_input.py --program PROGRAM [--show] TOPIC...     --show prints what each row really says, to be read
"""
import argparse
import dataclasses
import hashlib
import importlib
import os
import pathlib
import shutil
import stat
import subprocess
import sys
import tempfile
import typing

DAY = "2026-05-02"

# Four entries: a vehicle, a system, a circuit and a tap point.
CAR = """[vehicle]
make = "Orvane"
model = "Tarn"
body = "sedan"
first_year = 2015
last_year = 2018

[[system]]
code = "base"
name = "Radio"

[[circuit]]
at = "base"
code = "front-left"
role = "speaker"
drive = "bridged"

[[tap]]
at = "base/front-left"
code = "radio-plug"
place = "plug behind the radio"
"""


@dataclasses.dataclass
class Row:
    claim: str
    command: str  # words for bash, in the row's folder; the program is called tapbook
    exit: int
    says: typing.Union[str, typing.Callable[[str], bool], None]  # whole standard error; None: not looked at
    answers: typing.Union[str, typing.Callable[[str], bool], None] = ""  # whole standard output
    before: typing.Optional[typing.Callable[[pathlib.Path], object]] = None  # makes what is wrong; may return an undo
    surroundings: dict = dataclasses.field(default_factory=dict)  # environment; None takes a name away
    changes: tuple = ()  # names of files this row is meant to make or change


def environment(folder, program, more):
    result = {"PATH": f"{program.parent}:{os.environ.get('PATH', '')}", "LC_ALL": "C.UTF-8", "HOME": str(folder),
              "XDG_DATA_HOME": str(folder / "data"), "TAPBOOK_TODAY": DAY, "COLUMNS": "100", "TERM": "xterm"}
    result.update(more)
    return {name: value for name, value in result.items() if value is not None}


def content(path):
    """What one name in a folder is, without waiting for a pipe or following a link."""
    about = path.lstat()
    kind = stat.S_IFMT(about.st_mode)
    if not stat.S_ISREG(about.st_mode):
        return kind, about.st_mode
    with open(path, "rb") as file:
        return kind, about.st_mode, hashlib.file_digest(file, "sha256").hexdigest()


def snapshot(folder):
    found = {}
    for where, folders, files in os.walk(folder):
        for name in folders + files:
            path = pathlib.Path(where) / name
            found[str(path.relative_to(folder))] = content(path)
    return found


def is_log(name):
    return name.endswith(("-wal", "-shm"))


def difference(before, after, row):
    changed = []
    for name in sorted(before.keys() | after.keys()):
        if name in row.changes or (is_log(name) and name[:-len("-wal")] in after):
            continue
        if before.get(name) != after.get(name):
            changed.append(f"{name}: {'gone' if name not in after else 'new' if name not in before else 'changed'}")
    return changed


def fits(wanted, got):
    return wanted is None or (wanted(got) if callable(wanted) else wanted == got)


def shown(text):
    return text if len(text) < 3000 else text[:1500] + "\n[...]\n" + text[-500:]


def play(row, program, prepared, show):
    with tempfile.TemporaryDirectory(prefix="tapbook-") as name:
        folder = pathlib.Path(name)
        shutil.copytree(prepared, folder, dirs_exist_ok=True)
        folder.chmod(0o755)
        undo = row.before(folder) if row.before else None
        before = snapshot(folder)
        try:
            done = subprocess.run(["bash", "-c", row.command], cwd=folder, env=environment(folder, program, row.surroundings),
                                  stdin=subprocess.DEVNULL, stdout=subprocess.PIPE, stderr=subprocess.PIPE, timeout=60)
        finally:
            if callable(undo):
                undo()
        out = done.stdout.decode("utf-8", "backslashreplace").replace(str(folder), "FOLDER")
        err = done.stderr.decode("utf-8", "backslashreplace").replace(str(folder), "FOLDER")
        changed = difference(before, snapshot(folder), row)
    problems = []
    if done.returncode != row.exit:
        problems.append(f"exit {done.returncode} instead of {row.exit}")
    if not fits(row.says, err):
        problems.append("standard error is not as written")
    if not fits(row.answers, out):
        problems.append("standard output is not as written")
    problems += changed
    if problems or show:
        print(f"--- {row.claim}\n$ {shown(row.command)}\n" + "".join(f"    {problem}\n" for problem in problems) +
              f"exit {done.returncode}\nstandard error:\n{shown(err)}standard output:\n{shown(out)}")
    return not problems


def prepare(folder, program):
    """shop.sqlite: a catalog with one car, made once and copied for every row."""
    (folder / "car.toml").write_text(CAR)
    for command in ('tapbook init --db shop.sqlite --shop "Bench Three"', "tapbook add car.toml --db shop.sqlite"):
        subprocess.run(["bash", "-c", command], cwd=folder, env=environment(folder, program, {}), check=True,
                       stdout=subprocess.DEVNULL)


def main():
    arguments = argparse.ArgumentParser()
    arguments.add_argument("--program", required=True)
    arguments.add_argument("--show", action="store_true")
    arguments.add_argument("topics", nargs="+")
    given = arguments.parse_args()
    sys.modules["bad_input"] = sys.modules["__main__"]
    program = pathlib.Path(given.program).resolve()
    good = total = 0
    with tempfile.TemporaryDirectory(prefix="tapbook-") as name:
        prepare(pathlib.Path(name), program)
        for topic in given.topics:
            for row in importlib.import_module(f"bad_input_{topic}").rows(program):
                if "setpriv" in row.command and os.geteuid() != 0:
                    print(f"NOT RUN, needs root to become somebody else: {row.claim}")
                    continue
                total += 1
                good += play(row, program, name, given.show)
    print(f"{good} of {total} rows as written")
    sys.exit(0 if good == total and total > 0 else 1)


if __name__ == "__main__":
    main()
