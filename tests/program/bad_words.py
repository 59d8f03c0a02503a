#!/usr/bin/env python3
"""Is every option of every command refused when its value is wrong, given twice, or missing, with a message that names
the option and a way out? Options and commands are read from the program's own help: one without a row in
bad_words_table.py turns this red. Nothing that is refused may change the folder it was typed in."""
import argparse
import concurrent.futures
import decimal
import pathlib
import re
import subprocess
import sys
import tempfile

import bad_input
import bad_words_exchange  # noqa: F401  adds its rows to the table
import bad_words_notes
import bad_words_shelf  # noqa: F401, adds its rows to the table
import bad_words_table as table

NO_NUMBERS = ["nan", "inf", "-inf", "1e308", "1E3", "0x10", "1_000", "abc", "5V", " 5", "5 ", "5\n", "+", "-", ".5", "5.", "1.2.3", "--5", "１３", "½",
              "1\u00a0000", "\u202e5", "5;rm -rf .", "$(id)"]
SOME_NO_NUMBERS = ["nan", "1e308", "0x10", "5V", "5\n", "--5"]


class Asked:
    """Commands of the help with their options, as (name, takes a value)."""

    def __init__(self, program, folder):
        self.run = lambda words: subprocess.run([str(program), *words], cwd=folder, env=bad_input.environment(folder, program, {}),
                                                stdin=subprocess.DEVNULL, stdout=subprocess.PIPE, stderr=subprocess.PIPE, timeout=60)
        listing = self.run(["--help"]).stdout.decode()
        self.commands = re.findall(r"^  (?!tapbook)((?:calc|job|pack) [a-z]+|shelf count|[a-z]+) +\S", listing, re.M)
        self.options, self.usage = {}, {}
        for command in self.commands:
            help_text = self.run([*command.split(), "--help"]).stdout.decode()
            self.usage[command] = re.search(r"^usage: .*\n", help_text, re.M).group()
            found = re.findall(r"^  (--[a-z0-9-]+)( \S+)? ", help_text, re.M)
            self.options[command] = {name: bool(value) for name, value in found}


def number_rows(base, option, number, no_numbers):
    """Texts that are no number, or none this option takes. All of them at a command's first number; the others are read
    by the same function and get some."""
    least, most = decimal.Decimal(number.least), decimal.Decimal(number.most)
    step = decimal.Decimal(1).scaleb(-number.digits)
    says = lambda text, reason: number.refused(option, text, reason)
    shape = "digits alone, like 12" if number.digits == 0 else "digits with at most one point, like 13.8"
    for text in no_numbers:
        yield [*base, option, text], 2, says(text, f"is not a number: write {shape}")
    yield [*base, option, "13,8"], 2, says("13,8", "uses a comma: write 13.8")
    yield [*base, option, "9" * 20], 2, says("9" * 20, "is far too large")
    digits = "must be a whole number" if number.digits == 0 else f"has more than {number.digits} digits after the point"
    yield [*base, option, "1.0000001"], 2, says("1.0000001", digits)
    outside = {f"{least - step:f}", f"{most + step:f}", "-99999999999", "999999999999"} | {text for text in ("0", "-1", "-0.5") if not least <= decimal.Decimal(text) <= most
                                                                                      and (number.digits > 0 or "." not in text)}
    for text in sorted(outside):
        yield [*base, option, text], 2, number.outside(option, text)


def option_rows(asked, command, option, takes_value):
    words = command.split()
    if not takes_value:
        yield [*words, f"{option}=perhaps"], 2, f"tapbook: {command}: {option} takes no value\n{asked.usage[command]}"
        return
    base = [*words, *table.base_without(command, option)]
    missing = f"tapbook: {option} needs a value\n{asked.usage[command]}"
    yield [*base, option], 2, missing
    yield [*base, option, ""], 2, missing
    if option == next(name for name, with_value in asked.options[command].items() if with_value):  # one function looks at all
        yield [*base, f"{option}="], 2, missing
        yield [*base, option, "--db"], 2, missing
        yield [*base, option, f"{option}=5"], 2, missing
        yield [*base, f"{option}=5", option, "6"], 2, f"tapbook: {option} is given twice\nkeep the one that is meant\n"
    yield [*base, option, "5", option, "6"], 2, f"tapbook: {option} is given twice\nkeep the one that is meant\n"
    if option == "--db":
        return  # what may be wrong with a catalog: bad_input_catalogs.py
    row = table.OPTIONS[command][option]
    if isinstance(row, table.Number):
        first = next(name for name, other in table.OPTIONS[command].items() if isinstance(other, table.Number))
        yield from number_rows(base, option, row, NO_NUMBERS if option == first else SOME_NO_NUMBERS)
    else:
        for value, exit_code, says in row:
            yield [*base, option, value], exit_code, says


def command_rows(asked):
    for command in asked.commands:
        words = command.split()
        lists = f"tapbook: {command} has no option --frobnicate\ntapbook {command} --help lists its options\n"
        yield [*words, "--frobnicate"], 2, lists
        yield [*words, "-x"], 2, lists.replace("--frobnicate", "-x")
        yield [*words, "--\x1b[31m"], 2, lists.replace("--frobnicate", "--<U+001B>[31m")
        for option in asked.options[command]:
            typed = option + "x"
            yield [*words, typed], 2, f"tapbook: {command} has no option {typed}\ndid you mean {option}?\n"
        yield [*words[:-1], words[-1] + "x"], 2, f"tapbook: there is no command \"{command}x\"\ndid you mean `tapbook {command}`?\n"
        yield ["--db", "shop.sqlite", *words], 2, "tapbook: the command comes first, before \"--db\"\ntapbook --help lists all commands\n"
        for wanted, wrong, says in table.WORDS.get(command, []):
            yield [*words, *wrong], wanted, says if callable(says) else says.replace("USAGE", asked.usage[command].strip())
    yield from table.WHOLE_LINES


def same_with_zeros(asked):
    """A number with zeros before it is the same number: ten is never taken for eight."""
    for command, options in table.OPTIONS.items():
        for option, row in options.items():
            stays_open = command == "serve"  # with a good port it would not come back
            if isinstance(row, table.Number) and command in asked.commands and not stays_open:
                dry = ["--dry-run"] if "--dry-run" in asked.options[command] else []
                base = [*command.split(), *table.base_without(command, option), *dry]
                sign = "-" if row.good.startswith("-") else ""
                yield [*base, option, row.good], [*base, option, sign + "00" + row.good.removeprefix("-")]
    yield ["calc", "wire", "--awg", "2/0", "--metres", "1", "--amps", "1"], ["calc", "wire", "--awg", "00", "--metres", "1", "--amps", "1"]


def missing_rows(asked):
    for command in asked.commands:
        if command not in table.OPTIONS:
            yield f"bad_words_table.py has no row for: {command}"
        for option, takes_value in asked.options[command].items():
            if takes_value and option != "--db" and option not in table.OPTIONS.get(command, {}):
                yield f"bad_words_table.py has no row for: {command} {option}"


def play(asked, row):
    words, exit_code, says = row
    done = asked.run(words)
    out, err = done.stdout.decode("utf-8", "backslashreplace"), done.stderr.decode("utf-8", "backslashreplace")
    if done.returncode == exit_code and (says(err) if callable(says) else err == says) and out == "":
        return None
    return f"tapbook {' '.join(map(repr, words))[:300]}\n  exit {done.returncode} instead of {exit_code}\n  got      {err[:500]!r}\n  expected {says!r:.500}\n  answer   {out[:200]!r}"


def main():
    arguments = argparse.ArgumentParser()
    arguments.add_argument("--program", required=True)
    program = pathlib.Path(arguments.parse_args().program).resolve()
    with tempfile.TemporaryDirectory(prefix="tapbook-") as name:
        folder = pathlib.Path(name)
        bad_input.prepare(folder, program)
        asked = Asked(program, folder)
        (folder / "switched.toml").write_text(bad_words_notes.SWITCHED)
        for words in bad_words_notes.PREPARE:
            if asked.run(words).returncode != 0:
                sys.exit(f"not prepared: tapbook {' '.join(words)}")
        before = bad_input.snapshot(folder)
        problems = list(missing_rows(asked))
        rows = list(command_rows(asked))
        for command in asked.commands:
            for option, takes_value in asked.options[command].items():
                if command in table.OPTIONS and (option == "--db" or not takes_value or option in table.OPTIONS[command]):
                    rows += option_rows(asked, command, option, takes_value)
        with concurrent.futures.ThreadPoolExecutor(2) as pool:
            problems += [problem for problem in pool.map(lambda row: play(asked, row), rows) if problem]
            pairs = list(same_with_zeros(asked))
            for (plain, zeros), one, two in zip(pairs, pool.map(asked.run, [p for p, _ in pairs]), pool.map(asked.run, [z for _, z in pairs])):
                if one.returncode not in (0, 1) or (one.returncode, one.stdout, one.stderr) != (two.returncode, two.stdout, two.stderr):
                    problems.append(f"not the same: {' '.join(plain)} and {' '.join(zeros)}: exit {one.returncode} and {two.returncode}: {one.stderr[:200]!r}")
        asked.run(["rebuild", "--dry-run"])  # two that close at the same instant leave an empty log; the next takes it away
        if bad_input.snapshot(folder) != before:
            problems.append(f"something refused has changed the folder: {sorted(bad_input.snapshot(folder).keys() ^ before.keys())}")
    print("\n".join(problems[:40]))
    print(f"{len(asked.commands)} commands, {sum(map(len, asked.options.values()))} options, {len(rows)} wrong lines, {len(pairs)} numbers with zeros; {len(problems)} problems")
    sys.exit(1 if problems or len(asked.commands) < 15 else 0)


if __name__ == "__main__":
    main()
