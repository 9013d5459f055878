"""Every test can fail, and a long number in a check has its source beside it.

A number of five or more digits that a check expects comes from somewhere: a publication, another
program, arithmetic. Its test says so in its title or in a comment, or has `regression` in its name
because it is our own earlier output.
"""

from __future__ import annotations

import ast
import re
from collections.abc import Iterator
from pathlib import Path

TESTS = Path(__file__).parents[1]
CPP = sorted((TESTS / "cpp").glob("test_*.cpp"))
PYTHON = sorted((TESTS / "python").glob("test_*.py"))
LONG = 5
ABSOLUTE_ZERO = {"273.15", "293.15", "298.15"}  # 0, 20 and 25 °C by the definition of the degree
SOURCE = re.compile(
    r"source|regression|pvlib|mpmath|@cite|by hand|arithmetic|by definition|common practice"
    r"|from memory|\b(?:ASTM|IEC|ISO|NEC|NIST|VDI|Carslaw|Incropera|Meeus)\b",
    re.IGNORECASE,
)
CHECK = re.compile(r"\b(?:CHECK|REQUIRE|FAIL)\w*\(")
NUMBER = re.compile(r"(?<![\w.])\d+\.\d+(?:e[+-]?\d+)?(?![\w.])", re.IGNORECASE)
EXPECTED = re.compile(r"\b(?:Approx|within|within_abs)\(|==|fabs\(")


def digits(number: str) -> int:
    """Significant digits as written."""
    mantissa = number.lower().split("e")[0].replace("_", "")
    return len(mantissa.replace(".", "").strip("0"))


def is_long(number: str) -> bool:
    return digits(number) >= LONG and number not in ABSOLUTE_ZERO


def closed(text: str, start: int) -> str:
    """From an opening bracket to the one that closes it."""
    depth = 0
    for at in range(start, len(text)):
        depth += {"(": 1, ")": -1}.get(text[at], 0)
        if depth == 0:
            return text[start : at + 1]
    return text[start:]


def cpp_cases(path: Path) -> Iterator[tuple[str, str]]:
    """Title and text of each case, with the comment above it."""
    lines = path.read_text(encoding="utf-8").split("\n")
    starts = [at for at, line in enumerate(lines) if line.startswith("TEST_CASE")]
    for at in starts:
        first = at
        while first > 0 and lines[first - 1].startswith("//"):
            first -= 1
        last = lines.index("}", at)
        title = re.search(r'"((?:[^"\\]|\\.)*)"', " ".join(lines[at : at + 3]))
        assert title, lines[at]
        yield title[1], "\n".join(lines[first : last + 1])


def long_numbers_of_cpp(body: str) -> list[str]:
    found = []
    plain = re.sub(r'"(?:[^"\\]|\\.)*"', '""', body)
    for check in CHECK.finditer(plain):
        inside = closed(plain, check.end() - 1)
        for place in EXPECTED.finditer(inside):
            after = inside[place.end() :]
            told = closed(inside, place.end() - 1) if place[0].endswith("(") else after[:30]
            found += [number for number in NUMBER.findall(told) if is_long(number)]
    return found


def checking_helpers() -> re.Pattern[str]:
    """Functions of the C++ tests that check, or that call one that does."""
    texts = [
        path.read_text(encoding="utf-8")
        for path in (TESTS / "cpp").iterdir()
        if path.suffix in (".cpp", ".hpp")
    ]
    bodies: dict[str, str] = {}
    for text in texts:
        for head in re.finditer(r"^[ ]{0,4}[\w:<>&*,\[\] ]+?(\w+)\([^;{}]*\) \{\n", text, re.M):
            body = text[head.end() :].split("\n}\n")[0]
            bodies[head[1]] = bodies.get(head[1], "") + body
    bodies = {name: body for name, body in bodies.items() if not name.startswith("TEST_CASE")}
    names = {name for name, body in bodies.items() if CHECK.search(body)}
    while True:
        calls = re.compile(r"\b(?:" + "|".join(sorted(names)) + r")(?:<[^;()]*>)?\(")
        more = {name for name, body in bodies.items() if calls.search(body)} - names
        if not more:
            return calls
        names |= more


def test_every_case_of_cpp_can_fail() -> None:
    helpers = checking_helpers()
    without = [
        f"{path.name}: {title}"
        for path in CPP
        for title, body in cpp_cases(path)
        if not CHECK.search(body) and not helpers.search(body)
    ]
    assert without == []


def test_long_numbers_of_cpp_have_a_source() -> None:
    without = [
        (path.name, title, numbers)
        for path in CPP
        for title, body in cpp_cases(path)
        if not SOURCE.search(body) and (numbers := long_numbers_of_cpp(body))
    ]
    assert without == []


def functions_of(path: Path) -> Iterator[tuple[ast.FunctionDef, str, str]]:
    """The tests of a file, each with the comments above it, and the text of the file."""
    text = path.read_text(encoding="utf-8")
    lines = text.split("\n")
    for node in ast.walk(ast.parse(text)):
        if not isinstance(node, ast.FunctionDef) or not node.name.startswith("test_"):
            continue
        first = min(part.lineno for part in [node, *node.decorator_list]) - 1
        while first > 0 and lines[first - 1].startswith("#"):
            first -= 1
        yield node, "\n".join(lines[first : node.end_lineno]), text


def long_numbers_of_python(node: ast.FunctionDef, text: str) -> list[str]:
    found = []
    for check in (inner for inner in ast.walk(node) if isinstance(inner, ast.Assert)):
        for compare in (inner for inner in ast.walk(check) if isinstance(inner, ast.Compare)):
            for side in compare.comparators:
                for inner in ast.walk(side):
                    if isinstance(inner, ast.Constant) and isinstance(inner.value, float):
                        written = ast.get_source_segment(text, inner) or ""
                        found += [written] if is_long(written) else []
    return found


def test_long_numbers_of_python_have_a_source() -> None:
    without = [
        (path.name, node.name, numbers)
        for path in PYTHON
        for node, around, text in functions_of(path)
        if not SOURCE.search(around) and (numbers := long_numbers_of_python(node, text))
    ]
    assert without == []


FAILS = {"raises", "warns", "fail", "expect"}


def calls_of(node: ast.AST) -> set[str]:
    """Names that it calls; `assert` where it has one."""
    found = set()
    for inner in ast.walk(node):
        if isinstance(inner, ast.Assert):
            found.add("assert")
        elif isinstance(inner, ast.Call):
            called = inner.func
            found.add(
                called.attr if isinstance(called, ast.Attribute) else getattr(called, "id", "")
            )
    return found


def may_fail(calls: set[str], checking: set[str]) -> bool:
    return bool(calls & (checking | FAILS)) or any("assert" in name for name in calls)


def test_every_test_of_python_can_fail() -> None:
    functions = [
        (path, node.name, calls_of(node))
        for path in (TESTS / "python").glob("*.py")
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8")))
        if isinstance(node, ast.FunctionDef)
    ]
    helpers = [(name, calls) for _, name, calls in functions if not name.startswith("test_")]
    checking: set[str] = set()
    while more := {name for name, calls in helpers if may_fail(calls, checking)} - checking:
        checking |= more
    without = [
        f"{path.name}: {name}"
        for path, name, calls in functions
        if name.startswith("test_") and path in PYTHON and not may_fail(calls, checking)
    ]
    assert without == []
