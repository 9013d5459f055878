"""Files that are written whole or not at all."""

from __future__ import annotations

import contextlib
import os
import tempfile
from collections.abc import Iterator
from pathlib import Path

from heatmatch.errors import Error, FileError


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


def _umask() -> int:
    mask = os.umask(0)
    os.umask(mask)
    return mask


def _mode(target: Path) -> int:
    """Who may read and write: as the file that stands has it, else as any new file."""
    return target.stat().st_mode & 0o777 if target.exists() else 0o666 & ~_umask()


@contextlib.contextmanager
def whole_file(path: str | os.PathLike[str]) -> Iterator[Path]:
    """A path to write to; what is written there replaces the file once it is whole.

    A link stays and what it leads to is replaced; the file keeps its mode. A pipe or a device
    stays what it is and is written to.

    Raises
    ------
    FileError
        Names the path and the reason.
    """
    name = checked_path(path, "write")
    target = Path(os.path.realpath(name))
    partial: Path | None = None
    try:
        if target.is_dir():
            raise IsADirectoryError(0, "it is a folder")
        if target.exists() and not target.is_file():
            yield Path(name)
            return
        handle, made = tempfile.mkstemp(
            dir=target.parent, prefix=".heatmatch-", suffix=target.suffix[:20]
        )
        os.close(handle)
        partial = Path(made)
        yield partial
        os.chmod(partial, _mode(target))
        os.replace(partial, target)
    except Error as error:
        if partial is None or str(partial) not in str(error):
            raise
        raise type(error)(str(error).replace(str(partial), name)) from error
    except OSError as error:
        reason = error.strerror or error
        raise FileError(f'cannot write "{name}": {reason}; check the folder') from error
    finally:
        if partial is not None:
            partial.unlink(missing_ok=True)


def write_text(path: str | os.PathLike[str], text: str, *, errors: str = "strict") -> Path:
    """Writes a text as a whole file, in UTF-8.

    Raises
    ------
    FileError
        Names the path and the reason.
    """
    with whole_file(path) as partial:
        partial.write_text(text, encoding="utf-8", errors=errors, newline="\n")
    return Path(path)
