"""A progress bar for long calls."""

from __future__ import annotations

import sys
import time
from collections.abc import Callable
from importlib import import_module
from typing import Any

_WIDTH = 40
_STEP_S = 0.1


def bar() -> Callable[[float], None]:
    """A function of the share done that draws a bar on the error stream.

    With tqdm installed it is tqdm's, which notebooks show too; else a line of text.

    Returns
    -------
    callable
        Called with the completed share, 0 to 1.
    """
    try:
        tqdm: Any = import_module("tqdm.auto").tqdm
    except ImportError:
        return _text_bar()
    shown = tqdm(total=1.0, bar_format="{l_bar}{bar}| {elapsed}<{remaining}")

    def move(share: float) -> None:
        shown.update(share - shown.n)
        if share >= 1.0:
            shown.close()

    return move


def _text_bar() -> Callable[[float], None]:
    drawn_at = 0.0

    def move(share: float) -> None:
        nonlocal drawn_at
        now = time.monotonic()
        if share < 1.0 and now - drawn_at < _STEP_S:
            return
        drawn_at = now
        done = round(_WIDTH * share)
        end = "\n" if share >= 1.0 else ""
        line = f"\r[{'#' * done}{'.' * (_WIDTH - done)}] {100 * share:3.0f} %{end}"
        sys.stderr.write(line)
        sys.stderr.flush()

    return move
