#!/usr/bin/env python3
"""Is every mistaken or hostile rule file refused, with its place, its reason and the way out?

Each row below is one rule file. refused_rule_files.txt holds the whole text that the program prints for it; --accept writes that
file anew, and the difference is read before it is committed. Every row must end with exit code 3, through `rules check` and through
`advise`, print nothing on standard output, and leave the catalog as it was.
"""
import argparse
import os
import pathlib
import subprocess
import sys
import tempfile

SOUND = b"""[[rule]]
id = "own-limit"
asks = "Does the tap reach more than nine volts?"
when = "signal.clean_high_v > 9"
effect = "stop"
unknown = "care"
says = "the tap reaches {signal.clean_high_v:.1f} V"
basis = "common practice"
[[rule.case]]
given = { "signal.clean_high_v" = 9.5 }
fires = true
[[rule.case]]
given = { "signal.clean_high_v" = 8.5 }
fires = false
"""


def when(condition):
    """The sound file with another condition, written as TOML writes it."""
    written = condition.replace("\\", "\\\\").replace('"', '\\"').encode()
    return SOUND.replace(b'"signal.clean_high_v > 9"', b'"' + written + b'"')


def put(old, new):
    assert old.encode() in SOUND, old
    return SOUND.replace(old.encode(), new.encode() if isinstance(new, str) else new, 1)


ROWS = {
    # the condition: not one expression
    "syntax error": when("signal.clean_high_v > > 9"),
    "ends too early": when("signal.clean_high_v >"),
    "parenthesis never closed": when("(signal.clean_high_v > 9"),
    "parenthesis never opened": when("signal.clean_high_v > 9)"),
    "breaking out of the parentheses": when("signal.clean_high_v > 9) FROM signal, (converter"),
    "text behind it": when("signal.clean_high_v > 9 always"),
    "second statement": when("signal.clean_high_v > 9; DROP TABLE signal"),
    "second value": when("signal.clean_high_v > 9, 1"),
    "statement instead of a condition": when("PRAGMA table_info(signal)"),
    "attaching a file": when("ATTACH 'practice.sqlite' AS other"),
    "attaching behind a value": when("1 OR ATTACH 'practice.sqlite' AS other"),
    "pragma as a table": when("'x' IN pragma_database_list"),
    "comment to the end": when("signal.clean_high_v > 9 -- AND tap.minutes > 5"),
    "comment that hides": when("signal.clean_high_v > 9 /* OR tap.minutes > 5 */"),
    "comment never closed": when("signal.clean_high_v > 9 /* and"),
    "NUL written as an escape": SOUND.replace(b"clean_high_v > 9", b"clean_high_v \\u0000> 9"),
    "empty condition": when(""),
    "blank condition": when("   "),
    # the condition: reaching elsewhere
    "subquery on the notes": when("(SELECT count(*) FROM note) > 0"),
    "subquery on the key": when("signal.clean_high_v > 9 OR EXISTS (SELECT 1 FROM secret)"),
    "subquery on the schema": when("(SELECT sql FROM sqlite_master) = ''"),
    "recursion without end": when("(WITH RECURSIVE n(i) AS (SELECT 1 UNION ALL SELECT i+1 FROM n) SELECT max(i) FROM n) > 0"),
    "table instead of a list": when("signal.clean_high_v IN signal"),
    "VALUES": when("signal.clean_high_v IN (VALUES (1))"),
    "numbered parameter": when("signal.clean_high_v > ?1"),
    "named parameter with colon": when("signal.clean_high_v > :a"),
    "named parameter with at": when("signal.clean_high_v > @b"),
    "named parameter with dollar": when("signal.clean_high_v > $c"),
    # the condition: functions
    "loading a library": when("load_extension('./own') = signal.clean_high_v"),
    "reading a file": when("readfile('/etc/passwd') = signal.source"),
    "random bytes": when("randomblob(1000000000) = signal.source"),
    "huge blob": when("zeroblob(1000000000) = signal.source"),
    "huge width": when("printf('%1000000000d', 1) = signal.source"),
    "huge width by another name": when("format('%1000000000d', 1) = signal.source"),
    "aggregate": when("sum(signal.clean_high_v) > 9"),
    "aggregate by one value": when("max(signal.clean_high_v) > 9"),
    "window": when("row_number() OVER () > signal.clean_high_v"),
    "today": when("date('now') > signal.source"),
    "function nobody knows": when("volts(signal.clean_high_v) > 9"),
    "function with too many values": when("abs(signal.clean_high_v, 1) > 9"),
    # the condition: size
    "a million bytes": when("signal.clean_high_v > 9" + " OR signal.clean_high_v > 9" * 40000),
    "a thousand parentheses": when("(" * 1000 + "signal.clean_high_v > 9" + ")" * 1000),
    "a thousand operators": when("signal.clean_high_v > 9" + " + 1" * 1000),
    # the condition: sound, but not to be computed
    "pattern too complex": when("'" + "a" * 2000 + "' LIKE '" + "%a" * 400 + "b' OR signal.clean_high_v > 9"),
    "whole number too large": when("abs(-9223372036854775807 - 1) > 0 OR signal.clean_high_v > 9"),
    # the condition: names and types
    "misspelt column": when("signal.clean_hihg_v > 9"),
    "misspelt relation": when("signl.clean_high_v > 9"),
    "misspelt column behind a constant": when("0 AND signal.clean_hihg_v > 9"),
    "column that several relations have": when("rated_w > 9"),
    "column nobody knows": when("customer.wallet > 9"),
    "row number": when("signal.rowid > 9"),
    "no column at all": when("1"),
    "text compared with a number": when("tap.drive = 9"),
    "number compared with a text": when("signal.clean_high_v > 'nine'"),
    # the sentence
    "sentence with an unknown column": put("{signal.clean_high_v:.1f}", "{signal.clean_high:.1f}"),
    "sentence with a width": put("clean_high_v:.1f}", "clean_high_v:1000000000.1f}"),
    "sentence with a conversion": put("clean_high_v:.1f}", "clean_high_v!r}"),
    "sentence with a brace never closed": put("{signal.clean_high_v:.1f}", "{signal.clean_high_v"),
    "sentence with a stray brace": put("{signal.clean_high_v:.1f}", "nine} volts"),
    "sentence that formats a text": put("{signal.clean_high_v:.1f}", "{tap.drive:.1f}"),
    # the table
    "missing key": put('asks = "Does the tap reach more than nine volts?"\n', ""),
    "unknown key": put("asks =", "ask ="),
    "effect nobody knows": put('effect = "stop"', 'effect = "stpo"'),
    "worth of unknown nobody knows": put('unknown = "care"', 'unknown = "perhaps"'),
    "basis without source": put('"common practice"', '"published: "'),
    "id that is no slug": put("own-limit", "Own limit"),
    "id twice": SOUND + SOUND,
    "no case that fires": put("fires = true", "fires = false"),
    "case with an unknown column": put('given = { "signal.clean_high_v" = 9.5 }', 'given = { "signal.clean_hihg_v" = 9.5 }'),
    "case with a text for a number": put("= 9.5 }", '= "9.5" }'),
    "switched off without a reason": b'[[rule]]\nid = "hazard-on-the-way"\noff = ""\n',
    "switched off with more than a reason": b'[[rule]]\nid = "hazard-on-the-way"\noff = "we look"\neffect = "info"\n',
    "switching off what is not there": b'[[rule]]\nid = "hazard-on-the-wya"\noff = "we look"\n',
    # the file
    "no TOML": b'[[rule]\nid = "own-limit"\n',
    "text never closed": put('"common practice"', '"common practice'),
    "another table": put("[[rule]]", "[[rules]]"),
    "one table": b'[rule]\nid = "own-limit"\n',
    "NUL byte": put("signal.clean_high_v > 9", b"signal.clean_high_v \x00> 9"),
    "no UTF-8": put("Does the tap", b"Does the \xff\xfe tap"),
}


def main():
    arguments = argparse.ArgumentParser()
    arguments.add_argument("--program", required=True)
    arguments.add_argument("--accept", action="store_true")
    given = arguments.parse_args()
    program = str(pathlib.Path(given.program).resolve())
    texts = pathlib.Path(__file__).with_suffix(".txt")
    problems, written = [], ""
    with tempfile.TemporaryDirectory() as name:
        folder = pathlib.Path(name)
        keep = {"PATH": os.environ["PATH"], "LC_ALL": "C.UTF-8", "HOME": name, "COLUMNS": "100", "TAPBOOK_TODAY": "2026-05-02"}

        def call(*words):
            return subprocess.run([program, *words, "--db", "practice.sqlite"], cwd=folder, env=keep, capture_output=True, timeout=20)

        call("demo")
        before = (folder / "practice.sqlite").read_bytes()
        for row, content in ROWS.items():
            (folder / "practice.rules.toml").write_bytes(content)
            checked = call("rules", "check")
            advised = call("advise", "ostrel", "--system", "base")
            if checked.returncode != 3 or advised.returncode != 3:
                problems.append(f"{row}: exit codes {checked.returncode} and {advised.returncode}, not 3")
            if checked.stdout or advised.stdout:
                problems.append(f"{row}: something on standard output: {(checked.stdout + advised.stdout)[:200]!r}")
            if checked.stderr != advised.stderr:
                problems.append(f"{row}: rules check and advise say different things")
            if len(checked.stderr) > 2000 or any(byte < 32 and byte != 10 for byte in checked.stderr):
                problems.append(f"{row}: too long, or control bytes are sent: {checked.stderr[:300]!r}")
            written += f"== {row}\n{checked.stderr.decode('utf-8', 'replace')}\n"
        (folder / "practice.rules.toml").write_bytes(SOUND)
        if call("rules", "check").returncode != 0:
            problems.append("the sound file is refused")
        if (folder / "practice.sqlite").read_bytes() != before:
            problems.append("the catalog was changed")
    if given.accept:
        texts.write_text(written)
    expected, got = texts.read_text().split("== ")[1:], written.split("== ")[1:]
    for old, new in zip(expected, got):
        if old != new:
            problems.append(f"expected:\n{old}got:\n{new}")
    if len(expected) != len(got):
        problems.append(f"{len(expected)} texts for {len(got)} rows")
    print("\n".join(problems))
    print(f"{len(ROWS)} rule files refused" if not problems else f"{len(problems)} problems")
    sys.exit(1 if problems else 0)


if __name__ == "__main__":
    main()
