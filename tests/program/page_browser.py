#!/usr/bin/env python3
"""Does the phone page work in a real browser? Makes the practice shop, serves it to this machine alone, and lets headless
Chromium (through the npm package playwright-core, with axe-core for the accessibility rules) do what an installer does:
page_browser.mjs says what. Tidy reads the pages as well. Both packages are installed once into the build folder.

    tests/program/page_browser.py --program build/tapbook --folder build/browser [--part work|look | --whole] [--shots FOLDER]"""
import argparse
import os
import pathlib
import re
import shutil
import signal
import subprocess
import sys
import tempfile
import urllib.request

PACKAGES = ("playwright-core@1.56.1", "axe-core@4.10.3")
TODAY = "2026-05-04"


def skip(why):
    print(f"SKIPPED: {why}, so the pages were NOT tried in a browser")
    sys.exit(77)


def install(folder):
    if all((folder / "node_modules" / package.split("@")[0]).exists() for package in PACKAGES):
        return
    folder.mkdir(parents=True, exist_ok=True)
    subprocess.run(["npm", "install", "--no-save", "--ignore-scripts", "--no-audit", "--no-fund", "--prefix", str(folder), *PACKAGES],
                   check=True, stdin=subprocess.DEVNULL, stdout=subprocess.DEVNULL, timeout=300)


def serve(program, catalog, environment):
    """The server's process, its address and the six digits."""
    process = subprocess.Popen([program, "serve", "--port", "0", "--db", catalog], stdin=subprocess.PIPE, stdout=subprocess.PIPE,
                               stderr=subprocess.DEVNULL, text=True, env=environment)
    said, address, digits = "", None, None
    while address is None or digits is None:
        line = process.stdout.readline()
        if not line:
            sys.exit(f"the server stopped after saying: {said}")
        said += line
        address = address or (re.search(r"http://127\.0\.0\.1:\d+", line) or [None])[0]
        digits = digits or (re.search(r"type (\d{3} \d{3})", line) or [None, None])[1]
    return process, address, digits.replace(" ", "")


# Attributes of the living HTML standard that Tidy 5.6 does not know.
NEWER = ("inputmode", "autocapitalize", "aria-current")
TIDIED = ("/", "/?words=ostrl", "/car/hadrik/ostrel/wagon/2016", "/advice/hadrik/ostrel/wagon/2016?system=base&amp=masrow-floor-four",
          "/changes/hadrik/ostrel/wagon/2016", "/jobs", "/jobs/new/hadrik/ostrel/wagon/2016", "/job/J5XE7G", "/job/J5XE7G/came",
          "/job/J5XE7G/plan", "/job/J5XE7G/read", "/job/J5XE7G/read?at=front-left/radio-plug", "/job/J5XE7G/close",
          "/job/K7MQ2X/drawing", "/note/hadrik/ostrel/wagon/2016?tap=base/front-left/radio-plug", "/pair",
          "/why/hadrik/ostrel/wagon/2016?tap=base/front-left/radio-plug", "/shelf", "/shelf/count", "/shelf/count/ottrey-strong-four")


def tidy_complaints(address):
    """What Tidy says of every page, the drawings left out: it knows no SVG."""
    if shutil.which("tidy") is None:
        print("there is no tidy on this machine: the pages were not read by it")
        return []
    complaints = []
    for page in TIDIED:
        with urllib.request.urlopen(address + page, timeout=20) as answer:
            plain = re.sub(r"<svg.*?</svg>", "", answer.read().decode(), flags=re.DOTALL)
        said = subprocess.run(["tidy", "-quiet", "-errors", "-utf8", "--drop-empty-elements", "no"], input=plain, capture_output=True,
                              text=True, timeout=20).stderr
        complaints += [f"{page}: {line}" for line in said.splitlines()
                       if not any(f'proprietary attribute "{name}"' in line for name in NEWER)]
    return complaints


def main():
    parser = argparse.ArgumentParser()
    parser.add_argument("--program", required=True)
    parser.add_argument("--folder", required=True, type=pathlib.Path)
    parser.add_argument("--whole", action="store_true", help="every page in every size and colour scheme, not each size and scheme once")
    parser.add_argument("--part", choices=("work", "look"), help="only what an installer does, or only how the pages look; both without it")
    parser.add_argument("--shots", default="")
    arguments = parser.parse_args()
    chromium = shutil.which("chromium")
    if chromium is None:
        skip("there is no chromium on this machine")
    if shutil.which("npm") is None or shutil.which("node") is None:
        skip("there is no npm on this machine")
    install(arguments.folder)
    with tempfile.TemporaryDirectory() as place:
        environment = {**os.environ, "TAPBOOK_TODAY": TODAY, "HOME": place}
        catalog = str(pathlib.Path(place) / "shop.sqlite")
        subprocess.run([arguments.program, "demo", "--db", catalog], check=True, stdout=subprocess.DEVNULL, env=environment, timeout=60)
        process, address, digits = serve(arguments.program, catalog, environment)
        try:
            complaints = tidy_complaints(address)
            for line in complaints:
                print(f"WRONG: tidy: {line}")
            script = pathlib.Path(__file__).with_suffix(".mjs")
            done = subprocess.run(["node", str(script), str(arguments.folder.resolve()), chromium, address, digits,
                                   "whole" if arguments.whole else arguments.part or "short", arguments.shots],
                                  timeout=900)
        finally:
            process.send_signal(signal.SIGINT)
            process.wait(timeout=20)
    sys.exit(1 if complaints else done.returncode)


if __name__ == "__main__":
    main()
