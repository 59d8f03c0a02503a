#!/usr/bin/env python3
"""Does `feed` leave the volts at each amplifier that a circuit simulator finds, one or several behind a block, each drawing constant watts? ngspice 39
(the Berkeley circuit simulator) solves the resistors and sources; cables are worked out here from the definition of the gauge (ASTM B258) and copper
of 58 MS/m (IEC 60028), not by the program. Where more is asked than the cable can give (P > V^2 / 4R), the program must say that there are no volts.
Traps: the way back left out, the block's current taken without its other branch, the lower of the two solutions."""
import argparse
import pathlib
import random
import re
import subprocess
import sys
import tempfile

from asking import ask_all

TOLERANCE_V = 0.002
SUPPLY = 13.8


def ohms_per_metre(gauge):
    millimetres = 0.127 * 92 ** ((36 - gauge) / 39)  # ASTM B258
    return 1 / (58 * 3.141592653589793 / 4 * millimetres ** 2)  # IEC 60028


def drawn(count, seed):
    dice = random.Random(seed)
    feeds = []
    while len(feeds) < count:
        feed = {"length": dice.randint(5, 80) / 10, "gauge": dice.choice([0, 2, 4, 6, 8]), "return": dice.choice([0, 1, 5]), "source": dice.choice([0, 3, 10])}
        feed["loads"] = [{"watts": dice.randint(50, 900), "length": dice.randint(3, 20) / 10, "gauge": dice.choice([4, 8])} for _ in range(dice.choice([1, 1, 2, 3]))]
        shared = ohms_per_metre(feed["gauge"]) * feed["length"] + (feed["return"] + feed["source"]) / 1000
        worst = shared + max(ohms_per_metre(one["gauge"]) * one["length"] for one in feed["loads"])
        if sum(one["watts"] for one in feed["loads"]) * worst < 0.8 * SUPPLY ** 2 / 4:  # far enough from the edge for the simulator
            feeds.append({**feed, "shared": shared})
    return feeds


def netlist(feeds):
    lines = ["constant watts behind cables"]
    for i, feed in enumerate(feeds):
        lines += [f"V{i} s{i} 0 {SUPPLY}", f"R{i} s{i} b{i} {feed['shared']:.9g}", f".nodeset v(b{i})={SUPPLY}"]
        for j, one in enumerate(feed["loads"]):
            branch = ohms_per_metre(one["gauge"]) * one["length"] if len(feed["loads"]) > 1 else 1e-9
            lines += [f"R{i}x{j} b{i} a{i}x{j} {branch:.9g}", f"B{i}x{j} a{i}x{j} 0 I={one['watts']}/max(V(a{i}x{j}),4)", f".nodeset v(a{i}x{j})={SUPPLY}"]
    prints = [f"print v(a{i}x{j})" for i, feed in enumerate(feeds) for j in range(len(feed["loads"]))]
    return "\n".join([*lines, ".options reltol=1e-6 vntol=1e-9 itl1=500", ".control", "op", *prints, ".endc", ".end", ""])


def solved(feeds, ngspice="ngspice"):
    with tempfile.TemporaryDirectory() as folder:
        file = pathlib.Path(folder) / "feeds.cir"
        file.write_text(netlist(feeds))
        done = subprocess.run([ngspice, "-b", str(file)], capture_output=True, text=True, cwd=folder, timeout=60, stdin=subprocess.DEVNULL)
    found = {(int(i), int(j)): float(v) for i, j, v in re.findall(r"^v\(a(\d+)x(\d+)\) = (\S+)", done.stdout, re.M)}
    wanted = [(i, j) for i, feed in enumerate(feeds) for j in range(len(feed["loads"]))]
    if sorted(found) != wanted:
        sys.exit(f"ngspice solved {len(found)} of {len(wanted)} amplifiers:\n{(done.stdout + done.stderr)[-2000:]}")
    return found


def question(feed):
    """Electrical watts are asked as output watts at an efficiency of 1."""
    words = ["feed", "--metres", str(feed["length"]), "--size", "1/0" if feed["gauge"] == 0 else str(feed["gauge"]), "--source-mohm", str(feed["source"]),
             "--return-mohm", str(feed["return"]), "--supply", str(SUPPLY), "--insulation", "105"]
    if len(feed["loads"]) == 1:
        return [*words, "--watts", str(feed["loads"][0]["watts"]), "--efficiency", "1"]
    return [*words, *[f"{one['watts'] * 0.8:.3f}:d:{one['length']}:{one['gauge']}" for one in feed["loads"]]]


def main():
    arguments = argparse.ArgumentParser()
    arguments.add_argument("--program", required=True)
    arguments.add_argument("--count", type=int, default=120)
    given = arguments.parse_args()
    feeds = drawn(given.count, 20260502)
    found = solved(feeds)
    wrong, largest = 0, 0
    for i, (feed, (code, answer)) in enumerate(zip(feeds, ask_all(given.program, [question(feed) for feed in feeds]))):
        for j, one in enumerate(answer["data"]["amplifiers"]):
            volts = one["at_amplifier_v"]["likely"]
            largest = max(largest, abs(volts - found[i, j]))
            if abs(volts - found[i, j]) > TOLERANCE_V:
                wrong += 1
                print(f"{feed}: ngspice {found[i, j]} program {volts}")
    # A sweep over the edge: P up to twice V^2 / 4R.
    edge = {"length": 6, "gauge": 8, "return": 1, "source": 5, "loads": [{}]}
    resistance = ohms_per_metre(8) * 6 + 0.006
    limit = SUPPLY ** 2 / 4 / resistance
    sweep = [{**edge, "loads": [{"watts": round(limit * share, 1)}]} for share in (0.5, 0.9, 0.999, 1.001, 1.1, 2)]
    for share, (code, answer) in zip((0.5, 0.9, 0.999, 1.001, 1.1, 2), ask_all(given.program, [question(feed) for feed in sweep])):
        there = answer["data"]["amplifiers"][0]["at_amplifier_v"]["likely"] is not None
        if there != (share < 1):
            wrong += 1
            print(f"{share} of the most power: the program {'finds' if there else 'finds no'} volts")
    print(f"{len(found)} amplifiers of {len(feeds)} feeds, largest difference {largest * 1000:.2f} mV, {wrong} wrong")
    sys.exit(1 if wrong else 0)


if __name__ == "__main__":
    main()
