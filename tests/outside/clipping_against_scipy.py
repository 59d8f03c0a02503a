#!/usr/bin/env python3
"""How much less than its rating does a clipping amplifier give cleanly? SciPy finds the hard-clipped sine whose distortion
is 1 % and 10 % of its fundamental (numeric integration, root search) and the power of each; the program's clean watts for
the two kinds of rating have to stand in that proportion, and for a square-wave rating in its proportion. 0.1 %.
Traps: distortion relative to the whole signal (0.5 % off), the fundamental's power taken for the whole."""
import argparse
import math
import sys

from scipy.integrate import quad
from scipy.optimize import brentq

from asking import answers_of


def clipped(drive):
    """RMS and fundamental's RMS of a sine of peak `drive` cut at 1, by integration over a quarter period."""
    corner = math.asin(1 / drive)
    value = lambda angle: min(1.0, drive * math.sin(angle))
    square = quad(lambda angle: value(angle) ** 2, 0, math.pi / 2, points=[corner])[0] * 2 / math.pi
    fundamental = quad(lambda angle: value(angle) * math.sin(angle), 0, math.pi / 2, points=[corner])[0] * 4 / math.pi
    return math.sqrt(square), fundamental / math.sqrt(2)


def distortion(drive):
    whole, fundamental = clipped(drive)
    return math.sqrt(max(0.0, whole ** 2 - fundamental ** 2)) / fundamental


def power_at(wanted):
    """Power of the sine clipped to that distortion, over the power of the largest unclipped one."""
    return clipped(brentq(lambda drive: distortion(drive) - wanted, 1.0001, 20))[0] ** 2 / 0.5


def main():
    arguments = argparse.ArgumentParser()
    arguments.add_argument("--program", required=True)
    program = arguments.parse_args().program
    one, ten, square = power_at(0.01), power_at(0.10), 2.0
    wanted = {"continuous": 1.0, "at_10_percent": one / ten, "maximum": one / square}
    wrong = []
    for watts in ("5", "12", "17"):
        asked = [["calc", "swing", "--drive", "bridged", "--ohms", "4", "--watts", watts, "--rating", kind] for kind in wanted]
        clean = [answer["clean_w"] for answer in answers_of(program, asked)]
        for (kind, ratio), value in zip(wanted.items(), clean):
            if abs(value / clean[0] / ratio - 1) > 0.001:
                wrong.append(f"{watts} W {kind}: clean {value} W, {value / clean[0]:.5f} of continuous; SciPy {ratio:.5f}")
    print("\n".join(wrong))
    print(f"1 %: {one:.4f}, 10 %: {ten:.4f} of the unclipped power; {len(wrong)} of 9 differ")
    sys.exit(1 if wrong else 0)


if __name__ == "__main__":
    main()
