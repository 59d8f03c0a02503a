#!/usr/bin/env python3
"""Does every JSON answer keep the schema it names? Runs each reading command on the practice shop and validates with jsonschema."""
import argparse
import json
import os
import pathlib
import subprocess
import sys
import tempfile

import jsonschema

arguments = argparse.ArgumentParser()
arguments.add_argument("--program", required=True)
program = str(pathlib.Path(arguments.parse_args().program).resolve())
root = pathlib.Path(__file__).resolve().parents[2]
schemas = {path.name[:-len(".schema.json")]: json.loads(path.read_text()) for path in (root / "schema").glob("*.schema.json")}
checked, problems = {}, []


def call(folder, *words):
    done = subprocess.run([program, *words, "--json"], cwd=folder, capture_output=True, text=True,
                          env={**os.environ, "TAPBOOK_TODAY": "2026-05-02", "HOME": folder, "TAPBOOK_DB": f"{folder}/practice.sqlite"})
    try:
        answer = json.loads(done.stdout)
    except ValueError:
        problems.append(f"{' '.join(words)}: not JSON: {done.stdout[:200]!r} {done.stderr[:200]!r}")
        return None, done.returncode
    name = answer["schema"].split(".", 1)[1].rsplit("/", 1)[0] if answer.get("ok") else "failure"
    errors = list(jsonschema.Draft202012Validator(schemas[name]).iter_errors(answer))
    for error in errors[:3]:
        problems.append(f"{' '.join(words)}: {name}: {'/'.join(map(str, error.absolute_path))}: {error.message[:200]}")
    if answer.get("ok") != (done.returncode in (0, 1)) and not (name == "failure" and done.returncode == 1):
        problems.append(f"{' '.join(words)}: exit code {done.returncode} with ok = {answer.get('ok')}")
    checked[name] = checked.get(name, 0) + 1
    return answer, done.returncode


with tempfile.TemporaryDirectory() as folder:
    call(folder, "demo")
    call(folder, "init", "--db", "real.sqlite", "--shop", "Bench")
    call(folder, "where")
    cars, _ = call(folder, "find")
    amplifiers = []
    import tomllib
    for part in tomllib.loads((root / "data/parts.toml").read_text())["amplifier"]:
        amplifiers.append(part["code"])
    for car in cars["data"]["vehicles"]:
        taps, _ = call(folder, "taps", car["code"])
        for system in taps["data"]["systems"] or [{"name": ""}]:
            words = ["advise", car["code"], "--system", system["name"]]
            call(folder, *words)
            for amplifier in amplifiers:
                call(folder, *words, "--amp", amplifier)
    call(folder, "find", "zzzz")
    call(folder, "taps", "zzzz")
    call(folder, "gain", "--watts", "x", "--ohms", "4")
    call(folder, "gain", "--watts", "75", "--ohms", "4")
    call(folder, "meter", "--dc-positive", "7.1", "--dc-negative", "7.1", "--ac", "6.2", "--supply", "14.2")
    for drive in ("bridged", "single_ended", "boosted_split", "boosted_bridged", "line_differential", "digital", "unknown"):
        call(folder, "calc", "swing", "--drive", drive, "--ohms", "4")
    call(folder, "calc", "wire", "--awg", "4", "--metres", "5", "--amps", "70")
    call(folder, "calc", "wire", "--mm2", "2.5", "--metres", "5", "--amps", "7")
    call(folder, "calc", "colour", "white", "w/", "red", "stripe")
    for vin in ("1M8GDM9AXKP042788", "5GZCZ43D23S812715", "WP0ZZZ99ZTS392124"):
        call(folder, "calc", "vin", vin)
    call(folder, "rules")
    call(folder, "rules", "columns")
    call(folder, "add", str(root / "data/parts.toml"), "--dry-run")

for name in sorted(set(schemas) - set(checked)):
    problems.append(f"no answer was checked against {name}")
print("\n".join(problems[:40]))
print(f"{sum(checked.values())} answers against {len(checked)} schemas")
sys.exit(1 if problems else 0)
