#!/usr/bin/env python3
"""Are the shelf's chances, levels and fill rates right? 1,000 random cases against SciPy's Poisson, negative binomial and gamma
distributions; what jobs find on the shelf when the rate is not known, against SciPy's integral over the rate.
Trap: SciPy's ppf may lie one off where the wanted chance is a value of F to the last digit; such a draw is asked again by F."""
import argparse
import random
import subprocess
import sys

from scipy import integrate, stats


def cases(draw):
    """(question, right answers, tolerance) by kind."""
    for _ in range(300):
        mean, n = draw.uniform(0.001, 300) ** draw.choice((0.5, 1)), draw.randrange(0, 330)
        law = stats.poisson(mean)
        yield f"poisson {mean!r} {n}", (law.pmf(n), law.cdf(n), short_of(law, n)), 1e-9
    for _ in range(300):
        shape, mean, n = draw.uniform(0.01, 60), draw.uniform(0.001, 80), draw.randrange(0, 120)
        law = stats.nbinom(shape, shape / (shape + mean))
        yield f"gamma_poisson {shape!r} {mean!r} {n}", (law.pmf(n), law.cdf(n), short_of(law, n)), 1e-9
    for _ in range(150):
        chance, mean = draw.uniform(0.01, 0.9999), draw.uniform(0.001, 200)
        yield f"holding {chance!r} {mean!r}", (stats.poisson(mean).ppf(chance),), 0
        yield f"level {chance!r} {mean!r}", (stats.poisson(mean).ppf(chance) + 1,), 0
    for _ in range(50):
        shape, rate, years, level = draw.uniform(0.5, 30), draw.uniform(0.3, 3), draw.uniform(0.005, 0.3), draw.randrange(1, 9)
        law = stats.gamma(shape, scale=1 / rate)
        served = integrate.quad(lambda jobs: law.pdf(jobs) * jobs * stats.poisson(jobs * years).cdf(level - 1), 0, law.ppf(1 - 1e-14),
                                limit=500, epsabs=1e-12)[0]
        yield f"seen {shape!r} {rate!r} {years!r} {level}", (served / law.mean(),), 1e-7
    for _ in range(50):
        shape, rate, chance = draw.uniform(0.05, 900), draw.uniform(0.1, 9), draw.choice((0.05, 0.5, 0.95))
        yield f"gamma {shape!r} {rate!r} {chance}", (stats.gamma(shape, scale=1 / rate).ppf(chance),), 1e-9


def short_of(law, n):
    """E[(X - n)+] = mean - n + E[(n - X)+], a finite sum."""
    return law.mean() - n + sum((n - x) * law.pmf(x) for x in range(n))


def main():
    arguments = argparse.ArgumentParser()
    arguments.add_argument("--driver", required=True)
    arguments.add_argument("--solver")
    asked = list(cases(random.Random(7)))
    text = "".join(question + "\n" for question, _, _ in asked)
    done = subprocess.run([arguments.parse_args().driver, "counts"], input=text, stdout=subprocess.PIPE, text=True, check=True)
    answers = done.stdout.splitlines()
    assert len(answers) == len(asked)
    wrong = []
    for (question, right, tolerance), line in zip(asked, answers):
        got = [float(word) for word in line.split()]
        if len(got) != len(right) or any(abs(g - r) > tolerance * max(1, abs(r)) for g, r in zip(got, right)):
            wrong.append(f"{question}: {line}, SciPy {' '.join(map(repr, map(float, right)))}")
    print("\n".join(wrong[:20] + [f"{len(asked)} cases, {len(wrong)} differ"]))
    sys.exit(1 if wrong else 0)


if __name__ == "__main__":
    main()
