"""Closed choices: str enums whose members are equal to their words and shown as them.

A field of a part or of an installation that is one of some words is a member of one of these
classes; where one is given, the word does as well. The words are the library's.
"""

from __future__ import annotations

import enum
import re

from heatmatch import _core


class Choice(str, enum.Enum):
    """One of a closed list of words, equal to its word."""

    __str__ = str.__str__
    __repr__ = str.__repr__
    __format__ = str.__format__


def member_name(word: str) -> str:
    """The name of the member of that word: OPEN_AIR of "open air"."""
    return re.sub("[^A-Z0-9]+", "_", word.upper())


for _name, (_meaning, _words) in _core.choices().items():
    _made = Choice(_name, {member_name(word): word for word in _words}, module=__name__)
    _made.__doc__ = _meaning
    globals()[_name] = _made
del _name, _meaning, _words, _made
