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


def check_serve(folder):
    """What is said when the phone page opens; it is closed again at once."""
    serving = subprocess.Popen([program, "serve", "--json", "--port", "0"], cwd=folder, stdout=subprocess.PIPE, stderr=subprocess.DEVNULL,
                               stdin=subprocess.DEVNULL, env={**os.environ, "HOME": folder, "TAPBOOK_DB": f"{folder}/practice.sqlite"})
    answer = json.loads(serving.stdout.readline())
    serving.terminate()
    for error in jsonschema.Draft202012Validator(schemas["serve"]).iter_errors(answer):
        problems.append(f"serve: {error.message[:200]}")
    if serving.wait(timeout=20) != 0:
        problems.append(f"serve: exit code {serving.returncode}")
    checked["serve"] = 1


def check_shelf(folder):
    """What to keep, why, what if; the list of what lies there, and bookings of every kind."""
    call(folder, "shelf")
    call(folder, "shelf", "--models", "2", "--explain", "ottrey-slim-two", "--what-if", "without=wendric-plain-two")
    call(folder, "shelf", "--budget", "100")
    call(folder, "shelf", "--share", "100")
    call(folder, "shelf", "count")
    for booking in ("order", "cancel", "receive", "use", "correct"):
        call(folder, "shelf", "count", "wendric-plain-two", booking, "1")
    call(folder, "shelf", "count", "wendric-plain-two", "correct", "1")
    call(folder, "shelf", "count", "wendric-plain-two")


def check_notes(folder):
    """note, its reasons, withdrawal, undo and the list of shops, on a practice car."""
    call(folder, "note", "ostrel", "rear-door-left", "--system", "base", "--positive", "tan", "--seen")
    call(folder, "note", "ostrel", "rear-door-right", "--system", "base", "--positive", "blue", "--negative", "blue/yellow", "--seen")
    call(folder, "undo")
    said, _ = call(folder, "note", "ostrel", "rear-door-left", "--system", "base", "--positive", "tan", "--seen", "--sure", "--year", "2020")
    call(folder, "note", "why", "ostrel", "rear-door-left", "--system", "base", "--year", "2019")
    call(folder, "note", "ostrel", "load-socket", "--system", "base", "--metered", "--wire", "yellow", "--key-off", "0", "--accessory", "12",
         "--run", "12", "--sure")
    call(folder, "note", "why", "ostrel", "load-socket", "--system", "base")
    call(folder, "note", "ostrel", "--system", "unrecorded", "--premium", "yes", "--tell", "third grille", "--seen", "--dry-run")
    call(folder, "note", "why", "ostrel", "--system", "premium")
    call(folder, "note", "why", "nadrow", "front-left/radio-plug", "--system", "base")
    call(folder, "note", "withdraw", said["data"]["id"], "--reason", "typo")
    call(folder, "note", "withdraw", said["data"]["id"], "--reason", "typo")
    call(folder, "undo")
    call(folder, "undo", "--dry-run", "--db", "real.sqlite")
    shops, _ = call(folder, "shops")
    for change in ("forget", "know", "block", "unblock", "unblock"):
        call(folder, "shops", change, shops["data"]["shops"][1]["id"])


def check_jobs(folder):
    """A job from start to close, its plan, its lists and what is refused on the way."""
    call(folder, "job", "list", "--all")
    started, _ = call(folder, "job", "start", "ostrel", "--year", "2020", "--system", "base", "--car", "TW 4410", "--customer", "T-1")
    job = started["data"]["job"]["code"]
    call(folder, "job", "came", job)
    call(folder, "job", "came", job, "camera=bad:dark", "rest=ok", "--agreed", "ab")
    call(folder, "job", "plan", job, "--amp", "masrow-floor-four", "--lowest-hz", "60")
    call(folder, "job", "reading", job, "front-left/radio-plug", "--positive", "white", "--negative", "white/black", "--dc-positive", "7.0",
         "--dc-negative", "7.0", "--ac", "8.5", "--supply", "14.1", "--tone-hz", "50", "--tone-db", "0", "--full-volume", "yes")
    call(folder, "job", "reading", job, "front-right/radio-plug", "--dc-positive", "14.0", "--dc-negative", "0", "--ac", "0", "--same")
    call(folder, "job", "reading", job, "load-socket", "--wire", "red/white", "--key-off", "0", "--accessory", "12.1", "--run", "14.1")
    call(folder, "job", "reading", job, "--premium", "no", "--tell", "empty tray")
    call(folder, "job", "action", job, "pulled fuse 31")
    call(folder, "job", "close", job, "rest=ok", "--outcome", "fine")
    call(folder, "job", "action", job, "--done", "1")
    call(folder, "job", "left", job, "camera=ok", "rest=ok")
    call(folder, "job", "close", job, "--outcome", "noise", "--sure", "front-right/radio-plug,accessory/load-socket")
    call(folder, "job", "open", job)
    call(folder, "job", "show", job)
    call(folder, "job", "show", "ZZZZZZ")


def check_looking_after(folder):
    """Copies, what is worked out again, and proven facts to meter again."""
    call(folder, "backup", "copy.backup")
    call(folder, "backup", "copy.backup")
    call(folder, "backup", "open.backup", "--without-key")
    call(folder, "restore", "open.backup", "--db", "restored.sqlite")
    call(folder, "restore", "copy.backup", "--db", "restored.sqlite")
    call(folder, "rebuild")
    call(folder, "rebuild", "--dry-run")
    call(folder, "audit")
    call(folder, "audit", "--since", "2023-01-01", "--count", "3", "--seed", "2")
    call(folder, "audit", "--db", "real.sqlite")


def check_sheets(folder):
    """Of a car without a job and of a job with a plan and with readings, with every part of the install there and missing."""
    call(folder, "sheet", "hadrik ostrel", "--system", "base")
    call(folder, "sheet", "hadrik ostrel", "--system", "base", "--amp", "masrow-floor-four", "--metres", "4.5", "--load", "4", "--read", "all")
    call(folder, "sheet", "1", "--address", "http://bench.local:8080")
    call(folder, "job", "plan", "5", "--metres", "5", "--load", "2//2", "--speaker-watts", "200", "--size", "16", "--dry-run")
    pathlib.Path(folder, "readings.toml").write_text('[job]\ncode = "J5XE7G"\n\n[[reading]]\nat = "front-left/radio-plug"\nac_v = 8.2\nsupply_v = 14\n')
    call(folder, "job", "reading", "--from", "readings.toml", "--dry-run")


def check_spreadsheets(folder):
    """Written and read again, with every fate of a row, and how often each shop errs."""
    for what in ("notes", "taps"):
        call(folder, "export", "ostrel", "--csv", what)
    call(folder, "export", "--csv", "jobs")
    call(folder, "export", "--csv", "converters", "--out", "converters.csv")
    for mapping in ("converters", "stock"):
        call(folder, "add", "converters.csv", "--mapping", mapping, "--dry-run")
    pathlib.Path(folder, "bay.toml").write_text(
        'rows = "note"\n[columns]\ndate = "Day"\npositive = "Plus"\n[always]\nvehicle = "ostrel"\nat = "base/rear-left/rear-door-left"\nmethod = "seen"\n')
    pathlib.Path(folder, "bay.csv").write_text("Day,Plus,Ticket\n2026-04-02,BN,1\n2026-04-03,BL,2\n")
    call(folder, "add", "bay.csv", "--mapping", "bay.toml", "--dry-run", "--skip-refused")
    call(folder, "add", "bay.csv", "--mapping", "bay.toml", "--dry-run")
    call(folder, "add", "bay.csv", "--mapping", "bay.toml")
    call(folder, "add", "bay.csv")
    call(folder, "shops", "errors")
    call(folder, "shops", "errors", "--db", "real.sqlite")


def check_exchange(folder):
    """Packs and the shared folder between two real shops, their keys, two names for one thing; and each line of a pack."""
    call(folder, "init", "--db", "other.sqlite", "--shop", "Quill Audio")
    call(folder, "pack", "export", "all.jsonl")
    call(folder, "pack", "export", "all.jsonl", "--dry-run")
    call(folder, "pack", "show", "all.jsonl")
    call(folder, "pack", "import", "all.jsonl")
    call(folder, "pack", "import", "all.jsonl", "--db", "real.sqlite")
    call(folder, "alias", "hadrik/ostrel/wagon/2016", "hadrik/ostrel/wagon/2010")
    call(folder, "alias", "hadrik/ostrel/wagon/2016", "hadrik/ostrel/wagon/2010", "--dry-run")
    call(folder, "find", "ostrel", "wagon")  # which name the other path of their car
    call(folder, "taps", "hadrik/ostrel/wagon/2016")
    call(folder, "note", "why", "hadrik/ostrel/wagon/2016", "front-left/radio-plug", "--system", "base")
    pathlib.Path(folder, "shared").mkdir()
    for shop in ("real.sqlite", "other.sqlite", "real.sqlite"):
        call(folder, "alias", "a/b/c/2000", f"a/{shop[0]}/c/2000", "--db", shop)
        call(folder, "exchange", "shared", "--dry-run", "--db", shop)
        call(folder, "exchange", "shared", "--db", shop)
    pathlib.Path(folder, "shared", "half.jsonl").write_bytes(pathlib.Path(folder, "all.jsonl").read_bytes()[:9999])
    call(folder, "exchange", "shared", "--db", "other.sqlite")
    call(folder, "shops", "key")
    call(folder, "shops", "key", "--new", "--db", "real.sqlite")
    call(folder, "pack", "export", "keys.jsonl", "--db", "real.sqlite")
    lines = jsonschema.Draft202012Validator(schemas["pack"])
    for name in ("all.jsonl", "keys.jsonl"):
        for number, line in enumerate(pathlib.Path(folder, name).read_text().splitlines(), 1):
            for error in lines.iter_errors(json.loads(line)):
                problems.append(f"{name}:{number}: {error.message[:200]}")
            checked["pack"] = checked.get("pack", 0) + 1


def check_feeds(folder):
    """One amplifier or several, a size named, chosen or not to be found, volts or none, with and without what stands beside."""
    for size in ("4", "25mm2", "sae8", "choose"):
        for load in (["--watts", "900", "--class", "d"], ["--amps", "80"], ["--watts", "900", "--efficiency", "0.8", "--constant-current"]):
            call(folder, "feed", *load, "--metres", "5.5", "--size", size)
    call(folder, "feed", "--watts", "20000", "--class", "ab", "--metres", "5.5", "--size", "18")
    call(folder, "feed", "--watts", "20000", "--class", "ab", "--metres", "5.5", "--size", "choose", "--from", "metric")
    call(folder, "feed", "500:d:1:8", "300:ab:0.5:10mm2", "--metres", "5", "--size", "1/0", "--charging-amps", "120", "--farads", "1", "--idle-amps", "2")
    call(folder, "feed", "--amps", "80", "--metres", "5", "--size", "4", "--charging", "dc_converter", "--charging-amps", "150", "--return", "cable")
    call(folder, "feed", "--amps", "80", "--metres", "5", "--size", "4/0", "--return-mohm", "0.5")


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
    call(folder, "find", "00DHSTABCJ1234567")
    call(folder, "find", "00DRRRABCJ1234567")
    call(folder, "taps", "zzzz")
    call(folder, "gain", "--watts", "x", "--ohms", "4")
    call(folder, "gain", "--watts", "75", "--ohms", "4")
    call(folder, "meter", "--dc-positive", "7.1", "--dc-negative", "7.1", "--ac", "6.2", "--supply", "14.2")
    for drive in ("bridged", "single_ended", "boosted_split", "boosted_bridged", "line_differential", "digital", "unknown"):
        call(folder, "calc", "swing", "--drive", drive, "--ohms", "4")
    call(folder, "calc", "wire", "--awg", "4", "--metres", "5", "--amps", "70")
    call(folder, "calc", "wire", "--mm2", "2.5", "--metres", "5", "--amps", "7")
    level = ["calc", "level", "--volts", "9", "--low", "7", "--high", "9.6"]
    call(folder, *level)
    call(folder, *level, "--input-min", "1", "--input-max", "12", "--input-max-hz", "40", "--gain", "0.1", "--corner-hz", "10",
         "--output-ohms", "500", "--amp-ohms", "10000", "--sensitivity", "1", "--watts", "300", "--amp-max", "5")
    call(folder, *level, "--topology", "direct", "--input-max", "8", "--watts", "300")
    for cable in (["--awg", "4"], ["--mm2", "16", "--metal", "cca"], ["--sae", "8", "--engine-space"]):
        for load in (["--amps", "30"], ["--amps", "400"], ["--watts", "800", "--class", "d"]):
            call(folder, "calc", "fuse", *cable, *load)
    call(folder, "calc", "fuse", "--awg", "22", "--amps", "3")
    check_spreadsheets(folder)
    check_exchange(folder)
    check_feeds(folder)
    check_sheets(folder)
    call(folder, "calc", "holdup", "--farads", "1", "--amps", "100")
    call(folder, "calc", "holdup", "--farads", "1", "--watts", "1000", "--esr-ohms", "0.002")
    call(folder, "calc", "holdup", "--farads", "1", "--watts", "1500", "--esr-ohms", "0.05")
    call(folder, "calc", "corner", "--ohms", "4", "--microfarads", "1000", "--hz", "40")
    call(folder, "calc", "corner", "--ohms", "10000", "--corner-hz", "40")
    for number in ("15", "30a", "31b", "50", "61", "87a", "99"):
        call(folder, "calc", "terminal", number)
    for cavity in ("A1", "A4", "A5", "B5", "C1", "C13", "D1"):
        call(folder, "calc", "cavity", cavity)
    call(folder, "calc", "colour", "white", "w/", "red", "stripe")
    for vin in ("1M8GDM9AXKP042788", "5GZCZ43D23S812715", "WP0ZZZ99ZTS392124"):
        call(folder, "calc", "vin", vin)
    call(folder, "rules")
    call(folder, "rules", "columns")
    call(folder, "rules", "show", "overdriven-at-lowest-note")
    call(folder, "rules", "check")
    call(folder, "add", str(root / "data/parts.toml"), "--dry-run")
    call(folder, "export", "ostrel")
    call(folder, "export", "--parts", "--out", "parts.toml")
    call(folder, "export", "--into", "files", "--dry-run")
    call(folder, "check")
    call(folder, "check", "--full")
    check_looking_after(folder)
    check_serve(folder)

    check_shelf(folder)
    check_notes(folder)
    check_jobs(folder)

for name in sorted(set(schemas) - set(checked)):
    problems.append(f"no answer was checked against {name}")
print("\n".join(problems[:40]))
print(f"{sum(checked.values())} answers against {len(checked)} schemas")
sys.exit(1 if problems else 0)
