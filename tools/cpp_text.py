"""What does a C++ file say once comments, or comments and strings, are blanked out? And how long are its functions?

Blanking keeps every line break and column, so a place found in the blanked text is a place in the file. No parser: the
pieces are found by one regular expression, which knows raw strings and digit separators.
"""
import re
from typing import NamedTuple

_PIECE = re.compile(
    r"""(?P<comment>//(?:[^\n\\]|\\.)*|/\*.*?\*/)
      | (?P<string>R"(?P<mark>[^()\\\s"]{0,16})\(.*?\)(?P=mark)"
                  |"(?:\\.|[^"\\\n])*"
                  |(?<![0-9A-Fa-f])'(?:\\.|[^'\\\n])+')""",
    re.DOTALL | re.VERBOSE)
_NOT_A_FUNCTION = re.compile(r"\s*(?:inline\s+)?(?:namespace|class|struct|enum|union|extern|concept)\b")
_TEMPLATE = re.compile(r"^\s*template\s*<[^{}()]*>")


class Function(NamedTuple):
    line: int    # of its opening brace
    length: int  # lines from there to its closing brace, both counted


def _blank(piece: str) -> str:
    return re.sub(r"[^\n]", " ", piece)


def without_comments(text: str) -> str:
    return _PIECE.sub(lambda m: _blank(m[0]) if m["comment"] else m[0], text)


def code_only(text: str) -> str:
    """`text` with comments and the contents of strings and characters blanked."""
    return _PIECE.sub(lambda m: _blank(m[0]), text)


def line_of(text: str, offset: int) -> int:
    return text.count("\n", 0, offset) + 1


def functions(text: str) -> list[Function]:
    """Function bodies outside other functions, by their braces: a block whose head holds a parameter list."""
    code = re.sub(r"(?m)^[ \t]*#.*$", lambda m: _blank(m[0]), code_only(text))
    found: list[Function] = []
    open_blocks: list[tuple[bool, int]] = []  # (is a function, offset of its brace)
    head_start = 0
    for match in re.finditer(r"[{};]", code):
        if match[0] == "{":
            head = _TEMPLATE.sub("", code[head_start:match.start()])
            inside = any(is_function for is_function, _ in open_blocks)
            is_function = not inside and "(" in head and not _NOT_A_FUNCTION.match(head)
            open_blocks.append((is_function, match.start()))
        elif match[0] == "}" and open_blocks:
            is_function, start = open_blocks.pop()
            if is_function:
                line = line_of(code, start)
                found.append(Function(line, line_of(code, match.start()) - line + 1))
        head_start = match.end()
    return found
