"""How the command line ends on request: by Ctrl-C, SIGTERM or a terminal that closes.

The package imports this first: while the rest loads, which takes longer than Python itself, a
signal ends the command line at once. Nothing here needs another module of the package.
"""

from __future__ import annotations

import contextlib
import os
import signal
import sys
from types import FrameType
from typing import Any, NoReturn

WORDS = {
    getattr(signal, name): word
    for name, word in (("SIGINT", "interrupted"), ("SIGTERM", "ended"), ("SIGHUP", "hung up"))
    if hasattr(signal, name)
}
_COMMAND = "heatmatch"


class Ended(BaseException):
    """Raised where a signal other than Ctrl-C requests the end of the command line."""


def exit_code(signum: int) -> int:
    """The exit code of a command that a signal ended, as shells report it."""
    return 128 + signum


def leave(signum: int, frame: FrameType | None = None) -> NoReturn:
    """End at once with one line, where nothing has to be cleaned up."""
    with contextlib.suppress(OSError):
        os.write(2, f"heatmatch: {WORDS[signum]}\n".encode())
    os._exit(exit_code(signum))


def is_command_line() -> bool:
    """Whether this process is `heatmatch` or `python -m heatmatch`, not a program that uses it."""
    if sys.argv[:1] == ["-m"]:  # replaces the script while Python searches for the package
        words = sys.orig_argv[1:]
        for word, following in zip(words, [*words[1:], ""], strict=True):
            if word.startswith("-") and "m" in word:
                return (word.partition("m")[2] or following) == _COMMAND
        return False
    script = os.path.basename(sys.argv[0]) if sys.argv else ""
    return script in (_COMMAND, f"{_COMMAND}.exe")


def _hear(handler: Any) -> dict[int, Any]:
    """Set a handler for every signal with the default one; return the previous handlers.

    A signal that is ignored (nohup) or handled keeps its setting.
    """
    usual = (signal.SIG_DFL, signal.default_int_handler, leave)
    before: dict[int, Any] = {}
    with contextlib.suppress(ValueError):  # not the main thread
        for signum in WORDS:
            if signal.getsignal(signum) in usual:
                before[signum] = signal.signal(signum, handler)
    return before


class Heard:
    """While the command line runs: the first signal raises an exception, a second one ends it."""

    def __init__(self) -> None:
        self.signum = 0
        self._before: dict[int, Any] = {}
        self._hook: Any = None

    def _raise(self, signum: int, frame: FrameType | None) -> None:
        self.signum = signum
        for each in self._before:
            signal.signal(each, leave)
        raise KeyboardInterrupt if signum == signal.SIGINT else Ended

    def _unraisable(self, what: Any) -> None:
        # Raised where Python only prints it and continues: end here instead.
        if self.signum and issubclass(what.exc_type, (KeyboardInterrupt, Ended)):
            leave(self.signum)
        self._hook(what)

    def __enter__(self) -> Heard:
        self._hook, sys.unraisablehook = sys.unraisablehook, self._unraisable
        self._before = _hear(self._raise)
        return self

    def __exit__(self, *error: object) -> None:
        for signum, handler in self._before.items():
            signal.signal(signum, handler)
        sys.unraisablehook = self._hook


if is_command_line():
    _hear(leave)
