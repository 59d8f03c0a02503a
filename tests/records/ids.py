#!/usr/bin/env python3
"""Are the golden ids those of another hash library? Prints the id of each line of golden.jsonl: the first 16 bytes of
SHA-256 over "tapbook/1", a line feed and the line (hashlib and json of Python; nothing of the program is used).
--check compares them with golden.ids and each line with Python's own spelling of it."""
import hashlib
import json
import pathlib
import sys
import unicodedata

here = pathlib.Path(__file__).resolve().parent


def lines():
    text = (here / "golden.jsonl").read_bytes()
    if not text.endswith(b"\n") or b"\r" in text:
        sys.exit("golden.jsonl: every line ends with one line feed")
    return text[:-1].split(b"\n")


def record_id(line):
    return hashlib.sha256(b"tapbook/1\n" + line).digest()[:16].hex()


def complaint(line):
    """Why a line is not in the accepted form as far as Python can tell, or None."""
    text = line.decode("utf-8")
    record = json.loads(text)
    if json.dumps(record, sort_keys=True, separators=(",", ":"), ensure_ascii=False) != text:
        return "is not spelled as Python spells it"
    if unicodedata.normalize("NFC", text) != text:
        return "is not in composed form"
    return None


def check():
    ids = [record_id(line) for line in lines()]
    wanted = (here / "golden.ids").read_text(encoding="ascii").split()
    faults = [f"line {number}: {reason}" for number, line in enumerate(lines(), 1) if (reason := complaint(line))]
    if ids != wanted:
        faults.append("golden.ids differs from the ids computed now")
    if len(ids) != 12 or len(set(ids)) != 12:
        faults.append("there are not twelve different records")
    return faults


if __name__ == "__main__":
    if sys.argv[1:] == ["--check"]:
        found = check()
        print("\n".join(found) or "twelve golden ids agree with hashlib")
        sys.exit(1 if found else 0)
    print("\n".join(record_id(line) for line in lines()))
