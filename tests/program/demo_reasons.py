#!/usr/bin/env python3
"""Is every thing in the practice shop still there for its reason? Each row of demo_reasons.toml is asked of the program itself."""
import argparse
import functools
import json
import os
import pathlib
import subprocess
import sys
import tempfile
import tomllib

arguments = argparse.ArgumentParser()
arguments.add_argument("--program", required=True)
program = pathlib.Path(arguments.parse_args().program).resolve()
here = pathlib.Path(__file__).parent
rows = tomllib.loads((here / "demo_reasons.toml").read_text())["reason"]
work = tempfile.TemporaryDirectory()
environment = {**os.environ, "TAPBOOK_TODAY": "2026-05-02", "TAPBOOK_DB": work.name + "/practice.sqlite"}
subprocess.run([program, "demo"], env=environment, check=True, capture_output=True)


@functools.cache
def ask(*words):
    done = subprocess.run([program, *words, "--json"], env=environment, capture_output=True, text=True)
    answer = json.loads(done.stdout)
    return answer["data"] if answer["ok"] else None


def tap_of(row):
    return "/".join([row["vehicle"], row["system"], row["tap"]])


def holds(row):
    """(true or false, what was there instead)."""
    check = row["check"]
    if check == "verdict":
        words = ["advise", row["vehicle"], "--system", row["system"], "--tap", tap_of(row)]
        for option in ("amp", "lowest_hz", "year", "channels"):
            if option in row:
                words += ["--" + option.replace("_", "-"), str(row[option])]
        answer = ask(*words)
        if answer is None:
            return False, "no answer"
        found = {c["converter"]: c for c in answer["candidates"]}.get(row["part"])
        if found is None:
            return False, "not a candidate"
        rules = [f["rule"] for f in found["findings"] if f["effect"] == "stop"] or [f["rule"] for f in found["findings"]]
        good = found["verdict"] != "no" if row["verdict"] == "not no" else found["verdict"] == row["verdict"]
        if "rule" in row and row["rule"] not in [f["rule"] for f in found["findings"]]:
            good = False
        return good, f"{found['verdict']} ({', '.join(rules)})"
    taps = ask("taps", row["vehicle"], *(["--year", str(row["year"])] if "year" in row else []))
    if check == "premium":
        system = {s["name"]: s for s in taps["systems"]}[row["system"]]
        value = str(system["premium"]).lower()
        return system["premium_grade"] == row["grade"] and row.get("value", value) == value, f"{system['premium_grade']} {value}"
    if check == "notes":
        count = sum(tap.get("notes", 0) for tap in taps["taps"] + taps["unrecorded"] if tap["code"].startswith(row["path"]))
        return count >= row["least"], f"{count} notes"
    power = {tap["code"]: tap for tap in taps["switched"]}
    pairs = {tap["code"]: tap for tap in taps["taps"]}
    code = tap_of(row)
    if check == "live":
        return power[code]["class"] == row["value"], str(power[code]["class"])
    if check == "grade":
        grade = pairs[code]["positive"]["grade"] if code in pairs else power[code]["grade"]
        return grade == row["grade"], grade
    if check == "polarity":
        return pairs[code]["polarity_grade"] == row["grade"], pairs[code]["polarity_grade"]
    return False, f"unknown check {check}"


failed = 0
named = {str(row.get(key)) for row in rows for key in ("part", "amp")} | {row["path"] for row in rows}
parts = tomllib.loads((here.parents[1] / "data/parts.toml").read_text())
wanted = [part["code"] for part in parts["converter"] + parts["amplifier"]]
wanted += [car["code"] + "/" + system["name"] for car in ask("find")["vehicles"] for system in ask("taps", car["code"])["systems"]]
for thing in wanted:
    if thing not in named and not any(name.startswith(thing + "/") for name in named):
        failed += 1
        print(f"{thing}: no row says why it is there")
for row in rows:
    good, instead = holds(row)
    if not good:
        failed += 1
        print(f"{row['path']}: {row['why']}: expected {row['check']} {row.get('part', '')} {row.get('verdict', row.get('grade', ''))}, got {instead}")
print(f"{len(rows) - failed} of {len(rows)} reasons hold")
sys.exit(1 if failed or len(rows) < 40 else 0)
