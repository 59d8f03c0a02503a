#!/usr/bin/env python3
"""Does `tapbook serve` open, pair, see what the command line writes, and close, as a whole program? On this machine alone:
the symbol in the terminal is read again by another program, requests go over plain sockets, Enter and Ctrl-C come from a
terminal made for it."""
import argparse
import http.client
import json
import os
import pathlib
import pty
import re
import select
import signal
import subprocess
import sys
import tempfile
import urllib.parse

import jsonschema

ROOT = pathlib.Path(__file__).resolve().parents[2]
HALF_BLOCKS = {" ": (0, 0), "\u2580": (1, 0), "\u2584": (0, 1), "\u2588": (1, 1)}
problems, checks = [], 0


def check(held, what):
    global checks
    checks += 1
    if not held:
        problems.append(what)


class Shop:
    def __init__(self, program, folder):
        self.program, self.folder = program, folder
        self.surroundings = {"PATH": os.environ["PATH"], "LC_ALL": "C.UTF-8", "HOME": folder, "TAPBOOK_DB": f"{folder}/practice.sqlite",
                             "TAPBOOK_TODAY": "2026-05-04", "COLUMNS": "100"}

    def run(self, *words):
        done = subprocess.run([self.program, *words], cwd=self.folder, env=self.surroundings, capture_output=True, text=True, timeout=60)
        check(done.returncode == 0, f"{' '.join(words)}: exit {done.returncode}: {done.stderr[:300]}")
        return done.stdout

    def serve(self, *words, **others):
        streams = {"stdin": subprocess.DEVNULL, "stdout": subprocess.PIPE, "stderr": subprocess.PIPE, **others}
        return subprocess.Popen([self.program, "serve", "--port", "0", *words], cwd=self.folder, env=self.surroundings, **streams)


def read_symbol(lines, dark_is_drawn, folder):
    """The text of a symbol of half blocks, by zbarimg."""
    rows = []
    for line in lines:
        halves = [HALF_BLOCKS[letter] for letter in line]
        rows += [[half[0] for half in halves], [half[1] for half in halves]]
    grey = {1: b"\0" if dark_is_drawn else b"\xff", 0: b"\xff" if dark_is_drawn else b"\0"}
    scale, wide = 8, len(rows[0])
    picture = b"".join(b"".join(grey[one] * scale for one in row) * scale for row in rows)
    place = pathlib.Path(folder) / "symbol.pgm"
    place.write_bytes(b"P5 %d %d 255\n" % (wide * scale, len(rows) * scale) + picture)
    return subprocess.run(["zbarimg", "--quiet", "--raw", "--nodbus", str(place)], capture_output=True, text=True, timeout=60).stdout.strip()


def symbol_lines(text):
    return [line for line in text.split("\n") if line and set(line) <= set(HALF_BLOCKS) and len(line) > 20]


class Browser:
    """What a phone does: keeps cookies, loads a form, sends it."""

    def __init__(self, base):
        self.netloc = urllib.parse.urlsplit(base).netloc
        self.cookies = {}

    def ask(self, method, path, body=None, headers=None):
        connection = http.client.HTTPConnection(self.netloc, timeout=20)
        headers = {"Cookie": "; ".join(f"{name}={value}" for name, value in self.cookies.items()), **(headers or {})}
        connection.request(method, path, body, {name: value for name, value in headers.items() if value})
        answer = connection.getresponse()
        text = answer.read().decode()
        for set_cookie in answer.msg.get_all("Set-Cookie") or []:
            name, value = set_cookie.split(";")[0].split("=", 1)
            self.cookies[name] = value
        connection.close()
        return answer.status, text

    def send(self, page, action, **fields):
        token = re.search(r'name="form_token" value="([0-9a-f]{32})"', self.ask("GET", page)[1])[1]
        body = urllib.parse.urlencode({**fields, "form_token": token})
        return self.ask("POST", action, body, {"Origin": "http://" + self.netloc, "Content-Type": "application/x-www-form-urlencoded"})


def end(serving, how, what):
    serving.send_signal(how)
    _, said = serving.communicate(timeout=20)
    check(serving.returncode == 0, f"{what}: exit {serving.returncode}")
    check(said.decode().endswith("tapbook: the phone page is closed\n"), f"{what}: {said.decode()[-300:]!r}")
    return said.decode()


def check_announcement(shop):
    """The JSON keeps its schema; what was opened answers; SIGTERM ends it."""
    serving = shop.serve("--json")
    answer = json.loads(serving.stdout.readline())
    schema = json.loads((ROOT / "schema/serve.schema.json").read_text())
    check(not list(jsonschema.Draft202012Validator(schema).iter_errors(answer)), f"serve --json: {answer}")
    browser = Browser(answer["data"]["addresses"][0])
    check(browser.ask("GET", "/")[0] == 200, "the first page does not answer")
    token = urllib.parse.urlsplit(answer["data"]["pairing_link"]).path
    status, _ = browser.send(token, "/pair", token=token.removeprefix("/P/"), name="bay phone")
    check(status == 303, f"pairing by the link: {status}")
    check(browser.ask("GET", "/phones")[0] == 200, "the paired phone is not let in")
    other = Browser(answer["data"]["addresses"][0])
    check(other.ask("GET", "/phones")[0] == 403, "a phone that is not paired is let in")
    check(other.ask("GET", token)[0] == 410, "the link works twice")
    check(other.send("/pair", "/pair", pin=answer["data"]["pairing_digits"])[0] == 303, "pairing by the digits")
    said = end(serving, signal.SIGTERM, "SIGTERM")
    check(said.count("POST /pair  303\n") == 2, f"the log of writes: {said!r}")


def check_symbol(shop):
    """What the terminal shows is read by a scanner, and says where to pair."""
    serving = shop.serve("--lan", "--address", "127.0.0.1")
    text = b""
    while b"Ctrl-C" not in text:
        text += serving.stdout.read1()
    text = text.decode()
    read = read_symbol(symbol_lines(text), False, shop.folder)
    check(re.fullmatch(r"HTTP://127\.0\.0\.1:\d+/P/[A-Z2-7]{26}", read), f"the symbol says {read!r}")
    check("Plain http over Wi-Fi can be overheard" in text, "nothing is said of listeners")
    address = re.search(r"address +(http://\S+)/\n", text)[1]
    check(Browser(address).ask("GET", urllib.parse.urlsplit(read).path)[0] == 200, "the symbol leads nowhere")
    end(serving, signal.SIGINT, "SIGINT")


def check_terminal(shop):
    """At a terminal the symbol is black on white; Enter makes a new code and kills the old; Ctrl-C is typed."""
    leader, follower = pty.openpty()
    shop.surroundings["TERM"] = "xterm-256color"
    serving = shop.serve("--lan", "--address", "127.0.0.1", stdin=follower, stdout=follower, start_new_session=True)
    os.close(follower)

    def shown_until(words):
        text = b""
        while words not in text and select.select([leader], [], [], 20)[0]:
            text += os.read(leader, 65536)
        return text.decode().replace("\r\n", "\n")

    def code_of(text):
        plain = re.sub("\x1b\\[[0-9;]*m", "", text)
        return read_symbol(symbol_lines(plain), True, shop.folder), re.search(r"type (\d{3} \d{3})", plain)[1]

    first = shown_until(b"Ctrl-C")
    check("\x1b[38;5;16;48;5;231m" in first, "the symbol has no colours of its own")
    link, digits = code_of(first)
    os.write(leader, b"\n")
    link_then, digits_then = code_of(shown_until(b"in all"))
    check(link != link_then and digits != digits_then and "/P/" in link_then, f"Enter: {link} {link_then}")
    browser = Browser("http://" + urllib.parse.urlsplit(link.lower()).netloc)
    check(browser.ask("GET", urllib.parse.urlsplit(link).path)[0] == 410, "the old link still works")
    check(browser.ask("GET", urllib.parse.urlsplit(link_then).path)[0] == 200, "the new link does not work")
    end(serving, signal.SIGINT, "SIGINT at a terminal")
    os.close(leader)
    del shop.surroundings["TERM"]


def check_command_line_beside(shop):
    """What the command line writes meanwhile is on the next page, also after another file was put in the catalog's place."""
    shop.run("backup", "before.backup")
    serving = shop.serve("--json")
    browser = Browser(json.loads(serving.stdout.readline())["data"]["addresses"][0])
    before = browser.ask("GET", "/jobs")[1]
    started = json.loads(shop.run("job", "start", "ostrel", "--year", "2020", "--system", "base", "--car", "TW 4410", "--json"))
    code = re.search(r'"code":"([A-Z2-9]{6})"', json.dumps(started, separators=(",", ":")))[1]
    check(code not in before and code in browser.ask("GET", "/jobs")[1], f"the job {code} of the command line is not on the page")
    shop.run("restore", "before.backup")
    check(browser.ask("GET", "/jobs")[1] == before, "what was restored is not on the page")
    end(serving, signal.SIGINT, "SIGINT")


def amplifiers(word, count):
    return "".join(f'[[amplifier]]\ncode = "{word.lower()}-{number}"\nmaker = "{word}"\nname = "{word} {number}"\nchannels = 2\nuse = "full_range"\n\n'
                   for number in range(count))


def read_beside(shop, browser, *words):
    """Reads a car's page all the while the command runs; its answers are then all there or all missing."""
    car, statuses, sizes = "/car/hadrik/ostrel/wagon/2016", [], set()
    writing = subprocess.Popen([shop.program, *words], cwd=shop.folder, env=shop.surroundings, stdout=subprocess.DEVNULL)
    while writing.poll() is None or not statuses:
        status, text = browser.ask("GET", car)
        statuses.append(status)
        sizes.add(len(text))
    check(writing.returncode == 0, f"{' '.join(words)} beside the page: exit {writing.returncode}")
    check(set(statuses) == {200} and len(sizes) == 1, f"pages during {words[0]}: {sorted(set(statuses))}, {sorted(sizes)} bytes")


def check_import_beside(shop):
    """Pages are read all the while the command line puts parts in and takes a pack in, and show them afterwards."""
    pathlib.Path(shop.folder, "many.toml").write_text(amplifiers("Bench", 1500))
    pathlib.Path(shop.folder, "others.toml").write_text(amplifiers("Handed", 4000))
    shop.run("demo", "--db", "other.sqlite")
    shop.run("add", "others.toml", "--db", "other.sqlite")
    shop.run("pack", "export", "others.jsonl", "--db", "other.sqlite")
    serving = shop.serve("--json")
    browser = Browser(json.loads(serving.stdout.readline())["data"]["addresses"][0])
    for words, last in ((("add", "many.toml"), "Bench 1499"), (("pack", "import", "others.jsonl"), "Handed 3999")):
        advice = "/advice/hadrik/ostrel/wagon/2016?amp=" + last.lower().replace(" ", "+")  # so many are found by name
        last = f"{last.split()[0]} {last}"  # maker and name
        check(last not in browser.ask("GET", advice)[1], f"{last} is there too early")
        read_beside(shop, browser, *words)
        check(last in browser.ask("GET", advice)[1], f"{last} is not on the page")
    end(serving, signal.SIGINT, "SIGINT")


def check_slow_end(shop):
    """A client that stays connected does not keep the program from ending, and the port is free again at once."""
    serving = shop.serve("--json")
    netloc = urllib.parse.urlsplit(json.loads(serving.stdout.readline())["data"]["addresses"][0]).netloc
    held = http.client.HTTPConnection(netloc, timeout=20)
    held.request("GET", "/page.css")
    held.getresponse().read()
    end(serving, signal.SIGINT, "SIGINT with a client")
    held.close()
    again = subprocess.Popen([shop.program, "serve", "--json", "--port", netloc.rsplit(":", 1)[1]], cwd=shop.folder, env=shop.surroundings,
                             stdin=subprocess.DEVNULL, stdout=subprocess.PIPE, stderr=subprocess.PIPE)
    check(json.loads(again.stdout.readline())["ok"], "the port is not free again")
    end(again, signal.SIGINT, "SIGINT")


def main():
    arguments = argparse.ArgumentParser()
    arguments.add_argument("--program", required=True)
    program = str(pathlib.Path(arguments.parse_args().program).resolve())
    signal.alarm(300)
    with tempfile.TemporaryDirectory() as folder:
        shop = Shop(program, folder)
        shop.run("demo")
        for one in (check_announcement, check_symbol, check_terminal, check_command_line_beside, check_import_beside, check_slow_end):
            one(shop)
    print("\n".join(problems))
    print(f"{checks} checks of the server as a whole program")
    sys.exit(1 if problems or checks < 25 else 0)


if __name__ == "__main__":
    main()
