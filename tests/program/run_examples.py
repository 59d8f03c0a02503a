#!/usr/bin/env python3
"""Do the examples in README and help run, and say what is printed there?

README: ```toml blocks whose info string names a file (```toml car.toml) are written as that file; ```console blocks are played in
one folder in their order, with the output below each `$ ` line compared as in a case ("..." stands for any lines).
Help: every example line of every command runs on the practice shop with exit code 0 or 1.
"""
import argparse
import pathlib
import re
import shlex
import subprocess
import sys
import tempfile

sys.path.insert(0, str(pathlib.Path(__file__).parent))
import run_cases  # noqa: E402

arguments = argparse.ArgumentParser()
arguments.add_argument("--program", required=True)
program = pathlib.Path(arguments.parse_args().program).resolve()
root = pathlib.Path(__file__).resolve().parents[2]
problems, ran = [], 0

with tempfile.TemporaryDirectory() as name:
    folder = pathlib.Path(name)
    for info, body in re.findall(r"^```(\S.*)\n(.*?)^```$", (root / "README.md").read_text(), re.M | re.S):
        words = info.split()
        if words[0] == "toml" and len(words) == 2:
            (folder / words[1]).write_text(body)
        elif words[0] == "console":
            steps = re.split(r"^\$ ", body, flags=re.M)[1:]
            for step in steps:
                command, _, output = step.partition("\n")
                expected = output.rstrip("\n").split("\n") if output.strip() else []
                text, _ = run_cases.run(command, folder, program)
                ran += 1
                got = [line.rstrip() for line in text.rstrip("\n").split("\n")] if text.strip() else []
                if not run_cases.fits(expected, got):
                    problems.append(f"README: $ {command}\n" + "\n".join("    " + line for line in got))

with tempfile.TemporaryDirectory() as name:
    folder = pathlib.Path(name)
    text, code = run_cases.run("tapbook demo", folder, program)
    listing = subprocess.run([program, "--help"], capture_output=True, text=True, check=True).stdout
    (folder / "car.toml").write_text((root / "data/vehicles").glob("*.toml").__iter__().__next__().read_text())
    for command in [line[2:15].strip() for line in listing.split("\n") if re.match(r"^  (?!tapbook)[a-z]+( [a-z]+)?  ", line)]:
        help_text = subprocess.run([program, *command.split(), "--help"], capture_output=True, text=True, check=True).stdout
        examples = re.findall(r"^  (tapbook .*)$", help_text, re.M)
        if not examples:
            problems.append(f"{command}: its help has no example")
        for example in examples:
            if shlex.split(example)[1] in ("demo", "init"):
                example += " --db other-" + str(ran) + ".sqlite"
            if shlex.split(example)[1] == "serve":
                example = f"timeout --signal INT --preserve-status 1 {example} --port 0"
            text, code = run_cases.run("export TAPBOOK_DB=$XDG_DATA_HOME/tapbook/practice.sqlite; " + example, folder, program)
            ran += 1
            if code not in (0, 1):
                problems.append(f"{command}: {example}: exit {code}: {text[:300]}")

print("\n".join(problems))
print(f"{ran} examples run")
sys.exit(1 if problems or ran < 15 else 0)
