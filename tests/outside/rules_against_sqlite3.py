#!/usr/bin/env python3
"""Does the program judge rule conditions as SQLite does? 200 random conditions, each over 10 draws of values of which some
are unknown, are answered by the sqlite3 shell (version 3.40, the Debian program); each becomes a rule whose cases state
those answers, and `tapbook rules check` has to agree with all of them. A second file states a wrong answer in every case,
and each has to be reported. Traps: unknown taken for false, whole-number division, text compared with a number, precedence of NOT."""
import argparse
import os
import pathlib
import random
import re
import subprocess
import sys
import tempfile

# Columns of the table that `tapbook rules columns` prints, with their types; values are chosen around each other.
COLUMNS = {
    "signal.clean_high_v": "REAL", "signal.clean_low_v": "REAL", "converter.limit_at_lowest_v": "REAL", "job.lowest_hz": "REAL",
    "level.pairs": "INTEGER", "tap.minus_is_driven": "INTEGER", "converter.isolates": "INTEGER",
    "converter.reference": "TEXT", "amplifier.shield": "TEXT",
}
WORDS = ["chassis", "floating", "differential", "lifted"]
VALUES = {"REAL": ["0.0", "0.5", "2.0", "8.0", "9.6", "-3.25", "40.0"], "INTEGER": ["0", "1", "2", "3", "-1"], "TEXT": [f"'{word}'" for word in WORDS]}

DRAWS = 10
OTHER = {"true": "false", "false": "true", "unsettled": "true"}


class Writer:
    def __init__(self, seed):
        self.dice = random.Random(seed)

    def column(self, *types):
        return self.dice.choice([name for name, kind in COLUMNS.items() if kind in types])

    def number(self, depth):
        kind = self.dice.randrange(9 if depth > 0 else 2)
        if kind == 0:
            return self.dice.choice(VALUES["REAL"] + VALUES["INTEGER"])
        if kind in (1, 2):
            return self.column("REAL", "INTEGER")
        if kind in (3, 4):
            return f"({self.number(depth - 1)} {self.dice.choice('+-*/%')} {self.number(depth - 1)})"
        if kind == 5:
            return f"{self.dice.choice(['abs', 'round', 'sign'])}({self.number(depth - 1)})"
        if kind == 6:
            return f"{self.dice.choice(['coalesce', 'ifnull', 'min', 'max', 'nullif'])}({self.number(depth - 1)}, {self.number(depth - 1)})"
        if kind == 7:
            return f"CASE WHEN {self.truth(depth - 1)} THEN {self.number(depth - 1)} ELSE {self.number(depth - 1)} END"
        return f"iif({self.truth(depth - 1)}, {self.number(depth - 1)}, {self.number(depth - 1)})"

    def text(self):
        return self.column("TEXT") if self.dice.random() < 0.7 else self.dice.choice(VALUES["TEXT"])

    def truth(self, depth):
        kind = self.dice.randrange(10 if depth > 0 else 4)
        sign = self.dice.choice(["<", "<=", "=", "<>", ">", ">=", "==", "!=", "IS", "IS NOT"])
        if kind in (0, 1):
            return f"{self.number(depth - 1 if depth > 0 else 0)} {sign} {self.number(0)}"
        if kind == 2:
            return f"{self.text()} {sign} {self.text()}"
        if kind == 3:
            return f"{self.column('REAL', 'INTEGER', 'TEXT')} {self.dice.choice(['IS NULL', 'IS NOT NULL', 'NOTNULL', 'ISNULL'])}"
        if kind in (4, 5):
            return f"({self.truth(depth - 1)} {self.dice.choice(['AND', 'OR'])} {self.truth(depth - 1)})"
        if kind == 6:
            return f"NOT {self.truth(depth - 1)}"
        if kind == 7:
            return f"{self.number(0)} {self.dice.choice(['', 'NOT '])}BETWEEN {self.number(0)} AND {self.number(0)}"
        if kind == 8:
            return f"{self.text()} {self.dice.choice(['', 'NOT '])}IN ({self.text()}, {self.text()})"
        return f"{self.truth(depth - 1)} {self.dice.choice(['AND', 'OR'])} {self.truth(depth - 1)}"

    def values(self):
        return {name: self.dice.choice(VALUES[kind]) for name, kind in COLUMNS.items() if self.dice.random() < 0.65}


def asked_of_sqlite(cases):
    """True, False or None for each (condition, values)."""
    relations = sorted({name.split(".")[0] for name in COLUMNS})
    script = []
    for relation in relations:
        script.append(f"CREATE TABLE {relation} ({', '.join(name.split('.')[1] + ' ' + kind for name, kind in COLUMNS.items() if name.startswith(relation + '.'))}) STRICT;")
    for condition, values in cases:
        for relation in relations:
            names = [name for name in COLUMNS if name.startswith(relation + ".")]
            script += [f"DELETE FROM {relation};", f"INSERT INTO {relation} VALUES ({', '.join(values.get(name, 'NULL') for name in names)});"]
        script.append(f"SELECT CASE WHEN ({condition}) IS NULL THEN 'unsettled' WHEN ({condition}) THEN 'true' ELSE 'false' END FROM {', '.join(relations)};")
    done = subprocess.run(["sqlite3", "-bail", ":memory:"], input="\n".join(script), capture_output=True, text=True, timeout=60)
    if done.returncode != 0:
        sys.exit("sqlite3: " + done.stderr)
    found = done.stdout.split()
    if len(found) != len(cases):
        sys.exit(f"sqlite3 answered {len(found)} of {len(cases)}")
    return found


def case(values, answer):
    given = ", ".join(f'"{name}" = {value}' for name, value in values.items())
    return f"[[rule.case]]\ngiven = {{ {given} }}\n" + {"true": "fires = true\n", "false": "fires = false\n", "unsettled": ""}[answer]


def rule(number, condition, draws, answers):
    return (f'[[rule]]\nid = "random-{number}"\nasks = "Is random condition {number} true?"\nwhen = "{condition}"\neffect = "care"\n'
            'unknown = "care"\nsays = "it is true"\nsays_unknown = "it is not known"\nbasis = "physics"\n' +
            "".join(case(values, answer) for values, answer in zip(draws, answers)))


def check(program, folder, rules):
    """(rule, case, what is said) of each case that `rules check` reports."""
    (folder / "shop.rules.toml").write_text("\n".join(rule(number, *each) for number, each in enumerate(rules)))
    done = subprocess.run([program, "rules", "check", "--db", "shop.sqlite"], cwd=folder, capture_output=True, text=True, timeout=120,
                          stdin=subprocess.DEVNULL, env={"PATH": os.environ["PATH"], "HOME": str(folder)})
    if done.stderr or done.returncode not in (0, 1):
        sys.exit(f"tapbook: exit {done.returncode}\n{done.stderr[:3000]}")
    return [(int(number), int(number_of_case), says) for number, number_of_case, says in
            re.findall(r": random-(\d+), case (\d+): (.*)", done.stdout)]


def drawn(seed):
    """200 conditions that come out true for some values and false for others, with their values and answers."""
    writer, rules = Writer(seed), []
    while len(rules) < 200:
        asked = []
        while len(asked) < 100:
            condition = writer.truth(3)
            if len(condition) < 500 and any(name in condition for name in COLUMNS):
                asked.append((condition, [writer.values() for _ in range(DRAWS)]))
        answers = asked_of_sqlite([(condition, values) for condition, draws in asked for values in draws])
        for number, (condition, draws) in enumerate(asked):
            mine = answers[number * DRAWS:(number + 1) * DRAWS]
            if "true" in mine and "false" in mine:
                rules.append((condition, draws, mine))
    return rules[:200]


def main():
    arguments = argparse.ArgumentParser()
    arguments.add_argument("--program", required=True)
    given = arguments.parse_args()
    program = str(pathlib.Path(given.program).resolve())
    rules = drawn(340)
    counts = {word: sum(answers.count(word) for _, _, answers in rules) for word in ("true", "false", "unsettled")}
    if min(counts.values()) < 200:
        sys.exit(f"the draw is lopsided: {counts}")
    with tempfile.TemporaryDirectory() as name:
        folder = pathlib.Path(name)
        wrong = check(program, folder, rules)
        turned = [(condition, draws, [OTHER[answer] for answer in answers]) for condition, draws, answers in rules]
        missed = sum(counts.values()) - len(check(program, folder, turned))
    for number, number_of_case, says in wrong[:10]:
        condition, draws, answers = rules[number]
        print(f"{condition}\n  given {draws[number_of_case - 1]}\n  sqlite3: {answers[number_of_case - 1]}; program: {says}")
    print(f"{len(rules)} conditions, {counts}, {len(wrong)} differ; {missed} wrong statements were not noticed")
    sys.exit(1 if wrong or missed else 0)


if __name__ == "__main__":
    main()
