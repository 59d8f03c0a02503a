#!/usr/bin/env python3
"""Does the pack reader stand every input? Runs the fuzzer over packs that the program itself wrote and over the cases of a
public JSON suite, for so many seconds or inputs. What brought it down is kept in the folder and named. Exit code 77: there is
no clang with libFuzzer on this machine."""
import argparse
import pathlib
import re
import shutil
import subprocess
import sys

HEAD = '{"format":"tapbook.pack/1","key":"03a107bff3ce10be1d70dd18e74bc09967e4d6309ba50d5f1ddc8664125531b8","shop":"56475aa75463474c0285df5dbf2bcab7","type":"pack"}\n'
END = '{"hash":"%s","signature":"%s","type":"end"}\n' % ("0" * 64, "0" * 128)
LEAST_INPUTS = 3000  # in 30 s, on a machine that is busy
GOLDEN = pathlib.Path(__file__).resolve().parents[1] / "records" / "golden.jsonl"


def write_seeds(folder, program, json_suite):
    """Packs small enough to be changed quickly: of each car of the practice shop, of every kind of record, and JSON that must
    be refused."""
    shutil.rmtree(folder, ignore_errors=True)
    folder.mkdir(parents=True)
    database = folder.parent / "practice.sqlite"
    database.unlink(missing_ok=True)

    def run(*words):
        return subprocess.run([program, *words, "--db", str(database)], capture_output=True, check=True, timeout=60).stdout

    run("demo")
    lines = run("pack", "export", "-").decode().splitlines(keepends=True)
    for number, first in enumerate(range(1, len(lines) - 1, 40)):
        (folder / f"practice {number}").write_text(lines[0] + "".join(lines[first:first + 12]) + lines[-1])
    for number, line in enumerate(GOLDEN.read_text().splitlines()):
        (folder / f"golden {number}").write_text(HEAD + line + "\n" + END)
    if (json_suite / "node_modules").exists():
        sys.path.insert(0, str(pathlib.Path(__file__).resolve().parents[1] / "outside"))
        from json_suite_cases import cases
        for number, (_, text) in enumerate(cases(json_suite)):
            if len(text) < 200:
                (folder / f"suite {number}").write_bytes((HEAD + text + "\n" + END).encode("utf-8", "surrogatepass"))
    return len(list(folder.iterdir()))


def main():
    arguments = argparse.ArgumentParser()
    arguments.add_argument("--fuzzer", required=True, type=pathlib.Path)
    arguments.add_argument("--program", required=True, type=pathlib.Path)
    arguments.add_argument("--folder", required=True, type=pathlib.Path)
    arguments.add_argument("--json-suite", required=True, type=pathlib.Path)
    arguments.add_argument("--seconds", type=int)
    arguments.add_argument("--inputs", type=int)
    options = arguments.parse_args()
    options.folder = options.folder.resolve()  # the fuzzer runs inside it
    if not options.fuzzer.exists():
        print("SKIPPED: no clang++-19 when this was built, so the pack reader was NOT fuzzed (tools/install installs it)")
        sys.exit(77)
    seeds = write_seeds(options.folder / "seeds", options.program.resolve(), options.json_suite)
    found = options.folder / "found"
    shutil.rmtree(found, ignore_errors=True)
    found.mkdir()
    end = [f"-runs={options.inputs}"] if options.inputs else [f"-max_total_time={options.seconds}"]
    done = subprocess.run([str(options.fuzzer.resolve()), *end, "-seed=20260502", "-max_len=16384", "-timeout=20", "-rss_limit_mb=1024",
                           "-print_final_stats=1", f"-artifact_prefix={found}/", "-verbosity=0", str(options.folder / "seeds")],
                          capture_output=True, cwd=options.folder)
    said = done.stderr.decode("utf-8", "replace")
    if done.returncode != 0:
        sys.exit(f"{said[-6000:]}\nwhat brought it down: {', '.join(map(str, found.iterdir()))}")
    inputs = int(re.search(r"number_of_executed_units: (\d+)", said)[1])
    taken, behind = map(int, re.search(r"packs taken: (\d+), refused although the hash fits: (\d+)", said).groups())
    if inputs < min(LEAST_INPUTS, options.inputs or LEAST_INPUTS) or taken < inputs / 100 or behind < inputs / 100:
        sys.exit(f"too little was tried: {inputs} inputs, {taken} packs taken, {behind} refused for what a line says")
    print(f"{seeds} seeds, {inputs} inputs: {taken} packs taken, {behind} refused for what a line says, nothing found")


main()
