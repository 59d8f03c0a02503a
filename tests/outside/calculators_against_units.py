#!/usr/bin/env python3
"""Do the calculators say what GNU units 2.22 says? Wire: wiregauge() and IACS for every size from 4/0 to 40, at 20 C and,
with 0.00393 per degree (IEC 60028), at three more temperatures. Levels: sqrt(P R) raised by decibels, with the program's
own dB_amplitude(). Relative 1e-5, or the last digit printed. Traps: sizes above 1/0 counted down instead of up, decibels
of power taken for decibels of volts, the return conductor counted in."""
import argparse
import subprocess
import sys

from asking import answers_of

SIZES = {f"{zeros}/0": 1 - zeros for zeros in (4, 3, 2, 1)} | {str(number): number for number in range(1, 41)}
GAINS = [(watts, ohms, tone, overlap) for watts in ("1", "75", "812.5") for ohms in ("1", "2.7", "4", "8")
         for tone, overlap in (("0", "0"), ("-10", "0"), ("-3.5", "2.25"), ("-60", "15"))]


def computed(expressions):
    """What units makes of each (expression, wanted unit), one run for all."""
    text = "".join(f"{expression}\n{unit}\n" for expression, unit in expressions)
    done = subprocess.run(["units", "--terse", "--digits", "12"], input=text, capture_output=True, text=True, timeout=60)
    found = done.stdout.split()
    try:
        numbers = [float(word) for word in found]
    except ValueError:
        numbers = []
    if done.returncode != 0 or len(numbers) != len(expressions):
        sys.exit("units: " + done.stdout[-2000:] + done.stderr[-2000:])
    return numbers


def compared(words, got, wanted, last_digit, wrong):
    if abs(got - wanted) > max(1e-5 * wanted, last_digit):
        wrong.append(f"tapbook {' '.join(words)}: {got}, units: {wanted}")


def main():
    arguments = argparse.ArgumentParser()
    arguments.add_argument("--program", required=True)
    program = arguments.parse_args().program
    wires = [(size, number, celsius) for size, number in SIZES.items() for celsius in (-40, 20, 75, 105)]
    asked = [["calc", "wire", "--awg", size, "--metres", "1000", "--amps", "5000", "--celsius", str(celsius)] for size, _, celsius in wires]
    wanted = computed([(f"5000 A 1000 m (1 + 0.00393 ({celsius} - 20)) / (IACS (pi / 4) (wiregauge({number}))^2)", "V") for _, number, celsius in wires])
    wrong = []
    for words, answer, volts in zip(asked, answers_of(program, asked), wanted):
        compared(words, answer["drop_v"], volts, 0.0001, wrong)
    gains = [["gain", "--watts", watts, "--ohms", ohms, "--tone-db", tone, "--overlap-db", overlap] for watts, ohms, tone, overlap in GAINS]
    volts = computed([(f"sqrt({watts} W {ohms} ohm) dB_amplitude({tone}) dB_amplitude({overlap})", "V") for watts, ohms, tone, overlap in GAINS])
    for words, answer, value in zip(gains, answers_of(program, gains), volts):
        compared(words, answer["target_rms_v"], value, 0.006, wrong)
    print("\n".join(wrong[:20]))
    print(f"{len(wires)} wires and {len(gains)} levels, {len(wrong)} differ")
    sys.exit(1 if wrong else 0)


if __name__ == "__main__":
    main()
