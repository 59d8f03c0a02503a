#!/usr/bin/python3
"""The only way to change an approved output: look at what the tests received, and accept it.

A test that compares with tests/approved/NAME.txt writes NAME.received.txt below its build folder when the two differ.

    tools/approve.py BUILD            lists what was received and copies it over the approved text
    tools/approve.py --show BUILD     shows the differences and changes nothing; exit code 1 when there are any

A received text is removed once it is accepted, or when it equals the approved one. Two different received texts of one
name are refused: run the tests again.
"""
import argparse
import difflib
import sys
from pathlib import Path

APPROVED = Path(__file__).resolve().parent.parent / "tests" / "approved"
ENDING = ".received.txt"


def lines_of(path: Path) -> list[str]:
    """Bytes that are no UTF-8 and unusual line ends are kept visible, not translated."""
    if not path.exists():
        return []
    return path.read_bytes().decode("utf-8", errors="backslashreplace").split("\n")


def received_below(build: Path) -> dict[str, list[Path]]:
    found: dict[str, list[Path]] = {}
    for path in sorted(build.rglob("*" + ENDING)):
        found.setdefault(path.name.removesuffix(ENDING), []).append(path)
    return found


def main() -> int:
    parser = argparse.ArgumentParser(description="Accepts received test outputs as the approved ones.")
    parser.add_argument("build", type=Path, help="the build folder the tests ran in")
    parser.add_argument("--show", action="store_true", help="show the differences, change nothing")
    parser.add_argument("--approved", type=Path, default=APPROVED, help="the folder of approved texts")
    arguments = parser.parse_args()
    if not arguments.build.is_dir():
        parser.error(f"{arguments.build} is no folder")

    different = 0
    for name, paths in received_below(arguments.build).items():
        approved = arguments.approved / f"{name}.txt"
        if len({path.read_bytes() for path in paths}) > 1:
            print(f"{name}: received in different versions, run the tests again: {', '.join(map(str, paths))}", file=sys.stderr)
            return 1
        received = paths[0].read_bytes()
        if not approved.exists() or received != approved.read_bytes():
            different += 1
            difference = list(difflib.unified_diff(lines_of(approved), lines_of(paths[0]), f"approved/{name}", f"received/{name}",
                                                   lineterm=""))
            added = sum(line.startswith("+") for line in difference[2:])
            removed = sum(line.startswith("-") for line in difference[2:])
            print(f"{name}: {'changed' if approved.exists() else 'new'}, +{added} -{removed} lines")
            if arguments.show:
                print("\n".join(difference))
            else:
                approved.parent.mkdir(parents=True, exist_ok=True)
                approved.write_bytes(received)
        if not arguments.show:
            for path in paths:
                path.unlink()
    print(f"{different} {'differ' if arguments.show else 'accepted'}")
    return 1 if arguments.show and different else 0


if __name__ == "__main__":
    sys.exit(main())
