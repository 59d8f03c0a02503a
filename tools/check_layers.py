#!/usr/bin/python3
"""Does the tree keep the house rules that a script can see? (DEVELOPERS.md says why each one is there.)

Arrows and doors between the folders of src/, who may include a heavy or foreign header, include cycles, what the core
may not name, file lengths and names, and that no SQL changes or deletes a note.

    tools/check_layers.py [--functions] [FOLDER]     FOLDER: the repository; --functions lists functions over 40 lines

Prints each violation as path:line: text. Exit code 1 when there is one.
"""
import argparse
import re
import statistics
import sys
from pathlib import Path
from typing import Iterator, NamedTuple

sys.path.insert(0, str(Path(__file__).resolve().parent))
from cpp_text import code_only, functions, line_of, without_comments  # noqa: E402

# The arrows: what each folder is built directly on. Whatever lies below that may be included as well,
LAYERS = {
    "electrical": (),
    "trade": ("electrical",),
    "evidence": ("trade",),
    "sqlite": (),
    "catalog": ("evidence", "sqlite"),
    "files": ("catalog",),
    "shelf": ("catalog",),
    "solver": ("shelf",),
    "solve": ("solver",),  # the executable tapbook-solve
    "exchange": ("catalog",),
    "rules": ("catalog", "files", "sqlite"),
    "report": ("rules", "shelf", "exchange", "files"),
    "page": ("report", "solver"),
    "cli": ("report", "solver", "page"),
}
DIRECT_ONLY = {"sqlite"}  # except this: SQL stands in the folders that name it above and nowhere else.
TOP_HEADERS = {"embedded.h": {"catalog", "files", "shelf", "exchange", "rules", "report", "cli", "page"}}

HEAVY_HEADERS = ("CLI/CLI.hpp", "nettle", "nlohmann/json.hpp", "toml++/toml.h", "boost/beast", "boost/math", "coin")
CORE = ("electrical", "trade", "evidence", "shelf")
CORE_MAY_NOT_NAME = re.compile(
    r"\b(sqlite3\w*|std::c(?:out|err|in)|(?:secure_)?getenv|(?:system|steady)_clock|std::sto(?:[dfil]|ld|ll|ull?)"
    r"|std::locale|setlocale|fopen|[io]?fstream|random_device)\b")
MUTABLE_STATIC = re.compile(r"^\s*(?:static|thread_local)\s+(?!.*\bconst(?:expr|init)?\b)[^()\n]*[;={]", re.MULTILINE)
UNITLESS_FOLDERS = ("electrical", "trade")  # no bare number in their headers ...
QUANTITY_HEADER = re.compile(r"^electrical/quantit\w*\.h$")  # ... except where quantities are made of them.
NOTE_TABLE = r"""(?:main\s*\.\s*)?["'`\[]?note\b"""
CHANGES_NOTES = re.compile(
    rf"""\b(?:UPDATE(?:\s+OR\s+\w+)?|DELETE\s+FROM|(?:INSERT\s+OR\s+)?REPLACE\s+INTO)[\s"\\]+{NOTE_TABLE}""", re.IGNORECASE)
VAGUE_NAMES = {"util", "utils", "common", "helper", "helpers", "misc", "manager"}
LONGEST_FILE, MEDIAN_FILE, LONGEST_FUNCTION = 350, 120, 40

INCLUDE = re.compile(r'^[ \t]*#[ \t]*include[ \t]*([<"])([^>"\n]+)[>"]', re.MULTILINE)
CPP = {".h", ".hpp", ".cpp", ".cc"}


class Violation(NamedTuple):
    path: str
    line: int
    text: str

    def __str__(self) -> str:
        return f"{self.path}:{self.line}: {self.text}"


class Source(NamedTuple):
    path: str    # from the repository: src/trade/path.h
    name: str    # as an #include names it: trade/path.h
    folder: str  # the layer, "" at the top of src/
    text: str

    def includes(self) -> Iterator[tuple[int, str, str]]:
        """Line, opening bracket and name of each #include."""
        text = without_comments(self.text)
        for match in INCLUDE.finditer(text):
            yield line_of(text, match.start(1)), match[1], match[2]

    def is_header(self) -> bool:
        return self.name.endswith((".h", ".hpp"))


def files_below(root: Path, folder: str, suffixes: set[str]) -> list[Path]:
    return sorted(p for p in (root / folder).rglob("*") if p.is_file() and p.suffix in suffixes)


def read_sources(root: Path) -> list[Source]:
    sources = []
    for path in files_below(root, "src", CPP):
        name = path.relative_to(root / "src").as_posix()
        folder = name.split("/")[0] if "/" in name else ""
        sources.append(Source(f"src/{name}", name, folder, path.read_text(encoding="utf-8")))
    return sources


def below(folder: str) -> set[str]:
    """Every folder whose door `folder` may include."""
    direct = LAYERS[folder]
    return set(direct) | {low for layer in direct for low in below(layer) if low not in DIRECT_ONLY}


def check_arrows(sources: list[Source]) -> Iterator[Violation]:
    names = {source.name for source in sources}
    for source in sources:
        if source.folder and source.folder not in LAYERS:
            yield Violation(source.path, 1, f"src/{source.folder}/ has no place among the layers")
            continue
        for line, bracket, name in source.includes():
            target = name.split("/")[0] if "/" in name else ""
            if target in LAYERS:
                if target != source.folder:
                    yield from check_arrow(source, line, name, target)
            elif name in TOP_HEADERS:
                if source.folder and source.folder not in TOP_HEADERS[name]:
                    yield Violation(source.path, line, f"{source.folder}/ lies too low to include {name}")
            elif bracket == '"' and name not in names:
                yield Violation(source.path, line, f'"{name}" is not written from src/')
            elif name in names:
                yield Violation(source.path, line, f"{name} at the top of src/ is nobody's to include")


def check_arrow(source: Source, line: int, name: str, target: str) -> Iterator[Violation]:
    if not source.folder or target not in below(source.folder):
        yield Violation(source.path, line, f"{source.folder or 'the top of src'}/ may not include {target}/")
    elif name != f"{target}/{target}.h":
        yield Violation(source.path, line, f"{source.folder}/ must go through {target}/{target}.h, not {name}")


def check_foreign_headers(sources: list[Source]) -> Iterator[Violation]:
    first_user: dict[str, str] = {}
    for source in sources:
        for line, _, name in source.includes():
            if name == "sqlite3.h" and not (source.folder == "sqlite" and source.name.endswith(".cpp")):
                yield Violation(source.path, line, "only src/sqlite/*.cpp include sqlite3.h")
            for heavy in HEAVY_HEADERS:
                if name == heavy or name.startswith((heavy + "/", heavy + ".")):
                    user = first_user.setdefault(heavy, source.path)
                    if user != source.path:
                        yield Violation(source.path, line, f"{heavy} is heavy and already included in {user}")


def check_cycles(sources: list[Source]) -> Iterator[Violation]:
    by_name = {source.name: source for source in sources}
    done: set[str] = set()
    on_way: list[str] = []

    def visit(name: str) -> Iterator[Violation]:
        on_way.append(name)
        for line, _, included in by_name[name].includes():
            if included in on_way:
                ring = on_way[on_way.index(included):] + [included]
                yield Violation(by_name[name].path, line, "include cycle: " + " -> ".join(ring))
            elif included in by_name and included not in done:
                yield from visit(included)
        done.add(on_way.pop())

    for source in sources:
        if source.name not in done:
            yield from visit(source.name)


def check_code(sources: list[Source]) -> Iterator[Violation]:
    for source in sources:
        code = code_only(source.text)
        lines = source.text.splitlines()

        def found(pattern: str | re.Pattern[str], text: str) -> Iterator[Violation]:
            for match in re.finditer(pattern, code):
                word = match[0].strip()
                yield Violation(source.path, line_of(code, match.end() - 1), text.format(word))

        if not source.text.startswith(("//", "/*")):
            yield Violation(source.path, 1, "does not open with a comment that says what question the file answers")
        if source.folder in CORE:
            yield from found(CORE_MAY_NOT_NAME, "{} has no place in " + source.folder + "/")
            yield from found(MUTABLE_STATIC, "mutable static in " + source.folder + "/: {}")
        if source.folder in UNITLESS_FOLDERS and source.is_header() and not QUANTITY_HEADER.match(source.name):
            yield from found(r"\b(?:double|float)\b", "{} in a header: use a quantity")
        for violation in found(r"\bdefault\s*:(?!:)", "default: hides a new enum value (not ours? say // not our enum)"):
            if "// not our enum" not in lines[violation.line - 1]:
                yield violation


def check_notes_kept(root: Path) -> Iterator[Violation]:
    for folder in ("src", "schema"):
        for path in files_below(root, folder, CPP | {".sql", ".toml"}):
            text = path.read_text(encoding="utf-8")
            if path.suffix in CPP:
                text = without_comments(text)
            elif path.suffix == ".sql":
                text = re.sub(r"--[^\n]*", "", text)
            for match in CHANGES_NOTES.finditer(text):
                statement = " ".join(match[0].split())
                yield Violation(path.relative_to(root).as_posix(), line_of(text, match.start()),
                                f"{statement}: a note is never changed or deleted")


def check_sizes(root: Path) -> Iterator[Violation]:
    src_lengths = []
    for folder in ("src", "tests"):
        for path in files_below(root, folder, CPP):
            length = len(path.read_text(encoding="utf-8").splitlines())
            if folder == "src":
                src_lengths.append(length)
            if length > LONGEST_FILE:
                yield Violation(path.relative_to(root).as_posix(), LONGEST_FILE + 1,
                                f"{length} lines, {LONGEST_FILE} at most")
    if src_lengths and (median := statistics.median(src_lengths)) >= MEDIAN_FILE:
        yield Violation("src", 1, f"the median file has {median:g} lines, it must stay under {MEDIAN_FILE}")


def check_names(root: Path) -> Iterator[Violation]:
    for folder in ("src", "tests", "tools", "schema"):
        for path in sorted((root / folder).rglob("*")):
            words = re.split(r"[_-]", path.name.lower().split(".")[0].removesuffix("_test"))
            vague = words[-1] in VAGUE_NAMES or words[0] in VAGUE_NAMES - {"common"}  # common_return is a word of the trade
            if vague and "__pycache__" not in path.parts:
                yield Violation(path.relative_to(root).as_posix(), 1, "a name that says nothing of what is inside")


def violations(root: Path) -> list[Violation]:
    sources = read_sources(root)
    if not sources:
        return [Violation("src", 1, "no C++ file here")]
    found = [*check_arrows(sources), *check_foreign_headers(sources), *check_cycles(sources), *check_code(sources),
             *check_notes_kept(root), *check_sizes(root), *check_names(root)]
    return sorted(found)


def long_functions(root: Path) -> Iterator[Violation]:
    for source in read_sources(root):
        for function in functions(source.text):
            if function.length > LONGEST_FUNCTION:
                yield Violation(source.path, function.line, f"a function of {function.length} lines")


def main() -> int:
    parser = argparse.ArgumentParser(description="Checks the house rules that a script can see.")
    parser.add_argument("root", nargs="?", type=Path, default=Path(__file__).resolve().parent.parent)
    parser.add_argument("--functions", action="store_true", help="list functions over 40 lines as well; never fails")
    arguments = parser.parse_args()
    found = violations(arguments.root)
    for violation in found:
        print(violation)
    if arguments.functions:
        for function in long_functions(arguments.root):
            print(function)
    if not found:
        print(f"layers: {len(read_sources(arguments.root))} files of src in order")
    return 1 if found else 0


if __name__ == "__main__":
    sys.exit(main())
