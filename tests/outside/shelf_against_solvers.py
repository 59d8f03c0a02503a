#!/usr/bin/env python3
"""Does the shelf keep the best models? Random shops of middle size, each asked three ways (so many models, a share of the jobs, a
budget), are written as integer programs and solved by glpsol (GLPK) and cbc (COIN-OR) from their files; the own search and tapbook-solve have to find
as much, and each answer is counted again here, row by row. 20 shops, or --shops N.
    --driver and --solver: the two programs under test"""
import argparse
import concurrent.futures
import pathlib
import random
import re
import subprocess
import sys
import tempfile


class Shop:
    """Weights, costs, and which columns cover each row."""

    def __init__(self, number):
        draw = random.Random(number)
        columns, rows = draw.randrange(15, 41), draw.randrange(60, 250)
        self.costs = [draw.randrange(5, 60) * 100 for _ in range(columns)]
        self.weights = [draw.randrange(1, 200) for _ in range(rows)]
        most = draw.choice((3, 5, 9))
        self.columns = [sorted(draw.sample(range(columns), draw.randrange(1, most + 1))) for _ in range(rows)]
        kind = ("at_most", "at_least", "budget")[number % 3]
        limit = {"at_most": draw.randrange(3, 9), "at_least": sum(self.weights) * draw.randrange(30, 75) // 100,
                 "budget": draw.randrange(30, 200) * 100}[kind]
        self.kind, self.limit = kind, limit

    def question(self, seconds=60):
        """In the solver's own form."""
        seek = "fewest_columns" if self.kind == "at_least" else "most_covered"
        rows = [f"row {w} {' '.join(map(str, c))}" for w, c in zip(self.weights, self.columns)]
        return "\n".join(["cover 1", f"seek {seek}", "cost " + " ".join(map(str, self.costs)), f"{self.kind} {self.limit}", *rows,
                          f"seconds {seconds}", "done", ""])

    def program(self):
        """As an integer program in CPLEX LP form, which both solvers read."""
        covered = " + ".join(f"{w} z{r}" for r, w in enumerate(self.weights))
        chosen = " + ".join(f"y{c}" for c in range(len(self.costs)))
        limit = {"at_most": f"{chosen} <= {self.limit}", "at_least": f"{covered} >= {self.limit}",
                 "budget": " + ".join(f"{k} y{c}" for c, k in enumerate(self.costs)) + f" <= {self.limit}"}[self.kind]
        goal = f"Minimize\n obj: {chosen}" if self.kind == "at_least" else f"Maximize\n obj: {covered}"
        rows = [f" r{r}: z{r} - " + " - ".join(f"y{c}" for c in columns) + " <= 0" for r, columns in enumerate(self.columns)]
        bounds = [f" 0 <= z{r} <= 1" for r in range(len(self.weights))]
        names = " ".join(f"y{c}" for c in range(len(self.costs)))
        return "\n".join([goal, "Subject To", f" limit: {limit}", *rows, "Bounds", *bounds, "Binary", f" {names}", "End", ""])

    def worth(self, chosen):
        """What these columns are worth in the program's goal; None when they break the limit."""
        covered = sum(w for w, columns in zip(self.weights, self.columns) if set(columns) & set(chosen))
        kept = {"at_most": len(chosen) <= self.limit, "at_least": covered >= self.limit,
                "budget": sum(self.costs[c] for c in chosen) <= self.limit}[self.kind]
        return (len(chosen) if self.kind == "at_least" else covered) if kept else None


def run(words, text=None):
    return subprocess.run(words, input=text, stdout=subprocess.PIPE, stderr=subprocess.STDOUT, text=True, timeout=300, check=True).stdout


def by_glpsol(file, folder):
    out = folder / "glpsol.txt"
    run(["glpsol", "--lp", file, "--cuts", "-o", out])
    text = out.read_text()
    assert "INTEGER OPTIMAL" in text, text[:300]
    return float(re.search(r"Objective:\s+obj = (\S+)", text)[1])


def by_cbc(file, folder):
    out = folder / "cbc.txt"
    run(["cbc", file, "cuts", "off", "ratio", "0", "solve", "solu", out])
    first = out.read_text().splitlines()[0]
    assert first.startswith("Optimal"), first
    return abs(float(first.split()[-1]))


def answer_of(text):
    lines = dict(line.split(" ", 1) if " " in line else (line, "") for line in text.splitlines())
    return lines["end"], [int(word) for word in lines["chosen"].split()]


def check(number, driver, solver):
    """The words against this shop's answers; none when all is well."""
    shop = Shop(number)
    with tempfile.TemporaryDirectory() as name:
        folder = pathlib.Path(name)
        file = folder / "shop.lp"
        file.write_text(shop.program())
        values = {"glpsol": by_glpsol(file, folder), "cbc": by_cbc(file, folder)}
    for who, words in (("own search", [driver, "cover", "400000000"]), ("tapbook-solve", [solver])):
        end, chosen = answer_of(run(words, shop.question()))
        values[who] = shop.worth(chosen) if end == "optimal" else f"not proved ({shop.worth(chosen)})"
    right = values["glpsol"]
    same = all(isinstance(value, (int, float)) and abs(value - right) < 1e-6 * max(1, right) for value in values.values())
    return None if same else f"shop {number} ({shop.kind} {shop.limit}): {values}"


def main():
    arguments = argparse.ArgumentParser()
    arguments.add_argument("--driver", required=True)
    arguments.add_argument("--solver", required=True)
    arguments.add_argument("--shops", type=int, default=20)
    asked = arguments.parse_args()
    with concurrent.futures.ThreadPoolExecutor(2) as pool:
        found = list(pool.map(lambda number: check(number, asked.driver, asked.solver), range(asked.shops)))
    wrong = [one for one in found if one]
    print("\n".join(wrong + [f"{asked.shops} shops, {len(wrong)} differ"]))
    sys.exit(1 if wrong else 0)


if __name__ == "__main__":
    main()
