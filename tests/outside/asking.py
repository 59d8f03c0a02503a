"""Asks the program for JSON, many questions at once, in surroundings that are always the same."""
import concurrent.futures
import json
import os
import subprocess

SURROUNDINGS = {"PATH": os.environ.get("PATH", ""), "LC_ALL": "C.UTF-8", "HOME": "/nonexistent", "TAPBOOK_TODAY": "2026-05-02"}


def ask(program, words):
    """(exit code, the whole JSON answer) of one command."""
    done = subprocess.run([program, *words, "--json"], stdout=subprocess.PIPE, stderr=subprocess.PIPE, env=SURROUNDINGS,
                          stdin=subprocess.DEVNULL, timeout=60)
    if done.stderr or done.returncode not in (0, 1, 2, 3):
        raise SystemExit(f"{words}: exit {done.returncode}, {done.stderr.decode(errors='replace')}")
    return done.returncode, json.loads(done.stdout)


def ask_all(program, questions):
    with concurrent.futures.ThreadPoolExecutor(2) as pool:
        return list(pool.map(lambda words: ask(program, words), questions))


def answers_of(program, questions):
    """The data of each answer; every one has to be an answer."""
    found = []
    for words, (code, answer) in zip(questions, ask_all(program, questions)):
        if not answer["ok"]:
            raise SystemExit(f"{words}: {answer['error']}")
        found.append(answer["data"])
    return found
