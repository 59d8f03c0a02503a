#!/usr/bin/env python3
"""Do the commands say what the cases say? A case is one readable file: commands, their whole output, their exit code.

    # anything after # at the start of a line is a remark
    @file car.toml
    ...content...
    @end
    $ tapbook add car.toml --db shop.sqlite -> 0
    expected output, standard output before standard error
    ...                      any number of lines, also none

Every case runs in its own empty folder with the same day and no colours. `@shop` makes the practice shop as practice.sqlite
first (built once and copied). With --accept the expected outputs are rewritten; read the difference before committing it.
"""
import argparse
import concurrent.futures
import os
import pathlib
import shutil
import subprocess
import sys
import tempfile

DAY = "2026-05-02"


def environment(folder):
    keep = {"PATH": os.environ.get("PATH", ""), "LC_ALL": "C.UTF-8", "HOME": str(folder), "XDG_DATA_HOME": str(folder / "data")}
    keep.update(TAPBOOK_TODAY=DAY, COLUMNS="100")
    return keep


def run(command, folder, program):
    surroundings = environment(folder)
    surroundings["PATH"] = str(program.parent) + ":" + surroundings["PATH"]  # the program is called tapbook
    done = subprocess.run(["bash", "-c", command], cwd=folder, env=surroundings, stdin=subprocess.DEVNULL,
                          stdout=subprocess.PIPE, stderr=subprocess.PIPE, timeout=120)
    text = (done.stdout + done.stderr).decode("utf-8", "replace")
    # FOLDER: where the case is played; PREFIX: where the program would be installed.
    return text.replace(str(folder), "FOLDER").replace(str(program.parent.parent), "PREFIX"), done.returncode


def fits(expected, got):
    """Lines of `expected` against lines of `got`; a line '...' stands for any number of lines."""
    if not expected:
        return not got
    if expected[0] == "...":
        return any(fits(expected[1:], got[i:]) for i in range(len(got) + 1))
    return bool(got) and expected[0] == got[0] and fits(expected[1:], got[1:])


def steps(text):
    """The case as a list of ('file', name, content), ('shop',), ('run', command, code, expected lines) and ('remark', line)."""
    lines = text.split("\n")
    if lines and lines[-1] == "":
        lines.pop()
    found, i = [], 0
    while i < len(lines):
        line = lines[i]
        i += 1
        if line.startswith("@file "):
            content = []
            while lines[i] != "@end":
                content.append(lines[i])
                i += 1
            i += 1
            found.append(("file", line[6:], "\n".join(content) + "\n"))
        elif line == "@shop":
            found.append(("shop",))
        elif line.startswith("$ "):
            command, code = line[2:].rsplit(" -> ", 1)
            expected = []
            while i < len(lines) and not lines[i].startswith(("$ ", "@file ", "@shop", "# ")):
                expected.append(lines[i])
                i += 1
            while expected and expected[-1] == "":
                expected.pop()
            found.append(("run", command, int(code), expected))
        else:
            found.append(("remark", line))
    return found


def play(case, program, shop, accept):
    problems, written = [], []
    with tempfile.TemporaryDirectory() as name:
        folder = pathlib.Path(name)
        for step in steps(case.read_text()):
            if step[0] == "remark":
                written.append(step[1])
            elif step[0] == "shop":
                shutil.copy(shop, folder / "practice.sqlite")
                written.append("@shop")
            elif step[0] == "file":
                (folder / step[1]).write_text(step[2])
                written += ["@file " + step[1], step[2].rstrip("\n"), "@end"]
            else:
                _, command, code, expected = step
                text, got_code = run(command, folder, program)
                got = [line.rstrip() for line in text.split("\n")]
                while got and got[-1] == "":
                    got.pop()
                good = got_code == code and fits(expected, got)
                if not good:
                    problems.append(f"$ {command}\n  expected exit {code}, got {got_code}\n  expected:\n" +
                                    "".join(f"    {line}\n" for line in expected) + "  got:\n" + "".join(f"    {line}\n" for line in got))
                written.append(f"$ {command} -> {got_code}")
                written += got if not good or "..." not in expected else expected
                written.append("")
    if accept and problems:
        while written and written[-1] == "":
            written.pop()
        case.write_text("\n".join(written) + "\n")
    return case, problems


def main():
    arguments = argparse.ArgumentParser()
    arguments.add_argument("--program", required=True)
    arguments.add_argument("--accept", action="store_true")
    arguments.add_argument("cases", nargs="*")
    given = arguments.parse_args()
    program = pathlib.Path(given.program).resolve()
    here = pathlib.Path(__file__).parent
    cases = [pathlib.Path(c) for c in given.cases] or sorted((here / "cases").glob("*.case"))
    if not cases:
        sys.exit("no cases")
    with tempfile.TemporaryDirectory() as name:
        folder = pathlib.Path(name)
        shop = folder / "practice.sqlite"
        text, code = run("tapbook demo --db practice.sqlite", folder, program)
        if code != 0:
            sys.exit("the practice shop cannot be made:\n" + text)
        with concurrent.futures.ThreadPoolExecutor(2) as pool:
            results = list(pool.map(lambda case: play(case, program, shop, given.accept), cases))
    failed = [(case, problems) for case, problems in results if problems]
    for case, problems in failed:
        print(f"--- {case.name}")
        print("\n".join(problems))
    print(f"{len(cases) - len(failed)} of {len(cases)} cases as written")
    sys.exit(1 if failed and not given.accept else 0)


if __name__ == "__main__":
    main()
