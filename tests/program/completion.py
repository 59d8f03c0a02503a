#!/usr/bin/env python3
"""Do the completion scripts complete, and do they hand hostile names to the shell as text only?

The real shells run the scripts as `tapbook completion SHELL` prints them: bash always, zsh and fish when they are there.
"""
import argparse
import os
import pathlib
import shutil
import sqlite3
import subprocess
import sys
import tempfile

arguments = argparse.ArgumentParser()
arguments.add_argument("--program", required=True)
program = pathlib.Path(arguments.parse_args().program).resolve()
work = tempfile.TemporaryDirectory()
folder = pathlib.Path(work.name)
catalog = folder / "shop.sqlite"
environment = {**os.environ, "PATH": f"{program.parent}:{os.environ['PATH']}", "HOME": str(folder), "TAPBOOK_DB": str(catalog),
               "LC_ALL": "C.UTF-8", "TAPBOOK_TODAY": "2026-05-02"}
problems, checked = [], 0


def run(words, **more):
    return subprocess.run(words, cwd=folder, env=environment, capture_output=True, text=True, timeout=60, **more)


def script(shell):
    done = run([program, "completion", shell])
    if done.returncode != 0:
        sys.exit(f"tapbook completion {shell}: {done.stderr}")
    path = folder / f"script.{shell}"
    path.write_text(done.stdout)
    return path


def in_bash(before, current):
    """The words that bash would insert, still quoted as it would insert them."""
    words = ["tapbook", *before, current]
    text = f"source {script_of['bash']}; COMP_WORDS=(\"$@\"); COMP_CWORD=$(($# - 1)); _tapbook tapbook \"${{!#}}\" x; " \
           "printf '%s\\0' \"${COMPREPLY[@]}\""
    return [word for word in run(["bash", "--norc", "-c", text, "bash", *words]).stdout.split("\0") if word]


def in_zsh(before, current):
    """The values handed to compadd, which quotes them itself."""
    text = "compadd() { print -rN -- \"${values[@]}\" }; _files() { print -rN -- FILES }; funcstack=(); " \
           f"source {script_of['zsh']}; words=(\"${{(@q)@}}\"); CURRENT=$#; PREFIX=${{(q)@[-1]}}; _tapbook"
    return [word for word in run(["zsh", "-f", "-c", text.replace("funcstack=(); ", ""), "zsh", "tapbook", *before, current]).stdout.split("\0") if word]


def in_fish(before, current):
    line = " ".join(["tapbook", *[quoted_for_fish(word) for word in before], current])
    done = run(["fish", "--no-config", "-c", f"source {script_of['fish']}; complete -C $argv[1]", line])
    return [row.split("\t")[0] for row in done.stdout.split("\n") if row]


def quoted_for_fish(word):
    return "'" + word.replace("\\", "\\\\").replace("'", "\\'") + "'"


def expect(what, shells, before, current, wanted, exact=False):
    global checked
    for shell in shells:
        got = shells[shell](before, current)
        checked += 1
        good = sorted(got) == sorted(wanted) if exact else set(wanted) <= set(got)
        if not good:
            problems.append(f"{shell}: {what}: tapbook {' '.join(before)} {current}: wanted {wanted}, got {got[:12]}")


made = run([program, "demo"])
if made.returncode != 0:
    sys.exit(made.stderr)
shells = {"bash": in_bash}
for shell, ask in (("zsh", in_zsh), ("fish", in_fish)):
    if shutil.which(shell):
        shells[shell] = ask
    else:
        print(f"{shell} is not on this machine: its script is not run")
script_of = {shell: script(shell) for shell in ("bash", "zsh", "fish")}
for shell, words in (("bash", ["bash", "-n"]), ("zsh", ["zsh", "-n"]), ("fish", ["fish", "--no-execute"])):
    if shell in shells and run([*words, script_of[shell]]).returncode != 0:
        problems.append(f"{shell} does not take its script")

expect("commands", shells, [], "ta", ["taps"], True)
expect("the first word of two", shells, [], "cal", ["calc"], True)
expect("the second word of two", shells, ["calc"], "sw", ["swing"], True)
expect("no hidden command", shells, [], "man", [], True)
expect("options", shells, ["advise", "x"], "--low", ["--lowest-hz"], True)
expect("options given are not offered again", shells, ["advise", "x", "--lowest-hz", "30"], "--low", [], True)
expect("words of an enumeration", shells, ["calc", "swing", "--drive"], "boosted_", ["boosted_split", "boosted_bridged"], True)
expect("words behind a bar", shells, ["meter", "--volume"], "f", ["full"], True)
expect("models", shells, ["taps"], "ost", ["ostrel"], True)
expect("systems of the car that was named", shells, ["taps", "ostrel", "--system"], "", ["base", "premium"], True)
expect("tap points of a system", shells, ["advise", "ostrel", "--system", "premium", "--tap"], "premium/rear-l", ["premium/rear-left/rear-door-left"])
expect("amplifiers", shells, ["advise", "ostrel", "--amp"], "masrow-fl", ["masrow-floor-four"], True)
expect("rules", shells, ["rules", "show"], "overdriven-at-l", ["overdriven-at-lowest-note"], True)
expect("stripes of a wire colour", shells, ["calc", "colour"], "white/re", ["white/red"], True)
expect("shells", shells, ["completion"], "f", ["fish"], True)

# A catalog that somebody tampered with: names no file can bring in.
hostile = ["zz $(touch pwned)", "zz `touch pwned`", "zz';touch pwned;'", 'zz"; touch pwned; "', "zz\\", "zz*", "zz{a,b}", "zz&touch pwned", "zz~"]
with sqlite3.connect(catalog) as store:
    for i, name in enumerate([*hostile, "zz\ntouch pwned\n", "zz\ttouch pwned", "zz\x1b[2J"]):
        store.execute("INSERT INTO amplifier (path, revision, shop, id, date, maker, name) VALUES (?, 1, zeroblob(16), ?, '2026-01-01', ?, ?)",
                      (name, i.to_bytes(16, "big"), "$(touch pwned)", "`touch pwned`\nx"))
for shell, ask in shells.items():
    got = ask(["advise", "ostrel", "--amp"], "zz")
    if shell in ("bash", "fish"):  # quoted for insertion: the shell must read each as one word, the name itself
        back = []
        for word in got:
            command = ["bash", "-c", f"printf %s {word}"] if shell == "bash" else ["fish", "--no-config", "-c", f"printf %s {word}"]
            back.append(run(command).stdout if shell == "bash" else word)
        got = back
    checked += 1
    if sorted(got) != sorted(hostile):
        problems.append(f"{shell}: hostile names: wanted {sorted(hostile)}, got {sorted(got)}")
if (folder / "pwned").exists():
    problems.append("a name from the catalog was run as a command")

# Nothing to read: nothing offered, nothing said, no failure.
catalog.write_bytes(b"no catalog")
for shell, ask in shells.items():
    checked += 1
    if ask(["taps"], "o") != []:
        problems.append(f"{shell}: a broken catalog still completes")
done = run([program, "completion", "candidates", ".taps", ".o"])
if (done.returncode, done.stdout, done.stderr) != (0, "", ""):
    problems.append(f"a broken catalog is not passed over in silence: {done}")

print("\n".join(problems))
print(f"{checked} completions in {', '.join(shells)}")
sys.exit(1 if problems or checked < 16 else 0)
