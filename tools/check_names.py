#!/usr/bin/python3
"""Does the program know its demo data? It must not: no name of data/ may occur in src/.

Names are the values of the keys below in every TOML file of data/, longer than three characters. A name made of plain words of
the trade only ("front-left", "Premium") is no name and is left out. They are searched as whole words, in any case,
joined by blank, hyphen, underscore or nothing, in every text file of src/: code, comments and shipped rules.

    tools/check_names.py [FOLDER]     FOLDER: the repository

Prints each find as path:line: text. Exit code 1 when there is one, or when data/ holds no name to look for.
"""
import re
import sys
import tomllib
from pathlib import Path
from typing import Iterator

NAME_KEYS = {"make", "model", "name", "maker", "shop", "code"}
SHORTEST_NAME = 4
PLAIN_WORDS = set("""
    a accessory aerial amplifier and at audio band base bass battery black blue body boosted bridged brown bus call cabin cable camera
    car center centre channel chime column common connector constant converter crank dash dashboard demo digital direct door
    driver eight estate external factory five flat four front full fuse fused gain green grey ground hatch hatchback head high
    ignition illumination in input kick lamp lead left level light line low lower main mid middle midrange mono of off on one orange
    output panel parcel part passenger passive pillar pink plain plug plus power powered practice premium radio range rear red
    relay remote return right seat sedan sensor shelf shop side signal six small sound speaker split standard stereo sub
    subwoofer supply surround switched system tan tap three trunk turn tweeter two unit unrecorded upper van violet volume
    wagon white wire with without woofer yellow
""".split())


def words_of(name: str) -> list[str]:
    return re.findall(r"[^\W_]+", name.casefold())


def is_plain(name: str) -> bool:
    return all(word in PLAIN_WORDS or word.isdecimal() or len(word) == 1 for word in words_of(name))


def values(tree: object) -> Iterator[str]:
    """Every string under one of NAME_KEYS, however deep."""
    if isinstance(tree, dict):
        for key, value in tree.items():
            if key in NAME_KEYS and isinstance(value, str):
                yield value
            else:
                yield from values(value)
    elif isinstance(tree, list):
        for item in tree:
            yield from values(item)


def demo_names(root: Path) -> dict[str, str]:
    """Each name of data/ and the first file it stands in."""
    names: dict[str, str] = {}
    for path in sorted((root / "data").rglob("*.toml")):
        for value in values(tomllib.loads(path.read_text(encoding="utf-8"))):
            if len(value) >= SHORTEST_NAME and not is_plain(value):
                names.setdefault(value, path.relative_to(root).as_posix())
    return names


def pattern_for(name: str) -> re.Pattern[str]:
    return re.compile(r"(?<![^\W_])" + r"[\W_]?".join(map(re.escape, words_of(name))) + r"(?![^\W_])", re.IGNORECASE)


def finds(root: Path, names: dict[str, str]) -> Iterator[str]:
    patterns = [(name, origin, pattern_for(name)) for name, origin in names.items()]
    for path in sorted(p for p in (root / "src").rglob("*") if p.is_file()):
        try:
            text = path.read_text(encoding="utf-8")
        except UnicodeDecodeError:
            continue
        for name, origin, pattern in patterns:
            for match in pattern.finditer(text):
                line = text.count("\n", 0, match.start()) + 1
                yield f'{path.relative_to(root).as_posix()}:{line}: "{match[0]}" is demo data ({name}, {origin})'


def main() -> int:
    root = Path(sys.argv[1]) if len(sys.argv) > 1 else Path(__file__).resolve().parent.parent
    names = demo_names(root)
    if not names:
        print("data:1: no name to look for in data/*.toml")
        return 1
    found = list(finds(root, names))
    print(*found, sep="\n", end="\n" if found else "")
    if not found:
        print(f"names: none of {len(names)} names of data/ occurs in src/")
    return 1 if found else 0


if __name__ == "__main__":
    sys.exit(main())
