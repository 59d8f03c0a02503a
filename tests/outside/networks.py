"""Networks of a speaker output, a transformer or a capacitor, and an input; and their netlists for ngspice.

Written apart from the program: the physics here is a circuit with parts in it, not a formula for an answer."""
import random

NOTES = (16, 25, 30, 40, 63, 80, 120, 250)  # Hz: bass, where corners matter


def of_transformers(count, seed):
    """Source with its resistance, two coupled windings, output resistance, load; with the note at which to look."""
    dice = random.Random(seed)
    for _ in range(count):
        yield {"kind": "transformer", "volts": round(dice.uniform(2, 20), 3), "source": round(10 ** dice.uniform(-1, 2.5), 3),
               "turns": round(10 ** dice.uniform(-0.8, 0.3), 6), "primary": 10 ** dice.uniform(-2, 0.5),
               "output": round(10 ** dice.uniform(1, 3), 3), "load": round(10 ** dice.uniform(3.3, 4.7), 3),
               "note": dice.choice(NOTES)}


def of_capacitors(count, seed):
    """Ideal source, capacitor, load: from a loudspeaker behind 4700 uF to an input behind 0.1 uF."""
    dice = random.Random(seed)
    for _ in range(count):
        note, load = dice.choice(NOTES), round(10 ** dice.uniform(0.5, 4.7), 3)
        corner = note * 10 ** dice.uniform(-1, 0.7)
        yield {"kind": "capacitor", "load": load, "microfarads": round(1e6 / (6.283 * load * corner), 6), "note": note}


def lines(network, name):
    """The parts of one network; its answer is the voltage of node o<name>."""
    if network["kind"] == "capacitor":
        return [f"V{name} a{name} 0 AC 1", f"C{name} a{name} o{name} {network['microfarads']:.9g}u",
                f"R{name} o{name} 0 {network['load']}"]
    secondary = network["primary"] * network["turns"] ** 2
    return [f"V{name} a{name} 0 AC {network['volts']}", f"Rs{name} a{name} p{name} {network['source']}",
            f"Lp{name} p{name} 0 {network['primary']:.9g}", f"Ls{name} s{name} 0 {secondary:.9g}",
            f"K{name} Lp{name} Ls{name} 0.999999", f"Ro{name} s{name} o{name} {network['output']}",
            f"R{name} o{name} 0 {network['load']}"]


def netlist(networks):
    """One run for all: each network has its own nodes; those with the same note are read together."""
    text = ["networks between a speaker output and an input"]
    for number, network in enumerate(networks):
        text += lines(network, f"n{number}")
    text += [".control", "set numdgt=9"]
    for note in NOTES:
        text.append(f"ac lin 1 {note} {note}")
        text += [f"print vm(on{number})" for number, network in enumerate(networks) if network["note"] == note]
    return "\n".join(text + ["quit", ".endc", ".end"]) + "\n"
