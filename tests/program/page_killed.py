#!/usr/bin/env python3
"""Is what the page called saved still there after `kill -9` in the middle of a form that is being sent? The server is killed again and
again while a phone saves notes, books on the shelf and writes actions of a job; each time the next server must show everything that was answered as
saved, of the form that was cut off all or nothing, and a whole catalog.

    tests/program/page_killed.py --program build/tapbook [--kills 20]"""
import argparse
import json
import pathlib
import random
import re
import signal
import subprocess
import sys
import tempfile
import threading
import time
import urllib.parse

from page_server import Browser, Shop

CAR, TAP = "hadrik/ostrel/wagon/2016", "base/front-left/radio-plug"
PART, JOB = "ottrey-slim-two", "J5XE7G"
FORMS_BEFORE_KILL = 3


class Phone:
    """A paired phone; every form it sends is of its own, so that it can be found again."""

    def __init__(self, shop):
        self.process = shop.serve("--json", stderr=subprocess.DEVNULL)
        opened = json.loads(self.process.stdout.readline())["data"]
        self.browser = Browser(opened["addresses"][0])
        token = urllib.parse.urlsplit(opened["pairing_link"]).path
        self.browser.send(token, "/pair", token=token.removeprefix("/P/"), name="bay phone")
        self.token = re.search(r'name="form_token" value="([0-9a-f]{32})"', self.browser.ask("GET", f"/shelf/count/{PART}")[1])[1]

    def send(self, where, fields):
        body = urllib.parse.urlencode({**fields, "form_token": self.token})
        return self.browser.ask("POST", where, body, {"Origin": "http://" + self.browser.netloc, "Content-Type": "application/x-www-form-urlencoded"})

    def kill(self):
        self.process.send_signal(signal.SIGKILL)
        self.process.wait(timeout=20)
        self.process.stdout.close()


class Truth:
    """What was answered as saved, and what was only sent."""

    def __init__(self):
        self.number, self.pieces = 0, 0
        self.saved = {"note": [], "action": [], "piece": []}
        self.cut = {"note": [], "action": [], "piece": []}

    def form(self, phone):
        """The next form: its kind, its mark, where it goes, its fields."""
        self.number += 1
        kind = ("note", "piece", "action")[self.number % 3]
        mark = f"mark {self.number:05}"
        if kind == "note":
            return kind, mark, f"/note/{CAR}", {"tap": TAP, "method": "seen", "positive": "white", "negative": "white/black", "year": "2018",
                                                "car": f"KP {self.number}", "remarks": mark}
        if kind == "piece":
            page = phone.browser.ask("GET", f"/shelf/count/{PART}")[1]
            last = re.search(r'name="last" value="(\d+)"', page)[1]
            return kind, mark, f"/shelf/count/{PART}", {"booking": "receive", "pieces": "1", "words": mark, "last": last}
        return kind, mark, f"/job/{JOB}/action", {"words": mark}


def is_saved(kind, status, text):
    return status == 303 if kind == "piece" else status == 200 and "Saved" in text


def marks_there(shop):
    """Which marks the catalog holds, by kind, and how many pieces lie there; every one as the command line reads it."""
    notes = re.findall(r"mark \d{5}", shop.run("export", CAR))
    part = json.loads(shop.run("shelf", "count", PART, "--json"))["data"]["parts"][0]
    pieces = [one["words"] for one in part["movements"] if (one["words"] or "").startswith("mark ")]
    actions = re.findall(r"mark \d{5}", shop.run("job", "show", JOB, "--json"))
    return {"note": notes, "piece": pieces, "action": actions}, part["on_hand"]


def round_of(shop, truth, chance, problems):
    """One server, some forms, and a kill in the middle of the last. Whether that one was cut off."""
    phone = Phone(shop)
    took = 0.02
    for _ in range(FORMS_BEFORE_KILL):
        kind, mark, where, fields = truth.form(phone)
        start = time.monotonic()
        status, text = phone.send(where, fields)
        took = time.monotonic() - start
        if not is_saved(kind, status, text):
            problems.append(f"{kind} {mark}: {status} {text[:300]}")
        truth.saved[kind].append(mark)
    kind, mark, where, fields = truth.form(phone)
    answers = []

    def send():
        try:
            answers.append(phone.send(where, fields))
        except OSError:
            pass
        except Exception as error:  # a cut answer: http.client has its own names for it
            if "IncompleteRead" not in repr(error) and "RemoteDisconnected" not in repr(error) and "BadStatusLine" not in repr(error):
                problems.append(repr(error))

    sending = threading.Thread(target=send)
    sending.start()
    time.sleep(chance.uniform(0, 1.3 * took))
    phone.kill()
    sending.join(timeout=30)
    is_answered = bool(answers) and is_saved(kind, *answers[0])
    (truth.saved if is_answered else truth.cut)[kind].append(mark)
    return not is_answered


def check_round(shop, truth, first_pieces, problems):
    there, on_hand = marks_there(shop)
    for kind, marks in there.items():
        for mark in truth.saved[kind]:
            if marks.count(mark) != 1:
                problems.append(f"{kind} {mark} was answered as saved and is there {marks.count(mark)} times")
        for mark in marks:
            if mark not in truth.saved[kind] and mark not in truth.cut[kind]:
                problems.append(f"{kind} {mark} was never sent")
    if on_hand != first_pieces + len(there["piece"]):
        problems.append(f"{on_hand} on the shelf, {len(there['piece'])} received since {first_pieces}")
    done = subprocess.run([shop.program, "check"], cwd=shop.folder, env=shop.surroundings, capture_output=True, text=True, timeout=120)
    if done.returncode != 0:
        problems.append(f"check: exit {done.returncode}: {done.stdout[-300:]}")
    return sum(mark in marks for kind, marks in there.items() for mark in truth.cut[kind])


def main():
    arguments = argparse.ArgumentParser()
    arguments.add_argument("--program", required=True)
    arguments.add_argument("--kills", type=int, default=20)
    asked = arguments.parse_args()
    problems, cut, written = [], 0, 0
    chance = random.Random(8)
    with tempfile.TemporaryDirectory() as folder:
        shop = Shop(str(pathlib.Path(asked.program).resolve()), folder)
        shop.run("demo")
        first_pieces, truth = marks_there(shop)[1], Truth()
        for _ in range(asked.kills):
            cut += round_of(shop, truth, chance, problems)
            written = check_round(shop, truth, first_pieces, problems)
            if problems:
                break
    if not problems and not (0 < cut < asked.kills):
        problems.append(f"{cut} of {asked.kills} kills fell between a form and its answer: the moments are badly chosen")
    print("\n".join(problems))
    saved = sum(len(marks) for marks in truth.saved.values())
    print(f"{asked.kills} kills: {saved} forms answered as saved and found again; {cut} cut off, {written} of them written whole")
    sys.exit(1 if problems else 0)


if __name__ == "__main__":
    main()
