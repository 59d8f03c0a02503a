#!/usr/bin/env python3
"""Does every sheet print as it should? Sheets of the practice shop as PDF on both papers: one page of work and one of drawing, words a person can select, the QR
code read from a grey picture of 150 dpi by another program, and a page that HTML Tidy finds nothing wrong with and that asks for nothing.
   sheets.py --program PROGRAM [--all]     12 sheets, or every car, sound system and amplifier there is"""
import argparse
import itertools
import json
import os
import pathlib
import re
import subprocess
import sys
import tempfile

arguments = argparse.ArgumentParser()
arguments.add_argument("--program", required=True)
arguments.add_argument("--all", action="store_true")
asked = arguments.parse_args()
program = pathlib.Path(asked.program).resolve()
work = tempfile.TemporaryDirectory()
folder = pathlib.Path(work.name)
environment = {**os.environ, "TAPBOOK_TODAY": "2026-05-02", "TAPBOOK_DB": str(folder / "practice.sqlite")}
failures = []


def run(*words, **more):
    return subprocess.run(list(map(str, words)), env=environment, capture_output=True, text=True, **more)


def tapbook(*words):
    done = run(program, *words)
    if done.returncode != 0:
        sys.exit(f"tapbook {' '.join(map(str, words))}: {done.stderr or done.stdout}")
    return done.stdout


def check(name, truth, what):
    if not truth:
        failures.append(f"{name}: {what}")


def answer(*words):
    return json.loads(tapbook(*words, "--json"))["data"]


def asked_sheets():
    """Words of the command for each sheet, with the pages it may have beside its drawing."""
    sheets = [(["5", "--amp", "masrow-floor-four", "--metres", "4.5", "--insulation", "105"], 1)]
    sheets += [([str(number)], 1) for number in (1, 2, 3)]
    cars = [car["code"] for car in answer("find")["vehicles"]]
    for car in cars:
        for system in answer("taps", car)["systems"]:
            for amplifier in ("masrow-mono-500", "masrow-floor-four", "tobbin-mono-250"):
                words = [car, "--system", system["name"], "--amp", amplifier]
                if run(program, "advise", *words, "--json").returncode == 0:
                    # four pairs with all their cautions may run on
                    sheets.append(([*words, "--metres", "5.5", "--load", "4"], 2 if amplifier == "masrow-floor-four" else 1))
    return sheets if asked.all else sheets[:4] + sheets[4::max(1, len(sheets) // 8)][:8]


def text_of(pdf, first, last=None):
    return " ".join(run("pdftotext", "-layout", "-f", first, "-l", last or first, pdf, "-").stdout.split())


def check_page(name, words, html):
    """The page asks nobody for anything, has no style attribute, and HTML Tidy complains of nothing."""
    plain = html.with_suffix(".plain.html")  # Tidy knows neither SVG nor that a div may group what belongs together in a dl (HTML 4.4.9)
    without_drawings = re.sub("<svg.*?</svg>", "", html.read_text(), flags=re.S)
    plain.write_text(re.sub(r'<div class="fact">(<dt>.*?</dd>)</div>', r"\1", without_drawings, flags=re.S))
    tidied = run("tidy", "-quiet", "-errors", "--show-warnings", "yes", "--drop-empty-elements", "no", plain)
    plain.unlink()
    complaints = [line for line in tidied.stderr.splitlines() if ("Error" in line or "Warning" in line) and '"inputmode"' not in line]  # newer than Tidy
    check(name, not complaints, f"tidy says {complaints[:3]}")
    page = html.read_text()
    check(name, " style=" not in page, "a style attribute")
    asks = re.findall(r"""(?:src|href|action|poster)=["']?(?!#|data:)([^"'> ]+)|@import|url\((?!["']?data:)""", page)
    check(name, not asks, f"it asks for {asks[:3]}")


def check_print(name, words, paper, pages, pdf):
    facts = dict(line.split(":", 1) for line in run("pdfinfo", pdf).stdout.splitlines() if ":" in line)
    work_pages = int(facts["Pages"]) - 1  # the drawing is the last
    check(name, 1 <= work_pages <= pages, f"{work_pages} pages of work instead of {pages}")
    drawn = run("pdfinfo", "-f", work_pages + 1, "-l", work_pages + 1, pdf).stdout
    across, down = map(float, re.search(r"size: +([\d.]+) x ([\d.]+)", drawn).groups())
    check(name, across > down, "the drawing does not lie on its long side")
    check(name, "Hatching: stripe colours" in text_of(pdf, work_pages + 1), "no drawing on the last page")
    wide = float(facts["Page size"].split()[0])
    check(name, abs(wide - (612 if paper == "letter" else 595)) < 2, f"page size {facts['Page size']}")
    text, data = text_of(pdf, 1, work_pages), answer("sheet", *words)
    for step in data["steps"]:
        check(name, step["what"][:28] in text, f"{step['what'][:28]!r} is not on the page")
    for wanted in [data["car"], "instructions come first"]:
        check(name, wanted in text, f"the printed text lacks {wanted!r}")
    for step in data["steps"]:
        for caution in step["cautions"]:
            check(name, " ".join(caution["text"].split())[:24] in text, f"the printed text lacks the caution {caution['text']!r}")
    if data["job"]:
        check(name, data["job"]["code"] in text, "the code is not printed")
        run("pdftoppm", "-r", 150, "-gray", "-png", pdf, folder / "page")
        pictures = sorted(folder.glob("page*.png"))
        read = [run("zbarimg", "--quiet", "--raw", picture).stdout.strip() for picture in pictures]
        check(name, data["link"] in read, f"the QR code says {read}, not {data['link']}")
        for picture in pictures:
            picture.unlink()


tapbook("demo")
for (number, (words, pages)), paper in zip(enumerate(asked_sheets()), itertools.cycle(["a4", "letter"])):
    name = f"sheet {' '.join(words)} --paper {paper}"
    html, pdf = folder / f"{number}.html", folder / f"{number}.pdf"
    if number % 2:
        words = [*words, "--address", "http://bench.local:8080"]
    tapbook("sheet", *words, "--paper", paper, "--html", html, "--pdf", pdf)
    check_page(name, words, html)
    check_print(name, words, paper, pages, pdf)
    html.unlink()
    pdf.unlink()

every = tapbook("sheet", "hadrik ostrel", "--system", "base", "--amp", "masrow-floor-four", "--read", "all", "--html", "-")
check("every circuit of a car", every.count("<html") == 1, "no page")
print("\n".join(failures) or f"{number + 1} sheets are right")
sys.exit(bool(failures))
