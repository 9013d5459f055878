"""Untrusted texts made plain: characters that control a terminal or a page are escaped."""

from __future__ import annotations

import html
import re

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
    r"""The text with control characters as ``\x1b`` or ``\u202e``; line ends and tabs remain."""
    return _COMMANDS.sub(_written, text)


def plain_line(text: str) -> str:
    """The same on one line."""
    return plain(text).translate(_LINE_ENDS)


def escape(text: str, *, quote: bool = True) -> str:
    """The text for a page: plain, and nothing in it is HTML."""
    return html.escape(plain(text), quote=quote)
