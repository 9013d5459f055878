"""Texts of strangers made plain: what a terminal or a page would obey is written out."""

from __future__ import annotations

import html
import re
from collections.abc import Callable
from typing import Any

# A terminal obeys control characters, and marks that turn the direction of writing show a line in
# another order than it has; letters written from the right need neither. Half a character cannot
# be printed at all.
_COMMANDS = re.compile(
    "[\x00-\x08\x0b-\x1f\x7f-\x9f\u061c\u200e\u200f\u2028-\u202e\u2066-\u2069\ufeff\ud800-\udfff]"
)
_LINE_ENDS = str.maketrans({"\n": r"\x0a", "\t": r"\x09"})


def _written(found: re.Match[str]) -> str:
    code = ord(found[0])
    return f"\\x{code:02x}" if code < 0x100 else f"\\u{code:04x}"


def plain(text: str) -> str:
    r"""The text with what would be obeyed as ``\x1b`` or ``\u202e``; lines and tabs stay."""
    return _COMMANDS.sub(_written, text)


def plain_line(text: str) -> str:
    """The same on one line."""
    return plain(text).translate(_LINE_ENDS)


def escape(text: str, *, quote: bool = True) -> str:
    """The text for a page: plain, and nothing in it is HTML."""
    return html.escape(plain(text), quote=quote)


def _made_plain(told: Callable[[Any], str]) -> Callable[[Any], str]:
    def tell(self: object) -> str:
        return plain(told(self))

    tell.__name__, tell.__doc__ = told.__name__, told.__doc__
    return tell


def attach() -> None:
    """Makes what the compiled classes say of themselves plain."""
    from heatmatch import _core

    for cls in vars(_core).values():
        if not isinstance(cls, type) or cls.__module__.partition(".")[0] != "heatmatch":
            continue
        for name in ("__repr__", "__str__"):
            if name in vars(cls):
                setattr(cls, name, _made_plain(vars(cls)[name]))
