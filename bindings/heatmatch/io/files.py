"""Files that are written whole or not at all, by the one writer of the compiled part."""

from __future__ import annotations

import os
from pathlib import Path

from heatmatch import _core
from heatmatch.errors import FileError


def checked_path(path: str | os.PathLike[str], purpose: str) -> str:
    """A path as text, if a file can have such a name.

    Raises
    ------
    FileError
        The name holds what no file's name can hold.
    """
    name = os.fspath(path)
    try:
        if b"\0" not in os.fsencode(name):
            return name
    except UnicodeEncodeError:
        pass
    shown = name.encode("ascii", "backslashreplace").decode().replace("\0", "\\x00")
    raise FileError(f'cannot {purpose} "{shown}": no file can have that name; check the path')


def check_place(path: str | os.PathLike[str]) -> None:
    """Refuses a path that no file can be written to, and what is never replaced.

    Raises
    ------
    FileError
        Names the path and the reason.
    """
    _core.check_file(os.fsencode(checked_path(path, "write")))


def write_text(
    path: str | os.PathLike[str],
    text: str,
    *,
    errors: str = "strict",
    force: bool = True,
    only_kind: str = "",
) -> Path:
    """Writes a text as a whole file, in UTF-8.

    A link stays and what it leads to is replaced; the file keeps its mode. Without `force` a file
    that exists is refused, unless it is empty or has the text `only_kind` near its beginning. A
    catalog, and what is no regular file, are always refused.

    Raises
    ------
    FileError
        Names the path and the reason.
    """
    name = os.fsencode(checked_path(path, "write"))
    kind = "" if force else only_kind
    replace = force or only_kind != ""
    _core.write_file(name, text.encode("utf-8", errors), replace=replace, only_kind=kind)
    return Path(path)
