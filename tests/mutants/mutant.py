"""A planted error."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True)
class Mutant:
    """An error, where it is planted and which tests stand nearest."""

    name: str
    file: str
    old: str
    new: str
    tests: tuple[str, ...]
