#!/usr/bin/env python3
"""Does anything run that somebody typed into a text field? Each of many hostile texts stands once in each field that a page shows: of
cars, systems, circuits, taps, notes, parts, jobs. Headless Chromium then reads every page, its content security policy switched
off, and sends every text through every box of every form. No script may run, and no element or attribute may be there that the
pages do not use themselves. tools/long does it with 1,000 texts.

    tests/program/page_hostile.py --program build/tapbook --folder build/browser [--texts 1000]"""
import argparse
import json
import os
import pathlib
import shutil
import signal
import subprocess
import sys
import tempfile

from hostile_texts import hostile_texts
from page_browser import TODAY, install, serve, skip

TAPS_OF_A_CAR = 20  # so many fit one page


def table(kind, /, **fields):
    return f"[[{kind}]]\n" + "".join(f"{key} = {json.dumps(value)}\n" for key, value in fields.items())


class Shop:
    """A shop in whose catalog each text stands once in each field."""

    def __init__(self, program, folder, texts):
        self.program, self.folder, self.texts = program, pathlib.Path(folder), texts
        self.catalog = str(self.folder / "shop.sqlite")
        self.environment = {**os.environ, "TAPBOOK_TODAY": TODAY, "TAPBOOK_DB": self.catalog, "HOME": folder}
        self.cars, self.jobs = [], []

    def text(self, number):
        """A field of its own number gets the texts in another order, so that one page shows many different ones."""
        return self.texts[number % len(self.texts)]

    def run(self, *words):
        done = subprocess.run([self.program, *words], cwd=self.folder, env=self.environment, capture_output=True, text=True, timeout=120)
        if done.returncode != 0:
            sys.exit(f"{' '.join(words)}: exit {done.returncode}: {done.stdout[-500:]}{done.stderr[-500:]}")
        return done.stdout

    def add(self, name, content):
        (self.folder / name).write_text(content)
        return self.run("add", name, "--json")

    def add_car(self, number):
        """One car for each text: make, model, body and remarks; its system; one part of the taps of all."""
        t = lambda offset: self.text(number + offset)
        car = (f'[vehicle]\nmake = {json.dumps(f"m{number} " + t(0))}\nmodel = {json.dumps("x " + t(3))}\nbody = {json.dumps("b " + t(5))}\n'
               f"first_year = 2012\nlast_year = 2018\nremarks = {json.dumps(t(7))}\ncautions = [{json.dumps(t(8))}]\n")
        car += table("system", code="base", name=t(11), tells=[t(13), t(17)], amplifier_place=t(19))
        circuit = table("circuit", at="base", code="front-left", role="speaker", position="front left", drive="bridged", carries=t(23), remarks=t(29))
        tap = table("tap", at="base/front-left", code="plug", place=t(31), connector=t(37), panels=[t(41), t(43)], plug_in_lead=t(47), remarks=t(53))
        note = (f"[[note]]\nat = \"base/front-left/plug\"\ndate = 2025-04-02\nmethod = \"metered\"\npositive = \"white\"\nnegative = \"black\"\n"
                f"positive_cavity = {json.dumps(t(59))}\nnegative_cavity = {json.dumps(t(61))}\ninitials = {json.dumps(t(67))}\nremarks = {json.dumps(t(71))}\n"
                "ac_v = 8.4\n")
        added = json.loads(self.add("car.toml", car + circuit + tap + note))
        return added

    def add_parts(self):
        parts = ""
        for number in range(len(self.texts)):
            parts += table("amplifier", code=f"amp-{number}", maker=self.text(number), name=self.text(number + 5), channels=2, use="full_range")
        for number in range(len(self.texts)):
            parts += (table("converter", code=f"part-{number}", maker=self.text(number + 3), name=self.text(number + 9), topology="transformer", channels=2,
                            adding="none", reference="floating", negatives="separate", output_shield="isolated", isolates=True, turn_on="none")
                      + "input_min_v = 3\ninput_max_v = 12\ninput_max_hz = 30\nsurvives_v = 20\ninput_ohms = 2000\nmax_common_mode_v = 50\n"
                      "max_dc_difference_v = 0.3\ngain_min = 0.05\ngain_max = 0.4\noutput_max_v = 5\noutput_ohms = 600\ncorner_hz = 8\nsupply_ma = 0\n")
        self.add("parts.toml", parts)

    def add_job(self, car, number):
        word = lambda offset: "." + self.text(number + offset)  # a word of the command line that is no option
        code = json.loads(self.run("job", "start", car, "--year", "2016", "--customer", word(0), "--initials", word(3), "--json"))["data"]["job"]["code"]
        self.run("job", "action", code, word(7))
        self.jobs.append(code)

    def fill(self):
        self.run("init", "--shop", self.text(1))
        self.add_parts()
        for number in range(len(self.texts)):
            self.add_car(number)
        self.cars = [one["code"] for one in json.loads(self.run("find", "--json"))["data"]["vehicles"]]
        if len(self.cars) != len(self.texts):
            sys.exit(f"{len(self.cars)} cars of {len(self.texts)}")
        for number, car in enumerate(self.cars):
            self.add_job(car, number)

    def addresses(self):
        """Every page that shows one of the fields."""
        pages = ["/", "/jobs", "/shelf", "/shelf/count"] + [f"/shelf/count?from={first}" for first in range(50, 2 * len(self.texts), 50)]
        for number, (car, job) in enumerate(zip(self.cars, self.jobs)):
            pages += [f"/car/{car}", f"/changes/{car}", f"/why/{car}?tap=base/front-left/plug", f"/job/{job}"]
            if number % 10 == 0:
                pages += [f"/advice/{car}?amp=amp-{number}", f"/jobs/new/{car}", f"/job/{job}/plan", f"/job/{job}/read", f"/shelf/count/part-{number}"]
        return pages

    def forms(self):
        """Address of each form, and where it is sent."""
        car, job = self.cars[0], self.jobs[0]
        return [{"page": f"/note/{car}?tap=base/front-left/plug", "to": f"/note/{car}"}, {"page": f"/note/{car}?tap=base&kind=system", "to": f"/note/{car}"},
                {"page": f"/job/{job}/read?at=front-left/plug", "to": f"/job/{job}/read"}, {"page": f"/job/{job}/came", "to": f"/job/{job}/came"},
                {"page": f"/job/{job}/left", "to": f"/job/{job}/left"}, {"page": f"/job/{job}/plan", "to": f"/job/{job}/plan"},
                {"page": f"/job/{job}/close", "to": f"/job/{job}/close"}, {"page": f"/job/{job}", "to": f"/job/{job}/action"},
                {"page": f"/jobs/new/{car}", "to": f"/jobs/new/{car}"}, {"page": "/shelf/count/part-1", "to": "/shelf/count/part-1"},
                {"page": "/pair", "to": "/pair"}, {"page": "/", "to": "/"}, {"page": f"/changes/{car}", "to": f"/changes/{car}"},
                {"page": f"/advice/{car}?amp=amp-1", "to": f"/advice/{car}"}]


def main():
    parser = argparse.ArgumentParser()
    parser.add_argument("--program", required=True)
    parser.add_argument("--folder", required=True, type=pathlib.Path)
    parser.add_argument("--texts", type=int, default=40)
    asked = parser.parse_args()
    chromium = shutil.which("chromium")
    if chromium is None or shutil.which("npm") is None or shutil.which("node") is None:
        skip("there is no chromium or no npm on this machine")
    install(asked.folder)
    program = str(pathlib.Path(asked.program).resolve())
    with tempfile.TemporaryDirectory() as place:
        shop = Shop(program, place, hostile_texts(asked.texts))
        shop.fill()
        work = pathlib.Path(place) / "work.json"
        work.write_text(json.dumps({"texts": shop.texts, "pages": shop.addresses(), "forms": shop.forms()}))
        process, address, digits = serve(program, shop.catalog, shop.environment)
        try:
            done = subprocess.run(["node", str(pathlib.Path(__file__).with_suffix(".mjs")), str(asked.folder.resolve()), chromium, address, digits, str(work)],
                                  timeout=3600)
        finally:
            process.send_signal(signal.SIGINT)
            process.wait(timeout=20)
    sys.exit(done.returncode)


if __name__ == "__main__":
    main()
