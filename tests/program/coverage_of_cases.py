#!/usr/bin/env python3
"""Has every command and every option a case? Options are read from the program's own help; deleting a case turns this red."""
import argparse
import pathlib
import re
import subprocess
import sys

arguments = argparse.ArgumentParser()
arguments.add_argument("--program", required=True)
program = arguments.parse_args().program
here = pathlib.Path(__file__).parent

used = {}
for case in (here / "cases").glob("*.case"):
    for line in case.read_text().split("\n"):
        found = re.search(r"\btapbook ((?:calc|job|pack) \w+|shelf count|\w+)(.*) -> \d+$", line)
        if found:
            used.setdefault(found.group(1), set()).update(re.findall(r"--[a-z0-9-]+", found.group(2)))

listing = subprocess.run([program, "--help"], capture_output=True, text=True, check=True).stdout
commands = re.findall(r"^  (?!tapbook)((?:calc|job|pack) [a-z]+|shelf count|[a-z]+) +\S", listing, re.M)
missing = []
for command in commands:
    if command not in used:
        missing.append(command)
        continue
    text = subprocess.run([program, *command.split(), "--help"], capture_output=True, text=True, check=True).stdout
    for option in re.findall(r"^  (--[a-z0-9-]+)", text, re.M):
        if option not in used[command] and option != "--db" and not (option == "--json" and command in ("init", "demo")):
            missing.append(f"{command} {option}")
if len(commands) < 10:
    sys.exit(f"only {len(commands)} commands found in the help: this check does not see them")
for name in missing:
    print(f"no case for: {name}")
print(f"{len(commands)} commands, {sum(len(v) for v in used.values())} options used in cases")
sys.exit(1 if missing else 0)
