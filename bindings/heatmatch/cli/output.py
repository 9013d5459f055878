"""Output of the command line: text, colour on a terminal, JSON, CSV, files."""

from __future__ import annotations

import argparse
import contextlib
import csv
import io
import json
import math
import os
import re
import sys
import time
from collections.abc import Callable, Iterable, Iterator, Sequence
from pathlib import Path
from typing import Any, TextIO

from heatmatch import _progress as progress
from heatmatch.errors import FileError, InvalidInput
from heatmatch.io.files import check_place, checked_path, write_text
from heatmatch.text import look
from heatmatch.text.plain import plain

_WORDS = "|".join([*look.TERMINAL, "DANGER"])
_MARKS = "".join(signal.mark for signal in look.SIGNALS.values())
# Where a line begins with the word, and where it is a cell of a table.
_SEVERITY = re.compile(
    rf"(?:^|(?<=[{_MARKS}] ))({_WORDS})(?=:)|(?<= )({_WORDS})(?=  )", re.MULTILINE
)
_ESCAPED = re.compile("[\x7f-\x9f\u061c\u200e\u200f\u2028-\u202e\u2066-\u2069\ud800-\udfff]")
_NOT_ASCII = re.compile("[^\x00-\x7e]")
_BAR_AFTER_S = 0.5
# What a spreadsheet may read as a formula: the sign, or its full-width form, after blanks.
_FORMULA = re.compile("[\t\r]|[\\s\x00-\x1f\u200b\ufeff]*[=+\\-@\uff1d\uff0b\uff0d\uff20]")


def is_terminal(stream: TextIO) -> bool:
    """Whether the stream is a terminal that supports colors and cursor movement."""
    return stream.isatty() and os.environ.get("TERM") != "dumb"


def coloured(text: str, stream: TextIO) -> str:
    """The text with its severities in color, where the stream is a terminal with colors."""
    known = os.name != "nt" or "WT_SESSION" in os.environ
    if os.environ.get("NO_COLOR") or not known or not is_terminal(stream):
        return text
    return _SEVERITY.sub(
        lambda found: f"\x1b[{look.TERMINAL[found[0].lower()]}m{found[0]}\x1b[0m", text
    )


def say(text: str = "", end: str = "\n") -> None:
    """Print text on the standard stream; control characters in it are escaped."""
    print(coloured(plain(text), sys.stdout), end=end)


def complain(message: str) -> None:
    """Prints one line on the error stream."""
    print(f"heatmatch: {plain(' '.join(message.split()))}", file=sys.stderr)


def print_json(data: Any) -> None:
    """Prints plain data as JSON."""
    print_json_text(json.dumps(data, ensure_ascii=False, indent=2, allow_nan=False) + "\n")


def _escaped(found: re.Match[str]) -> str:
    units = found[0].encode("utf-16-be", "surrogatepass").hex()
    return "".join(f"\\u{units[i : i + 4]}" for i in range(0, len(units), 4))


def print_json_text(text: str) -> None:
    """Print JSON that ends with its line; control and invisible characters are escaped."""
    encoding = (sys.stdout.encoding or "utf-8").lower().replace("_", "-")
    signs = _ESCAPED if encoding in ("utf-8", "utf8") else _NOT_ASCII
    print(signs.sub(_escaped, text), end="")


def picked(thing: object, *names: str) -> dict[str, Any]:
    """Attributes of an object by name; NaN becomes None."""
    values = {name: getattr(thing, name) for name in names}
    return {
        name: None if isinstance(value, float) and not math.isfinite(value) else value
        for name, value in values.items()
    }


def read_text(path: str) -> str:
    """A file's content, or standard input for `-`."""
    if path == "-":
        return sys.stdin.buffer.read().decode("utf-8-sig")
    try:
        return Path(checked_path(path, "read")).read_text(encoding="utf-8")
    except OSError as error:
        raise FileError(f'cannot read "{path}": {error.strerror}; check the path') from error
    except UnicodeDecodeError as error:
        raise InvalidInput(f'"{path}" is not text in UTF-8; save it as UTF-8') from error


# Options and arguments that name a file to read.
_INPUTS = ("installation", "readings", "log", "weather", "compare")


def _inputs(arguments: argparse.Namespace) -> Iterator[str]:
    """The files that a command reads."""
    for name in _INPUTS:
        path = getattr(arguments, name, None)
        if isinstance(path, str) and path != "-":
            yield path
    catalog = getattr(arguments, "catalog", None) or os.environ.get("HEATMATCH_CATALOG")
    if catalog:
        yield from (catalog, f"{catalog}-wal", f"{catalog}-shm")


def _same_file(one: str, other: str) -> bool:
    try:
        return os.path.samefile(one, other)
    except OSError:
        return os.path.realpath(one) == os.path.realpath(other)


def check_new_file(path: str | None, arguments: argparse.Namespace) -> None:
    """Reject, before the computation, a path to which no file can be written.

    What exists is replaced with --force only, and what the command reads never.
    """
    if path is None:
        return
    target = Path(checked_path(path, "write"))
    if path == "-" or target.is_dir():
        raise FileError(f'cannot write "{path}": it is not a file; name a file')
    if not target.absolute().parent.is_dir():
        raise FileError(f'cannot write "{path}": its folder does not exist; create it first')
    for read in _inputs(arguments):
        if _same_file(path, read):
            raise FileError(f'cannot write "{path}": this command reads it; name another file')
    if target.is_file() and not arguments.force:
        raise FileError(f'"{path}" exists; name another file, or overwrite it with --force')
    check_place(path)


def csv_cell(value: object) -> str:
    """A cell of CSV for spreadsheets: numbers as such, a text never as a formula."""
    if value is None:
        return ""
    if isinstance(value, str):
        return "'" + value if _FORMULA.match(value) else value
    number = float(value)  # type: ignore[arg-type]
    return f"{number:.9g}" if math.isfinite(number) else ""


def write_csv(
    path: str, header: Sequence[str], rows: Iterable[Sequence[object]], *, force: bool
) -> None:
    """Writes a table as CSV; over a file that exists with `force` only."""
    text = io.StringIO()
    writer = csv.writer(text, lineterminator="\n")
    writer.writerow(header)
    writer.writerows([csv_cell(value) for value in row] for row in rows)
    write_text(path, text.getvalue(), errors="replace", force=force)


def bar(*, wanted: bool) -> Callable[[float], None] | None:
    """A progress bar for long work, where the error stream is a terminal."""
    if not wanted or not is_terminal(sys.stderr):
        return None
    begun = time.monotonic()
    drawn: list[Callable[[float], None]] = []

    def move(share: float) -> None:
        if not drawn and share < 1.0 and time.monotonic() - begun > _BAR_AFTER_S:
            drawn.append(progress.bar())
        for draw in drawn:
            draw(share)

    return move


@contextlib.contextmanager
def notice(text: str, *, wanted: bool) -> Iterator[None]:
    """Print on the error stream the name of long work while it runs, if it is a terminal."""
    if not wanted or not is_terminal(sys.stderr):
        yield
        return
    print(text, end="", file=sys.stderr, flush=True)
    try:
        yield
    finally:
        print("\r" + " " * len(text) + "\r", end="", file=sys.stderr, flush=True)
